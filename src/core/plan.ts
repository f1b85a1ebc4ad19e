import { type Catalogue, entry, type ThreePoint, type Treatment } from './catalogue.ts';
import type { Circumstances } from './condition.ts';
import { pertMean, pertSd } from './estimate.ts';
import { type Cause, wantedSteps } from './wanted.ts';

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

export interface PlanStep {
  readonly treatment: string;
  /** The findings it serves and why; a step without findings is part of every plan or comes with another step. */
  readonly because: readonly { readonly findingId: string | null; readonly why: string }[];
  /** Ids of the findings that want it: those in `because`, and those served by the steps that bring it. Sorted. */
  readonly serves: readonly string[];
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

/** Steps of the plan a treatment must follow, seen through treatments that are not in it. */
export function predecessors(
  id: string,
  inPlan: { has(treatment: string): boolean },
  catalogue: Pick<Catalogue, 'treatments'>,
): readonly string[] {
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
  list: ReadonlyMap<string, Pick<PlanStep, 'because' | 'essential'> & { amount: number; serves?: Iterable<string> }>,
  catalogue: Catalogue,
  pace: PaceBook = {},
): Plan {
  const order = workingOrder(catalogue);
  const steps = [...list].flatMap(([id, { because, amount, essential, serves = [] }]): PlanStep[] => {
    const treatment = entry(catalogue.treatments, id);
    if (!treatment) return [];
    const quantity = treatment.per ? amount : null;
    return [
      {
        treatment: id,
        because,
        serves: [...serves].sort(),
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
