import type { Luck } from './luck.ts';
import type { Hazard, Unlooked } from './situation.ts';

/** A loss that is there in every draw, with the luck of its repair; `fails` is a what-if: no luck helps. */
export interface Found {
  readonly hazard: Hazard;
  readonly luck: Float64Array;
  readonly fails: boolean;
}

/** A kind nobody looked for: which draws have it, at which grade, and the luck of its repair there. */
export interface Hidden {
  readonly unlooked: Unlooked;
  /** Grade in every draw, 0 where it is absent. */
  readonly grades: Uint8Array;
  /** The draws it is in. */
  readonly where: Int32Array;
  readonly luck: Float64Array;
}

/** Draws whether an unlooked kind is there and how bad. */
export function hide(unlooked: Unlooked, luck: Luck): Hidden {
  const { kind, belief } = unlooked;
  const there = luck.draw(`${kind} there`);
  const bad = luck.draw(`${kind} grade`);
  const grades = new Uint8Array(luck.count);
  const to1 = belief.grades[0];
  const to2 = to1 + belief.grades[1];
  const to3 = to2 + belief.grades[2];
  let present = 0;
  for (let i = 0; i < luck.count; i += 1) {
    if ((there[i] as number) >= belief.present) continue;
    const u = bad[i] as number;
    grades[i] = u < to1 ? 1 : u < to2 ? 2 : u < to3 ? 3 : 4;
    present += 1;
  }
  const where = new Int32Array(present);
  for (let i = 0, n = 0; n < present; i += 1) {
    if (grades[i] === 0) continue;
    where[n] = i;
    n += 1;
  }
  return { unlooked, grades, where, luck: luck.draw(`${kind} holds 0`) };
}

/** What becomes of the block in every draw, before any money. One number for each draw; flags are 0 or 1. */
export interface Fate {
  /** Score of 100 as it stands. */
  readonly found: Float64Array;
  /** Share of its structure as it stands, 0–1. */
  readonly holdsTogether: Float64Array;
  /** Score of 100 reached by the repairs that were done and held. */
  readonly reached: Float64Array;
  /** Structure of 100 reached. */
  readonly structure: Float64Array;
  /** Rank of the step at which the work was given up; the number of treatments where it was not. */
  readonly stop: Uint8Array;
  readonly refused: Uint8Array;
  readonly copyable: Uint8Array;
  /** Something critical as it stands, and something critical that no repair took away. */
  readonly critical: Uint8Array;
  readonly criticalLeft: Uint8Array;
}

/**
 * Plays every draw: what is there, which repairs hold, where the work stops. Column by column, a loss at a time over all
 * draws, because that is several times faster than draw by draw; every draw multiplies in the same order.
 */
export function fatesOf(
  found: readonly Found[],
  hidden: readonly Hidden[],
  steps: number,
  copyable: boolean,
  count: number,
): Fate {
  const fate: Fate = {
    found: new Float64Array(count).fill(found.reduce((score, { hazard }) => score * (1 - hazard.loss), 100)),
    holdsTogether: new Float64Array(count).fill(
      found.reduce((share, { hazard }) => (hazard.structural ? share * (1 - hazard.loss) : share), 1),
    ),
    reached: new Float64Array(count).fill(100),
    structure: new Float64Array(count).fill(100),
    stop: new Uint8Array(count).fill(steps),
    refused: new Uint8Array(count).fill(Number(found.some(({ hazard }) => hazard.refused))),
    copyable: new Uint8Array(count).fill(Number(copyable && !found.some(({ hazard }) => hazard.blocksCopying))),
    critical: new Uint8Array(count).fill(Number(found.some(({ hazard }) => hazard.critical))),
    criticalLeft: new Uint8Array(count),
  };

  // Restoring stops at the first essential repair that fails; what would come after it is neither done nor paid.
  for (const { hazard, luck, fails } of found) {
    const { chance, demand } = hazard;
    if (demand.essential < 0 || (chance >= 1 && !fails)) continue;
    for (let i = 0; i < count; i += 1) if (fails || (luck[i] as number) >= chance) stopAt(fate, i, demand.essential);
  }
  for (const { unlooked, grades, where, luck } of hidden) {
    for (const i of where) {
      const hazard = unlooked.atGrade[((grades[i] as number) - 1) as 0 | 1 | 2 | 3];
      const kept = 1 - hazard.loss;
      fate.found[i] = (fate.found[i] as number) * kept;
      if (hazard.structural) fate.holdsTogether[i] = (fate.holdsTogether[i] as number) * kept;
      if (hazard.refused) fate.refused[i] = 1;
      if (hazard.critical) fate.critical[i] = 1;
      if (hazard.blocksCopying) fate.copyable[i] = 0;
      if ((luck[i] as number) >= hazard.chance) stopAt(fate, i, hazard.demand.essential);
    }
  }

  for (const { hazard, luck, fails } of found) {
    for (let i = 0; i < count; i += 1) mend(fate, i, hazard, !fails && (luck[i] as number) < hazard.chance);
  }
  for (const { unlooked, grades, where, luck } of hidden) {
    for (const i of where) {
      const hazard = unlooked.atGrade[((grades[i] as number) - 1) as 0 | 1 | 2 | 3];
      mend(fate, i, hazard, (luck[i] as number) < hazard.chance);
    }
  }
  return fate;
}

function stopAt({ stop }: Fate, i: number, rank: number): void {
  if (rank >= 0 && rank < (stop[i] as number)) stop[i] = rank;
}

/** A repair takes its share of the loss away if it holds, and if the work got that far. */
function mend(fate: Fate, i: number, hazard: Hazard, holds: boolean): void {
  const held = holds && hazard.demand.last <= (fate.stop[i] as number);
  const left = 1 - (held ? hazard.repaired : hazard.loss);
  fate.reached[i] = (fate.reached[i] as number) * left;
  if (hazard.structural) fate.structure[i] = (fate.structure[i] as number) * left;
  if (!held && hazard.critical) fate.criticalLeft[i] = 1;
}
