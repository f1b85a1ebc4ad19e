import { ridgeField } from './ridge.ts';
import { quantile } from './sample.ts';
import type { Img } from './types.ts';

/** Farthest an end is moved, in pixels: about the radius of a careful finger. */
const STEPS = 8;
/**
 * Share of the path's median strength at which the crack is taken to have ended: cracks taper. Trade estimate from the
 * developers' photos.
 */
const FADED = 0.3;
/**
 * Strength at which any line is plainly seen: the thin end of a bold crack is still crack. Trade estimate, as in `crack-suggest.ts`.
 */
const PLAIN = 0.07;
/** Cosine of the sharpest turn an end may take per step. */
const STRAIGHT = 0.6;

/**
 * Walks on from the last point of a path while the line goes on plainly or as strongly as a third of the path's
 * median, and cuts the
 * path back by the same rule: a finger misses the end of a crack by several pixels either way.
 */
export function followEnd(img: Img, path: [number, number][]): [number, number][] {
  const [lx, ly] = path[path.length - 1] as [number, number];
  const field = ridgeField(img, lx - 20, ly - 20, lx + 21, ly + 21);
  const at = (x: number, y: number): number =>
    x < 0 || y < 0 || x >= img.width || y >= img.height ? 0 : (field.strength[y * img.width + x] as number);
  const typical = quantile(
    path.map(([x, y]) => at(x, y)),
    0.5,
  );
  const enough = Math.min(PLAIN, FADED * typical);
  const out = [...path];
  if (at(lx, ly) >= enough) {
    for (let step = 0; step < STEPS; step++) {
      const [x, y] = out[out.length - 1] as [number, number];
      const [bx, by] = out[Math.max(0, out.length - 6)] as [number, number];
      const n = Math.hypot(x - bx, y - by) || 1;
      const ux = (x - bx) / n;
      const uy = (y - by) / n;
      let best: [number, number] | undefined;
      let bestStrength = enough;
      for (let dy = -1; dy <= 1; dy++)
        for (let dx = -1; dx <= 1; dx++) {
          if ((dx === 0 && dy === 0) || (dx * ux + dy * uy) / Math.hypot(dx, dy) < STRAIGHT) continue;
          const s = at(x + dx, y + dy);
          if (s >= bestStrength) {
            bestStrength = s;
            best = [x + dx, y + dy];
          }
        }
      if (!best) break;
      out.push(best);
    }
  } else {
    for (let cutBack = 0; cutBack < STEPS && out.length > 4; cutBack++) {
      const [x, y] = out[out.length - 1] as [number, number];
      if (at(x, y) >= enough) break;
      out.pop();
    }
  }
  return out;
}
