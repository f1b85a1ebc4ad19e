import type { ThreePoint } from '../catalogue.ts';
import { betaQuantile, normalQuantile, studentTQuantile } from '../distributions.ts';

/** Quantiles of a distribution at evenly spread chances, read by straight lines between: a draw costs a multiplication. */
export type QuantileTable = Float64Array;

const STEPS = 512;

/** Table of a quantile function; the ends are taken at half a step, since many distributions have no end. */
export function tableOf(quantile: (p: number) => number): QuantileTable {
  const table = new Float64Array(STEPS + 1);
  for (let i = 0; i <= STEPS; i += 1)
    table[i] = quantile(Math.min(1 - 0.25 / STEPS, Math.max(0.25 / STEPS, i / STEPS)));
  return table;
}

/** The quantile at chance `u` in (0, 1). */
export function at(table: QuantileTable, u: number): number {
  const x = u * STEPS;
  const i = Math.min(STEPS - 1, Math.floor(x));
  const low = table[i] as number;
  return low + (x - i) * ((table[i + 1] as number) - low);
}

const shapes = new Map<string, QuantileTable>();

/** Beta-PERT of three points as a table in its own unit; a constant where the points are one. Remembered by shape. */
export function pertTable({ o, m, p }: ThreePoint): QuantileTable {
  if (!(p > o)) return new Float64Array(STEPS + 1).fill(m);
  // The table is of the rounded shape, so that it does not depend on which of two nearly equal shapes came first.
  const key = ((m - o) / (p - o)).toFixed(6);
  const mode = Number(key);
  let standard = shapes.get(key);
  if (!standard) {
    standard = tableOf((u) => betaQuantile(u, 1 + 4 * mode, 1 + 4 * (1 - mode)));
    shapes.set(key, standard);
  }
  const range = p - o;
  return standard.map((value) => o + range * value);
}

/** Whether all quantiles are one: then there is nothing to draw. */
export const isConstant = (table: QuantileTable): boolean => table[0] === table[STEPS];

/** A few tables of one owner, remembered: they change only when a job is logged. */
function remembering<Figures extends readonly number[]>(make: (...figures: Figures) => QuantileTable): typeof make {
  const known = new Map<string, QuantileTable>();
  return (...figures) => {
    const key = figures.join(' ');
    let table = known.get(key);
    if (!table) {
      if (known.size >= 64) known.clear();
      table = make(...figures);
      known.set(key, table);
    }
    return table;
  };
}

const standardNormal = remembering(() => tableOf(normalQuantile));
const standardStudent = remembering((freedom: number) => tableOf((u) => studentTQuantile(u, freedom)));

/** Log-normal multiplier with median e^mu and log spread sigma; a constant where there is no spread. */
export const logNormalTable = remembering((mu: number, sigma: number) =>
  standardNormal().map((z) => Math.exp(mu + sigma * z)),
);

/** Multiplier whose log is Student t: the predictive of a log of hours. Its mean does not exist; its quantiles do. */
export const logStudentTable = remembering((mu: number, scale: number, freedom: number) =>
  standardStudent(freedom).map((t) => Math.exp(mu + scale * t)),
);
