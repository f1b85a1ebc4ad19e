import type { Catalogue, DamageKind, Grade, TypeGroup, ZoneClass } from './catalogue.ts';

/** One finding as the salvage sums see it. */
export interface Loss {
  readonly kind: Pick<DamageKind, 'scoreFactor' | 'treatability' | 'baseSuccess'>;
  readonly zoneClass: ZoneClass;
  readonly grade: Grade;
}

export interface LossWorking {
  /** Zone weight × the kind's factor, 0–1. */
  readonly weight: number;
  /** Severity of the grade, 0–1. */
  readonly severity: number;
  /** Points of 100 this finding takes as found; the findings' points add up to the score's loss exactly. */
  readonly points: number;
  /** Points still lost after a repair that holds. */
  readonly pointsAfter: number;
  /** Chance that its repair holds; null below grade 2, where nothing is repaired. */
  readonly chance: number | null;
}

export interface Salvage {
  /** 0–100 as found. */
  readonly found: number;
  /** 0–100 if every repair holds. */
  readonly after: number;
  /** Chance that every repair holds, 0–1. */
  readonly odds: number;
  readonly losses: readonly LossWorking[];
}

/**
 * Chance that the repair of a finding holds at its grade; null where no repair is meant (grades 0 and 1) or use does not
 * hang on it (a label at risk).
 */
export function repairChance(kind: Loss['kind'], grade: Grade, model: Catalogue['model']): number | null {
  if (grade < 2 || kind.scoreFactor === 0) return null;
  return Math.max(model.leastSuccess, 1 - (1 - kind.baseSuccess) * model.successMultiplier[grade]);
}

/** Shares of a product of losses that add up to it: `points_i = (100 − score)·ln(1 − loss_i)/Σ ln`. */
function shares(losses: readonly number[]): { score: number; points: number[] } {
  const score = 100 * losses.reduce((product, loss) => product * (1 - loss), 1);
  const logs = losses.map((loss) => Math.log1p(-loss));
  const total = logs.reduce((sum, log) => sum + log, 0);
  return { score, points: logs.map((log) => (total === 0 ? 0 : (100 - score) * (log / total))) };
}

/**
 * Salvageability by the book: found = 100·Π(1 − w·f), after = 100·Π(1 − w·f·(1 − t)), odds = Π chances over grade ≥ 2.
 * Order of the losses is irrelevant to the totals. Source: reference salvage model, trade handbook §1.8 (trade estimate).
 */
export function salvage(losses: readonly Loss[], group: TypeGroup, model: Catalogue['model']): Salvage {
  const parts = losses.map(({ kind, zoneClass, grade }) => ({
    weight: model.zoneWeight[group][zoneClass] * kind.scoreFactor,
    severity: model.severity[grade],
    remaining: 1 - kind.treatability,
    chance: repairChance(kind, grade, model),
  }));
  const found = shares(parts.map(({ weight, severity }) => weight * severity));
  const after = shares(parts.map(({ weight, severity, remaining }) => weight * severity * remaining));
  return {
    found: found.score,
    after: after.score,
    odds: parts.reduce((product, { chance }) => product * (chance ?? 1), 1),
    losses: parts.map(({ weight, severity, chance }, index) => ({
      weight,
      severity,
      points: found.points[index] ?? 0,
      pointsAfter: after.points[index] ?? 0,
      chance,
    })),
  };
}
