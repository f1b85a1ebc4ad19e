import type { DamageKind, Grade, ZoneClass } from './catalogue.ts';
import { type Circumstances, holds } from './condition.ts';

type Answers = Readonly<Record<string, number | boolean | string>>;

/** Why a finding has its grade: the measure that decided and what lifted it, for the working. */
export interface GradeWorking {
  readonly grade: Grade;
  /** Measures that were taken, each with the grade it alone would give. */
  readonly measures: readonly { readonly ask: string; readonly value: number; readonly grade: Grade }[];
  readonly raised: readonly { readonly why: string; readonly to: Grade }[];
  /** Nothing that grades this kind was measured, and nothing else raised it. */
  readonly unmeasured: boolean;
}

const atMost4 = (grade: number): Grade => Math.min(4, Math.max(0, grade)) as Grade;

/**
 * Grade on one measure: how many of the four lower bounds the value reaches; 0 for a value of 0 unless a bound is 0.
 * Source: reference grading rule of the trade handbook, §1.6 (own model, from memory).
 */
export function gradeOfMeasure(value: number, from: readonly [number, number, number, number]): Grade {
  if (value === 0 && !from.includes(0)) return 0;
  return atMost4(from.filter((bound) => bound <= value).length);
}

/**
 * Grade 0–4 of a finding from its answers. The kind's measures combine by max or min over those *taken*; then its raises
 * apply in order. A finding with no grading measure is at least a trace: somebody saw it.
 */
export function gradeFinding(
  kind: Pick<DamageKind, 'grading'>,
  answers: Answers,
  circumstances: Omit<Circumstances, 'finding'> & { readonly zoneClass: ZoneClass },
): GradeWorking {
  const { by, combine, raises } = kind.grading;
  const measures = by.flatMap(({ ask, from }) => {
    const value = Object.hasOwn(answers, ask) ? answers[ask] : undefined;
    return typeof value === 'number' ? [{ ask, value, grade: gradeOfMeasure(value, from) }] : [];
  });
  const grades = measures.map(({ grade }) => grade);
  let grade: Grade = grades.length === 0 ? 1 : atMost4(combine === 'max' ? Math.max(...grades) : Math.min(...grades));
  const raised: { why: string; to: Grade }[] = [];
  for (const { when, effect, why } of raises) {
    const { zoneClass, ...block } = circumstances;
    if (!holds(when, { ...block, finding: { answers, grade, zoneClass } })) continue;
    const next =
      'add' in effect ? grade + effect.add : 'atLeast' in effect ? Math.max(grade, effect.atLeast) : effect.set;
    if (atMost4(next) !== grade) raised.push({ why, to: atMost4(next) });
    grade = atMost4(next);
  }
  return { grade, measures, raised, unmeasured: measures.length === 0 && raised.length === 0 };
}
