import { type Assessment, assess, type Case } from '../assess.ts';
import type { Catalogue, Origin } from '../catalogue.ts';
import { countDays } from '../days.ts';
import { joined } from '../plan.ts';
import { floorMinor, type MinorUnits } from '../units.ts';
import { highestPriceFor } from '../worth.ts';
import type { Tallies } from './belief.ts';
import { type Look, looksWorth } from './looks.ts';
import { at } from './quantile-table.ts';
import { createDraws } from './random.ts';
import { foundHazards, type Hazard, type Unlooked, unlookedKinds } from './situation.ts';
import { bit, has, hoursAt, workshopFor } from './work.ts';

export const DRAWS = 4096;

/** P10, median and P90 of something over the draws. */
export interface Range {
  readonly p10: number;
  readonly p50: number;
  readonly p90: number;
}

export const STRATEGIES = ['restore', 'copy', 'keep'] as const;
/** Restore it, take a copy of the shape and nothing else, or use it as it is. */
export type Strategy = (typeof STRATEGIES)[number];

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
  const sorted = Float64Array.from(values).sort();
  return { p10: quantileOf(sorted, 0.1), p50: quantileOf(sorted, 0.5), p90: quantileOf(sorted, 0.9) };
};

const meanOf = (values: Float64Array): number => {
  let sum = 0;
  for (const value of values) sum += value;
  return sum / values.length;
};

