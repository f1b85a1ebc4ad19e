import { applicableKinds, type Setting, settingOf, zoneClassOf } from './block.ts';
import { type Catalogue, entry, type GateEffect, type Grade, type Verdict, type ZoneClass } from './catalogue.ts';
import { type Circumstances, holds } from './condition.ts';
import { type Days, daysFor, eveningsOf } from './days.ts';
import { type GradeWorking, gradeFinding } from './grade.ts';
import { type PaceBook, type Plan, planFor } from './plan.ts';
import type { Watch } from './quarantine.ts';
import type { Finding, HatBlock, SaleTerms, Settings, Survey } from './records.ts';
import { type LossWorking, salvage } from './salvage.ts';
import type { MinorUnits } from './units.ts';
import { type VerdictReason, verdictOn } from './verdict.ts';
import { allInAt, type Worth, worthOf } from './worth.ts';

/** Everything the assessment looks at. Order of findings is irrelevant. */
export interface Case {
  readonly block: HatBlock;
  readonly survey: Survey;
  readonly findings: readonly Finding[];
  readonly terms: SaleTerms;
  readonly settings: Settings;
  readonly pace: PaceBook;
}

/** A finding with its grade, what it costs the score, and how it came about. */
export interface GradedFinding {
  readonly finding: Finding;
  readonly zoneClass: ZoneClass;
  readonly grade: Grade;
  readonly byHand: boolean;
  readonly working: GradeWorking;
  readonly loss: LossWorking;
}

export interface FiringGate {
  readonly findingId: string;
  readonly effects: readonly GateEffect[];
  readonly advice: string;
  /** What it is watched for, where keeping it apart ends by watching. */
  readonly watch?: Watch;
}

/** Unknown is not none: a kind nobody looked for is in neither of the other states. */
export type LookState = 'notLooked' | 'noneSeen' | 'found';

/** By the book: one value for everything. Ranges and chances are the simulation's. */
export interface Assessment {
  readonly setting: Setting;
  readonly kinds: readonly { readonly kind: string; readonly state: LookState }[];
  readonly graded: readonly GradedFinding[];
  /** Findings of a kind this catalogue does not have: kept and shown, not scored. */
  readonly unscored: readonly Finding[];
  readonly found: number;
  readonly after: number;
  readonly odds: number;
  /** Worst single grade, as collections' condition checking asks; shown beside the score. */
  readonly worstGrade: Grade;
  readonly gates: readonly FiringGate[];
  readonly unknownEssentials: readonly string[];
  readonly plan: Plan;
  readonly days: Days;
  readonly worth: Worth;
  readonly verdict: Verdict;
  readonly reasons: readonly VerdictReason[];
  readonly decision: Decision;
}

/** What to do at the price asked; separate from the verdict and from the limit. */
export type Decision =
  | { readonly at: null; readonly say: 'noPrice' }
  | { readonly at: MinorUnits; readonly allIn: MinorUnits; readonly say: 'within' | 'over' };

/** The three states of every kind that applies, in catalogue order. */
export function lookStates(
  setting: Setting,
  survey: Pick<Survey, 'noneSeen'>,
  findings: readonly Pick<Finding, 'kind'>[],
  catalogue: Catalogue,
): Assessment['kinds'] {
  const found = new Set(findings.map(({ kind }) => kind));
  return applicableKinds(setting, catalogue).map((kind) => ({
    kind,
    state: found.has(kind) ? 'found' : Object.hasOwn(survey.noneSeen, kind) ? 'noneSeen' : 'notLooked',
  }));
}

const feedsInsects = ({ materials }: Setting, catalogue: Catalogue): boolean =>
  materials.some((id) => entry(catalogue.materials, id)?.insectFood);

function unknownEssentials({ block, survey, findings }: Case, setting: Setting, catalogue: Catalogue): string[] {
  const looked = (kind: string): boolean =>
    Object.hasOwn(survey.noneSeen, kind) || findings.some((finding) => finding.kind === kind);
  return Object.entries(catalogue.essentials)
    .filter(
      ([, { notFor, onlyInsectFood }]) =>
        !notFor?.includes(setting.group) && (!onlyInsectFood || feedsInsects(setting, catalogue)),
    )
    .filter(
      ([, { ways }]) =>
        !ways.some((way) => {
          if ('measure' in way) return Object.hasOwn(survey.measures, way.measure);
          if ('station' in way) return Object.hasOwn(survey.stationsDone, way.station);
          if ('kind' in way) return looked(way.kind);
          return block[way.field] !== null;
        }),
    )
    .map(([id]) => id);
}

