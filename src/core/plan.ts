import type { Amount, Catalogue, DamageKind, Grade, ThreePoint, Treatment, ZoneClass } from './catalogue.ts';
import { entry } from './catalogue.ts';
import { type Circumstances, holds } from './condition.ts';
import { pertMean, pertSd } from './estimate.ts';

/**
 * How the owner's hours compare with the estimates, by kind of work: the median multiplier, and how the log of it
 * spreads (normal before there is a log of one's own, Student t after). An absent kind of work counts as 1.
 */
export type PaceBook = {
  readonly [Reference in Treatment['reference']]?: {
    readonly median: number;
    readonly spread:
      | { readonly kind: 'logNormal'; readonly sigma: number }
      | { readonly kind: 'logStudent'; readonly scale: number; readonly freedom: number };
  };
};

/** A finding as the plan sees it. */
export interface Cause {
  readonly id: string;
  readonly kind: Pick<DamageKind, 'treatments'>;
  readonly answers: Readonly<Record<string, number | boolean | string>>;
  readonly grade: Grade;
  readonly zoneClass: ZoneClass;
}

export interface PlanStep {
  readonly treatment: string;
  /** The findings it serves and why; a step without findings is part of every plan or comes with another step. */
  readonly because: readonly { readonly findingId: string | null; readonly why: string }[];
  /** In the treatment's own unit; null where the time does not depend on an amount. */
  readonly amount: number | null;
  /** Hands-on hours. */
  readonly hours: ThreePoint;
  readonly waitHours: ThreePoint;
  /** Whole pence of the catalogue's currency. */
  readonly consumables: number;
  /** Steps of this plan that must be done first. */
  readonly after: readonly string[];
  readonly essential: boolean;
}

export interface Plan {
  readonly steps: readonly PlanStep[];
  readonly hours: ThreePoint;
  /** Mean of the beta-PERT, Σ(o + 4m + p)/6. */
  readonly meanHours: number;
  /** Standard deviation if steps were independent, √Σ((p − o)/6)². */
  readonly sdHours: number;
  readonly consumables: number;
}

/** Hands-on hours of a treatment for an amount of work in its unit. */
export function hoursFor(treatment: Pick<Treatment, 'setUpHours' | 'per'>, amount: number | null): ThreePoint {
  const { setUpHours, per } = treatment;
  const units = per ? (amount ?? 0) / per.size : 0;
  const rate = per?.hours ?? { o: 0, m: 0, p: 0 };
  return {
    o: setUpHours.o + units * rate.o,
    m: setUpHours.m + units * rate.m,
    p: setUpHours.p + units * rate.p,
  };
}

const scaled = ({ o, m, p }: ThreePoint, by: number): ThreePoint => ({ o: o * by, m: m * by, p: p * by });

export const amountOf = (amount: Amount | undefined, answers: Cause['answers']): number => {
  if (!amount) return 0;
  if ('fixed' in amount) return amount.fixed;
  const answer = Object.hasOwn(answers, amount.from) ? answers[amount.from] : undefined;
  // A measure of 0 was taken: it is nothing, not the usual amount, or the next step up would shorten the work.
  return typeof answer === 'number' ? Math.max(0, answer) * (amount.times ?? 1) : amount.else;
};

/** More of one treatment than any hat block has room for: beyond it a figure is damaged, not large. Trade estimate. */
const MOST = { areaPct: 100, lengthMm: 20_000, areaCm2: 20_000, count: 5_000, coats: 20 } as const;

/** How amounts of one treatment join: coats are put on once, the rest adds up, and nothing exceeds what a block can have. */
export const joined = (unit: NonNullable<Treatment['per']>['unit'], a: number, b: number): number =>
  Math.min(MOST[unit], unit === 'coats' ? Math.max(a, b) : a + b);

interface Wanted {
  because: { findingId: string | null; why: string }[];
  amount: number;
  essential: boolean;
}

