/** An oval at the rope line, as callipers give it: outside length front to back, outside width side to side. */
export interface Oval {
  readonly lengthMm: number;
  readonly widthMm: number;
}

/**
 * How much longer the ellipse is than the circle on its mean diameter, from h = ((L − W)/(L + W))².
 * h goes in once: a public page squares it again and reads 1.7 mm short on a 200 × 160 block.
 */
const stretch = (h: number): number => 1 + (3 * h) / (10 + Math.sqrt(4 - 3 * h));

/**
 * Circumference of an oval block in mm, from its outside length and width.
 * Source: Ramanujan's second formula (encyclopaedia entry on the perimeter of an ellipse); against the exact
 * integral the error is under 1e−12 for hat ovals, −3e−8 at 3 : 1, −4e−4 for a flat line.
 * @throws when a side is negative, or both are 0
 */
export function ellipseCircumferenceMm({ lengthMm, widthMm }: Oval): number {
  if (!(lengthMm >= 0 && widthMm >= 0 && lengthMm + widthMm > 0 && Number.isFinite(lengthMm + widthMm)))
    throw new Error(`Oval came as ${lengthMm} × ${widthMm} mm, expected two lengths of 0 or more.`);
  const sum = lengthMm + widthMm;
  return ((Math.PI * sum) / 2) * stretch(((lengthMm - widthMm) / sum) ** 2);
}

/** Oval number: length minus width in mm; 36 is usual, men's long ovals reach 50 (block maker's published notes). */
export const ovalNumber = ({ lengthMm, widthMm }: Oval): number => lengthMm - widthMm;

/** Length over width; British adult heads are about 1.24 to 1.26 (ergonomics tables). */
export const ovalRatio = ({ lengthMm, widthMm }: Oval): number => lengthMm / widthMm;

/**
 * The oval that has this circumference and oval number: the inverse of the two functions above.
 * @returns null when no such oval exists: even a flat line with that oval number is longer than the circumference
 * @throws when the circumference is not above 0
 */
export function ovalFromCircumference(circumferenceMm: number, ovalMm: number): Oval | null {
  if (!(circumferenceMm > 0 && Number.isFinite(circumferenceMm) && Number.isFinite(ovalMm)))
    throw new Error(
      `Circumference came as ${circumferenceMm} mm, oval as ${ovalMm}, expected more than 0 and a number.`,
    );
  const difference = Math.abs(ovalMm);
  if (difference > 0 && ellipseCircumferenceMm({ lengthMm: difference, widthMm: 0 }) > circumferenceMm) return null;

  // At a fixed oval number the circumference is a rising, convex function of the mean diameter, and the circle's
  // diameter lies right of the answer; so Newton's steps walk left without overshooting and need no bracket.
  let mean = circumferenceMm / Math.PI;
  for (let step = 0; step < 60; step++) {
    const h = Math.min(1, (difference / (2 * mean)) ** 2);
    const root = Math.sqrt(4 - 3 * h);
    const stretchSlope = (3 * (10 + root) + (4.5 * h) / root) / (10 + root) ** 2;
    const slope = Math.PI * (stretch(h) - 2 * h * stretchSlope);
    const next = Math.max(difference / 2, mean - (Math.PI * mean * stretch(h) - circumferenceMm) / slope);
    if (Math.abs(next - mean) <= 1e-15 * mean) break;
    mean = next;
  }
  return { lengthMm: mean + ovalMm / 2, widthMm: mean - ovalMm / 2 };
}

/** Tape and ellipse should agree within this share; more means an egg shape, a build-up or a slip (trade estimate). */
export const TAPE_AGREES_WITHIN = 0.01;

/**
 * Checks the tape against the callipers; where they differ the tape wins.
 * @returns the ellipse's circumference, the tape's excess over it as a share, and whether that is within 1 %
 */
export function tapeAgainstCallipers(tapeMm: number, oval: Oval) {
  const ellipseMm = ellipseCircumferenceMm(oval);
  const excess = tapeMm / ellipseMm - 1;
  return { ellipseMm, excess, agrees: Math.abs(excess) <= TAPE_AGREES_WITHIN };
}
