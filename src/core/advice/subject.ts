import { type Setting, zoneClassOf } from '../block.ts';
import { type Catalogue, type DamageKind, entry, type Grade, type ZoneClass } from '../catalogue.ts';
import type { Climate } from '../climate.ts';
import type { Finding, HatBlock, Survey } from '../records.ts';

/** All that advice looks at. */
export interface AdviceCase {
  readonly block: Pick<HatBlock, 'place' | 'stamps'>;
  readonly survey: Pick<Survey, 'measures'>;
  readonly assessment: {
    readonly setting: Setting;
    readonly graded: readonly { readonly finding: Finding; readonly grade: Grade }[];
  };
  readonly climate: Climate;
  /** `YYYY-MM-DD`, where the owner is. */
  readonly today: string;
  /** The quarantine it is in: the day it began and those on which fresh signs were seen since. */
  readonly apart?: { readonly begunOn: string; readonly freshOn: readonly string[] };
}

/** One finding with everything its sums may take their figures from. */
export interface Subject extends Omit<AdviceCase, 'assessment'> {
  readonly finding: Finding;
  readonly kind: DamageKind;
  readonly grade: Grade;
  readonly zoneClass: ZoneClass;
  readonly setting: Setting;
  readonly catalogue: Catalogue;
}

/** The finding as a subject; undefined when it is not graded, as a finding of a newer catalogue's kind is not. */
export function subjectOf(findingId: string, facts: AdviceCase, catalogue: Catalogue): Subject | undefined {
  const { assessment, ...rest } = facts;
  const graded = assessment.graded.find(({ finding }) => finding.id === findingId);
  const kind = entry(catalogue.damage, graded?.finding.kind);
  if (!graded || !kind) return undefined;
  const { finding, grade } = graded;
  const { setting } = assessment;
  return { ...rest, finding, kind, grade, setting, zoneClass: zoneClassOf(finding.zone, catalogue), catalogue };
}

const answer = ({ finding }: Pick<Subject, 'finding'>, ask: string | undefined) =>
  ask !== undefined && Object.hasOwn(finding.answers, ask) ? finding.answers[ask] : undefined;

/** A measure of the finding in its ask's unit, or null. What lies outside the ask's scale (a backup's slip) counts as not measured. */
export function measured(subject: Pick<Subject, 'finding' | 'kind'>, askId: string | undefined): number | null {
  const value = answer(subject, askId);
  const ask = subject.kind.asks.find(({ id }) => id === askId);
  return typeof value === 'number' && ask?.type === 'measure' && value >= 0 && value <= ask.max ? value : null;
}

/** Smaller than this share of what a tool repeats to, nothing was measured. */
const NOTHING = 0.01;

/** The same where zero means that nobody has measured: lengths, areas, numbers. */
export function aboveZero(subject: Pick<Subject, 'finding' | 'kind'>, askId: string | undefined): number | null {
  const value = measured(subject, askId);
  const ask = subject.kind.asks.find(({ id }) => id === askId);
  return value !== null && ask?.type === 'measure' && value >= ask.step * NOTHING ? value : null;
}

/** A choice of the finding, or null. */
export function chosen(subject: Pick<Subject, 'finding'>, ask: string): string | null {
  const value = answer(subject, ask);
  return typeof value === 'string' ? value : null;
}

/** A yes of the finding. No yes is not a no. */
export const isYes = (subject: Pick<Subject, 'finding'>, ask: string | undefined): boolean =>
  answer(subject, ask) === true;

/** A measure of the survey in its own unit, or null; what lies off its scale counts as not taken. */
export function onBlock({ survey, catalogue }: Pick<Subject, 'survey' | 'catalogue'>, measure: string): number | null {
  const value = Object.hasOwn(survey.measures, measure) ? survey.measures[measure] : undefined;
  const kind = entry(catalogue.measures, measure);
  return value !== undefined && kind && value >= kind.step * NOTHING && value <= kind.max ? value : null;
}