/** Collects what is wanted: the steps of every plan, what each finding calls for, and what those bring with them. */
function wantedSteps(causes: readonly Cause[], block: Circumstances, catalogue: Catalogue): Map<string, Wanted> {
  const wanted = new Map<string, Wanted>();
  const want = (id: string, findingId: string | null, why: string, amount: number, essential: boolean): void => {
    const treatment = entry(catalogue.treatments, id);
    if (!treatment) return;
    const before = wanted.get(id);
    if (!before) {
      wanted.set(id, {
        because: [{ findingId, why }],
        amount: treatment.per ? joined(treatment.per.unit, 0, amount) : 0,
        essential,
      });
      return;
    }
    before.because.push({ findingId, why });
    before.amount = treatment.per ? joined(treatment.per.unit, before.amount, amount) : 0;
    before.essential ||= essential;
  };
  for (const [id, treatment] of Object.entries(catalogue.treatments)) {
    if (treatment.always) want(id, null, treatment.why, 0, false);
  }
  for (const cause of causes) {
    const { answers, grade, zoneClass } = cause;
    const here: Circumstances = { ...block, finding: { answers, grade, zoneClass } };
    for (const use of cause.kind.treatments) {
      if (grade < use.fromGrade || (use.when && !holds(use.when, here))) continue;
      want(use.treatment, cause.id, use.why, amountOf(use.amount, answers), use.essential);
    }
  }
  // A map grows while it is walked, so what is brought may bring more.
  for (const id of wanted.keys()) {
    for (const { treatment, when, amount, why } of entry(catalogue.treatments, id)?.brings ?? []) {
      if (wanted.has(treatment) && !amount) continue;
      if (when && !holds(when, block)) continue;
      want(treatment, null, why, amountOf(amount, {}), false);
    }
  }
  return wanted;
}

/** Steps of the plan a treatment must follow, seen through treatments that are not in it. */
function predecessors(id: string, inPlan: ReadonlyMap<string, unknown>, catalogue: Catalogue): readonly string[] {
  const found = new Set<string>();
  const seen = new Set<string>();
  const walk = (current: string): void => {
    for (const before of entry(catalogue.treatments, current)?.after ?? []) {
      if (seen.has(before)) continue;
      seen.add(before);
      if (inPlan.has(before)) found.add(before);
      else walk(before);
    }
  };
  walk(id);
  return [...found];
}

const orders = new WeakMap<object, ReadonlyMap<string, number>>();

/**
 * Rank of every treatment in the one order that serves all plans: by dependency, and among what could be next by the
 * catalogue's order, which is the trade's usual one.
 * @throws Error (ours) when treatments depend on each other in a circle
 */
export function workingOrder(catalogue: Pick<Catalogue, 'treatments'>): ReadonlyMap<string, number> {
  const known = orders.get(catalogue.treatments);
  if (known) return known;
  const waiting = Object.keys(catalogue.treatments);
  const order = new Map<string, number>();
  while (waiting.length > 0) {
    const next = waiting.findIndex((id) => catalogue.treatments[id]?.after.every((before) => order.has(before)));
    if (next < 0) throw new Error(`Treatments depend on each other in a circle: ${waiting.join(', ')}.`);
    for (const id of waiting.splice(next, 1)) order.set(id, order.size);
  }
  orders.set(catalogue.treatments, order);
  return order;
}

/** Sums of a list of steps: three-point hours add up, the spread adds in squares. */
export function planOf(steps: readonly PlanStep[]): Plan {
  const hours = steps.reduce(
    (sum, step) => ({ o: sum.o + step.hours.o, m: sum.m + step.hours.m, p: sum.p + step.hours.p }),
    { o: 0, m: 0, p: 0 },
  );
  return {
    steps,
    hours,
    meanHours: pertMean(hours),
    sdHours: Math.sqrt(steps.reduce((sum, step) => sum + pertSd(step.hours) ** 2, 0)),
    consumables: steps.reduce((sum, step) => sum + step.consumables, 0),
  };
}

/**
 * A plan of given treatments and amounts, in working order: the arithmetic of trade handbook §6.1 (trade estimates), at
 * the owner's pace for each kind of work.
 */
export function planOfTreatments(
  list: ReadonlyMap<string, { because: PlanStep['because']; amount: number; essential: boolean }>,
  catalogue: Catalogue,
  pace: PaceBook = {},
): Plan {
  const order = workingOrder(catalogue);
  const steps = [...list].flatMap(([id, { because, amount, essential }]): PlanStep[] => {
    const treatment = entry(catalogue.treatments, id);
    if (!treatment) return [];
    const quantity = treatment.per ? amount : null;
    return [
      {
        treatment: id,
        because,
        amount: quantity,
        hours: scaled(hoursFor(treatment, quantity), pace[treatment.reference]?.median ?? 1),
        waitHours: treatment.waitHours,
        consumables: treatment.consumables,
        after: predecessors(id, list, catalogue),
        essential,
      },
    ];
  });
  return planOf(steps.sort((a, b) => (order.get(a.treatment) ?? 0) - (order.get(b.treatment) ?? 0)));
}

/**
 * The work a block needs, from its findings: treatments with amounts, hands-on hours (o/m/p), waits, and the order they
 * must be done in. Order of findings does not change the set, the amounts or the order of steps.
 */
export function planFor(
  causes: readonly Cause[],
  block: Omit<Circumstances, 'finding'>,
  catalogue: Catalogue,
  pace: PaceBook = {},
): Plan {
  return planOfTreatments(wantedSteps(causes, block, catalogue), catalogue, pace);
}
