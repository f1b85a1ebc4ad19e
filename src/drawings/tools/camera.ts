import type { Point } from '../shape.ts';

/** A point of the block: units forward of the middle, to the wearer's right, and above the table. */
export type Space = readonly [forward: number, right: number, up: number];

/** Turns a point of the block into a point of the page; `down` and `across` say how steeply it looks at the table. */
export interface Camera {
  (point: Space): Point;
  down: number;
  across: number;
}

/** Looking down by so many degrees: low things need more of it for their ovals to be seen. */
const tilted = (degrees: number): { down: number; across: number } => ({
  down: Math.sin((degrees * Math.PI) / 180),
  across: Math.cos((degrees * Math.PI) / 180),
});
const TILT = 17;

/** The directions are argued in shape.ts. */
export const fromAbove = (x: number, y: number): Camera =>
  Object.assign(([forward, right]: Space): Point => [x - right, y + forward], tilted(90));

export const fromBelow = (x: number, y: number): Camera =>
  Object.assign(([forward, right]: Space): Point => [x + right, y + forward], tilted(90));

export function fromRight(x: number, y: number, tilt = TILT): Camera {
  const { down, across } = tilted(tilt);
  return Object.assign(([forward, right, up]: Space): Point => [x + forward, y + right * down - up * across], {
    down,
    across,
  });
}
