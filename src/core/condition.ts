import type { Condition, Grade, ShapeValue, TypeGroup, ZoneClass } from './catalogue.ts';

/** What a condition may look at: the block always, the finding where there is one. */
export interface Circumstances {
  readonly group: TypeGroup;
  readonly materials: readonly string[];
  readonly parts: 'one' | 'several';
  readonly shapeValue: ShapeValue;
  readonly finding?: {
    readonly answers: Readonly<Record<string, number | boolean | string>>;
    readonly grade: Grade;
    readonly zoneClass: ZoneClass;
  };
}

const answerOf = (circumstances: Circumstances, ask: string): number | boolean | string | undefined => {
  const answers = circumstances.finding?.answers;
  return answers && Object.hasOwn(answers, ask) ? answers[ask] : undefined;
};

/**
 * Whether a condition holds. A measure not taken satisfies neither `atLeast` nor `below`: unknown is not small.
 * A statement about a finding is false where there is no finding.
 */
export function holds(condition: Condition, circumstances: Circumstances): boolean {
  if ('ask' in condition) {
    const answer = answerOf(circumstances, condition.ask);
    if ('is' in condition) return answer === condition.is;
    if (typeof answer !== 'number') return false;
    return 'atLeast' in condition ? answer >= condition.atLeast : answer < condition.below;
  }
  if ('grade' in condition) {
    const grade = circumstances.finding?.grade;
    if (grade === undefined) return false;
    return grade >= (condition.grade.from ?? 0) && grade <= (condition.grade.to ?? 4);
  }
  if ('zoneClass' in condition) {
    return circumstances.finding !== undefined && condition.zoneClass.includes(circumstances.finding.zoneClass);
  }
  if ('group' in condition) return condition.group.includes(circumstances.group);
  if ('material' in condition) return condition.material.some((id) => circumstances.materials.includes(id));
  if ('parts' in condition) return condition.parts === circumstances.parts;
  if ('shapeValue' in condition) return condition.shapeValue.includes(circumstances.shapeValue);
  if ('all' in condition) return condition.all.every((part) => holds(part, circumstances));
  if ('any' in condition) return condition.any.some((part) => holds(part, circumstances));
  return !holds(condition.not, circumstances);
}
