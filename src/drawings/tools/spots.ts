import type { DrawnZone, DrawnZoneId, Point } from '../shape.ts';
import { areaOf, polygonsOf } from './path.ts';

/** Where marks may sit: spread inside every zone so that no two of a view touch. */

/** Marks have a radius of 9 units, so their middles keep at least this far apart. */
const APART = 18.1;
const WANTED = 8;
const ENOUGH_SPOTS = 6;
/** A thumb, in units: 44 CSS pixels at 320 px. */
const THUMB = 44;

export interface BareZone {
  zone: DrawnZoneId;
  d: string;
  part?: number;
}

/** Places to choose from: x, y, and distance to the zone's edge. Flat arrays, for there are a few hundred in every zone. */
interface Places {
  count: number;
  x: Float64Array;
  y: Float64Array;
  clear: Float64Array;
  /** The most room there is. */
  widest: number;
  /** Which place has it. */
  middle: number;
  /** The middle of the zone's area, which may lie outside it. */
  heart: Point;
  /** Roughly how many marks it holds: by its length if it is thinner than a mark, by its area if not. */
  holds: number;
}

/** Enough places to choose from; more only costs time. */
const ENOUGH = 460;

/** Every edge of the polygons as four numbers: from x, from y, to x, to y. */
function edgesOf(polygons: readonly (readonly Point[])[]): Float64Array {
  const edges = new Float64Array(4 * polygons.reduce((sum, polygon) => sum + polygon.length, 0));
  let next = 0;
  for (const polygon of polygons) {
    for (let k = 0; k < polygon.length; k += 1) {
      edges.set(polygon[k] as Point, next);
      edges.set(polygon[(k + 1) % polygon.length] as Point, next + 2);
      next += 4;
    }
  }
  return edges;
}

/** Whether a place is inside, by the even-odd rule. */
function isWithin(edges: Float64Array, x: number, y: number): boolean {
  let inside = false;
  for (let k = 0; k < edges.length; k += 4) {
    const ay = edges[k + 1] as number;
    const by = edges[k + 3] as number;
    if (ay > y === by > y) continue;
    const ax = edges[k] as number;
    if (x < ax + ((y - ay) * ((edges[k + 2] as number) - ax)) / (by - ay)) inside = !inside;
  }
  return inside;
}

/** Distance from a place to the nearest edge. */
function roomAt(edges: Float64Array, x: number, y: number): number {
  let nearest = Number.POSITIVE_INFINITY;
  for (let k = 0; k < edges.length; k += 4) {
    const ax = edges[k] as number;
    const ay = edges[k + 1] as number;
    const dx = (edges[k + 2] as number) - ax;
    const dy = (edges[k + 3] as number) - ay;
    const square = dx * dx + dy * dy;
    const along = square === 0 ? 0 : Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / square));
    const ex = x - ax - along * dx;
    const ey = y - ay - along * dy;
    nearest = Math.min(nearest, ex * ex + ey * ey);
  }
  return Math.sqrt(nearest);
}

/**
 * Places inside a zone on a grid as fine as the zone's area asks for: a rope line is a thin ring in a large square, and a
 * coarse grid would miss it.
 */
function placesIn(d: string): Places {
  const polygons = polygonsOf(d);
  const edges = edgesOf(polygons);
  let [left, top, right, bottom] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY, 0, 0];
  for (let k = 0; k < edges.length; k += 4) {
    left = Math.min(left, edges[k] as number);
    right = Math.max(right, edges[k] as number);
    top = Math.min(top, edges[k + 1] as number);
    bottom = Math.max(bottom, edges[k + 1] as number);
  }
  const cell = areaOf(polygons) / ENOUGH;
  const grid = Math.sqrt(cell);
  // The area is met by about as many places; a ragged edge may let in a few more.
  const [xs, ys, clear] = [new Float64Array(2 * ENOUGH), new Float64Array(2 * ENOUGH), new Float64Array(2 * ENOUGH)];
  let count = 0;
  let middle = 0;
  let [sumX, sumY] = [0, 0];
  for (let y = top + grid / 2; y < bottom; y += grid) {
    for (let x = left + grid / 2; x < right && count < xs.length; x += grid) {
      if (!isWithin(edges, x, y)) continue;
      const room = roomAt(edges, x, y);
      xs[count] = x;
      ys[count] = y;
      clear[count] = room;
      if (room > (clear[middle] as number) + 0.01) middle = count;
      sumX += x;
      sumY += y;
      count += 1;
    }
  }
  if (count === 0) throw new Error(`A zone has no inside: ${d}`);
  const widest = clear[middle] as number;
  const holds = (count * cell) / (APART * Math.min(APART, Math.max(2 * widest, 1)));
  return { count, x: xs, y: ys, clear, widest, middle, heart: [sumX / count, sumY / count], holds };
}