/** Grades every finding of a known kind, in order of their numbers; the others come back as they are. */
function grade(facts: Case, setting: Setting, catalogue: Catalogue) {
  const block: Omit<Circumstances, 'finding'> = setting;
  const findings = [...facts.findings].sort((a, b) => a.number - b.number || (a.id < b.id ? -1 : 1));
  const unscored = findings.filter(({ kind }) => !entry(catalogue.damage, kind));
  const known = findings.flatMap((finding) => {
    const kind = entry(catalogue.damage, finding.kind);
    if (!kind) return [];
    const zoneClass = zoneClassOf(finding.zone, catalogue);
    const working = gradeFinding(kind, finding.answers, { ...block, zoneClass });
    const byHand = finding.gradeByHand !== null;
    return [{ finding, kind, zoneClass, working, byHand, grade: finding.gradeByHand ?? working.grade }];
  });
  return { known, unscored };
}

/**
 * The block by the book: grades, score found and after, odds, plan, days, worth, verdict. Pure: same case, same answer to
 * the bit, whatever the order of findings. Source of the model: trade handbook §1.6–1.8, 3, 6.1; see DEVELOPERS.md.
 * Does not throw for findings of unknown kind or zone.
 */
export function assess(facts: Case, catalogue: Catalogue): Assessment {
  const { block, survey, settings, terms } = facts;
  const setting = settingOf(block, catalogue);
  const { known, unscored } = grade(facts, setting, catalogue);
  const sums = salvage(known, setting.group, catalogue.model);
  const gates = known.flatMap(({ finding, kind, zoneClass, grade }) =>
    kind.gates
      .filter(({ when }) => holds(when, { ...setting, finding: { answers: finding.answers, grade, zoneClass } }))
      .map(({ effects, advice, watch }) => ({ findingId: finding.id, effects, advice, ...(watch ? { watch } : {}) })),
  );
  const plan = planFor(
    known.map(({ finding, kind, zoneClass, grade }) => ({
      id: finding.id,
      kind,
      answers: finding.answers,
      grade,
      zoneClass,
    })),
    setting,
    catalogue,
    facts.pace,
  );
  const copyable = block.copyable && !known.some(({ kind }) => kind.blocksCopying);
  const missing = unknownEssentials(facts, setting, catalogue);
  const { verdict, reasons } = verdictOn(
    {
      found: sums.found,
      after: sums.after,
      odds: sums.odds,
      findings: known.map(({ finding, grade, zoneClass, kind }) => ({
        id: finding.id,
        grade,
        zoneClass,
        counts: kind.counts,
      })),
      gates,
      unknownEssentials: missing.length,
      shapeValue: setting.shapeValue,
      copyable,
    },
    catalogue.model,
  );
  const worth = worthOf(
    {
      block: { ...block, copyable },
      setting,
      settings,
      terms,
      found: sums.found,
      after: sums.after,
      odds: sums.odds,
      plan,
      refused: gates.some(({ effects }) => effects.includes('refuse')),
      pace: facts.pace,
    },
    catalogue,
  );
  return {
    setting,
    kinds: lookStates(setting, survey, facts.findings, catalogue),
    graded: known.map(({ finding, zoneClass, grade, byHand, working }, index) => {
      const loss = sums.losses[index];
      if (!loss) throw new Error(`Finding ${finding.number} has no share in the score; expected one for each.`);
      return { finding, zoneClass, grade, byHand, working, loss };
    }),
    unscored,
    found: sums.found,
    after: sums.after,
    odds: sums.odds,
    worstGrade: Math.max(0, ...known.map(({ grade }) => grade)) as Grade,
    gates,
    unknownEssentials: missing,
    plan,
    days: daysFor(plan, eveningsOf(settings)),
    worth,
    verdict,
    reasons,
    decision: decide(block, terms, worth),
  };
}

function decide(block: HatBlock, terms: SaleTerms, worth: Worth): Decision {
  if (block.priceAsked === null) return { at: null, say: 'noPrice' };
  const at = block.priceAsked as MinorUnits;
  const allIn = allInAt(at, terms);
  return { at, allIn, say: allIn <= worth.walkAway ? 'within' : 'over' };
}
