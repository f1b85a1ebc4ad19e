import type { Assessment } from '../assess.ts';
import { type Catalogue, entry, type ThreePoint } from '../catalogue.ts';
import { hoursFor, type PaceBook, type PlanStep, planOfTreatments, predecessors, workingOrder } from '../plan.ts';
import type { Mark, Path, Stint, WorkStep } from '../records.ts';
import { type StandOf, type Wanted, wantedSteps } from '../wanted.ts';
import { inWorkingOrder } from './order.ts';

/** One step of the work on a block: from the plan, or put in by the person, with what was done of it. */
export interface WorkItem {
  /** Unique within the block, and the same as long as the step is. */
  readonly key: string;
  /** Oldest first; none for a step nobody touched. More than one only where two phones touched it apart. */
  readonly records: readonly WorkStep[];
  /** Key in the catalogue; null for a step in the owner's own words. */
  readonly treatment: string | null;
  readonly words: string;
  readonly added: boolean;
  /** Findings it is for, or marks it protects. */
  readonly serves: readonly string[];
  readonly because: PlanStep['because'];
  readonly amount: number | null;
  /** Hands-on hours at the owner's pace. */
  readonly hours: ThreePoint;
  readonly waitHours: ThreePoint;
  readonly consumables: number;
  readonly essential: boolean;
  /** Whether a finding, a mark or the person still asks for it. */
  readonly calledFor: boolean;
  /** Where it stands on the scale of `workingOrder` ranks. */
  readonly position: number;
  /** Keys of open steps of this block that must be done first. */
  readonly after: readonly string[];
  readonly stand: 'open' | 'done' | 'skipped';
  readonly stints: readonly Stint[];
  /** Hands-on minutes that count so far. */
  readonly minutes: number;
}

/** What the work on one block is derived from. */
export interface WorkFacts {
  /** Restored, or only its shape copied: `pathOf`. */
  readonly path: Path;
  readonly assessment: Pick<Assessment, 'graded' | 'setting'>;
  readonly marks: readonly Mark[];
  readonly steps: readonly WorkStep[];
  readonly stints: readonly Stint[];
}

type Draft = Omit<WorkItem, 'after' | 'stints' | 'minutes' | 'position'>;

const standOfRecord = ({ done, skipped }: WorkStep): WorkItem['stand'] =>
  done ? 'done' : skipped ? 'skipped' : 'open';

/**
 * The work on a block: its plan less what was done or left out, and the steps a person touched. A step done or left out
 * counts for the findings it then served; a finding made later calls for it anew. Order of findings, marks and records is
 * irrelevant.
 * @returns every step, in working order; see `order.ts`
 */
export function workPlan(facts: WorkFacts, catalogue: Catalogue, pace: PaceBook = {}): readonly WorkItem[] {
  const records = [...facts.steps].sort((a, b) => (a.id < b.id ? -1 : 1));
  const ofPlan = records.filter(({ added, treatment }) => !added && treatment !== null);
  const closed = ofPlan.filter((record) => standOfRecord(record) !== 'open');
  const wanted = wantedFor(facts, standing(closed, catalogue), catalogue);
  const open = planOfTreatments(wanted, catalogue, pace).steps.map((step): Draft => {
    const own = ofPlan.filter((record) => record.treatment === step.treatment && standOfRecord(record) === 'open');
    return { ...step, key: step.treatment, records: own, words: '', added: false, calledFor: true, stand: 'open' };
  });
  const begun = new Set(facts.stints.map(({ stepId }) => stepId));
  const matched = new Set(open.flatMap(({ records: own }) => own.map(({ id }) => id)));
  const others = records
    .filter((record) => !matched.has(record.id))
    // Of a step no finding asks for any more only what was worked on it is worth keeping in sight.
    .filter((record) => record.added || standOfRecord(record) !== 'open' || begun.has(record.id))
    .map((record) => fromRecord(record, catalogue, pace));
  return inWorkingOrder(completed([...open, ...others], facts.stints, catalogue));
}

/** Places, dependencies and minutes of drafted steps. */
function completed(drafts: readonly Draft[], stints: readonly Stint[], catalogue: Catalogue): WorkItem[] {
  const order = workingOrder(catalogue);
  const open = drafts.filter(({ stand }) => stand === 'open');
  const keysOf = (treatment: string): string[] =>
    open.filter((draft) => draft.treatment === treatment).map(({ key }) => key);
  const there = { has: (treatment: string) => keysOf(treatment).length > 0 };
  const forMarks = open.filter(({ treatment }) => entry(catalogue.treatments, treatment)?.forMarks);
  return drafts.map((draft) => {
    const { treatment, records, key } = draft;
    const isOpen = treatment !== null && draft.stand === 'open';
    const protect = isOpen && entry(catalogue.treatments, treatment)?.touchesMarks ? forMarks : [];
    const before = isOpen ? predecessors(treatment, there, catalogue).flatMap(keysOf) : [];
    const own = stints.filter(({ stepId }) => records.some(({ id }) => id === stepId));
    return {
      ...draft,
      position: records.find(({ position }) => position !== null)?.position ?? order.get(treatment ?? '') ?? order.size,
      after: [...new Set([...before, ...protect.map((mark) => mark.key)])].filter((other) => other !== key),
      stints: own,
      minutes: own.reduce((sum, { minutes }) => sum + (minutes ?? 0), 0),
    };
  });
}

