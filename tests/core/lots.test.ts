import { describe, expect, it } from 'vitest';
import { catalogue } from '../../src/catalogue/index.ts';
import { assess } from '../../src/core/assess.ts';
import { choose } from '../../src/core/choice.ts';
import { headCm, shapeOf } from '../../src/core/head-size.ts';
import { nextBid, priceOf, standingOf } from '../../src/core/lot-price.ts';
import { type Lot, type LotBlock, lookedAt, rowOf } from '../../src/core/lots.ts';
import { adviseOn, choiceLotsOf, hoursUntil, isLate, purseOf, worthByCopies } from '../../src/core/lots-choice.ts';
import { orderedRows } from '../../src/core/lots-order.ts';
import type { Fields, JobLot, Offer } from '../../src/core/records.ts';
import { forecast } from '../../src/core/simulate/simulate.ts';
import { minor } from '../../src/core/units.ts';
import { allocateLot } from '../../src/core/value.ts';
import { lanthorn } from '../../src/demo/lanthorn.ts';
import {
  aBlock,
  aCase,
  aJobLot,
  anOffer,
  aSurvey,
  caseOfLot,
  everythingLookedAt,
  someSettings,
  someTerms,
} from '../make.ts';
import { id } from '../store/make.ts';

const settings = someSettings();
const facts = { terms: someTerms({ way: 'haggle' }), copy: { hours: 3, days: 20 }, currency: 'GBP' };

/** A lot of the example sale, everything looked at, by the book and by the draws. */
function exampleBlock(number: string, blockId: string): LotBlock {
  const its = caseOfLot(number);
  const block = { ...its.block, id: blockId };
  const book = assess({ ...its, block }, catalogue);
  return {
    ...{ block, survey: its.survey, findings: its.findings, book },
    forecast: forecast({ ...its, block, origin: 'dampStore', tallies: {}, seed: 1 }, catalogue, book),
  };
}
const single = (number: string, n: number): Lot => {
  const one = exampleBlock(number, id(n));
  return { id: one.block.id, job: null, blocks: [one], offers: [] };
};
const box: Lot = {
  id: id(90),
  job: aJobLot({ id: id(90), objectNumber: 'L10', priceAsked: 100 * lanthorn.boxAsked }),
  blocks: lanthorn.box.map(({ number }, n) => exampleBlock(number, id(91 + n))),
  offers: [],
};
const table = [...lanthorn.lots.map(({ number }, n) => single(number, 10 + n)), box].map((lot) => rowOf(lot, facts));
const numberOf = (rowId: string): string => {
  const row = table.find((one) => one.id === rowId);
  return row?.lot.job?.objectNumber ?? row?.lot.blocks[0]?.block.objectNumber ?? '';
};

// Trade handbook §8, the question of the purse: one expert's answer, from memory, of an invented sale.
describe('the example sale with 350 in cash', () => {
  const purse = purseOf({ budget: 35_000, hoursToSpare: null, neededBy: null }, table, {}, settings, '2026-10-17');
  const advice = adviseOn(choiceLotsOf(table, {}, settings), purse, { money: 5_000, minutes: 300 });

  it('takes what the expert takes: L01, L02, L05, L09 and the box, for 308 to 328', () => {
    const [best] = advice.sets;
    expect(best?.ids.map(numberOf).sort()).toEqual(['L01', 'L02', 'L05', 'L09', 'L10']);
    expect(best?.price).toBe(32_800);
    expect(advice.proven).toBe(true);
  });

  it('leaves at their tickets what the expert leaves', () => {
    const dear = table.filter(({ surplus }) => surplus !== null && surplus < 0).map(({ id: rowId }) => numberOf(rowId));
    expect(dear.sort()).toEqual(['L03', 'L04', 'L06', 'L07', 'L08']);
  });

  it('says that more money buys nothing better, and knows no limit of hours', () => {
    expect(advice.moreMoney?.gain).toBe(0);
    expect(advice.moreHours).toBeNull();
  });

  it('says what 50 more would buy when the purse is short', () => {
    const short = adviseOn(
      choiceLotsOf(table, {}, settings),
      { ...purse, money: 10_000 },
      { money: 5_000, minutes: 300 },
    );
    expect(short.sets[0]?.ids.map(numberOf).sort()).toEqual(['L05', 'L09']);
    expect(short.moreMoney?.comes.map(numberOf)).toEqual(['L01']);
    expect(short.moreMoney?.gain).toBeGreaterThan(0);
  });
});

