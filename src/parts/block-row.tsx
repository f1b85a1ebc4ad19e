import { money, moneyAbout } from '../text/format.ts';
import { notBoughtWords } from '../text/lots.ts';
import { useApp } from '../ui/app.ts';
import { to } from '../ui/route.ts';
import { limitOf } from './answer.tsx';
import { blockName } from './block-name.ts';
import css from './block-row.module.css';
import { BlockThumbnail } from './block-thumbnail.tsx';
import { type BlockCase, useCase } from './use-case.ts';
import { useForecast, useForecastCase } from './use-forecast.ts';
import { VerdictMark } from './verdict-mark.tsx';

/** A block as a line on the shelf: picture, name, verdict, limit and what is asked. */
export function BlockRow({ id }: { readonly id: string }) {
  const of = useCase(id);
  return of ? <Row of={of} /> : <Bare id={id} />;
}

/** A block whose survey is not here, as after a part of an import: it must not be missing from the shelf for that. */
function Bare({ id }: { readonly id: string }) {
  const { store, catalogue } = useApp();
  const block = store.get('block', id);
  if (!block) return null;
  return (
    <li>
      <a class={css.row} href={to('/block/:id', { id })}>
        <span class={css.text}>
          <b>{blockName(block, catalogue)}</b>
          <span class={css.money}>Its survey is not here.</span>
        </span>
      </a>
    </li>
  );
}

/** The limit in a few words: `…` until what was not looked at is reckoned in. */
function limitWords(limit: number | null | undefined, currency: string): string {
  if (limit === undefined) return '…';
  if (limit === null) return 'nothing at these terms';
  return limit === 0 ? 'only as a gift' : `up to ${moneyAbout(limit, currency)}`;
}

function Row({ of }: { readonly of: BlockCase }) {
  const { catalogue } = useApp();
  const { id } = of.block;
  const { forecast } = useForecast(useForecastCase(of), id);
  const { decision, unknownEssentials, verdict } = of.assessment;
  const limit = limitOf({ of, forecast });
  return (
    <li>
      <a class={css.row} href={to('/block/:id', { id })}>
        <BlockThumbnail of={of} />
        <span class={css.text}>
          <b>{blockName(of.block, catalogue)}</b>
          <VerdictMark verdict={verdict} />
          <span class={css.money} data-say={decision.say}>
            <span class="figures">
              {limitWords(limit, of.block.currency)}
              {decision.at !== null && `, asked ${money(decision.at, of.block.currency)}`}
            </span>
            {of.block.notBought != null && (
              <span> · not bought: {notBoughtWords(of.block.notBought).toLocaleLowerCase('en-GB')}</span>
            )}
            {unknownEssentials.length > 0 && <span> · {`${unknownEssentials.length}\u00a0to\u00a0look\u00a0at`}</span>}
          </span>
        </span>
      </a>
    </li>
  );
}
