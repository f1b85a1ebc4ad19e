import type { Point } from '../shape.ts';
import { type Camera, fromRight } from './camera.ts';
import { curveThrough } from './path.ts';

/** Bodies with an oval at every height, as turned on an oval lathe: crowns, collars, boards, berets, pedestals. */

/** An oval at a height. Half-length runs front to back, half-width side to side; `shift` moves it toward the front. */
export interface Level {
  up: number;
  long: number;
  wide: number;
  shift: number;
  /** Growth of the four above along the profile: what tells how far round the eye can see. */
  slope: { up: number; long: number; wide: number; shift: number };
}

export type OvalBody = readonly Level[];

const DEGREE = Math.PI / 180;
export const NEAR = 90; // angle of the wearer's right, which faces the side view; 0 is the front, 180 the back

/** Length over width of a head: British women measure 180 × 145 mm at the median, 1.24 (handbook, section 1.5). */
export const HEAD_RATIO = 1.24;

/**
 * A body from its profile, from the base upwards.
 * @param runs smooth runs of [half-length, height]; between two runs is a sharp corner, so the next run starts where
 *   the last one ended
 * @param ratio length over width, the same at every height unless `wideOf` says otherwise
 */
export function turned(
  runs: readonly (readonly Point[])[],
  {
    ratio = HEAD_RATIO,
    shiftOf = () => 0,
    wideOf = (long: number) => long / ratio,
  }: { ratio?: number; shiftOf?: (up: number) => number; wideOf?: (long: number, up: number) => number } = {},
): OvalBody {
  return runs.flatMap((run) => {
    const curve = curveThrough(run, { step: run.length > 2 ? 10 : 4 });
    const bare = curve.map(([long, up]) => ({
      long: Math.max(long, 0.01),
      up,
      wide: wideOf(Math.max(long, 0.01), up),
      shift: shiftOf(up),
    }));
    return bare.map((level, index) => {
      const [before, after] = [bare[Math.max(index - 1, 0)], bare[Math.min(index + 1, bare.length - 1)]];
      const grow = (name: 'up' | 'long' | 'wide' | 'shift'): number => (after?.[name] ?? 0) - (before?.[name] ?? 0);
      return { ...level, slope: { up: grow('up'), long: grow('long'), wide: grow('wide'), shift: grow('shift') } };
    });
  });
}

/** The level of a body at a height, taken between its neighbours. */
export function levelAt(body: OvalBody, up: number): Level {
  for (let index = 1; index < body.length; index += 1) {
    const [lower, upper] = [body[index - 1] as Level, body[index] as Level];
    if (lower.up <= up && up <= upper.up && upper.up > lower.up) {
      const t = (up - lower.up) / (upper.up - lower.up);
      const mix = (a: number, b: number): number => a + (b - a) * t;
      return {
        ...upper,
        up,
        long: mix(lower.long, upper.long),
        wide: mix(lower.wide, upper.wide),
        shift: mix(lower.shift, upper.shift),
      };
    }
  }
  throw new Error(`No level at height ${up}; the body runs from ${body[0]?.up} to ${body[body.length - 1]?.up}.`);
}

/** A level that lies flat, for plans. */
export const flat = (long: number, wide: number, shift = 0, up = 0): Level => ({
  up,
  long,
  wide,
  shift,
  slope: { up: 1, long: 0, wide: 0, shift: 0 },
});

export const onLevel = (see: Camera, level: Level, degrees: number): Point =>
  see([level.shift + level.long * Math.cos(degrees * DEGREE), level.wide * Math.sin(degrees * DEGREE), level.up]);

/** Points round a level between two angles, in the order asked. */
export function arc(see: Camera, level: Level, from: number, to: number, step = 5): Point[] {
  const pieces = Math.max(1, Math.ceil(Math.abs(to - from) / step));
  return Array.from({ length: pieces + 1 }, (_, k) => onLevel(see, level, from + ((to - from) * k) / pieces));
}

export const wholeRing = (see: Camera, level: Level): Point[] => arc(see, level, 0, 360, 5).slice(0, -1);

/**
 * Where the surface turns away from somebody looking from the wearer's right, a little above: the two angles between
 * which it can be seen. The surface faces the eye where the cross product of its two tangents does.
 * @returns [toward the front, toward the back]; both 90 when nothing is seen, −90 and 270 when all round is
 */
export function limits(see: Camera, level: Level): readonly [number, number] {
  const known = turns.get(level);
  if (known && known.down === see.down) return known.limits;
  const found = turnsOf(see, level);
  turns.set(level, { down: see.down, limits: found });
  return found;
}