const apart = ({ x, y }: Places, k: number, [px, py]: Point): number =>
  Math.hypot((x[k] as number) - px, (y[k] as number) - py);

const tidy = (x: number, y: number): Point => [Math.round(x * 10) / 10, Math.round(y * 10) / 10];

/** No gap counts for more than this: beyond it, room to the zone's edge decides. */
const FAR = 46;

/** The gap from every place to the nearest point taken so far, kept up to date as points are taken. */
function gapsTo(places: Places, taken: readonly Point[]): { gaps: Float64Array; take: (point: Point) => void } {
  const gaps = new Float64Array(places.count).fill(FAR);
  const take = ([px, py]: Point): void => {
    for (let k = 0; k < places.count; k += 1) {
      const dx = (places.x[k] as number) - px;
      const dy = (places.y[k] as number) - py;
      const gap = Math.sqrt(dx * dx + dy * dy);
      if (gap < (gaps[k] as number)) gaps[k] = gap;
    }
  };
  for (const point of taken) take(point);
  return { gaps, take };
}

function spread(places: Places, taken: readonly Point[]): Point[] {
  const { gaps, take } = gapsTo(places, taken);
  const spots: Point[] = [];
  // The first in the middle, the others far from it and from each other. Well inside first; close to the edge only where the zone is too thin for that.
  for (const margin of [
    Math.min(10, places.widest * 0.7),
    Math.min(6, places.widest * 0.5),
    Math.min(1.5, places.widest * 0.3),
  ]) {
    while (spots.length < WANTED) {
      let best = -1;
      let highest = 0;
      for (let k = 0; k < places.count; k += 1) {
        const gap = gaps[k] as number;
        const clear = places.clear[k] as number;
        if (clear < margin || gap < APART) continue;
        const score =
          spots.length === 0
            ? 200 + 2 * Math.min(clear, 20) - 0.5 * apart(places, k, places.heart)
            : gap + Math.min(clear, 20) * 0.9;
        if (score > highest) [best, highest] = [k, score];
      }
      if (best < 0) break;
      const spot = tidy(places.x[best] as number, places.y[best] as number);
      spots.push(spot);
      take(spot);
    }
    if (spots.length >= ENOUGH_SPOTS) break;
  }
  return spots;
}

/** Spots for every zone when they choose in this order. */
function allot(
  zones: readonly BareZone[],
  places: readonly Places[],
  labels: readonly Point[],
  rank: (place: Places) => number,
): Point[][] {
  const taken: Point[] = [];
  const allotted: Point[][] = zones.map(() => []);
  const order = zones.map((_, index) => index).sort((a, b) => rank(places[a] as Places) - rank(places[b] as Places));
  for (const index of order) {
    // The number of a part stays readable: no mark comes near it.
    const kept = zones[index]?.part === undefined ? taken : [...taken, labels[index] as Point];
    const spots = spread(places[index] as Places, kept);
    allotted[index] = spots;
    taken.push(...spots);
  }
  return allotted;
}

/**
 * Gives every zone its label, its spots and, when it is thin, its grip. Whoever has the fewest places chooses first;
 * whether that is the thinnest or the smallest differs from view to view, so both are tried and the better one kept. A
 * zone too small for its share gets fewer; tests refuse a drawing in which that happens at home.
 */
export function withSpots(zones: readonly BareZone[]): DrawnZone[] {
  const places = zones.map(({ d }) => placesIn(d));
  const labels = places.map(({ x, y, middle }) => tidy(x[middle] as number, y[middle] as number));
  const [first, second] = [({ holds }: Places) => holds, ({ widest }: Places) => widest].map((rank) =>
    allot(zones, places, labels, rank),
  );
  const worth = (allotted: Point[][] = []): number =>
    allotted.reduce((sum, spots) => sum + Math.min(spots.length, ENOUGH_SPOTS), 0);
  const better = worth(second) > worth(first) ? second : first;
  const drawn = zones.map((bare, index) => ({
    ...bare,
    label: labels[index] as Point,
    spots: better?.[index] ?? [],
    grip: Math.min(36, Math.round(Math.max(0, THUMB - 2 * (places[index] as Places).widest))),
  }));
  // Broad zones first, thin ones on top, or the grip of a lower edge would bury the rope line; the whole comes last.
  const rank = ({ zone, grip }: DrawnZone): number => (zone === 'whole' ? THUMB : grip);
  return drawn.sort((a, b) => rank(a) - rank(b));
}
