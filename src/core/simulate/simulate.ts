import { type Assessment, assess, type Case, type GradedFinding } from '../assess.ts';
import type { Catalogue, Origin } from '../catalogue.ts';
import { eveningsOf } from '../days.ts';
import { floorMinor, type MinorUnits } from '../units.ts';
import { highestPriceFor, valueInUseOf } from '../worth.ts';
import type { Tallies } from './belief.ts';
import { type Fate, type Found, fatesOf, hide } from './fate.ts';
import { labourOf } from './labour.ts';
import { type Look, looksWorth } from './looks.ts';
import { type Luck, luckOf } from './luck.ts';
import { foundHazards, unlookedKinds } from './situation.ts';
import { STRATEGIES, type Strategy } from './strategies.ts';
import { type Workshop, workshopFor } from './work.ts';

export { STRATEGIES, type Strategy } from './strategies.ts';

export const DRAWS = 4096;

/** P10, median and P90 of something over the draws. */
export interface Range {
  readonly p10: number;
  readonly p50: number;
  readonly p90: number;
}

export interface StrategyForecast {
  /** Value less cost, minor units, before any price paid. */
  readonly net: Range;
  readonly meanNet: number;
  /** (1 − gain)·mean gross − mean cost; may be below 0. */
  readonly ceiling: number;
}

/** The answer under uncertainty. Money in minor units; ranges are P10–P50–P90. */
export interface Forecast {
  readonly draws: number;
  /** The strategy that bears the highest price. */
  readonly best: Strategy;
  readonly strategies: Readonly<Record<Strategy, StrategyForecast>>;
  /** Score of 100 as it stands, hidden damage included. */
  readonly found: Range;
  /** Score of 100 reached when restoring. */
  readonly score: Range;
  /** Hands-on hours and elapsed days of the whole restoration; one that fails on the way costs less, and is paid less. */
  readonly hours: Range;
  readonly days: Range;
  /** Of the best strategy. */
  readonly net: Range;
  /** Chances over the draws when restoring; sum 1. */
  readonly works: number;
  readonly copies: number;
  readonly lost: number;
  /** Ceiling of the best strategy, capped at 0 below and an equal used block above. */
  readonly ceiling: MinorUnits;
  /** As a hammer or ticket price at the sale's terms. */
  readonly highestPrice: MinorUnits | null;
  /** What to go by: the lower of this and the book's. The book overlooks what was not looked at, the draws may hope. */
  readonly limit: MinorUnits | null;
  /** Chance that what it brings is less than it costs at the price asked, all in; null without a price. */
  readonly lossChance: number | null;
  /** What to look at next, the most worth a minute first. */
  readonly looks: readonly Look[];
}

export interface ForecastCase extends Case {
  readonly origin: Origin;
  readonly tallies: Tallies;
  readonly seed: number;
  readonly count?: number;
  /** What-if: repairs of these findings fail. */
  readonly failing?: readonly string[];
}

/** Quantile of sorted values with straight lines between (type 7 of Hyndman and Fan 1996). */
export function quantileOf(sorted: Float64Array, p: number): number {
  const x = (sorted.length - 1) * p;
  const i = Math.floor(x);
  const low = sorted[i] ?? Number.NaN;
  const high = sorted[Math.min(sorted.length - 1, i + 1)] ?? low;
  return low + (x - i) * (high - low);
}

const rangeOf = (values: Float64Array): Range => {
  const sorted = values.slice().sort();
  return { p10: quantileOf(sorted, 0.1), p50: quantileOf(sorted, 0.5), p90: quantileOf(sorted, 0.9) };
};

/** The lower of two limits; null, nothing at all, is the lowest. */
const lowerOf = (a: MinorUnits | null, b: MinorUnits | null): MinorUnits | null =>
  a === null || b === null ? null : a < b ? a : b;

const meanOf = (values: Float64Array): number => {
  let sum = 0;
  for (const value of values) sum += value;
  return sum / values.length;
};

function shareBelow(values: Float64Array, bound: number): number {
  let below = 0;
  for (const value of values) if (value < bound) below += 1;
  return below / values.length;
}

/**
 * The block under uncertainty: what nobody looked at may be there, repairs may fail, hours and waits vary. The same case
 * and seed give the same answer to the bit; a draw belongs to its purpose, so one more finding does not reshuffle the rest.
 * With everything looked at, all repairs certain and the three points equal it is the book's answer for restoring.
 * Source: assessment notes §3 (own model); beta-PERT, log-normal and Student-t from textbooks.
 */