describe('an evening short of hours', () => {
  it('knows what five hours more would bring, and what they would push out', () => {
    const hours = purseOf({ budget: null, hoursToSpare: 8, neededBy: null }, table, {}, settings, '2026-10-17');
    const { sets, moreHours } = adviseOn(choiceLotsOf(table, {}, settings), hours, { money: 5_000, minutes: 300 });
    const [best] = sets;
    expect(best?.minutes).toBeLessThanOrEqual(480);
    expect(moreHours?.gain).toBeGreaterThan(0);
    const then = [...(best?.ids ?? []), ...(moreHours?.comes ?? [])].filter((one) => !moreHours?.goes.includes(one));
    const minutes = then.reduce((sum, one) => sum + 60 * (table.find((row) => row.id === one)?.hours ?? 0), 0);
    expect(minutes).toBeLessThanOrEqual(480 + 300 + then.length);
    expect(minutes).toBeGreaterThan(best?.minutes ?? 0);
  });
});

describe('a job lot', () => {
  const ofBox = rowOf({ ...box, blocks: box.blocks.map((one) => ({ ...one, forecast: undefined })) }, facts);

  // Expert's range for the box: 75 to 150, 3.5 to 9 hours. The reference model says 119.46; it records none of the nine
  // small pieces before and after, we record each (an hour and its money), which leaves the saucer and the pressing piece
  // worth nothing, and the teardrop, the painted pillbox and the ornament as there.
  it('is worth the sum of what is wanted of it, inside the expert’s range', () => {
    const sum = ofBox.blocks.reduce((all, { worth }) => all + Math.max(0, worth ?? 0), 0);
    expect(ofBox.worth).toBe(sum);
    expect(sum).toBeGreaterThan(7_500);
    expect(sum).toBeLessThan(15_000);
    expect(ofBox.hours).toBeGreaterThan(3.5);
    expect(ofBox.hours).toBeLessThan(9);
    const wanted = ofBox.blocks.filter(({ worth }) => (worth ?? 0) > 0).length;
    expect(wanted).toBe(4);
  });

  it('takes off what it costs to be rid of the rest', () => {
    const job = aJobLot({ id: id(90), disposal: 400 });
    expect(rowOf({ ...ofBox.lot, job }, facts).worth).toBe((ofBox.worth ?? 0) - 400);
  });

  it('shares its price by worth: 25.00 of 119.46 bears 12.56 of 60', () => {
    // Row val.alloc of the trade handbook.
    expect(allocateLot(minor(6_000), [2_500, 9_446])[0]).toBe(1_256);
  });

  it('counts hours and days of what is wanted only', () => {
    const unwanted = ofBox.blocks.filter(({ worth }) => worth === 0);
    expect(unwanted.length).toBeGreaterThan(0);
    const wanted = ofBox.blocks.filter(({ worth }) => (worth ?? 0) > 0);
    expect(ofBox.hours).toBeCloseTo(wanted.reduce((sum, { hours }) => sum + hours, 0));
  });

  it('is empty until a block is put in: no worth is made up', () => {
    expect(rowOf({ ...box, blocks: [] }, facts)).toMatchObject({ worth: undefined, surplus: null, hours: 0 });
  });
});

describe('a lot nobody has looked at', () => {
  const its = aCase({ block: aBlock({ priceAsked: 4_000 }), settings });
  const book = assess(its, catalogue);
  const unlooked = (known: boolean): Lot => ({
    id: its.block.id,
    job: null,
    blocks: [
      {
        ...its,
        book,
        forecast: known ? forecast({ ...its, origin: 'dampStore', tallies: {}, seed: 3 }, catalogue, book) : undefined,
      },
    ],
    offers: [],
  });

  it('has no worth before what may be hidden is reckoned in', () => {
    const row = rowOf(unlooked(false), facts);
    expect(row).toMatchObject({ looked: 'not', worth: undefined, limit: undefined, surplus: null, look: null });
    expect(choiceLotsOf([row], {}, settings)).toEqual([]);
  });

  it('says which look is worth most, and how much', () => {
    const row = rowOf(unlooked(true), facts);
    const most = Math.max(...(row.lot.blocks[0]?.forecast?.looks ?? []).map(({ worth }) => worth));
    expect(most).toBeGreaterThan(0);
    expect(row.look?.worth).toBe(most);
    expect(row.worth).toBeLessThanOrEqual(book.worth.walkAway);
  });

  it('counts as partly looked at from the first kind looked for', () => {
    const [first = ''] = book.kinds.map(({ kind }) => kind);
    const survey = aSurvey({ noneSeen: { [first]: true } });
    expect(lookedAt(assess({ ...its, survey }, catalogue).kinds)).toBe('partly');
    expect(lookedAt(assess({ ...its, survey: everythingLookedAt(its.block, []) }, catalogue).kinds)).toBe('all');
  });
});

