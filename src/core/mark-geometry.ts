/*
 * Sums on marks over a photograph. A spot is a share of the picture's width and height, so that it holds whatever size
 * the picture is shown at; distances are only meaningful in pixels, and so come with the picture's size.
 */

export type Spot = readonly [x: number, y: number];
export interface PictureSize {
  readonly width: number;
  readonly height: number;
}
type Pixel = readonly [number, number];

export const toPixel = ([x, y]: Spot, { width, height }: PictureSize): Pixel => [x * width, y * height];
/** The share a pixel place is of the picture; not kept inside it. */
export const toSpot = ([x, y]: Pixel, { width, height }: PictureSize): Spot => [x / width, y / height];

const clamp = (value: number): number => Math.min(1, Math.max(0, value));
export const insidePicture = ([x, y]: Spot): Spot => [clamp(x), clamp(y)];

/** Size of the picture whose long side is at most `longSidePx`, whole pixels; what is smaller stays as it is. */
export function fittedSize({ width, height }: PictureSize, longSidePx: number): PictureSize {
  const by = Math.min(1, longSidePx / Math.max(width, height));
  return { width: Math.max(1, Math.round(width * by)), height: Math.max(1, Math.round(height * by)) };
}

/** Distance of two spots in pixels of the picture. */
export function apartPx(a: Spot, b: Spot, size: PictureSize): number {
  return Math.hypot((a[0] - b[0]) * size.width, (a[1] - b[1]) * size.height);
}

/** Length along a line of spots, in pixels of the picture. */
export const lengthPx = (line: readonly Spot[], size: PictureSize): number =>
  line.reduce((sum, spot, i) => (i === 0 ? 0 : sum + apartPx(line[i - 1] as Spot, spot, size)), 0);

/** Index of the spot nearest to a place and its distance in pixels; undefined among none. */
export function nearest(
  spots: readonly Spot[],
  to: Spot,
  size: PictureSize,
): { readonly index: number; readonly px: number } | undefined {
  let best: { index: number; px: number } | undefined;
  for (const [index, spot] of spots.entries()) {
    const px = apartPx(spot, to, size);
    if (!best || px < best.px) best = { index, px };
  }
  return best;
}

/** Distance, in pixels, from a place to the stretch between two spots. */
function toStretch(p: Spot, a: Spot, b: Spot, size: PictureSize): number {
  const [px, py] = toPixel(p, size);
  const [ax, ay] = toPixel(a, size);
  const [bx, by] = toPixel(b, size);
  const square = (bx - ax) ** 2 + (by - ay) ** 2;
  const t = square === 0 ? 0 : Math.min(1, Math.max(0, ((px - ax) * (bx - ax) + (py - ay) * (by - ay)) / square));
  return Math.hypot(px - ax - t * (bx - ax), py - ay - t * (by - ay));
}

/** Distance, in pixels, from a place to a line of spots; infinite for an empty line. */
export function awayFromLine(p: Spot, line: readonly Spot[], size: PictureSize): number {
  if (line.length === 1) return apartPx(p, line[0] as Spot, size);
  let least = Number.POSITIVE_INFINITY;
  for (let i = 1; i < line.length; i++)
    least = Math.min(least, toStretch(p, line[i - 1] as Spot, line[i] as Spot, size));
  return least;
}

/**
 * Where one more tap belongs among the taps on a line: between the two it lies between, else beyond the nearer end.
 * Two taps and a third beside the middle make a corner in the middle, not a tail.
 */
export function withTap(taps: readonly Spot[], tap: Spot, size: PictureSize): readonly Spot[] {
  const [first, last] = [taps[0], taps.at(-1)];
  if (taps.length < 2 || !first || !last) return [...taps, tap];
  let at = taps.length;
  let least = Number.POSITIVE_INFINITY;
  for (let leg = 1; leg < taps.length; leg++) {
    const [a, b] = [taps[leg - 1] as Spot, taps[leg] as Spot];
    // How much longer the line grows by going round by the tap.
    const detour = apartPx(a, tap, size) + apartPx(tap, b, size) - apartPx(a, b, size);
    if (detour < least) [least, at] = [detour, leg];
  }
  if (apartPx(last, tap, size) < least) [least, at] = [apartPx(last, tap, size), taps.length];
  if (apartPx(first, tap, size) < least) at = 0;
  return [...taps.slice(0, at), tap, ...taps.slice(at)];
}

/**
 * A traced line cut at its taps: leg i runs from tap i to tap i + 1. Taps lie near the line, not on it, and in its order.
 */
export function legsOf(path: readonly Spot[], taps: readonly Spot[], size: PictureSize): readonly (readonly Spot[])[] {
  const cuts = [0];
  for (const tap of taps.slice(1, -1)) {
    const from = cuts.at(-1) as number;
    cuts.push(from + (nearest(path.slice(from), tap, size)?.index ?? 0));
  }
  cuts.push(path.length - 1);
  return cuts.slice(1).map((end, i) => path.slice(cuts[i] as number, end + 1));
}

/**
 * The same line with fewer points, none of those left out farther than `withinPx` from it.
 * Source: Ramer 1972, Douglas and Peucker 1973 (from memory).
 */
export function simplified(line: readonly Spot[], withinPx: number, size: PictureSize): readonly Spot[] {
  if (line.length < 3) return line;
  const keep = new Uint8Array(line.length);
  keep[0] = 1;
  keep[line.length - 1] = 1;
  const open: [number, number][] = [[0, line.length - 1]];
  for (let stretch = open.pop(); stretch; stretch = open.pop()) {
    const [from, to] = stretch;
    let [worst, at] = [withinPx, -1];
    for (let i = from + 1; i < to; i++) {
      const away = toStretch(line[i] as Spot, line[from] as Spot, line[to] as Spot, size);
      if (away > worst) [worst, at] = [away, i];
    }
    if (at < 0) continue;
    keep[at] = 1;
    open.push([from, at], [at, to]);
  }
  return line.filter((_, i) => keep[i] === 1);
}

/** The outline that taps mean: two are opposite corners of a box, more go round. Fewer mean none. */
export function outlineOf(taps: readonly Spot[]): readonly Spot[] {
  const [a, b] = taps;
  if (taps.length !== 2 || !a || !b) return taps.length < 3 ? [] : taps;
  return [a, [b[0], a[1]], b, [a[0], b[1]]];
}

/** Area inside an outline in the square of its unit. Source: shoelace formula. */
export function areaOf(outline: readonly (readonly [number, number])[]): number {
  let twice = 0;
  for (const [i, [x, y]] of outline.entries()) {
    const [nextX, nextY] = outline[(i + 1) % outline.length] as readonly [number, number];
    twice += x * nextY - nextX * y;
  }
  return Math.abs(twice) / 2;
}

/** Middle of the box round some spots; where the number of a mark stands when it has no better place. */
export function middleOf(spots: readonly Spot[]): Spot {
  const xs = spots.map(([x]) => x);
  const ys = spots.map(([, y]) => y);
  return [(Math.min(...xs) + Math.max(...xs)) / 2, (Math.min(...ys) + Math.max(...ys)) / 2];
}
