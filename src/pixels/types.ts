import type { Raster } from './raster.ts';

/**
 * Shapes shared by all measuring functions. Pixel i spans i..i+1, so the centre of the top-left pixel is (0.5, 0.5).
 */

/**
 * A decoded photo: RGBA bytes, sRGB, upright, row by row. Treated as frozen: planes worked out from it are remembered.
 */
export type Img = Raster;

/** A place in a photo: x to the right, y down, in pixels. */
export type Px = readonly [number, number];

/** A place on the measured surface in millimetres; origin and axes are those of the reference object. */
export type Mm = readonly [number, number];

/** Why a measurement was not made: expected in life, so a value and never an exception. */
export type Why = 'no-edge' | 'too-few-points' | 'clipped' | 'no-scale' | 'too-weak' | 'cancelled';
export type Failed = { readonly ok: false; readonly why: Why };

export const failed = (why: Why): Failed => ({ ok: false, why });

/** A one-channel picture. Values are whatever the maker says (linear light, logarithm, strength …). */
export type Plane = { readonly data: Float32Array; readonly width: number; readonly height: number };

/** How a caller listens to and stops long work; both are looked at between stages only. */
export type Running = {
  readonly signal?: { readonly aborted: boolean } | undefined;
  /** Called as a stage begins. `share` is the part of the whole work already done, 0 to 1. */
  readonly onStage?: ((name: string, share: number) => void) | undefined;
};

/** Reports a stage; true when the caller no longer wants the result. */
export function stopped(run: Running | undefined, name: string, share: number): boolean {
  if (run?.signal?.aborted) return true;
  run?.onStage?.(name, share);
  return run?.signal?.aborted === true;
}
