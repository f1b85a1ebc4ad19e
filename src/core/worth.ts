import type { Setting } from './block.ts';
import type { Catalogue } from './catalogue.ts';
import { allIn, floorToBid, highestHammer } from './fees.ts';
import { type PaceBook, type Plan, planOfTreatments } from './plan.ts';
import type { HatBlock, SaleTerms, Settings } from './records.ts';
import { floorMinor, type MinorUnits, minor, roundMinor } from './units.ts';
import { ceiling, copyCeiling, valueIfSaved, valueInUse } from './value.ts';

/** A price and whose it is: the owner's own figure, or the catalogue's (a trade estimate, in its currency). */
export interface Price {
  readonly amount: MinorUnits;
  readonly from: 'owner' | 'estimate';
}

/** What a block is worth by the book, each step of the sum kept for the working. Whole minor units unless said. */
export interface Worth {
  readonly newPrice: Price;
  readonly equalUsed: Price;
  readonly fallback: Price;
  /** Null when the owner gave no hats a year, margin and share: then replacement alone bounds the value. */
  readonly valueInUse: MinorUnits | null;
  readonly valueOk: MinorUnits;
  /** Both outcomes weighed by the odds, less the required gain; less labour and consumables it gives the ceiling exactly. */
  readonly weighed: MinorUnits;
  readonly labour: MinorUnits;
  readonly consumables: MinorUnits;
  readonly cost: MinorUnits;
  /** The most that leaves the required gain when restoring; may be below 0. */
  readonly ceiling: MinorUnits;
  readonly copyCost: MinorUnits;
  readonly copyCeiling: MinorUnits;
  /** The better of restoring and copying, capped by an equal used block, never below 0: the most to pay in all. */
  readonly walkAway: MinorUnits;
  /** What set the walk-away price. */
  readonly setBy: 'restoring' | 'copying' | 'equalUsed' | 'nothing' | 'refused';
  /** The same as a hammer or ticket price at the sale's terms; null when even 0 costs more than it is worth. */
  readonly highestPrice: MinorUnits | null;
}

interface Facts {
  readonly block: HatBlock;
  readonly setting: Setting;
  readonly settings: Settings;
  readonly terms: SaleTerms;
  readonly found: number;
  readonly after: number;
  readonly odds: number;
  readonly plan: Plan;
  readonly refused: boolean;
  readonly pace: PaceBook;
}

const price = (own: number | null, estimate: number): Price =>
  own === null
    ? { amount: roundMinor(Math.max(0, estimate)), from: 'estimate' }
    : { amount: minor(own), from: 'owner' };

/** Everything a price costs in the end, at these terms. */
export const allInAt = (amount: number, terms: SaleTerms): MinorUnits => allIn(minor(amount), terms).total;

/** The highest hammer or ticket price for an all-in limit, down to a bid the sale takes; null when none fits. */
export function highestPriceFor(limit: MinorUnits, terms: SaleTerms): MinorUnits | null {
  const hammer = highestHammer(limit, terms);
  if (hammer === null || terms.bidSteps.length === 0) return hammer;
  return floorToBid(hammer, terms.bidSteps);
}

/** The work of taking a copy of the shape and nothing else. */
export const copyPlan = (catalogue: Catalogue, pace: PaceBook): Plan =>
  planOfTreatments(
    new Map(catalogue.model.copyPlan.map((id) => [id, { because: [], amount: 0, essential: false }])),
    catalogue,
    pace,
  );

/** Catalogue prices for a block of a type it does not know: the mean over all types. */
const meanOf = (values: readonly number[]): number =>
  values.length === 0 ? 0 : values.reduce((sum, value) => sum + value, 0) / values.length;

function estimatedPrices({ setting, found }: Facts, catalogue: Catalogue) {
  const types = setting.type ? [setting.type] : Object.values(catalogue.types);
  const middle = meanOf(types.map(({ newPrice }) => (newPrice.low + newPrice.high) / 2));
  const usedShare = meanOf(types.map(({ usedShare: { low, high } }) => low + ((high - low) * found) / 100));
  return { middle, usedShare };
}

/** What the block earns in use, unrounded; endless when the owner has not said, so that replacement alone bounds it. */
export function valueInUseOf(
  { hatsPerYear, marginPerHat, blockShare }: Pick<HatBlock, 'hatsPerYear' | 'marginPerHat' | 'blockShare'>,
  { horizonYears, discountRate }: Pick<Settings, 'horizonYears' | 'discountRate'>,
): number {
  if (hatsPerYear === null || marginPerHat === null || blockShare === null) return Number.POSITIVE_INFINITY;
  return valueInUse({
    hatsPerYear,
    marginPerHat,
    shareDueToBlock: blockShare,
    years: horizonYears,
    rate: discountRate,
  });
}

/**
 * Worth by the book: V_ok, V_fail, ceiling, walk-away and the highest price at the sale's terms.
 * Prices the owner has not given come from the catalogue and say so; an equal used block then lies within the type's
 * usual used share, the higher the better its state. Source: trade handbook §3.1 (own model, trade estimates).
 */
export function worthOf(facts: Facts, catalogue: Catalogue): Worth {
  const { block, settings, setting, after, odds, plan, pace, refused } = facts;
  const { middle, usedShare } = estimatedPrices(facts, catalogue);
  const newPrice = price(block.newPrice, middle);
  const equalUsed = price(block.equalUsedPrice, newPrice.amount * usedShare);
  const fallback = price(block.fallbackPrice, newPrice.amount * catalogue.model.fallbackShare[setting.shapeValue]);
  const inUse = valueInUseOf(block, settings);
  // A block whose work held is worth at least what one whose work failed still fetches.
  const valueOk = Math.max(fallback.amount, valueIfSaved(newPrice.amount, after, inUse));
  const labour = plan.meanHours * settings.hourlyRate;
  const cost = labour + plan.consumables;
  const restoring = ceiling({ odds, valueOk, valueFail: fallback.amount, cost, gain: settings.gain });
  const copying = copyPlan(catalogue, pace);
  const copyCost = copying.meanHours * settings.hourlyRate + copying.consumables;
  const forCopy =
    block.copyable && !refused
      ? copyCeiling(newPrice.amount, catalogue.model.copyShare[setting.shapeValue], copyCost, settings.gain)
      : -copyCost;
  const best = Math.max(restoring, forCopy);
  const walkAway = refused ? minor(0) : floorMinor(Math.max(0, Math.min(best, equalUsed.amount)));
  const setBy = refused
    ? 'refused'
    : walkAway === 0
      ? 'nothing'
      : best > equalUsed.amount
        ? 'equalUsed'
        : restoring >= forCopy
          ? 'restoring'
          : 'copying';
  return {
    newPrice,
    equalUsed,
    fallback,
    valueInUse: Number.isFinite(inUse) ? roundMinor(inUse) : null,
    valueOk: roundMinor(valueOk),
    weighed: minor(floorMinor(restoring) + roundMinor(labour) + plan.consumables),
    labour: roundMinor(labour),
    consumables: minor(plan.consumables),
    cost: roundMinor(cost),
    ceiling: floorMinor(restoring),
    copyCost: roundMinor(copyCost),
    copyCeiling: floorMinor(forCopy),
    walkAway,
    setBy,
    highestPrice: highestPriceFor(walkAway, facts.terms),
  };
}