describe('the price to reckon with', () => {
  const steps = [
    { from: 0, step: 500 },
    { from: 5_000, step: 1_000 },
  ];
  const lot = (
    fields: Partial<Fields<'block'>>,
    offers: readonly Pick<Offer, 'what' | 'amount'>[] = [],
    job: JobLot | null = null,
  ) => ({ job, blocks: [{ block: aBlock(fields) }], offers });

  it('is what was paid, else agreed, else asked', () => {
    const said = [anOffer({ what: 'agreed', amount: 40 }), anOffer({ what: 'paid', amount: 38 })];
    expect(priceOf(lot({ priceAsked: 50 }, said), { bidSteps: [] })).toEqual({ amount: 38, from: 'paid' });
    expect(priceOf(lot({ priceAsked: 50 }, said.slice(0, 1)), { bidSteps: [] })).toEqual({
      amount: 40,
      from: 'agreed',
    });
    expect(priceOf(lot({ priceAsked: 50 }), { bidSteps: [] })).toEqual({ amount: 50, from: 'asked' });
    expect(priceOf(lot({}), { bidSteps: [] })).toBeNull();
  });

  it('is the next bid at an auction, or the middle of the estimate while that is more', () => {
    const estimate = { estimateLow: 6_000, estimateHigh: 8_000 };
    expect(priceOf(lot(estimate), { bidSteps: steps })).toEqual({ amount: 7_000, from: 'estimate' });
    expect(priceOf(lot({ ...estimate, bidNow: 2_000 }), { bidSteps: steps })).toEqual({
      amount: 7_000,
      from: 'estimate',
    });
    expect(priceOf(lot({ ...estimate, bidNow: 7_000 }), { bidSteps: steps })).toEqual({ amount: 8_000, from: 'bid' });
    expect(priceOf(lot({ estimateHigh: 8_000 }), { bidSteps: steps })).toEqual({ amount: 8_000, from: 'estimate' });
  });

  it('goes up the saleroom’s ladder, also where the step changes', () => {
    expect([0, 4_400, 4_500, 5_000, 5_400].map((bid) => nextBid(bid, steps))).toEqual([
      500, 4_500, 5_000, 6_000, 6_000,
    ]);
    // Without steps any amount is a bid: a whole unit more.
    expect(nextBid(1_250, [])).toBe(1_350);
  });

  it('of a job lot is the lot’s own', () => {
    expect(priceOf(lot({ priceAsked: 10 }, [], aJobLot({ priceAsked: 60 })), { bidSteps: [] })?.amount).toBe(60);
  });

  it('and the lot is bought once agreed, whatever was said before', () => {
    expect(standingOf(lot({ notBought: 'tooDear' }))).toBe('notBought');
    expect(standingOf(lot({ notBought: 'tooDear' }, [anOffer({ what: 'agreed', amount: 1 })]))).toBe('agreed');
    expect(standingOf(lot({}, [anOffer({ what: 'refused', amount: 1 })]))).toBe('open');
  });
});

describe('copies of one shape and size', () => {
  it('are one type at one head size in whole centimetres, from tape, opening or oval', () => {
    expect(headCm({ circRopeMm: 571 })).toBe(57);
    expect(headCm({ openingCircMm: 578 })).toBe(58);
    // Ramanujan's perimeter of 198.5 × 164.5 mm is 571 mm: the tape of the example's L01.
    expect(headCm({ lengthMm: 198.5, widthMm: 164.5 })).toBe(57);
    expect(headCm({ weightG: 900 })).toBeNull();
    expect(shapeOf({ blockType: 'domeCrown' }, { circRopeMm: 571 })).toBe('domeCrown 57');
    expect(shapeOf({ blockType: null }, { circRopeMm: 571 })).toBeNull();
  });

  it('divide the hats between them: two domes are worth little more than one', () => {
    const its = caseOfLot('L01');
    const book = assess(its, catalogue);
    const { gain } = settings;
    const worth = worthByCopies(book.worth.walkAway, book, gain, 4);
    expect(worth[0]).toBe(book.worth.walkAway);
    for (const [n, value] of worth.entries()) expect(value).toBeLessThanOrEqual(worth[n - 1] ?? value);
    // Value in use 374.45 shared by four is 93.61 each, under the 150 × 0.986 it would fetch restored (reference model).
    const shared = 9_361;
    expect(worth[3]).toBeCloseTo((1 - gain) * (book.odds * shared + (1 - book.odds) * 5_000) - book.worth.cost, -2);
  });

  it('count those on the own shelf as well', () => {
    const rows = [single('L01', 10), single('L01', 11)].map((lot) => rowOf(lot, facts));
    const purse = { money: null, minutes: null, held: {} };
    const lots = choiceLotsOf(rows, {}, settings);
    expect(lots[0]?.blocks[0]).toMatchObject({ shape: 'domeCrown 57' });
    const alone = choose(lots, purse).sets[0]?.surplus ?? 0;
    const held = { 'domeCrown 57': 3 };
    const beside = choose(choiceLotsOf(rows, held, settings), { ...purse, held }).sets[0]?.surplus ?? 0;
    expect(beside).toBeLessThan(alone);
  });
});