// Draws are the same for every case of one seed; kept while one walks round a block.
let kept: { readonly seed: number; readonly count: number; readonly draw: ReturnType<typeof createDraws> } | undefined;
function drawsFor(seed: number, count: number): ReturnType<typeof createDraws> {
  if (kept?.seed !== seed || kept.count !== count) kept = { seed, count, draw: createDraws(seed, count) };
  return kept.draw;
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
  const count = facts.count ?? DRAWS;
  const draw = drawsFor(facts.seed, count);
  const { setting, worth } = book;
  const { settings } = facts;
  const workshop = workshopFor(setting, catalogue, facts.pace);
  const { works } = workshop;

  const found = foundHazards(book.graded, setting, workshop, catalogue);
  const failing = new Set(facts.failing ?? []);
  const unlooked = unlookedKinds(
    book.kinds.filter(({ state }) => state === 'notLooked').map(({ kind }) => kind),
    setting,
    facts.origin,
    facts.tallies,
    workshop,
    catalogue,
  );

  // Grade of every unlooked kind in every draw: 0 absent.
  const grades = unlooked.map(({ kind, belief }) => {
    const there = draw(`${kind} there`);
    const bad = draw(`${kind} grade`);
    const drawn = new Uint8Array(count);
    const to1 = belief.grades[0];
    const to2 = to1 + belief.grades[1];
    const to3 = to2 + belief.grades[2];
    for (let i = 0; i < count; i += 1) {
      if ((there[i] as number) >= belief.present) continue;
      const u = bad[i] as number;
      drawn[i] = u < to1 ? 1 : u < to2 ? 2 : u < to3 ? 3 : 4;
    }
    return drawn;
  });
  // Luck of repairs: by kind and the how-manieth of its kind, so that findings keep theirs when another kind is added.
  const seen = new Map<string, number>();
  const luckOfFound = book.graded.map(({ finding }) => {
    const nth = seen.get(finding.kind) ?? 0;
    seen.set(finding.kind, nth + 1);
    return draw(`${finding.kind} holds ${nth}`);
  });
  const luckOfUnlooked = unlooked.map(({ kind }) => draw(`${kind} holds 0`));
  const paceLuck = draw('pace');
  const timeLuck = works.map(({ id }) => draw(`${id} time`));
  const waitLuck = works.map(({ id }) => draw(`${id} wait`));
  const paceTables = works.map(({ reference }) => workshop.paceTable(reference));

  const baseAmounts = new Float64Array(works.length);
  let baseSet = 0;
  const join = (amounts: Float64Array, rank: number, amount: number): void => {
    const unit = works[rank]?.unit;
    if (unit) amounts[rank] = joined(unit, amounts[rank] ?? 0, amount);
  };
  for (const rank of workshop.always) baseSet += bit(rank);
  for (const { demand } of found) {
    for (const { rank, amount } of demand.uses) {
      if (!has(baseSet, rank)) baseSet += bit(rank);
      join(baseAmounts, rank, amount);
    }
  }

  const foundScore = new Float64Array(count);
  const score = new Float64Array(count);
  const hours = new Float64Array(count);
  const days = new Float64Array(count);
  const gross = { restore: new Float64Array(count), copy: new Float64Array(count), keep: new Float64Array(count) };
  const restoreCost = new Float64Array(count);
  const outcomes = { works: 0, copies: 0, lost: 0 };
  const stepHours = new Float64Array(works.length);
  const stepWaits = new Float64Array(works.length);
  const amounts = new Float64Array(works.length);
  const here: Hazard[] = [];
  const lucks: number[] = [];

  const inUse = worth.valueInUse ?? Number.POSITIVE_INFINITY;
  const value = (points: number): number => Math.min((worth.newPrice.amount * points) / 100, inUse);
  const spare = worth.fallback.amount;
  const ofShape = catalogue.model.copyShare[setting.shapeValue] * worth.newPrice.amount;
  const { riskyBelowScore, copyBelowScore } = catalogue.model.verdict;
  const evenings = { hours: settings.eveningHours, weekdays: settings.evenings };

  let lastSet = baseSet;
  let lastComplete = workshop.complete(baseSet);

  for (let i = 0; i < count; i += 1) {
    here.length = 0;
    lucks.length = 0;
    let set = baseSet;
    amounts.set(baseAmounts);
    for (let f = 0; f < found.length; f += 1) {
      here.push(found[f] as Hazard);
      lucks.push(failing.has(book.graded[f]?.finding.id ?? '') ? 2 : (luckOfFound[f]?.[i] as number));
    }
    for (let k = 0; k < unlooked.length; k += 1) {
      const grade = (grades[k] as Uint8Array)[i] as number;
      if (grade === 0) continue;
      const hazard = (unlooked[k] as Unlooked).atGrade[grade - 1] as Hazard;
      here.push(hazard);
      lucks.push((luckOfUnlooked[k] as Float64Array)[i] as number);
      for (const { rank, amount } of hazard.demand.uses) {
        if (!has(set, rank)) set += bit(rank);
        join(amounts, rank, amount);
      }
    }
    const complete = set === lastSet ? lastComplete : workshop.complete(set);
    lastSet = set;
    lastComplete = complete;
    for (const [rank, amount] of complete.amounts) join(amounts, rank, amount);

    // Restoring stops at the first essential repair that fails; what would come after it is neither done nor paid.
    let stop = works.length;
    let asFound = 100;
    let holdsTogether = 1;
    let refused = false;
    let criticalNow = false;
    let copyable = facts.block.copyable;
    for (let h = 0; h < here.length; h += 1) {
      const hazard = here[h] as Hazard;
      asFound *= 1 - hazard.loss;
      if (hazard.structural) holdsTogether *= 1 - hazard.loss;
      refused ||= hazard.refused;
      criticalNow ||= hazard.critical;
      copyable &&= !hazard.blocksCopying;
      if ((lucks[h] as number) >= hazard.chance && hazard.demand.essential >= 0)
        stop = Math.min(stop, hazard.demand.essential);
    }
    let reached = 100;
    let structure = 100;
    let critical = false;
    for (let h = 0; h < here.length; h += 1) {
      const hazard = here[h] as Hazard;
      const held = (lucks[h] as number) < hazard.chance && hazard.demand.last <= stop;
      const left = 1 - (held ? hazard.repaired : hazard.loss);
      reached *= left;
      if (hazard.structural) structure *= left;
      if (!held && hazard.critical) critical = true;
    }
    foundScore[i] = asFound;
    score[i] = reached;

    let steps = 0;
    let hands = 0;
    let spent = 0;
    for (const rank of complete.ranks) {
      const work = works[rank] as (typeof works)[number];
      const time =
        hoursAt(work, amounts[rank] as number, (timeLuck[rank] as Float64Array)[i] as number) *
        at(paceTables[rank] as Float64Array, paceLuck[i] as number);
      stepHours[steps] = time;
      stepWaits[steps] = at(work.wait, (waitLuck[rank] as Float64Array)[i] as number);
      steps += 1;
      hands += time;
      if (rank <= stop) spent += time * settings.hourlyRate + work.consumables;
    }
    hours[i] = hands;
    days[i] = countDays(stepHours, stepWaits, steps, evenings);
    restoreCost[i] = spent;

    const isWorking = stop === works.length && reached >= riskyBelowScore && !critical;
    const canCopy = copyable && structure >= copyBelowScore;
    const shape = canCopy ? Math.max(spare, ofShape) : spare;
    if (isWorking) outcomes.works += 1;
    else if (canCopy) outcomes.copies += 1;
    else outcomes.lost += 1;
    // One that works has its shape as well: it is worth no less than one that failed.
    gross.restore[i] = refused ? 0 : isWorking ? Math.max(shape, value(reached)) : shape;
    gross.copy[i] = refused || !copyable ? 0 : ofShape;
    // Not usable as it stands, it fetches what a failed one does, less what it has lost of its structure: a riddled
    // carcass little, a puzzle one piece short most of it.
    const usable = asFound >= riskyBelowScore && !criticalNow;
    gross.keep[i] = refused ? 0 : usable ? Math.max(spare, value(asFound)) : spare * holdsTogether;
  }

  const nets = {
    restore: gross.restore.map((amount, i) => amount - (restoreCost[i] as number)),
    copy: gross.copy.map((amount) => amount - worth.copyCost),
    keep: gross.keep,
  };
  const costs = { restore: meanOf(restoreCost), copy: worth.copyCost, keep: 0 };
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
  const paid = book.decision.say === 'noPrice' ? null : book.decision.allIn;
  const losing = paid === null ? null : nets[best].filter((net) => net < paid).length / count;
  return {
    draws: count,
    best,
    strategies,
    found: rangeOf(foundScore),
    score: rangeOf(score),
    hours: rangeOf(hours),
    days: rangeOf(days),
    net: strategies[best].net,
    works: outcomes.works / count,
    copies: outcomes.copies / count,
    lost: outcomes.lost / count,
    ceiling,
    highestPrice: highestPriceFor(ceiling, facts.terms),
    lossChance: losing,
    looks: looksWorth({ nets, price: paid ?? ceiling, unlooked, grades, survey: facts.survey, catalogue }),
  };
}
