import { traceCrack } from './crack-trace.ts';
import { boxOf, isInPolygon } from './polygon.ts';
import { type RidgeField, ridgeField } from './ridge.ts';
import { quantile } from './sample.ts';
import { type Failed, failed, type Img, type Px, type Running, stopped } from './types.ts';

export type CrackSuggestion = { readonly path: Px[]; readonly strength: number };

/** Strength from which a line starts a suggestion, and down to which it goes on. Trade estimate, from rendered wood. */
const STRONG = 0.14;
const WEAK = 0.07;
/** Shorter, stubbier or fainter lines are grain, pores and tool marks. */
const SHORTEST_PX = 40;
const ELONGATION = 4;
const STRONG_SHARE = 0.35;
/** Gaps along a line that are bridged. */
const GAP_PX = 3;

/**
 * Lines inside an outline that may be cracks, strongest first. Suggestions only: on real surfaces about half are grain
 * or joints, and half the cracks stay unfound. An empty list never means "no cracks".
 * Source: two thresholds with tracking, J. Canny 1986, on the ridge strength of `ridge.ts`; then traced as usual.
 */
export function suggestCracks(img: Img, region: readonly Px[], run?: Running): CrackSuggestion[] | Failed {
  if (region.length < 3) return failed('too-few-points');
  const box = boxOf(region, img.width, img.height);
  if (stopped(run, 'crack lines', 0)) return failed('cancelled');
  const field = ridgeField(img, box.left, box.top, box.right, box.bottom);
  const crests = crestsIn(field, box, region);
  if (stopped(run, 'crack pieces', 0.4)) return failed('cancelled');
  const pieces = linked(field, crests);
  const found: CrackSuggestion[] = [];
  for (const [i, piece] of pieces.entries()) {
    if (stopped(run, 'crack paths', 0.5 + (0.5 * i) / pieces.length)) return failed('cancelled');
    const ends = endsOf(field, piece);
    if (!ends || found.some((f) => covers(f.path, piece, field.width))) continue;
    const trace = traceCrack(img, ends, { snapPx: 3 });
    if (trace.ok) found.push({ path: trace.path, strength: trace.strength });
  }
  return found.sort((p, q) => q.strength * q.path.length - p.strength * p.path.length);
}

type Crests = { readonly weak: Uint8Array; readonly strong: number; readonly pixels: number[] };

/** Pixels stronger than both neighbours across their line and above the lower threshold. */
function crestsIn(
  field: RidgeField,
  box: { left: number; top: number; right: number; bottom: number },
  region: readonly Px[],
): Crests {
  const { strength, alongX, alongY, width, height } = field;
  const seen: number[] = [];
  for (let y = box.top; y < box.bottom; y += 3)
    for (let x = box.left; x < box.right; x += 3) seen.push(strength[y * width + x] as number);
  // On coarse surfaces everything is a little line-like: the bar rises with the surface's own 90 %.
  const busy = quantile(seen, 0.9);
  const weakest = Math.max(WEAK, 1.2 * busy);
  const weak = new Uint8Array(width * height);
  const pixels: number[] = [];
  for (let y = Math.max(1, box.top); y < Math.min(height - 1, box.bottom); y++)
    for (let x = Math.max(1, box.left); x < Math.min(width - 1, box.right); x++) {
      const i = y * width + x;
      const s = strength[i] as number;
      if (s < weakest) continue;
      const across = Math.round(-(alongY[i] as number)) + Math.round(alongX[i] as number) * width;
      if (s < (strength[i + across] as number) || s <= (strength[i - across] as number)) continue;
      if (!isInPolygon([x + 0.5, y + 0.5], region)) continue;
      weak[i] = 1;
      pixels.push(i);
    }
  return { weak, strong: Math.max(STRONG, 2 * busy), pixels };
}

/** Crest pixels joined where neighbours, or the next one along the line within the gap, run the same way. */
function linked(field: RidgeField, { weak, strong, pixels }: Crests): number[][] {
  const { width, alongX, alongY, strength } = field;
  const taken = new Uint8Array(weak.length);
  const pieces: number[][] = [];
  const byStrength = [...pixels].sort((p, q) => (strength[q] as number) - (strength[p] as number) || p - q);
  for (const start of byStrength) {
    if (taken[start] || (strength[start] as number) < strong) continue;
    const piece: number[] = [];
    const stack = [start];
    taken[start] = 1;
    while (stack.length > 0) {
      const i = stack.pop() as number;
      piece.push(i);
      for (let v = -GAP_PX; v <= GAP_PX; v++)
        for (let u = -GAP_PX; u <= GAP_PX; u++) {
          const j = i + v * width + u;
          if (!weak[j] || taken[j]) continue;
          const far = Math.hypot(u, v);
          const same = Math.abs(
            (alongX[i] as number) * (alongX[j] as number) + (alongY[i] as number) * (alongY[j] as number),
          );
          const ahead = Math.abs((alongX[i] as number) * u + (alongY[i] as number) * v) / far;
          if (far > 1.5 && (same < 0.8 || ahead < 0.8)) continue;
          taken[j] = 1;
          stack.push(j);
        }
    }
    const bold = piece.filter((i) => (strength[i] as number) >= strong).length;
    if (bold >= STRONG_SHARE * piece.length) pieces.push(piece);
  }
  return pieces;
}

/** The two ends of a long thin piece along its main direction; undefined for a short or stubby one. */
function endsOf(field: RidgeField, piece: readonly number[]): [Px, Px] | undefined {
  const points = piece.map((i): Px => [(i % field.width) + 0.5, Math.floor(i / field.width) + 0.5]);
  const n = points.length;
  let mx = 0;
  let my = 0;
  for (const p of points) {
    mx += p[0] / n;
    my += p[1] / n;
  }
  let xx = 0;
  let xy = 0;
  let yy = 0;
  for (const p of points) {
    xx += (p[0] - mx) ** 2 / n;
    xy += ((p[0] - mx) * (p[1] - my)) / n;
    yy += (p[1] - my) ** 2 / n;
  }
  const half = (xx + yy) / 2;
  const root = Math.hypot((xx - yy) / 2, xy);
  if (Math.sqrt((half + root) / Math.max(half - root, 0.1)) < ELONGATION) return undefined;
  const angle = 0.5 * Math.atan2(2 * xy, xx - yy);
  const along = (p: Px): number => (p[0] - mx) * Math.cos(angle) + (p[1] - my) * Math.sin(angle);
  let first = points[0] as Px;
  let last = first;
  for (const p of points) {
    if (along(p) < along(first)) first = p;
    if (along(p) > along(last)) last = p;
  }
  return along(last) - along(first) < SHORTEST_PX ? undefined : [first, last];
}

/** Whether most of a piece lies on a path already found. */
function covers(path: readonly Px[], piece: readonly number[], width: number): boolean {
  let near = 0;
  for (const i of piece) {
    const x = (i % width) + 0.5;
    const y = Math.floor(i / width) + 0.5;
    if (path.some((p) => Math.abs(p[0] - x) < 4 && Math.abs(p[1] - y) < 4)) near++;
  }
  return near > 0.5 * piece.length;
}