describe('the purse', () => {
  it('is lighter by what was bought already, all in, and the bench by its hours', () => {
    const rows = table.map((row) => (numberOf(row.id) === 'L05' ? { ...row, standing: 'agreed' as const } : row));
    const bought = rows.find(({ standing }) => standing === 'agreed');
    const sale = { budget: 35_000, hoursToSpare: 20, neededBy: null };
    const purse = purseOf(sale, rows, {}, settings, '2026-10-17');
    expect(purse.money).toBe(35_000 - 2_800);
    expect(purse.minutes).toBe(Math.round((20 - (bought?.hours ?? 0)) * 60));
    expect(choiceLotsOf(rows, {}, settings).some(({ id: lotId }) => lotId === bought?.id)).toBe(false);
  });

  it('has the evenings until the day it must be ready, where that is less', () => {
    // 2026-10-17 is a Saturday: Saturday to Monday, weekends off, leaves one evening of 2.5 h.
    const weekdays = { eveningHours: 2.5, evenings: [true, true, true, true, true, false, false] };
    expect(hoursUntil('2026-10-17', '2026-10-19', weekdays)).toBe(2.5);
    expect(hoursUntil('2026-10-17', '2026-10-16', weekdays)).toBe(0);
    expect(hoursUntil('2026-10-17', 'soon', weekdays)).toBe(0);
    const sale = { budget: null, hoursToSpare: 30, neededBy: '2026-10-19' };
    expect(purseOf(sale, [], {}, { ...settings, ...weekdays }, '2026-10-17')).toMatchObject({
      money: null,
      minutes: 150,
    });
  });
});

describe('a lot in another currency', () => {
  it('is shown and not reckoned with: nothing is converted', () => {
    const row = rowOf(single('L01', 10), { ...facts, currency: 'EUR' });
    expect(row).toMatchObject({ otherCurrency: 'GBP', price: null, worth: undefined, surplus: null });
    expect(choiceLotsOf([row], {}, settings)).toEqual([]);
  });
});

describe('a lot that needs so many days', () => {
  it('is late when its waits run past the day it must be ready, both days counted', () => {
    expect(isLate({ days: 5 }, '2026-10-17', '2026-10-21')).toBe(false);
    expect(isLate({ days: 6 }, '2026-10-17', '2026-10-21')).toBe(true);
    expect(isLate({ days: 60 }, '2026-10-17', 'soon')).toBe(false);
  });
});

describe('the order of the table', () => {
  it('has the most surplus first and what has none known last', () => {
    const unknown = rowOf({ ...box, id: id(200), blocks: [] }, facts);
    const order = orderedRows([unknown, ...table], 'surplus', 'all');
    const known = order.flatMap(({ surplus }) => (surplus === null ? [] : [surplus]));
    expect(known).toEqual([...known].sort((a, b) => b - a));
    expect(order.at(-1)?.id).toBe(unknown.id);
  });

  it('sorts lot numbers as numbers', () => {
    const order = orderedRows(table, 'number', 'all').map(({ id: rowId }) => numberOf(rowId));
    expect(order).toEqual(['L01', 'L02', 'L03', 'L04', 'L05', 'L06', 'L07', 'L08', 'L09', 'L10']);
  });

  it('shows what is within its limit, and only while it is open', () => {
    const within = orderedRows(table, 'number', 'within').map(({ id: rowId }) => numberOf(rowId));
    expect(within).toEqual(['L01', 'L02', 'L05', 'L09', 'L10']);
  });
});
