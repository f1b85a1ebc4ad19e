import { catalogue } from '../../src/catalogue/index.ts';
import type { Advice, AdviceCase } from '../../src/core/advice.ts';
import { adviceOn } from '../../src/core/advice.ts';
import { assess } from '../../src/core/assess.ts';
import { plainTerms } from '../../src/core/blank.ts';
import type { PhysicsName } from '../../src/core/catalogue.ts';
import { type Climate, climateOf } from '../../src/core/climate.ts';
import type { Plan } from '../../src/core/plan.ts';
import type { Fields } from '../../src/core/records.ts';
import { aBlock, aSurvey, id, make } from '../store/make.ts';

type Answers = Fields<'finding'>['answers'];

export interface Told {
  readonly kind: string;
  readonly answers?: Answers;
  readonly zone?: string;
  readonly block?: Partial<Fields<'block'>>;
  readonly measures?: Readonly<Record<string, number>>;
  readonly settings?: Partial<Fields<'settings'>>;
  readonly today?: string;
  readonly gradeByHand?: Fields<'finding'>['gradeByHand'];
}

export interface AdvisedCase {
  readonly facts: AdviceCase;
  readonly findingId: string;
  readonly plan: Plan;
  readonly climate: Climate;
}

/** A block with one finding, assessed with the real catalogue, as the app would put it before the advice. */
export function caseOf({
  kind,
  answers = {},
  zone = 'sideLeft',
  block = {},
  measures = {},
  settings = {},
  today = '2026-10-17',
  gradeByHand = null,
}: Told): AdvisedCase {
  const findingId = id(3);
  const theBlock = aBlock({ blockType: 'domeCrown', materials: ['lime'], ...block });
  const survey = aSurvey({ measures: { ...measures } });
  const finding = make('finding', {
    id: findingId,
    blockId: id(1),
    surveyId: id(2),
    kind,
    zone,
    answers,
    gradeByHand,
  });
  const theSettings = make('settings', { id: id(9), ...settings });
  const assessment = assess(
    { block: theBlock, survey, findings: [finding], terms: plainTerms, settings: theSettings, pace: {} },
    catalogue,
  );
  const climate = climateOf(theSettings);
  return {
    facts: { block: theBlock, survey, assessment, climate, today },
    findingId,
    plan: assessment.plan,
    climate,
  };
}

/** All advice on that finding. */
export const adviceFor = (told: Told): readonly Advice[] => {
  const { facts, findingId } = caseOf(told);
  return adviceOn(findingId, facts, catalogue);
};

/** The advice of one sum. Fails loudly when there is none. */
export function adviceOf<Does extends PhysicsName>(does: Does, told: Told): Extract<Advice, { does: Does }> {
  const all = adviceFor(told);
  const found = all.find((advice) => advice.does === does);
  if (!found)
    throw new Error(
      `No ${does} on ${told.kind}; there is ${all.map((advice) => advice.does).join(', ') || 'nothing'}.`,
    );
  return found as Extract<Advice, { does: Does }>;
}

/** Its answer, which must be there. */
export function answerOf<Does extends PhysicsName>(does: Does, told: Told) {
  const { answer, needs } = adviceOf(does, told);
  if (!answer) throw new Error(`${does} wants ${JSON.stringify(needs)}.`);
  return answer as NonNullable<Extract<Advice, { does: Does }>['answer']>;
}
