import { blur } from '../../src/pixels/gaussian.ts';
import { applyHomography, type Homography } from '../../src/pixels/homography.ts';
import { seededRandom } from '../../src/pixels/random.ts';
import type { Img, Px } from '../../src/pixels/types.ts';

/*
 * Photos drawn in code, so that the truth is known: what lies at each place is painted in linear light, four samples to
 * a pixel, blurred as a lens does, given a sensor's noise, and stored as sRGB bytes. Procedural only, nobody's photo.
 */

export type Light = readonly [number, number, number];
export type Paint = (x: number, y: number) => Light;

export function photoOf(
  width: number,
  height: number,
  paint: Paint,
  { lens = 0.7, noise = 0.004, seed = 7 } = {},
): Img {
  const random = seededRandom(seed);
  const planes = [0, 1, 2].map(() => new Float32Array(width * height));
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++)
      for (const dy of [0.25, 0.75])
        for (const dx of [0.25, 0.75]) {
          const light = paint(x + dx, y + dy);
          planes.forEach((plane, c) => {
            plane[y * width + x] = (plane[y * width + x] as number) + (light[c] as number) / 4;
          });
        }
  const data = new Uint8ClampedArray(width * height * 4).fill(255);
  planes.forEach((plane, c) => {
    const seen = lens > 0 ? blur({ data: plane, width, height }, lens).data : plane;
    for (let i = 0; i < seen.length; i++)
      data[i * 4 + c] = byteOf((seen[i] as number) + noise * (random() + random() - 1));
  });
  return { data, width, height };
}

/** sRGB byte of linear light. Source: IEC 61966-2-1. */
export function byteOf(light: number): number {
  const v = Math.min(1, Math.max(0, light));
  return Math.round(255 * (v <= 0.0031308 ? 12.92 * v : 1.055 * v ** (1 / 2.4) - 0.055));
}

/** Smooth noise, −1 to 1, the same for the same seed: values on a lattice, blended. */
export function cloud(seed: number): (x: number, y: number) => number {
  const at = (i: number, j: number): number => {
    let h = Math.imul(i, 374761393) ^ Math.imul(j, 668265263) ^ Math.imul(seed, 2147483647);
    h = Math.imul(h ^ (h >>> 13), 1274126177);
    return ((h ^ (h >>> 16)) >>> 0) / 2147483648 - 1;
  };
  return (x, y) => {
    const i = Math.floor(x);
    const j = Math.floor(y);
    const u = (x - i) ** 2 * (3 - 2 * (x - i));
    const v = (y - j) ** 2 * (3 - 2 * (y - j));
    return (1 - v) * ((1 - u) * at(i, j) + u * at(i + 1, j)) + v * ((1 - u) * at(i, j + 1) + u * at(i + 1, j + 1));
  };
}

/** Pale wood with grain running down the picture. */
export function wood(seed = 1, contrast = 1): Paint {
  const broad = cloud(seed);
  const fine = cloud(seed + 1);
  const light = cloud(seed + 2);
  return (x, y) => {
    const tone =
      1 + contrast * (0.07 * broad(x / 23, y / 300) + 0.05 * fine(x / 5, y / 120)) + 0.1 * light(x / 260, y / 260);
    return [0.55 * tone, 0.36 * tone, 0.19 * tone];
  };
}

export const dimmed = (light: Light, factor: number): Light => [
  light[0] * factor,
  light[1] * factor,
  light[2] * factor,
];

/** Distance from a place to a polyline, and how far along it the nearest point lies. */
export function toLine(line: readonly Px[], x: number, y: number): { away: number; along: number } {
  return nearest(piecesOf(line), x, y);
}

/** The same for many places near a line: pieces more than `reach` rows away are not looked at. */
export function nearLine(
  line: readonly Px[],
  reach: number,
): (x: number, y: number) => { away: number; along: number } {
  const rows = new Map<number, Piece[]>();
  for (const piece of piecesOf(line)) {
    const low = Math.floor(Math.min(piece.a[1], piece.b[1]) - reach);
    const high = Math.floor(Math.max(piece.a[1], piece.b[1]) + reach);
    for (let row = low; row <= high; row++) rows.set(row, [...(rows.get(row) ?? []), piece]);
  }
  return (x, y) => nearest(rows.get(Math.floor(y)) ?? [], x, y);
}

interface Piece {
  readonly a: Px;
  readonly b: Px;
  readonly length: number;
  readonly before: number;
}

function piecesOf(line: readonly Px[]): Piece[] {
  let before = 0;
  return line.slice(1).map((b, i) => {
    const a = line[i] as Px;
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    before += length;
    return { a, b, length, before: before - length };
  });
}

function nearest(pieces: readonly Piece[], x: number, y: number): { away: number; along: number } {
  let away = Number.POSITIVE_INFINITY;
  let along = 0;
  for (const { a, b, length, before } of pieces) {
    const t = Math.min(1, Math.max(0, ((x - a[0]) * (b[0] - a[0]) + (y - a[1]) * (b[1] - a[1])) / (length * length)));
    const d = Math.hypot(x - a[0] - t * (b[0] - a[0]), y - a[1] - t * (b[1] - a[1]));
    if (d >= away) continue;
    away = d;
    along = before + t * length;
  }
  return { away, along };
}

export const lengthOf = (line: readonly Px[]): number =>
  line.reduce(
    (sum, p, i) => (i === 0 ? 0 : sum + Math.hypot(p[0] - (line[i - 1] as Px)[0], p[1] - (line[i - 1] as Px)[1])),
    0,
  );

/** Homography (mm to px) of a pinhole camera looking at a plane from `distance` mm, tilted about a skew axis. */
export function view(
  photo: { width: number; height: number; focalPx: number },
  tiltDeg: number,
  distance: number,
  turnDeg = 12,
  shift: Px = [0, 0],
): (zMm: number) => Homography {
  const t = (tiltDeg * Math.PI) / 180;
  const r = (turnDeg * Math.PI) / 180;
  // Turned in its own plane by r, then tipped about the picture's x axis by t.
  const r1 = [Math.cos(r), Math.sin(r) * Math.cos(t), Math.sin(r) * Math.sin(t)] as const;
  const r2 = [-Math.sin(r), Math.cos(r) * Math.cos(t), Math.cos(r) * Math.sin(t)] as const;
  const n = [0, Math.sin(t), -Math.cos(t)] as const;
  return (zMm) => {
    const o = [shift[0] + zMm * n[0], shift[1] + zMm * n[1], distance + zMm * n[2]] as const;
    const { focalPx: f, width, height } = photo;
    const row = (i: 0 | 1, c: number): [number, number, number] => [
      f * r1[i] + c * r1[2],
      f * r2[i] + c * r2[2],
      f * o[i] + c * o[2],
    ];
    const h = [...row(0, width / 2), ...row(1, height / 2), r1[2], r2[2], o[2]];
    return h.map((v) => v / o[2]) as unknown as Homography;
  };
}

export const seen = (h: Homography, points: readonly Px[]): Px[] => points.map((p) => applyHomography(h, p));
