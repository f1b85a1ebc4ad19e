import { crackWidth, type WidthClass } from './crack-width.ts';
import { pathMm, type Scale } from './scale.ts';
import { type Failed, failed, type Img, type Px } from './types.ts';

export type CrackSize = {
  readonly ok: true;
  readonly lengthMm: number;
  /** One standard error of the length. */
  readonly sigmaMm: number;
  /** Mean opening. Below 0.4 mm or 3 px it is a class and no measurement. */
  readonly meanWidthMm: number;
  /** The opening exceeded on one twentieth of the length. */
  readonly maxWidthMm: number;
  /** One standard error of the mean opening. */
  readonly widthSigmaMm: number;
  readonly widthClass: WidthClass;
};

/** How exactly the ends of a crack can be told, both together. Measured on rendered photos. */
const END_SIGMA_MM = 0.75;
/** Wander of the traced line, as a share of the length. Measured on rendered photos. */
const WANDER = 0.006;
/** Extra share when the height of the surface was typed in. Trade estimate. */
const HEIGHT_SHARE = 0.006;

/**
 * Length and opening of a traced crack.
 * @param path from `traceCrack`, or drawn by hand
 * Source of the length error: the scale's error for the chord, the ends and the wander, added as squares.
 */
export function crackSize(img: Img, path: readonly Px[], scale: Scale): CrackSize | Failed {
  const first = path[0];
  const last = path[path.length - 1];
  if (path.length < 4 || !first || !last) return failed('too-few-points');
  const lengthMm = pathMm(scale, path);
  if (!(lengthMm > 0 && Number.isFinite(lengthMm))) return failed('no-scale');
  const width = crackWidth(img, path, scale);
  if (!width) return failed('too-weak');
  const height = scale.zMm === 0 ? 0 : HEIGHT_SHARE * lengthMm;
  const sigmaMm = Math.hypot(scale.sigmaMm(first, last), WANDER * lengthMm, END_SIGMA_MM, height);
  return { ok: true, lengthMm, sigmaMm, ...width };
}
