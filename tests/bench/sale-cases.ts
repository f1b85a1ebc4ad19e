import { catalogue } from '../../src/catalogue/index.ts';
import { assess } from '../../src/core/assess.ts';
import type { ChoiceLot, Purse } from '../../src/core/choice.ts';
import { type Lot, type LotRow, rowOf } from '../../src/core/lots.ts';
import { adviseOn, choiceLotsOf } from '../../src/core/lots-choice.ts';
import { orderedRows } from '../../src/core/lots-order.ts';
import { forecast } from '../../src/core/simulate/simulate.ts';
import { lanthorn } from '../../src/demo/lanthorn.ts';
import { caseOfLot, someSettings, someTerms } from '../make.ts';
import { id } from '../store/make.ts';

export { choose } from '../../src/core/choice.ts';

const settings = someSettings();
const facts = {
  terms: someTerms({
    way: 'auction',
    premium: [{ upTo: null, rate: 0.24 }],
    vatRate: 0.2,
    vatOn: 'fees',
    bidSteps: [{ from: 0, step: 500 }],
  }),
  copy: { hours: 3, days: 20 },
  currency: 'GBP',
};
const purse: Purse = { money: 80_000, minutes: 60 * 60, held: {} };

/** Sixty lots: those of the example over and over, each at another price and with its own luck. */
export function sixtyLots(): readonly Lot[] {
  const numbers = [...lanthorn.lots, ...lanthorn.box].map(({ number }) => number);
  return Array.from({ length: 60 }, (_, n) => {
    const its = caseOfLot(numbers[n % numbers.length] ?? 'L01');
    const block = { ...its.block, id: id(1000 + n), priceAsked: 1_500 + ((n * 977) % 7_000) };
    const book = assess({ ...its, block, terms: facts.terms }, catalogue);
    const drawn = forecast(
      { ...its, block, terms: facts.terms, origin: 'dampStore', tallies: {}, seed: n },
      catalogue,
      book,
    );
    return {
      id: block.id,
      job: null,
      blocks: [{ block, survey: its.survey, findings: its.findings, book, forecast: drawn }],
      offers: [],
    };
  });
}

export const rowsOf = (lots: readonly Lot[]): readonly LotRow[] => lots.map((lot) => rowOf(lot, facts));

/** One lot's price changes: its row is made anew, the others are kept, all are ranked. */
export function reRanked(lots: readonly Lot[], rows: readonly LotRow[], n: number): readonly LotRow[] {
  const at = n % lots.length;
  const lot = lots[at] as Lot;
  const blocks = lot.blocks.map((one) => ({ ...one, block: { ...one.block, priceAsked: 2_000 + n } }));
  return orderedRows(
    rows.map((row, place) => (place === at ? rowOf({ ...lot, blocks }, facts) : row)),
    'surplus',
    'all',
  );
}

/** Best, runners-up, and what 50 more or 5 hours more would buy: four searches. */
export const adviceOn = (rows: readonly LotRow[]) =>
  adviseOn(choiceLotsOf(rows, {}, settings), purse, { money: 5_000, minutes: 300 });

/** Sixty lots as no sale has them: worth, price and hours at random, copies among them. */
export function randomLots(seed: number): { readonly lots: readonly ChoiceLot[]; readonly purse: Purse } {
  let state = seed;
  const random = (): number => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
  const lots = Array.from({ length: 60 }, (_, n): ChoiceLot => {
    const worth = Math.round(random() * 25_000);
    return {
      id: `L${n}`,
      price: Math.round(500 + random() * 14_500),
      minutes: Math.round(20 + random() * 900),
      blocks: [
        { shape: random() < 0.3 ? `s${Math.floor(random() * 8)}` : null, worth: [worth, worth * 0.6, worth * 0.4] },
      ],
      disposal: 0,
      pinned: null,
    };
  });
  return { lots, purse: { money: 100_000, minutes: 60 * 60, held: { s1: 1 } } };
}
