import { money, moneyAbout } from '../text/format.ts';
import { useApp } from '../ui/app.ts';
import { to } from '../ui/route.ts';
import { blockName } from './block-name.ts';
import css from './block-row.module.css';
import { BlockThumbnail } from './block-thumbnail.tsx';
import { useCase } from './use-case.ts';
import { VerdictMark } from './verdict-mark.tsx';

/** A block as a line on the shelf: picture, name, verdict, limit and what is asked. */
export function BlockRow({ id }: { readonly id: string }) {
  const { catalogue } = useApp();
  const of = useCase(id);
  if (!of) return null;
  const { worth, decision, unknownEssentials, verdict } = of.assessment;
  return (
    <li>
      <a class={css.row} href={to('/block/:id', { id })}>
        <BlockThumbnail of={of} />
        <span class={css.text}>
          <b>{blockName(of.block, catalogue)}</b>
          <VerdictMark verdict={verdict} />
          <span class={css.money} data-say={decision.say}>
            <span class="figures">
              {worth.highestPrice === null
                ? 'Nothing at these terms'
                : `up to ${moneyAbout(worth.highestPrice, of.block.currency)}`}
              {decision.at !== null && `, asked ${money(decision.at, of.block.currency)}`}
            </span>
            {unknownEssentials.length > 0 && <span> · {unknownEssentials.length} unknown</span>}
          </span>
        </span>
      </a>
    </li>
  );
}