export function forecast(
  facts: ForecastCase,
  catalogue: Catalogue,
  book: Assessment = assess(facts, catalogue),
): Forecast {
  const luck = luckOf(facts.seed, facts.count ?? DRAWS);
  const { count } = luck;
  const { setting, worth } = book;
  const { settings } = facts;
  const workshop = workshopFor(setting, catalogue, facts.pace);
  const found = foundIn(book, facts.failing ?? [], workshop, luck, catalogue);
  const hidden = unlookedKinds(
    book.kinds.filter(({ state }) => state === 'notLooked').map(({ kind }) => kind),
    setting,
    facts.origin,
    facts.tallies,
    workshop,
    catalogue,
  ).map((unlooked) => hide(unlooked, luck));
  const fate = fatesOf(found, hidden, workshop.works.length, facts.block.copyable, count);
  const evenings = eveningsOf(settings);
  const labour = labourOf(found, hidden, fate, workshop, { hourlyRate: settings.hourlyRate, evenings }, luck);
  const { gross, outcomes } = grossOf(
    fate,
    workshop.works.length,
    book,
    valueInUseOf(facts.block, settings),
    catalogue.model,
  );

  const nets = {
    restore: gross.restore.map((amount, i) => amount - (labour.cost[i] as number)),
    copy: gross.copy.map((amount) => amount - worth.copyCost),
    keep: gross.keep,
  };
  const costs = { restore: meanOf(labour.cost), copy: worth.copyCost, keep: 0 };
  const strategies = Object.fromEntries(
    STRATEGIES.map((id): [Strategy, StrategyForecast] => [
      id,
      {
        net: rangeOf(nets[id]),
        meanNet: meanOf(nets[id]),
        ceiling: (1 - settings.gain) * meanOf(gross[id]) - costs[id],
      },
    ]),
  ) as Record<Strategy, StrategyForecast>;
  // By ceiling, not by mean net: with a gain required the two can part, and then more damage could raise the limit.
  const best = STRATEGIES.reduce((a, b) => (strategies[b].ceiling > strategies[a].ceiling ? b : a));
  const ceiling = floorMinor(Math.max(0, Math.min(strategies[best].ceiling, worth.equalUsed.amount)));
  const highestPrice = highestPriceFor(ceiling, facts.terms);
  const paid = book.decision.say === 'noPrice' ? null : book.decision.allIn;
  const losing = paid === null ? null : shareBelow(nets[best], paid);
  return {
    draws: count,
    best,
    strategies,
    found: rangeOf(fate.found),
    score: rangeOf(fate.reached),
    hours: rangeOf(labour.hours),
    days: rangeOf(labour.days),
    net: strategies[best].net,
    works: outcomes.works / count,
    copies: outcomes.copies / count,
    lost: outcomes.lost / count,
    ceiling,
    highestPrice,
    limit: lowerOf(highestPrice, worth.highestPrice),
    lossChance: losing,
    looks: looksWorth({ nets, price: paid ?? ceiling, hidden, survey: facts.survey, catalogue }),
  };
}

/** The findings with the luck of their repairs: by kind and the how-manieth of it, so that another kind shifts none. */
function foundIn(
  { graded, setting }: Assessment,
  failing: readonly string[],
  workshop: Workshop,
  luck: Luck,
  catalogue: Catalogue,
): readonly Found[] {
  const seen = new Map<string, number>();
  return foundHazards(graded, setting, workshop, catalogue).map((hazard, n) => {
    const { id, kind } = (graded[n] as GradedFinding).finding;
    const nth = seen.get(kind) ?? 0;
    seen.set(kind, nth + 1);
    return { hazard, luck: luck.draw(`${kind} holds ${nth}`), fails: failing.includes(id) };
  });
}

/** What each strategy brings in every draw, minor units, and how often restoring ended how. */
function grossOf(fate: Fate, steps: number, { setting, worth }: Assessment, inUse: number, model: Catalogue['model']) {
  const count = fate.reached.length;
  const gross = { restore: new Float64Array(count), copy: new Float64Array(count), keep: new Float64Array(count) };
  const outcomes = { works: 0, copies: 0, lost: 0 };
  const value = (points: number): number => Math.min((worth.newPrice.amount * points) / 100, inUse);
  const spare = worth.fallback.amount;
  const ofShape = model.copyShare[setting.shapeValue] * worth.newPrice.amount;
  const { riskyBelowScore, copyBelowScore } = model.verdict;
  for (let i = 0; i < count; i += 1) {
    const reached = fate.reached[i] as number;
    const asFound = fate.found[i] as number;
    const isWorking = fate.stop[i] === steps && reached >= riskyBelowScore && fate.criticalLeft[i] === 0;
    const canCopy = fate.copyable[i] === 1 && (fate.structure[i] as number) >= copyBelowScore;
    if (isWorking) outcomes.works += 1;
    else if (canCopy) outcomes.copies += 1;
    else outcomes.lost += 1;
    // Not to be taken home at all: nothing brings anything.
    if (fate.refused[i] === 1) continue;
    const shape = canCopy ? Math.max(spare, ofShape) : spare;
    // One that works has its shape as well: it is worth no less than one that failed.
    gross.restore[i] = isWorking ? Math.max(shape, value(reached)) : shape;
    gross.copy[i] = fate.copyable[i] === 1 ? ofShape : 0;
    // Not usable as it stands, it fetches what a failed one does, less what it has lost of its structure: a riddled
    // carcass little, a puzzle one piece short most of it.
    const usable = asFound >= riskyBelowScore && fate.critical[i] === 0;
    gross.keep[i] = usable ? Math.max(spare, value(asFound)) : spare * (fate.holdsTogether[i] as number);
  }
  return { gross, outcomes };
}
