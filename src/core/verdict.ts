import type { DamageKind, GateEffect, Grade, Model, ShapeValue, Verdict, ZoneClass } from './catalogue.ts';

/** What decides a verdict. */
export interface VerdictFacts {
  readonly found: number;
  readonly after: number;
  readonly odds: number;
  readonly findings: readonly {
    readonly id: string;
    readonly grade: Grade;
    readonly zoneClass: ZoneClass;
    readonly counts: DamageKind['counts'];
  }[];
  readonly gates: readonly {
    readonly effects: readonly GateEffect[];
    readonly advice: string;
    readonly findingId: string;
  }[];
  readonly unknownEssentials: number;
  readonly shapeValue: ShapeValue;
  readonly copyable: boolean;
}

export type VerdictReason =
  | { readonly rule: 'refused' | 'live' | 'untested'; readonly findingId: string }
  | {
      readonly rule: 'scoreTooLow' | 'oddsTooLow' | 'scoreModest' | 'oddsModest' | 'foundBelowSound';
      readonly value: number;
      readonly bound: number;
    }
  | { readonly rule: 'critical' | 'needsRepair'; readonly findingId: string }
  | { readonly rule: 'unknownEssentials'; readonly count: number }
  | { readonly rule: 'shapeCommon' | 'notCopyable' | 'worthCopying' | 'nothingAgainst' };

/**
 * The verdict on the block, whatever its price, with every reason that leads to it.
 * Source: verdict rules of trade handbook §1.8 (own model, trade estimate), read from top to bottom.
 */
export function verdictOn(facts: VerdictFacts, model: Model): { verdict: Verdict; reasons: readonly VerdictReason[] } {
  const bounds = model.verdict;
  const gated = (effect: GateEffect) => facts.gates.filter(({ effects }) => effects.includes(effect));
  const refused = gated('refuse').map(({ findingId }) => ({ rule: 'refused', findingId }) as const);
  if (refused.length > 0) return { verdict: 'leave', reasons: refused };

  const hopeless: VerdictReason[] = [];
  if (facts.after < bounds.copyBelowScore) {
    hopeless.push({ rule: 'scoreTooLow', value: facts.after, bound: bounds.copyBelowScore });
  }
  if (facts.odds < bounds.copyBelowOdds) {
    hopeless.push({ rule: 'oddsTooLow', value: facts.odds, bound: bounds.copyBelowOdds });
  }
  if (hopeless.length > 0) {
    if (facts.shapeValue === 'common') return { verdict: 'leave', reasons: [...hopeless, { rule: 'shapeCommon' }] };
    if (!facts.copyable) return { verdict: 'leave', reasons: [...hopeless, { rule: 'notCopyable' }] };
    return { verdict: 'copyOnly', reasons: [...hopeless, { rule: 'worthCopying' }] };
  }

  const risky: VerdictReason[] = [];
  if (facts.after < bounds.riskyBelowScore) {
    risky.push({ rule: 'scoreModest', value: facts.after, bound: bounds.riskyBelowScore });
  }
  if (facts.odds < bounds.riskyBelowOdds) {
    risky.push({ rule: 'oddsModest', value: facts.odds, bound: bounds.riskyBelowOdds });
  }
  for (const { id, grade, zoneClass, counts } of facts.findings) {
    if (grade === 4 && zoneClass !== 'base' && counts.critical) risky.push({ rule: 'critical', findingId: id });
  }
  if (facts.unknownEssentials >= bounds.riskyFromUnknowns) {
    risky.push({ rule: 'unknownEssentials', count: facts.unknownEssentials });
  }
  for (const { findingId } of gated('live')) risky.push({ rule: 'live', findingId });
  for (const { findingId } of gated('test')) risky.push({ rule: 'untested', findingId });
  if (risky.length > 0) return { verdict: 'risky', reasons: risky };

  const repair: VerdictReason[] = [];
  if (facts.found < bounds.repairableBelowScore) {
    repair.push({ rule: 'foundBelowSound', value: facts.found, bound: bounds.repairableBelowScore });
  }
  for (const { id, grade, counts } of facts.findings) {
    if (grade >= 2 && counts.repair) repair.push({ rule: 'needsRepair', findingId: id });
  }
  if (repair.length > 0) return { verdict: 'repairable', reasons: repair };
  return { verdict: 'sound', reasons: [{ rule: 'nothingAgainst' }] };
}
