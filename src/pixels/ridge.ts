import { blur, sigmaBetween } from './gaussian.ts';
import { logarithm, luminance } from './linear-light.ts';
import type { Img, Plane } from './types.ts';

/**
 * Dark-line strength and direction of a photo, worked out square by square as it is asked for and then kept: moving
 * one end of a crack costs no new filtering.
 * Source: eigenvalues of the second derivatives at several scales, after Frangi and others 1998 and Sato and others
 * 1998, with a difference λ1 − |λ2| that pits (dark both ways) do not pass.
 */
export type RidgeField = {
  readonly width: number;
  readonly height: number;
  /** Strength, 0 where there is no dark line; natural-logarithm units, so lighting drops out. */
  readonly strength: Float32Array;
  /** Unit vector along the line. */
  readonly alongX: Float32Array;
  readonly alongY: Float32Array;
};

/** Blur scales in pixels: hairlines of one pixel to checks of about eight. */
export const CRACK_SIGMAS: readonly number[] = [1, 1.5, 2.2, 3.2];

const SQUARE = 256;
/** Pixels of surround each square is filtered with; the blurs reach 3 + 4 + 5 + 7 pixels, derivatives one more. */
const SURROUND = 20;

type Store = RidgeField & { readonly done: Uint8Array; readonly across: number };
const fieldOf = new WeakMap<Img, Store>();

/** The ridge field, valid (at least) inside the given box of pixels. */
export function ridgeField(img: Img, left: number, top: number, right: number, bottom: number): RidgeField {
  const { width, height } = img;
  const across = Math.ceil(width / SQUARE);
  let store = fieldOf.get(img);
  if (!store) {
    const n = width * height;
    store = {
      width,
      height,
      strength: new Float32Array(n),
      alongX: new Float32Array(n),
      alongY: new Float32Array(n),
      done: new Uint8Array(across * Math.ceil(height / SQUARE)),
      across,
    };
    fieldOf.set(img, store);
  }
  const source = luminance(img);
  const lastRow = Math.min(Math.floor((bottom - 1) / SQUARE), Math.floor((height - 1) / SQUARE));
  const lastColumn = Math.min(Math.floor((right - 1) / SQUARE), across - 1);
  for (let row = Math.max(0, Math.floor(top / SQUARE)); row <= lastRow; row++)
    for (let column = Math.max(0, Math.floor(left / SQUARE)); column <= lastColumn; column++) {
      if (store.done[row * across + column]) continue;
      fillSquare(store, source, column * SQUARE, row * SQUARE);
      store.done[row * across + column] = 1;
    }
  return store;
}

function fillSquare(field: RidgeField, source: Plane, x0: number, y0: number): void {
  const left = Math.max(0, x0 - SURROUND);
  const top = Math.max(0, y0 - SURROUND);
  const right = Math.min(field.width, x0 + SQUARE + SURROUND);
  const bottom = Math.min(field.height, y0 + SQUARE + SURROUND);
  let level = logarithm(cut(source, left, top, right, bottom));
  let have = 0;
  for (const sigma of CRACK_SIGMAS) {
    level = blur(level, have === 0 ? sigma : sigmaBetween(have, sigma));
    have = sigma;
    keepStronger(field, level, sigma, left, top, x0, y0);
  }
}

/** Takes over strength and direction wherever this scale answers more strongly than the ones before. */
function keepStronger(
  field: RidgeField,
  level: Plane,
  sigma: number,
  left: number,
  top: number,
  x0: number,
  y0: number,
): void {
  const { data, width: w, height: h } = level;
  const weight = sigma ** 1.5;
  const xEnd = Math.min(x0 + SQUARE, field.width) - left;
  const yEnd = Math.min(y0 + SQUARE, field.height) - top;
  for (let y = y0 - top; y < yEnd; y++) {
    const here = y * w;
    const up = y > 0 ? here - w : here;
    const down = y < h - 1 ? here + w : here;
    for (let x = x0 - left; x < xEnd; x++) {
      const l = x > 0 ? x - 1 : x;
      const r = x < w - 1 ? x + 1 : x;
      const c2 = 2 * (data[here + x] as number);
      const xx = (data[here + l] as number) + (data[here + r] as number) - c2;
      const yy = (data[up + x] as number) + (data[down + x] as number) - c2;
      const half = (xx + yy) / 2;
      if (half <= 0) continue;
      const xy =
        ((data[up + l] as number) +
          (data[down + r] as number) -
          (data[up + r] as number) -
          (data[down + l] as number)) /
        4;
      const diff = (xx - yy) / 2;
      const root = Math.sqrt(diff * diff + xy * xy);
      // λ1 = half + root (across the line), λ2 = half − root (along it)
      const small = half - root;
      const strength = weight * (half + root - Math.abs(small));
      const at = (y + top) * field.width + x + left;
      if (strength <= (field.strength[at] as number)) continue;
      field.strength[at] = strength;
      // The eigenvector of λ2 is at right angles to that of λ1, which lies at half the angle of (diff, xy).
      if (diff >= 0) {
        const m = Math.sqrt((root + diff) ** 2 + xy * xy) || 1;
        field.alongX[at] = -xy / m;
        field.alongY[at] = (root + diff) / m;
      } else {
        const m = Math.sqrt((root - diff) ** 2 + xy * xy) || 1;
        field.alongX[at] = -(root - diff) / m;
        field.alongY[at] = xy / m;
      }
    }
  }
}

/** A copy of part of a plane. */
export function cut(src: Plane, left: number, top: number, right: number, bottom: number): Plane {
  const width = right - left;
  const height = bottom - top;
  const data = new Float32Array(width * height);
  for (let y = 0; y < height; y++) {
    const from = (top + y) * src.width + left;
    data.set(src.data.subarray(from, from + width), y * width);
  }
  return { data, width, height };
}
