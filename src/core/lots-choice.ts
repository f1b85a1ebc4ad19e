import type { Assessment } from './assess.ts';
import { type Choice, type ChoiceLot, choose, type Purse, type TakenSet } from './choice.ts';
import { eveningsOf } from './days.ts';
import { carrierOf } from './lot-price.ts';
import type { LotRow } from './lots.ts';
import { isWanted } from './lots.ts';
import { dayNumber, isDay } from './physics/civil-date.ts';
import type { Sale, Settings } from './records.ts';

/**
 * Walk-away price by the book when so many copies share what the shape earns. Without figures of use, the shape is taken
 * to earn what one of it is worth restored. Source: trade handbook §3.4 (“divide the hats between them”).
 */
function walkAwayAmong({ worth, odds }: Pick<Assessment, 'worth' | 'odds'>, gain: number, copies: number): number {
  const { valueOk, valueInUse, fallback, equalUsed, ceiling, copyCeiling } = worth;
  const shared = Math.max(fallback.amount, Math.min(valueOk, (valueInUse ?? valueOk) / copies));
  const restoring = ceiling - (1 - gain) * odds * (valueOk - shared);
  return Math.max(0, Math.min(Math.max(restoring, copyCeiling), equalUsed.amount));
}

/**
 * Most a block is worth alone, with one copy more, with two…: what sharing takes off by the book is taken off what it is
 * worth over all that may turn out.
 */
export function worthByCopies(
  worth: number,
  book: Pick<Assessment, 'worth' | 'odds'>,
  gain: number,
  copies: number,
): readonly number[] {
  if (book.worth.setBy === 'refused') return [worth];
  const alone = walkAwayAmong(book, gain, 1);
  return Array.from({ length: Math.max(1, copies) }, (_, more) =>
    Math.max(0, Math.round(worth - (alone - walkAwayAmong(book, gain, more + 1)))),
  );
}

/** Lots that can be reckoned with, as the choice takes them; the others have no price or no worth yet. */
export function choiceLotsOf(
  rows: readonly LotRow[],
  held: Purse['held'],
  { gain }: Pick<Settings, 'gain'>,
): readonly ChoiceLot[] {
  const here = new Map<string, number>();
  for (const { blocks } of rows)
    for (const { shape } of blocks) if (shape !== null) here.set(shape, (here.get(shape) ?? 0) + 1);
  return rows.flatMap((row): ChoiceLot[] => {
    const { lot, blocks, allIn, worth, standing } = row;
    if (standing !== 'open' || allIn === null || worth === undefined) return [];
    const wanted = blocks.filter(isWanted);
    return [
      {
        id: row.id,
        price: allIn,
        minutes: Math.round(row.hours * 60),
        blocks: wanted.flatMap(({ id, shape, worth: alone }) => {
          const book = lot.blocks.find(({ block }) => block.id === id)?.book;
          if (!book || alone === undefined) return [];
          const copies = shape === null ? 1 : (held[shape] ?? 0) + (here.get(shape) ?? 1);
          return [{ shape, worth: worthByCopies(alone, book, gain, copies) }];
        }),
        disposal: lot.job?.disposal ?? 0,
        pinned: carrierOf(lot)?.pinned ?? null,
      },
    ];
  });
}

/** Ten years: a date further off is a slip of the pen, and no limit either. */
const LONGEST_DAYS = 3_653;

/** Bench hours between today and a day, both counted, in the owner's evenings. */
export function hoursUntil(today: string, day: string, settings: Pick<Settings, 'eveningHours' | 'evenings'>): number {
  if (!isDay(today) || !isDay(day)) return 0;
  const { hours, weekdays } = eveningsOf(settings);
  let free = 0;
  const last = Math.min(dayNumber(day), dayNumber(today) + LONGEST_DAYS);
  // 1970-01-01 was a Thursday, the fourth day of a week that begins on Monday.
  for (let n = dayNumber(today); n <= last; n += 1) if (weekdays[(((n + 3) % 7) + 7) % 7]) free += 1;
  return free * hours;
}

/** Whether a lot with its waits, begun today, would be ready too late. A day that is none is no hurry. */
export const isLate = ({ days }: Pick<LotRow, 'days'>, today: string, day: string): boolean =>
  isDay(today) && isDay(day) && days > dayNumber(day) - dayNumber(today) + 1;

/** What there is to spend: the sale's purse and hours, less what was bought there already. */
export function purseOf(
  { budget, hoursToSpare, neededBy }: Pick<Sale, 'budget' | 'hoursToSpare' | 'neededBy'>,
  rows: readonly LotRow[],
  held: Purse['held'],
  settings: Pick<Settings, 'eveningHours' | 'evenings'>,
  today: string,
): Purse {
  const bought = rows.filter(({ standing }) => standing === 'agreed' || standing === 'paid');
  const spent = bought.reduce((sum, { allIn }) => sum + (allIn ?? 0), 0);
  const worked = bought.reduce((sum, { hours }) => sum + hours, 0);
  const untilThen =
    neededBy === null || neededBy === '' ? Number.POSITIVE_INFINITY : hoursUntil(today, neededBy, settings);
  const hours = Math.min(hoursToSpare ?? Number.POSITIVE_INFINITY, untilThen);
  const all: Record<string, number> = { ...held };
  for (const { blocks } of bought)
    for (const { shape } of blocks) if (shape !== null) all[shape] = (all[shape] ?? 0) + 1;
  return {
    money: budget === null ? null : Math.max(0, budget - spent),
    minutes: Number.isFinite(hours) ? Math.max(0, Math.round((hours - worked) * 60)) : null,
    held: all,
  };
}

/** What a little more would buy: how much more surplus, what comes in and what goes out. */
export interface More {
  readonly added: number;
  readonly gain: number;
  readonly comes: readonly string[];
  readonly goes: readonly string[];
}

export interface Advice extends Choice {
  /** Null where that has no limit. */
  readonly moreMoney: More | null;
  readonly moreHours: More | null;
}

/** What one tries: 50 of the currency's units, 5 hours. Minor units and minutes. */
export interface Steps {
  readonly money: number;
  readonly minutes: number;
}

function moreBy(best: TakenSet | undefined, better: TakenSet | undefined, added: number): More | null {
  if (!better) return null;
  const now = best?.ids ?? [];
  return {
    added,
    gain: better.surplus - (best?.surplus ?? 0),
    comes: better.ids.filter((id) => !now.includes(id)),
    goes: now.filter((id) => !better.ids.includes(id)),
  };
}

/** What to take, the runners-up, and what more money or more hours would buy: solved again with each. */
export function adviseOn(lots: readonly ChoiceLot[], purse: Purse, steps: Steps): Advice {
  const choice = choose(lots, purse);
  const [best] = choice.sets;
  const again = (more: Partial<Purse>): TakenSet | undefined =>
    choose(lots, { ...purse, ...more }, { sets: 1 }).sets[0];
  return {
    ...choice,
    moreMoney: purse.money === null ? null : moreBy(best, again({ money: purse.money + steps.money }), steps.money),
    moreHours:
      purse.minutes === null ? null : moreBy(best, again({ minutes: purse.minutes + steps.minutes }), steps.minutes),
  };
}
