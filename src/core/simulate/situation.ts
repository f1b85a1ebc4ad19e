import type { GradedFinding } from '../assess.ts';
import { type Setting, zoneClassOf, zonesFor } from '../block.ts';
import { type Catalogue, entry, type Grade, type MaterialGroup, type Origin, type ZoneClass } from '../catalogue.ts';
import { holds } from '../condition.ts';
import { repairChance } from '../salvage.ts';
import { type Belief, beliefIn, type Tallies, tallyKey } from './belief.ts';
import type { Demand, Workshop } from './work.ts';

/** One loss that a draw may contain: a finding as found, or a kind nobody looked for, at one of its grades. */
export interface Hazard {
  /** Share of the score lost as it is, 0–1. */
  readonly loss: number;
  /** Share still lost when its repair holds. */
  readonly repaired: number;
  /** Chance that the repair holds; 1 where none is needed. */
  readonly chance: number;
  /** It bears on whether the block holds together for one careful forming. */
  readonly structural: boolean;
  /** Grade 4 off the base, in a kind that counts: while it is there the block does not work. */
  readonly critical: boolean;
  /** Not to be taken home at all. */
  readonly refused: boolean;
  /** No copy can be taken while it is there. */
  readonly blocksCopying: boolean;
  readonly demand: Demand;
}

export interface Unlooked {
  readonly kind: string;
  readonly belief: Belief;
  /** Its hazards at grades 1–4. */
  readonly atGrade: readonly [Hazard, Hazard, Hazard, Hazard];
}

/** The group most of the block's materials belong to; wood when nothing is said. */
export function materialGroupOf(setting: Pick<Setting, 'materials'>, catalogue: Catalogue): MaterialGroup {
  const groups = setting.materials.map((id) => entry(catalogue.materials, id)?.group ?? 'wood');
  return groups.reduce((most, group) => {
    const count = (wanted: MaterialGroup): number => groups.filter((other) => other === wanted).length;
    return count(group) > count(most) ? group : most;
  }, groups[0] ?? 'wood');
}

/** What the draws need to know of one loss. */
function hazardOf(
  facts: {
    readonly kind: string;
    readonly weight: number;
    readonly grade: Grade;
    readonly zoneClass: ZoneClass;
    readonly answers: Readonly<Record<string, number | boolean | string>>;
  },
  setting: Setting,
  workshop: Workshop,
  catalogue: Catalogue,
): Hazard {
  const { weight, grade, zoneClass, answers } = facts;
  const kind = entry(catalogue.damage, facts.kind);
  if (!kind) throw new Error(`No damage kind ${facts.kind} in the catalogue; expected only known ones here.`);
  const loss = weight * catalogue.model.severity[grade];
  const finding = { answers, grade, zoneClass };
  return {
    loss,
    repaired: loss * (1 - kind.treatability),
    chance: repairChance(kind, grade, catalogue.model) ?? 1,
    structural: catalogue.model.structural.includes(kind.mechanism),
    critical: grade === 4 && zoneClass !== 'base' && kind.counts.critical,
    refused: kind.gates.some(({ effects, when }) => effects.includes('refuse') && holds(when, { ...setting, finding })),
    blocksCopying: kind.blocksCopying,
    demand: workshop.demandOf({ kind, answers, grade, zoneClass }),
  };
}

/** The findings as hazards, in the assessment's order. */
export const foundHazards = (
  graded: readonly GradedFinding[],
  setting: Setting,
  workshop: Workshop,
  catalogue: Catalogue,
): readonly Hazard[] =>
  graded.map(({ finding, grade, zoneClass, loss }) =>
    hazardOf(
      { kind: finding.kind, weight: loss.weight, grade, zoneClass, answers: finding.answers },
      setting,
      workshop,
      catalogue,
    ),
  );

/**
 * Kinds nobody looked for, each with the belief in it and its hazard at every grade. Where it would lie is not known: it
 * weighs as the mean over the classes of zone it can lie in, and is worked as in the first of them.
 */
export function unlookedKinds(
  kinds: readonly string[],
  setting: Setting,
  origin: Origin,
  tallies: Tallies,
  workshop: Workshop,
  catalogue: Catalogue,
): readonly Unlooked[] {
  const group = materialGroupOf(setting, catalogue);
  return kinds.flatMap((id) => {
    const kind = entry(catalogue.damage, id);
    if (!kind) return [];
    const classes = [...new Set(zonesFor(kind, setting, catalogue).map((zone) => zoneClassOf(zone, catalogue)))];
    const weights = (classes.length > 0 ? classes : (['whole'] as const)).map(
      (zoneClass) => catalogue.model.zoneWeight[setting.group][zoneClass],
    );
    const weight = (weights.reduce((sum, value) => sum + value, 0) / weights.length) * kind.scoreFactor;
    const at = (grade: Grade): Hazard =>
      hazardOf(
        { kind: id, weight, grade, zoneClass: classes[0] ?? 'whole', answers: {} },
        setting,
        workshop,
        catalogue,
      );
    return [
      {
        kind: id,
        belief: beliefIn(kind, group, origin, tallies[tallyKey(id, group)]),
        atGrade: [at(1), at(2), at(3), at(4)] as const,
      },
    ];
  });
}
