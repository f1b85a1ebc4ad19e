import type { Figures } from '../../core/haggle.ts';
import type { LotRow } from '../../core/lots.ts';
import type { Sale } from '../../core/records.ts';
import { money, moneyAbout } from '../../text/format.ts';
import { Section } from '../../ui/page.tsx';
import css from './haggle.module.css';

/** Opening, aim and stop, large; covered, they are gone from the page, not merely pale. */
export function BigFigures({
  row,
  sale,
  figures,
  asked,
  covered,
}: {
  readonly row: LotRow;
  readonly sale: Sale;
  readonly figures: Figures;
  readonly asked: number | null;
  readonly covered: boolean;
}) {
  const { opening, stop, payIt } = figures;
  const isAuction = sale.terms.way === 'auction';
  const say = (amount: number | null): string => (amount === null ? '–' : money(amount, sale.currency));
  if (covered) {
    return (
      <Section title="Figures">
        <p class={css.covered} role="status">
          Covered
        </p>
      </Section>
    );
  }
  return (
    <Section title="Figures">
      <dl class={css.big}>
        {!isAuction && (
          <div>
            <dt>Open at</dt>
            <dd class="figures">{say(opening)}</dd>
          </div>
        )}
        <div data-stop>
          <dt>{isAuction ? 'Stop bidding at' : 'Stop at'}</dt>
          <dd class="figures">
            {row.limit === undefined ? '…' : stop === null ? 'nothing' : moneyAbout(stop, sale.currency)}
          </dd>
        </div>
        {asked !== null && (
          <div>
            <dt>They ask</dt>
            <dd class="figures">{say(asked)}</dd>
          </div>
        )}
      </dl>
      {row.quarantine && <p class={css.warn}>Signs of life or mould: bag it before it leaves the table.</p>}
      {payIt && asked !== null && (
        <p>{say(asked)} is well within your limit: do not haggle long, or somebody else pays the ticket.</p>
      )}
      {stop === null && row.limit !== undefined && (
        <p>Nothing at these terms: take it only as a gift or a makeweight.</p>
      )}
      {!isAuction && asked === null && stop !== null && (
        <p>Ask what they want for it first; the opening figure comes from that.</p>
      )}
    </Section>
  );
}