/** Kept by level, because every outline, zone and shading of a body asks again. */
const turns = new WeakMap<Level, { down: number; limits: readonly [number, number] }>();

function turnsOf(see: Camera, level: Level): readonly [number, number] {
  const { long, wide, slope } = level;
  const faces = (degrees: number): number => {
    const sine = Math.sin(degrees * DEGREE);
    const cosine = Math.cos(degrees * DEGREE);
    return (
      long * slope.up * see.across * sine -
      see.down * (long * slope.wide * sine * sine + wide * cosine * (slope.shift + slope.long * cosine))
    );
  };
  const turn = (direction: 1 | -1): number => {
    if (faces(NEAR) < 0) return NEAR;
    let seen = NEAR;
    let unseen = NEAR;
    while (faces(unseen) >= 0) {
      seen = unseen;
      unseen += 6 * direction;
      if (Math.abs(unseen - NEAR) > 180) return NEAR + 180 * direction;
    }
    for (let k = 0; k < 10; k += 1) {
      const middle = (seen + unseen) / 2;
      if (faces(middle) >= 0) seen = middle;
      else unseen = middle;
    }
    return seen;
  };
  const front = turn(-1);
  // An oval that does not shift turns away alike in front and at the back.
  return [front, slope.shift === 0 ? 2 * NEAR - front : turn(1)];
}

/** One edge of what is seen, from the lowest level to the highest; round a corner it follows the corner's own oval. */
function silhouette(see: Camera, body: OvalBody, end: 0 | 1, within: number): Point[] {
  const points: Point[] = [];
  // Below the first edge nothing is seen (the underside of an overhang), above the last the whole top is: neither
  // adds to the outline.
  const turn = body.map((level) => Math.abs(limits(see, level)[end] - NEAR));
  const first = Math.max(
    0,
    turn.findIndex((degrees) => degrees > 1),
  );
  const last = turn.reduce((found, degrees, index) => (degrees < 179 ? index : found), 0);
  let previous: number | undefined = first > 0 ? NEAR : undefined;
  for (const level of body.slice(first, last + 2)) {
    const limit = limits(see, level)[end];
    const angle = end === 0 ? Math.max(limit, within) : Math.min(limit, within);
    if (previous !== undefined && Math.abs(angle - previous) > 4) points.push(...arc(see, level, previous, angle, 4));
    else points.push(onLevel(see, level, angle));
    previous = angle;
  }
  return points;
}

/** The levels of a body between two heights, ends included. */
export const between = (body: OvalBody, low: number, high: number): OvalBody => [
  levelAt(body, low),
  ...body.filter(({ up }) => up > low && up < high),
  levelAt(body, high),
];

/**
 * What is seen from the wearer's right of a body, or of a sector of it, as a closed line: up the front edge, round the
 * top, down the back edge, and along the near side of the lowest oval.
 */
export function seenArea(see: Camera, body: OvalBody, sector: readonly [number, number] = [-90, 270]): Point[] {
  return [...seenSides(see, body, sector), ...nearFoot(see, body, sector)];
}

/** The near side of the lowest oval, from back to front; nothing where an overhang hides it. */
export function nearFoot(see: Camera, body: OvalBody, sector: readonly [number, number] = [-90, 270]): Point[] {
  const lowest = body[0] as Level;
  const [front, back] = limits(see, lowest);
  return back === front ? [] : arc(see, lowest, Math.min(back, sector[1]), Math.max(front, sector[0]));
}

/** The same without the near side of the lowest oval: the line against the sky. */
export function seenSides(see: Camera, body: OvalBody, sector: readonly [number, number] = [-90, 270]): Point[] {
  const highest = body[body.length - 1] as Level;
  const [front, back] = limits(see, highest);
  const over = back - front > 359 ? [] : arc(see, highest, Math.max(front, sector[0]), Math.min(back, sector[1]));
  return [...silhouette(see, body, 0, sector[0]), ...over, ...silhouette(see, body, 1, sector[1]).reverse()];
}

/** The near part of an oval, as far round as it is seen. */
export function seenArc(see: Camera, level: Level): Point[] {
  const [front, back] = limits(see, level);
  return arc(see, level, back, front);
}

/** How far above its foot's middle a body reaches on the page, seen from the wearer's right. */
export const reachUp = (body: OvalBody, tilt?: number): number =>
  -Math.min(...seenSides(fromRight(0, 0, tilt), body).map(([, y]) => y));
