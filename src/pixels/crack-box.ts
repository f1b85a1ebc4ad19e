import { centreOnDark, smooth } from './crack-centre.ts';
import type { CrackTrace } from './crack-trace.ts';
import { cheapestPath, type Start } from './path.ts';
import { boxOf } from './polygon.ts';
import { ridgeField } from './ridge.ts';
import { quantile } from './sample.ts';
import { type Failed, failed, type Img, type Px, type Running, stopped } from './types.ts';

/** Ends weaker than this share of the path's 60 % quantile are cut off: the box was drawn larger than the crack. */
const FADED = 0.35;

/**
 * The strongest line through a dragged box, from one short side to the other, its faint ends cut off.
 * @param a,b two opposite corners of the box
 * Source: live wire with whole sides as starts and ends, see `path.ts`.
 */
export function crackInBox(img: Img, a: Px, b: Px, run?: Running): CrackTrace | Failed {
  const box = boxOf([a, b], img.width, img.height);
  const wide = box.right - box.left;
  const high = box.bottom - box.top;
  if (wide < 4 || high < 4 || Math.max(wide, high) < 16) return failed('too-few-points');
  if (stopped(run, 'crack lines', 0)) return failed('cancelled');
  const field = ridgeField(img, box.left, box.top, box.right, box.bottom);
  const at = (x: number, y: number): number => field.strength[y * field.width + x] as number;
  const all: number[] = [];
  for (let y = box.top; y < box.bottom; y++) for (let x = box.left; x < box.right; x++) all.push(at(x, y));
  const full = quantile(all, 0.98);
  if (!(full > 0)) return failed('too-weak');
  const starts: Start[] = [];
  const ends: Start[] = [];
  if (wide >= high)
    for (let y = box.top; y < box.bottom; y++) {
      starts.push({ x: box.left, y, cost: 0 });
      ends.push({ x: box.right - 1, y, cost: 0 });
    }
  else
    for (let x = box.left; x < box.right; x++) {
      starts.push({ x, y: box.top, cost: 0 });
      ends.push({ x, y: box.bottom - 1, cost: 0 });
    }
  if (stopped(run, 'crack path', 0.5)) return failed('cancelled');
  const path = cheapestPath(field, box, full, starts, ends);
  if (!path) return failed('too-few-points');
  const kept = withoutFaintEnds(path, (p) => at(p[0], p[1]));
  if (kept.length < 8) return failed('too-weak');
  let sum = 0;
  for (const [x, y] of kept) sum += Math.min(1, at(x, y) / full);
  return { ok: true, path: smooth(centreOnDark(img, kept)), strength: sum / kept.length, weakLegs: [] };
}

function withoutFaintEnds<P>(path: readonly P[], strength: (p: P) => number): P[] {
  const raw = path.map(strength);
  const even = raw.map((_, i) => {
    const near = raw.slice(Math.max(0, i - 5), i + 6);
    return near.reduce((s, v) => s + v, 0) / near.length;
  });
  const enough = FADED * quantile(even, 0.6);
  let first = 0;
  let last = path.length - 1;
  while (first < last && (even[first] as number) < enough) first++;
  while (last > first && (even[last] as number) < enough) last--;
  return path.slice(first, last + 1);
}
