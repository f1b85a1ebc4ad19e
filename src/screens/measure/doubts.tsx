import { middleOf, type Spot, toPixel } from '../../core/mark-geometry.ts';
import type { Desk } from './desk.ts';
import css from './measure.module.css';

/**
 * What a curved face does to a flat scale: by how much a length reads short at this distance from where the reference
 * touches a dome of 90 mm radius, running down the slope, as a share.
 * Source: pinhole model, −5 % at 20 mm and −17 % at 40 mm.
 */
export const shortOnCurve = (fromTouchingMm: number): number => 0.17 * (fromTouchingMm / 40) ** 2;
/** Beyond this a dome leaves no millimetres. */
export const CURVE_REACH_MM = 40;
/** A coin's millimetres hold this many of its diameters away. */
const COIN_REACH = 2;

/** Greatest distance, mm, of some spots from the middle of the reference; null without a scale. */
export function fromReferenceMm({ scale, photo, size }: Desk, spots: readonly Spot[]): number | null {
  if (!scale || !photo.scale) return null;
  const { rim, corners } = photo.scale;
  const middle = rim ? (rim.centre as Spot) : middleOf(corners as readonly Spot[]);
  const [mx, my] = scale.toMm(toPixel(middle, size));
  return Math.max(
    ...spots.map((spot) => {
      const [x, y] = scale.toMm(toPixel(spot, size));
      return Math.hypot(x - mx, y - my);
    }),
  );
}

/** Whether a coin lies too far off to say millimetres there. */
export function isTooFar(desk: Desk, spots: readonly Spot[]): boolean {
  const { scale } = desk.photo;
  if (scale?.kind !== 'coin') return false;
  const away = fromReferenceMm(desk, spots);
  return away !== null && away > COIN_REACH * (scale.sizeMm[0] ?? 0);
}

export function FarFromReference({ desk, spots }: { readonly desk: Desk; readonly spots: readonly Spot[] }) {
  return isTooFar(desk, spots) ? (
    <p class={css.refused} role="note">
      Farther than two coins from the coin: a guess, no measure. Lay the coin beside it, or use a card.
    </p>
  ) : null;
}
