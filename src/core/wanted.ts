import {
  type Amount,
  type Catalogue,
  type DamageKind,
  entry,
  type Grade,
  type Treatment,
  type ZoneClass,
} from './catalogue.ts';
import { type Circumstances, holds } from './condition.ts';

/** A finding as the plan sees it. */
export interface Cause {
  readonly id: string;
  readonly kind: Pick<DamageKind, 'treatments'>;
  readonly answers: Readonly<Record<string, number | boolean | string>>;
  readonly grade: Grade;
  readonly zoneClass: ZoneClass;
}

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

/** What is wanted of one treatment, before hours and order. */
export interface Wanted {
  because: { findingId: string | null; why: string }[];
  /** Findings it is wanted for, its own and those of the steps that bring it. */
  serves: Set<string>;
  /** Those and the ones it was done for already: what it brings is brought for all of them. */
  reaches: Set<string>;
  amount: number;
  essential: boolean;
}

/**
 * How far a treatment is for some findings: still to do, done for all of them, or left out for all of them. Asked with no
 * findings for the steps of every plan, with one for what a finding calls for, with all that the bringing step reaches for
 * what it brings. What is left out brings nothing.
 */
export type StandOf = (
  treatment: string,
  findings: ReadonlySet<string>,
  broughtBy?: string,
) => 'open' | 'done' | 'skipped';

const allOpen: StandOf = () => 'open';
const NO_FINDING: ReadonlySet<string> = new Set();

/** Collects what is wanted: the steps of every plan, what each finding calls for, and what those bring with them. */
export function wantedSteps(
  causes: readonly Cause[],
  block: Circumstances,
  catalogue: Catalogue,
  standOf: StandOf = allOpen,
): Map<string, Wanted> {
  const wanted = new Map<string, Wanted>();
  const reached = (id: string, findings: Iterable<string>): Wanted => {
    let step = wanted.get(id);
    if (!step) {
      step = { because: [], serves: new Set(), reaches: new Set(), amount: 0, essential: false };
      wanted.set(id, step);
    }
    for (const finding of findings) step.reaches.add(finding);
    return step;
  };
  const want = (step: Wanted, id: string, findingId: string | null, why: string, amount: number): void => {
    step.because.push({ findingId, why });
    const per = entry(catalogue.treatments, id)?.per;
    if (per) step.amount = joined(per.unit, step.amount, amount);
  };
  for (const [id, treatment] of Object.entries(catalogue.treatments)) {
    if (!treatment.always) continue;
    const stand = standOf(id, NO_FINDING);
    if (stand === 'skipped') continue;
    const step = reached(id, NO_FINDING);
    if (stand === 'open') want(step, id, null, treatment.why, 0);
  }
  for (const cause of causes) {
    const { answers, grade, zoneClass } = cause;
    const here: Circumstances = { ...block, finding: { answers, grade, zoneClass } };
    const own = new Set([cause.id]);
    for (const use of cause.kind.treatments) {
      if (grade < use.fromGrade || (use.when && !holds(use.when, here))) continue;
      const stand = entry(catalogue.treatments, use.treatment) ? standOf(use.treatment, own) : 'skipped';
      if (stand === 'skipped') continue;
      const step = reached(use.treatment, own);
      if (stand === 'done') continue;
      step.serves.add(cause.id);
      step.essential ||= use.essential;
      want(step, use.treatment, cause.id, use.why, amountOf(use.amount, answers));
    }
  }
  bring();
  for (const [id, { because }] of wanted) if (because.length === 0) wanted.delete(id);
  return wanted;

  /** A map grows while it is walked, so what is brought may bring more; walked again while findings are passed on. */
  function bring(): void {
    const brought = new Set<string>();
    for (let passedOn = true; passedOn; ) {
      passedOn = false;
      for (const [id, { reaches }] of wanted) {
        for (const { treatment, when, amount, why } of entry(catalogue.treatments, id)?.brings ?? []) {
          if ((when && !holds(when, block)) || !entry(catalogue.treatments, treatment)) continue;
          const stand = standOf(treatment, reaches, id);
          if (stand === 'skipped') continue;
          const known = wanted.get(treatment)?.reaches.size ?? -1;
          const step = reached(treatment, reaches);
          passedOn ||= step.reaches.size !== known;
          if (stand === 'done') continue;
          for (const finding of reaches) step.serves.add(finding);
          const pair = `${id} ${treatment}`;
          if (brought.has(pair) || (step.because.length > 0 && !amount)) continue;
          brought.add(pair);
          want(step, treatment, null, why, amountOf(amount, {}));
        }
      }
    }
  }
}
