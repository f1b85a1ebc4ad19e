import { apportion } from './apportion.ts';
import { type MinorUnits, minor } from './units.ts';

/*
 * Worth, ceilings and offers. Amounts go in and come out in one money unit of one currency (the app uses minor
 * units) and stay unrounded, so that a chain of them does not drift; round once, at the end: `floorMinor` for a limit,
 * `roundMinor` for a figure shown. Shares and odds run from 0 to 1. Formulas: own model of the trade unless said.
 */

/** Present worth of 1 a year for `years` years at `rate` a year, paid at year's end: (1 − (1 + r)^−N)/r. Textbook. */
export function annuityFactor(years: number, rate: number): number {
  if (!(years >= 0 && rate > -1))
    throw new Error(`Years came as ${years}, rate as ${rate}, expected 0 or more and over −1.`);
  // expm1 and log1p keep the digits when the rate is tiny; at 0 the factor is simply the years.
  return rate === 0 ? years : -Math.expm1(-years * Math.log1p(rate)) / rate;
}

/** What a block earns in use: hats a year · margin a hat · share of it due to the block · annuity. */
export const valueInUse = (use: {
  readonly hatsPerYear: number;
  readonly marginPerHat: number;
  readonly shareDueToBlock: number;
  readonly years: number;
  readonly rate: number;
}): number => use.hatsPerYear * use.marginPerHat * use.shareDueToBlock * annuityFactor(use.years, use.rate);

/** Worth of the block if the work succeeds: the lower of new price · attainable score and value in use. */
export const valueIfSaved = (replacement: number, attainableScore: number, inUse: number): number =>
  Math.min((replacement * attainableScore) / 100, inUse);

/** A gamble on one block. */
export interface Venture {
  /** Chance that the work holds. */
  readonly odds: number;
  readonly valueOk: number;
  readonly valueFail: number;
  /** Hours · rate · pace multiplier + consumables; travel belongs to the sale's fixed costs. */
  readonly cost: number;
  /** Share that must be left over as gain. */
  readonly gain: number;
}

/** The most that leaves the required gain: (1 − g)(q·V_ok + (1 − q)·V_fail) − C. May be below 0: not worth having free. */
export const ceiling = ({ odds, valueOk, valueFail, cost, gain }: Venture): number =>
  (1 - gain) * (odds * valueOk + (1 - odds) * valueFail) - cost;

/** Where to walk away: the ceiling, but never above the price of an equal used block in the same state, nor below 0. */
export const walkAway = (ceilingAmount: number, equalUsedPrice: number): number =>
  Math.max(0, Math.min(ceilingAmount, equalUsedPrice));

/**
 * Ceiling for buying a shape to copy: (1 − g)·c·R − copying cost.
 * @param rarityShare c: 0.35 unique or rare, 0.20 uncommon, 0.05 common (own assumption)
 */
export const copyCeiling = (replacement: number, rarityShare: number, copyCost: number, gain: number): number =>
  (1 - gain) * rarityShare * replacement - copyCost;

/** Work in two stages, the first showing whether the second is worth starting. */
export interface TwoStage {
  readonly odds: number;
  readonly valueOk: number;
  readonly valueFail: number;
  readonly firstCost: number;
  readonly secondCost: number;
}

/** Worth when one stops after a failed first stage: q(V_ok − c2) + (1 − q)·V_fail − c1. */
export const twoStageValue = ({ odds, valueOk, valueFail, firstCost, secondCost }: TwoStage): number =>
  odds * (valueOk - secondCost) + (1 - odds) * valueFail - firstCost;

/** Worth when both stages are paid whatever the first one shows. */
export const committedValue = ({ odds, valueOk, valueFail, firstCost, secondCost }: TwoStage): number =>
  odds * valueOk + (1 - odds) * valueFail - firstCost - secondCost;

/** Worth of being free to stop: the difference of the two, (1 − q)·c2. */
export const stoppingValue = (stages: TwoStage): number => twoStageValue(stages) - committedValue(stages);

/**
 * Lowest odds at which a price is fair: (price + C − (1 − g)V_fail)/((1 − g)(V_ok − V_fail)).
 * @returns 0 or less: fair even if it fails; above 1: never fair. Where success adds nothing, −Infinity or Infinity
 */
export function breakEvenOdds(price: number, { valueOk, valueFail, cost, gain }: Omit<Venture, 'odds'>): number {
  const short = price + cost - (1 - gain) * valueFail;
  if (valueOk <= valueFail || gain >= 1) return short <= 0 ? -Infinity : Infinity;
  return short / ((1 - gain) * (valueOk - valueFail));
}

/**
 * Least surplus worth stopping the search for, when offers' surplus is uniform from 0 to `highestSurplus` and each
 * further search costs `searchCost`: U − √(2Us). 0 when looking on costs more than it can bring. Optimal-stopping textbook.
 */
export const searchReserve = (highestSurplus: number, searchCost: number): number =>
  Math.max(0, highestSurplus - Math.sqrt(2 * highestSurplus * searchCost));

/**
 * Opening offer whose mid-point with the ask is the target: 2T − A. Common practice, no source.
 * Never below 0, and never above the ask: under the target one simply pays.
 */
export const openingOffer = (target: number, ask: number): number => Math.min(ask, Math.max(0, 2 * target - ask));

/** Most a lot is worth: the items one wants, nothing for the rest, less what disposing of it costs. May be below 0. */
export const lotWorth = (itemWorths: readonly number[], disposal: number): number =>
  itemWorths.reduce((sum, worth) => sum + Math.max(0, worth), 0) - disposal;

/**
 * Shares a lot's price among its items by worth, not by count, in whole minor units that add up exactly.
 * An unwanted item (worth 0 or less) bears nothing; if none is wanted, all bear alike. Common practice.
 */
export const allocateLot = (lotPrice: MinorUnits, itemWorths: readonly number[]): MinorUnits[] =>
  apportion(
    lotPrice,
    itemWorths.map((worth) => Math.max(0, worth)),
  ).map(minor);

/**
 * Hours at which restoring costs as much as buying new: (R·q − price − consumables)/rate. Below 0: new is cheaper already.
 * @param quality how far the restored block comes up to a new one, 0 to 1
 */
export const hoursToBreakEven = (job: {
  readonly replacement: number;
  readonly quality: number;
  readonly price: number;
  readonly consumables: number;
  readonly hourlyRate: number;
}): number => (job.replacement * job.quality - job.price - job.consumables) / job.hourlyRate;

/** New-for-old insurance value: make-to-order price + delivery + marking it again. Common practice. */
export const newForOldValue = (replacement: number, delivery: number, marking: number): number =>
  replacement + delivery + marking;

/** Cash value: new for old less wear. Common practice. */
export const cashValue = (newForOld: number, wearShare: number): number => newForOld * (1 - wearShare);
