import type { Mm } from './types.ts';

export type PinLine = {
  /** Marks that follow one straight line so closely that chance is no likely cause. */
  readonly aligned: boolean;
  /** Which marks lie on it, in order along the line. */
  readonly members: readonly number[];
  /**
   * How many lines as good as this one chance alone would be expected to make among so many marks; small = no chance.
   */
  readonly falseAlarms: number;
  /** Spread of the gaps between neighbours as a share of their mean: near 0 for pins set by measure. */
  readonly unevenness: number;
};

/** Half width of the strip, in mm: how straight a row set by hand is. Trade estimate. */
const HALF_STRIP_MM = 1;
/** A row is believed when chance would make fewer than this many like it. */
const FEWEST_FALSE = 0.05;

/**
 * Do some of these marks follow a straight line? Beetles do not work to a ruler; pins and tacks along an edge do.
 * Marks lie in millimetres; `areaMm2` is the area they were looked for in.
 * @returns the best row, or undefined for fewer than four marks
 * Source: number of false alarms of an alignment, Desolneux, Moisan and Morel 2000 (a contrario detection): pairs of
 * marks times the binomial chance that so many others fall into the strip between the row's ends.
 */
export function pinLine(marks: readonly Mm[], areaMm2: number): PinLine | undefined {
  const n = marks.length;
  if (n < 4 || !(areaMm2 > 0)) return undefined;
  const tests = (n * (n - 1)) / 2;
  let best: { members: number[]; falseAlarms: number } | undefined;
  for (let i = 0; i < n; i++)
    for (let j = i + 1; j < n; j++) {
      const a = marks[i] as Mm;
      const b = marks[j] as Mm;
      const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
      if (length < 4 * HALF_STRIP_MM) continue;
      const ux = (b[0] - a[0]) / length;
      const uy = (b[1] - a[1]) / length;
      const within: [number, number][] = [];
      for (let k = 0; k < n; k++) {
        const p = marks[k] as Mm;
        const along = (p[0] - a[0]) * ux + (p[1] - a[1]) * uy;
        const off = (p[1] - a[1]) * ux - (p[0] - a[0]) * uy;
        if (Math.abs(off) <= HALF_STRIP_MM && along >= -0.01 && along <= length + 0.01) within.push([along, k]);
      }
      if (within.length < 4) continue;
      const chance = Math.min(1, (2 * HALF_STRIP_MM * length) / areaMm2);
      const falseAlarms = tests * atLeast(within.length - 2, n - 2, chance);
      if (best && falseAlarms >= best.falseAlarms) continue;
      within.sort((p, q) => p[0] - q[0]);
      best = { members: within.map(([, k]) => k), falseAlarms };
    }
  if (!best) return { aligned: false, members: [], falseAlarms: tests, unevenness: Number.NaN };
  return { ...best, aligned: best.falseAlarms < FEWEST_FALSE, unevenness: unevennessOf(best.members, marks) };
}

/** Chance of k or more hits in n independent tries. */
function atLeast(k: number, n: number, chance: number): number {
  let sum = 0;
  for (let hits = k; hits <= n; hits++) {
    let term = 1;
    for (let i = 0; i < hits; i++) term *= ((n - i) / (hits - i)) * chance;
    sum += term * (1 - chance) ** (n - hits);
  }
  return Math.min(1, sum);
}

function unevennessOf(members: readonly number[], marks: readonly Mm[]): number {
  const gaps: number[] = [];
  for (let i = 1; i < members.length; i++) {
    const p = marks[members[i - 1] as number] as Mm;
    const q = marks[members[i] as number] as Mm;
    gaps.push(Math.hypot(q[0] - p[0], q[1] - p[1]));
  }
  const mean = gaps.reduce((s, g) => s + g, 0) / gaps.length;
  const variance = gaps.reduce((s, g) => s + (g - mean) ** 2, 0) / gaps.length;
  return Math.sqrt(variance) / mean;
}