/** Every treatment a treatment must follow, near and far. */
function allBefore(id: string, catalogue: Pick<Catalogue, 'treatments'>, found = new Set<string>()): Set<string> {
  for (const before of entry(catalogue.treatments, id)?.after ?? []) {
    if (found.has(before)) continue;
    found.add(before);
    allBefore(before, catalogue, found);
  }
  return found;
}

/** What was done and left out, as the plan asks for it. */
function standing(closed: readonly WorkStep[], catalogue: Catalogue): StandOf {
  const by = (stand: WorkItem['stand']): Map<string, Set<string>> => {
    const served = new Map<string, Set<string>>();
    for (const record of closed) {
      if (standOfRecord(record) !== stand || record.treatment === null) continue;
      const ids = served.get(record.treatment) ?? new Set();
      for (const id of record.serves) ids.add(id);
      served.set(record.treatment, ids);
    }
    return served;
  };
  const [done, skipped] = [by('done'), by('skipped')];
  return (treatment, findings, broughtBy) => {
    const [was, left] = [done.get(treatment), skipped.get(treatment)];
    if (!was && !left) return 'open';
    // Brought to go before (apart in pieces, bagged) it holds for whatever follows; brought to come after, only for what it followed.
    const holds = broughtBy !== undefined && allBefore(broughtBy, catalogue).has(treatment);
    if (!holds && [...findings].some((id) => !was?.has(id) && !left?.has(id))) return 'open';
    return was && (holds || findings.size === 0 || [...findings].some((id) => was.has(id))) ? 'done' : 'skipped';
  };
}

/** Steps still wanted: of the restoration, or only of a copy; and for each mark worth keeping its protection. */
function wantedFor(facts: WorkFacts, standOf: StandOf, catalogue: Catalogue): ReadonlyMap<string, Wanted> {
  const { assessment, path, marks } = facts;
  const wanted = path === 'copy' ? wantedForCopy(standOf, catalogue) : wantedForRepair(assessment, standOf, catalogue);
  const kept = marks.filter(({ keep }) => keep).sort((a, b) => (a.id < b.id ? -1 : 1));
  for (const [id, { forMarks, why, per }] of Object.entries(catalogue.treatments)) {
    if (!forMarks) continue;
    const bare = kept.filter((mark) => standOf(id, new Set([mark.id])) === 'open');
    if (bare.length === 0) continue;
    wanted.set(id, {
      because: [{ findingId: null, why }],
      serves: new Set(bare.map((mark) => mark.id)),
      reaches: new Set(),
      amount: per?.unit === 'count' ? bare.length : 0,
      essential: false,
    });
  }
  return wanted;
}

function wantedForRepair(
  { graded, setting }: WorkFacts['assessment'],
  standOf: StandOf,
  catalogue: Catalogue,
): Map<string, Wanted> {
  const causes = graded.flatMap(({ finding, grade, zoneClass }) => {
    const kind = entry(catalogue.damage, finding.kind);
    return kind ? [{ id: finding.id, kind, answers: finding.answers, grade, zoneClass }] : [];
  });
  return wantedSteps(causes, setting, catalogue, standOf);
}

function wantedForCopy(standOf: StandOf, catalogue: Catalogue): Map<string, Wanted> {
  const none: ReadonlySet<string> = new Set();
  return new Map(
    catalogue.model.copyPlan
      .filter((id) => standOf(id, none) === 'open')
      .map((id) => {
        const why = entry(catalogue.treatments, id)?.why ?? '';
        return [
          id,
          { because: [{ findingId: null, why }], serves: new Set(), reaches: new Set(), amount: 0, essential: false },
        ];
      }),
  );
}

/** A step known only from its record: put in, done, left out, or begun and no longer asked for. */
function fromRecord(record: WorkStep, catalogue: Catalogue, pace: PaceBook): Draft {
  const treatment = entry(catalogue.treatments, record.treatment);
  const stand = standOfRecord(record);
  const amount = treatment?.per ? (record.amount ?? treatment.per.size) : null;
  const raw = record.hours ?? (treatment ? hoursFor(treatment, amount) : NO_HOURS);
  const by = record.hours || !treatment ? 1 : (pace[treatment.reference]?.median ?? 1);
  const wait = record.waitHours;
  return {
    key: record.id,
    records: [record],
    treatment: record.treatment,
    words: record.words,
    added: record.added,
    serves: [...record.serves].sort(),
    because: treatment && record.added ? [{ findingId: null, why: treatment.why }] : [],
    amount,
    hours: { o: raw.o * by, m: raw.m * by, p: raw.p * by },
    waitHours: wait === null ? (treatment?.waitHours ?? NO_HOURS) : { o: wait, m: wait, p: wait },
    consumables: treatment?.consumables ?? 0,
    essential: false,
    calledFor: record.added || stand !== 'open',
    stand,
  };
}

const NO_HOURS: ThreePoint = { o: 0, m: 0, p: 0 };
