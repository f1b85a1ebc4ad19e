import { centreOnDark, smooth } from './crack-centre.ts';
import { followEnd } from './crack-ends.ts';
import { type Box, cheapestPath, type Start } from './path.ts';
import { type RidgeField, ridgeField } from './ridge.ts';
import { quantile } from './sample.ts';
import { type Failed, failed, type Img, type Px, type Running, stopped } from './types.ts';

export type CrackTrace = {
  readonly ok: true;
  /** About one point per pixel along the middle of the crack, from the first tap to the last. */
  readonly path: Px[];
  /** Mean strength along the path, 0 to 1 of the strongest lines near it. */
  readonly strength: number;
  /** Legs (0 = between the first two taps) to draw dashed with "check this part". */
  readonly weakLegs: number[];
};

export type TraceOptions = {
  /** How far a tap may be from the crack, in pixels. 10 suits a finger; 5 a magnified, careful tap. */
  readonly snapPx?: number;
};

/**
 * Quantile of the strength near the taps that counts as a full-strength line. Trade estimate, from the developers'
 * photos.
 */
const FULL_QUANTILE = 0.98;
/** Never less than this counts as full strength: on bare, even wood the strongest line is noise. */
const FAINTEST_FULL = 0.06;
/** How fast a place loses appeal with its distance from the tap, as a share of the snapping radius squared. */
const SNAP_FADE = 0.9;

/** A leg whose mean strength is below this is reported as weak. Trade estimate, from the developers' photos. */
const WEAK_LEG = 0.2;

/**
 * The crack between taps, first to last, in the order given.
 * @param taps two or more places on or near the crack; more taps make more legs
 * @returns the path in photo pixels, or why there is none (`too-few-points`, `too-weak`, `cancelled`)
 * Source: ridge strength and live wire, see `ridge.ts` and `path.ts`.
 */
export function traceCrack(img: Img, taps: readonly Px[], options?: TraceOptions, run?: Running): CrackTrace | Failed {
  if (taps.length < 2) return failed('too-few-points');
  const snapPx = options?.snapPx ?? 10;
  const whole: [number, number][] = [];
  const weakLegs: number[] = [];
  let strengthSum = 0;
  let full = 0;
  let field: RidgeField | undefined;
  for (let leg = 0; leg + 1 < taps.length; leg++) {
    if (stopped(run, 'crack path', leg / (taps.length - 1))) return failed('cancelled');
    const a = taps[leg] as Px;
    const b = taps[leg + 1] as Px;
    const box = boxAround(img, a, b);
    field = ridgeField(img, box.left, box.top, box.right, box.bottom);
    full = fullStrength(field, box);
    const starts = snapped(field, box, a, snapPx, full);
    const ends = snapped(field, box, b, snapPx, full);
    const path = cheapestPath(field, box, full, starts, ends);
    if (!path || path.length < 2) return failed('too-few-points');
    let sum = 0;
    for (const [x, y] of path) sum += Math.min(1, (field.strength[y * field.width + x] as number) / full);
    if (sum / path.length < WEAK_LEG) weakLegs.push(leg);
    strengthSum += sum / path.length;
    whole.push(...(leg === 0 ? path : path.slice(1)));
  }
  if (!field || stopped(run, 'crack ends', 0.9)) return failed('cancelled');
  const ended = followEnd(img, followEnd(img, whole).reverse()).reverse();
  const path = smooth(centreOnDark(img, ended));
  return { ok: true, path, strength: strengthSum / (taps.length - 1), weakLegs };
}

/** The taps' rectangle and a margin of 30 % of its longer side, at least 40 px: cracks bow out. */
function boxAround(img: Img, a: Px, b: Px): Box {
  const margin = Math.max(40, 0.3 * Math.max(Math.abs(a[0] - b[0]), Math.abs(a[1] - b[1])));
  return {
    left: Math.max(0, Math.floor(Math.min(a[0], b[0]) - margin)),
    top: Math.max(0, Math.floor(Math.min(a[1], b[1]) - margin)),
    right: Math.min(img.width, Math.ceil(Math.max(a[0], b[0]) + margin)),
    bottom: Math.min(img.height, Math.ceil(Math.max(a[1], b[1]) + margin)),
  };
}

/**
 * The strength that counts as 1: the 98 % quantile in the box, so faint cracks on plain wood count as much as bold
 * ones.
 */
function fullStrength(field: RidgeField, box: Box): number {
  const seen: number[] = [];
  // Some 40,000 samples settle a quantile; sorting every pixel of a large box took longer than the path.
  const step = Math.max(2, Math.floor(Math.sqrt(((box.right - box.left) * (box.bottom - box.top)) / 40_000)));
  for (let y = box.top; y < box.bottom; y += step)
    for (let x = box.left; x < box.right; x += step) seen.push(field.strength[y * field.width + x] as number);
  return Math.max(FAINTEST_FULL, quantile(seen, FULL_QUANTILE));
}

/**
 * Every pixel a tap may have meant, each with the price of meaning it: far from the tap or off any line costs more.
 * The path then chooses. Taking the strongest place near the tap first sent paths from a board joint beside the crack.
 */
function snapped(field: RidgeField, box: Box, tap: Px, snapPx: number, full: number): Start[] {
  const places: Start[] = [];
  const reach = Math.ceil(snapPx);
  const cx = Math.floor(tap[0]);
  const cy = Math.floor(tap[1]);
  for (let y = Math.max(box.top, cy - reach); y <= Math.min(box.bottom - 1, cy + reach); y++)
    for (let x = Math.max(box.left, cx - reach); x <= Math.min(box.right - 1, cx + reach); x++) {
      const away = ((x + 0.5 - tap[0]) ** 2 + (y + 0.5 - tap[1]) ** 2) / (snapPx * snapPx);
      if (away > 1) continue;
      const appeal = Math.min(1, (field.strength[y * field.width + x] as number) / full) * Math.exp(-away / SNAP_FADE);
      places.push({ x, y, cost: (1 - appeal) * snapPx });
    }
  return places;
}
