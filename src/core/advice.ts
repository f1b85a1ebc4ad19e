import { borerOutcome } from './advice/borers.ts';
import { crackOutcome } from './advice/crack.ts';
import { fillOutcome } from './advice/fill.ts';
import { mouldOutcome } from './advice/mould.ts';
import type { Advice, Answers, Outcome } from './advice/outcome.ts';
import { quarantineOutcome } from './advice/quarantine.ts';
import { type AdviceCase, type Subject, subjectOf } from './advice/subject.ts';
import { weightOutcome } from './advice/weight.ts';
import { type Catalogue, entry, type Physics, type PhysicsName } from './catalogue.ts';
import { holds } from './condition.ts';
import type { PlanStep } from './plan.ts';

export type { Advice, Assumption, Need, Outcome } from './advice/outcome.ts';
export type { AdviceCase } from './advice/subject.ts';

type Entry<Does extends PhysicsName> = Extract<Physics, { does: Does }>;

/** Every sum by its name: how a finding's answers become an outcome. */
const SUMS: { readonly [Does in PhysicsName]: (subject: Subject, entry: Entry<Does>) => Outcome<Answers[Does]> } = {
  closeCrack: crackOutcome,
  fill: fillOutcome,
  rankBorers: borerOutcome,
  quarantine: quarantineOutcome,
  mouldRisk: mouldOutcome,
  weigh: weightOutcome,
};

function outcomeOf<Does extends PhysicsName>(subject: Subject, entry: Entry<Does>, does: Does): Advice {
  return { does, findingId: subject.finding.id, ...SUMS[does](subject, entry) } as unknown as Advice;
}

/**
 * What the wood science says to one finding: whether its crack closes, what fills it, which insect, how long apart, whether
 * mould grows, whether it weighs enough. Which of these apply, and from which asks, its kind says in the catalogue.
 * Pure; figures out of scale count as not measured, so nothing of a stored record can make it throw.
 * @returns in the kind's order; empty for a finding that is not graded or whose kind has no such sums
 */
export function adviceOn(findingId: string, facts: AdviceCase, catalogue: Catalogue): readonly Advice[] {
  const subject = subjectOf(findingId, facts, catalogue);
  if (!subject) return [];
  const { answers } = subject.finding;
  const here = { ...subject.setting, finding: { answers, grade: subject.grade, zoneClass: subject.zoneClass } };
  return (subject.kind.physics ?? [])
    .filter(({ when }) => !when || holds(when, here))
    .map((entry) => outcomeOf(subject, entry, entry.does));
}

/** The advice that bears on one step of the plan, of every finding the step serves. */
export function adviceAt(
  step: Pick<PlanStep, 'treatment' | 'because'>,
  facts: AdviceCase,
  catalogue: Catalogue,
): readonly Advice[] {
  const advises = entry(catalogue.treatments, step.treatment)?.advises ?? [];
  if (advises.length === 0) return [];
  const findings = [...new Set(step.because.flatMap(({ findingId }) => findingId ?? []))];
  return findings
    .flatMap((findingId) => adviceOn(findingId, facts, catalogue))
    .filter(({ does }) => advises.includes(does));
}

/** Advice that findings share word for word, as quarantine does, is said once: the first, and the findings it is for. */
export function joinedAdvice(
  advice: readonly Advice[],
): readonly { readonly first: Advice; readonly findings: readonly string[] }[] {
  const groups = new Map<string, { first: Advice; findings: string[] }>();
  for (const each of advice) {
    const { findingId, ...said } = each;
    const key = JSON.stringify(said);
    const group = groups.get(key);
    if (group) group.findings.push(findingId);
    else groups.set(key, { first: each, findings: [findingId] });
  }
  return [...groups.values()];
}
