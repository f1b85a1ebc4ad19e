import type { RidgeField } from './ridge.ts';

/** A rectangle of whole pixels; right and bottom are one past the last. */
export type Box = { readonly left: number; readonly top: number; readonly right: number; readonly bottom: number };

/** Cost per pixel of the best possible line: keeps detours along a perfect line from being free. */
const FLOOR = 0.03;
/** Weight of stepping across the direction of a line instead of along it. */
const ACROSS = 0.5;

/** Steps to the 8 neighbours and the 8 knight's moves, so that a path may run at any angle without stair-steps. */
const STEPS: readonly (readonly [number, number])[] = [
  [1, 0],
  [1, 1],
  [0, 1],
  [-1, 1],
  [-1, 0],
  [-1, -1],
  [0, -1],
  [1, -1],
  [2, 1],
  [1, 2],
  [-1, 2],
  [-2, 1],
  [-2, -1],
  [-1, -2],
  [1, -2],
  [2, -1],
];

/** Never more than any step costs (FLOOR × length 1), so a settled pixel can not be improved from its own bucket. */
const BUCKET = FLOOR;

export type Start = { readonly x: number; readonly y: number; readonly cost: number };

/**
 * Cheapest 16-neighbour path from any start to any end inside a box; a step of length ℓ costs
 * ℓ·(0.03 + (1 − R)³ + 0.5·R·(1 − |along·step|)) with R the strength over `full`, at most 1.
 * Starts and ends carry a cost of their own, so that a rough tap is weighed and not obeyed.
 * @returns pixels (column, row) from start to end, or undefined when the box holds no connection
 * Source: live wire, Mortensen and Barrett 1995; Dijkstra 1959 with a circular bucket queue (Dial 1969).
 */
export function cheapestPath(
  field: RidgeField,
  box: Box,
  full: number,
  starts: readonly Start[],
  ends: readonly Start[],
): [number, number][] | undefined {
  const w = box.right - box.left;
  const h = box.bottom - box.top;
  const cost = new Float32Array(w * h).fill(Number.POSITIVE_INFINITY);
  const from = new Int8Array(w * h).fill(-1);
  const settled = new Uint8Array(w * h);
  const endCost = new Map<number, number>();
  for (const e of ends) endCost.set((e.y - box.top) * w + e.x - box.left, e.cost);

  const lengths = STEPS.map(([dx, dy]) => Math.hypot(dx, dy));
  const longest = Math.sqrt(5) * (FLOOR + 1 + ACROSS);
  const most = Math.max(longest, ...starts.map((s) => s.cost));
  const count = Math.ceil(most / BUCKET) + 2;
  const buckets: number[][] = Array.from({ length: count }, () => []);
  let waiting = 0;
  const push = (i: number, c: number): void => {
    (buckets[Math.floor(c / BUCKET) % count] as number[]).push(i);
    waiting++;
  };
  for (const s of starts) {
    const i = (s.y - box.top) * w + s.x - box.left;
    if (s.cost >= (cost[i] as number)) continue;
    cost[i] = s.cost;
    push(i, s.cost);
  }
  let best = Number.POSITIVE_INFINITY;
  let bestEnd = -1;
  for (let turn = 0; waiting > 0 && turn * BUCKET < best; turn++) {
    const bucket = buckets[turn % count] as number[];
    while (bucket.length > 0) {
      const i = bucket.pop() as number;
      waiting--;
      if (settled[i]) continue;
      settled[i] = 1;
      const here = cost[i] as number;
      const end = endCost.get(i);
      if (end !== undefined && here + end < best) {
        best = here + end;
        bestEnd = i;
      }
      const x = i % w;
      const y = (i - x) / w;
      for (let k = 0; k < 16; k++) {
        const step = STEPS[k] as readonly [number, number];
        const nx = x + step[0];
        const ny = y + step[1];
        if (nx < 0 || ny < 0 || nx >= w || ny >= h) continue;
        const j = ny * w + nx;
        if (settled[j]) continue;
        const at = (ny + box.top) * field.width + nx + box.left;
        const r = Math.min(1, (field.strength[at] as number) / full);
        const weak = 1 - r;
        const length = lengths[k] as number;
        const turned =
          1 - Math.abs((field.alongX[at] as number) * step[0] + (field.alongY[at] as number) * step[1]) / length;
        const c = here + length * (FLOOR + weak * weak * weak + ACROSS * r * turned);
        if (c >= (cost[j] as number)) continue;
        cost[j] = c;
        from[j] = k;
        push(j, c);
      }
    }
  }
  if (bestEnd < 0) return undefined;
  const path: [number, number][] = [];
  for (let i = bestEnd; ; ) {
    const x = i % w;
    const y = (i - x) / w;
    path.push([x + box.left, y + box.top]);
    const k = from[i] as number;
    if (k < 0) return path.reverse();
    const step = STEPS[k] as readonly [number, number];
    i = (y - step[1]) * w + x - step[0];
  }
}
