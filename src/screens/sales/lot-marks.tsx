import { headCm } from '../../core/head-size.ts';
import { carrierOf } from '../../core/lot-price.ts';
import type { LotRow } from '../../core/lots.ts';
import { isLate } from '../../core/lots-choice.ts';
import type { Sale } from '../../core/records.ts';
import type { useShelfHeld } from '../../parts/use-shelf-held.ts';
import { VerdictMark } from '../../parts/verdict-mark.tsx';
import { dayHere, dayWords } from '../../text/days.ts';
import { FILLING_WORDS, notBoughtWords, verdictsOf } from '../../text/lots.ts';
import { useApp } from '../../ui/app.ts';
import css from './table.module.css';

/** What a block would be to the shelf as it stands. */
export type Fills = ReturnType<typeof useShelfHeld>['fills'];

/** The verdict of a lot: of its one block, or counted over the blocks of a job lot. */
export function LotVerdict({ row }: { readonly row: LotRow }) {
  const { catalogue } = useApp();
  const [first] = row.blocks;
  if (row.lot.job) return <span>{verdictsOf(row, catalogue) || 'Nothing in it yet'}</span>;
  return first ? <VerdictMark verdict={first.verdict} /> : null;
}

/** Seen in pictures only: as said, else as an online sale has it. */
export const isFromPictures = ({ lot }: LotRow, sale: Pick<Sale, 'channel'>): boolean =>
  carrierOf(lot)?.fromPictures ?? sale.channel === 'auctionOnline';

/** What one should know of a lot beside its figures; each in words. */
export function LotMarks({ row, sale, fills }: { readonly row: LotRow; readonly sale: Sale; readonly fills: Fills }) {
  const filling = row.lot.blocks
    .map(({ block, survey }) => fills({ blockType: block.blockType, sizeCm: headCm(survey.measures) }))
    .find((found) => found !== null);
  const carrier = carrierOf(row.lot);
  const { now } = useApp();
  const late =
    row.standing === 'open' && sale.neededBy !== null && isLate(row, dayHere(now()), sale.neededBy)
      ? `Not ready by ${dayWords(sale.neededBy)}`
      : null;
  const marks: readonly (readonly [string, string] | null)[] = [
    row.standing === 'paid' ? ['bought', 'Paid'] : row.standing === 'agreed' ? ['bought', 'Agreed'] : null,
    row.standing === 'notBought' ? ['left', `Not bought: ${notBoughtWords(carrier?.notBought ?? '')}`] : null,
    row.blocks.some(({ refused }) => refused) ? ['bad', 'Not to be taken home'] : null,
    row.otherCurrency ? ['warn', `In ${row.otherCurrency}: not counted`] : null,
    row.quarantine ? ['warn', 'Quarantine'] : null,
    late ? ['warn', late] : null,
    isFromPictures(row, sale) && row.looked !== 'all' ? ['warn', 'Pictures only: bid as risky'] : null,
    carrier?.pinned === 'in' ? ['plain', 'Pinned in'] : carrier?.pinned === 'out' ? ['plain', 'Pinned out'] : null,
    filling ? ['good', FILLING_WORDS[filling]] : null,
  ];
  const said = marks.filter((mark) => mark !== null);
  if (said.length === 0) return null;
  return (
    <ul class={css.marks}>
      {said.map(([kind, words]) => (
        <li key={words} data-kind={kind}>
          {words}
        </li>
      ))}
    </ul>
  );
}
