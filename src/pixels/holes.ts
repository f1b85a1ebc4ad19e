import { type Blob, blobsBelow } from './blobs.ts';
import { blur } from './gaussian.ts';
import { type HoleShape, isRound, shapeOf } from './hole-shape.ts';
import { luminance } from './linear-light.ts';
import { boxOf, isInPolygon } from './polygon.ts';
import { cut } from './ridge.ts';
import { apart, type Scale } from './scale.ts';
import { type Failed, failed, type Img, type Px, type Running, stopped } from './types.ts';
import { againstWood } from './wood-light.ts';

/**
 * A dark, round, sharp-rimmed mark: it looks like a flight hole. Whether it is one, and how old, a photo can not say.
 */
export type HoleMark = {
  readonly x: number;
  readonly y: number;
  readonly majorMm: number;
  readonly minorMm: number;
  /** One standard error of either diameter. */
  readonly sigmaMm: number;
  /** 0 to 1. */
  readonly confidence: number;
};

/** Diameters looked for, in mm: pin holes of furniture beetle up to ovals of longhorn. */
const SMALLEST_MM = 0.6;
const LARGEST_MM = 12;
const LEVELS = [0.25, 0.31, 0.37, 0.43, 0.49, 0.55, 0.61, 0.67, 0.72, 0.77];
/** Side of the window that says how bright the wood is. */
const WINDOW_MM = 7;

/**
 * Marks that look like flight holes inside an outlined region.
 * @param scale needed, because a knot and a pin hole differ by size first
 * @param ignore outlines in which nothing is counted (knots, cards, labels)
 */
export function findHoles(
  img: Img,
  region: readonly Px[],
  scale: Scale,
  ignore: readonly (readonly Px[])[] = [],
  run?: Running,
): HoleMark[] | Failed {
  if (region.length < 3) return failed('too-few-points');
  const box = boxOf(region, img.width, img.height, 8);
  if (box.right - box.left < 16 || box.bottom - box.top < 16) return failed('too-few-points');
  if (stopped(run, 'hole background', 0)) return failed('cancelled');
  const middle: Px = [(box.left + box.right) / 2, (box.top + box.bottom) / 2];
  const pxPerMm = 1 / Math.sqrt(areaOfPixel(scale, middle));
  if (!(pxPerMm > 0.5 && pxPerMm < 200)) return failed('no-scale');
  const light = blur(cut(luminance(img), box.left, box.top, box.right, box.bottom), 0.6);
  const relative = againstWood(light, Math.round((WINDOW_MM / 2) * pxPerMm));
  const least = Math.max(4, Math.PI * ((SMALLEST_MM / 2) * pxPerMm) ** 2 * 0.3);
  const most = Math.PI * ((LARGEST_MM / 2) * pxPerMm) ** 2;
  const blobs: Blob[] = [];
  for (const [i, level] of LEVELS.entries()) {
    if (stopped(run, 'hole marks', 0.3 + (0.5 * i) / LEVELS.length)) return failed('cancelled');
    blobs.push(...blobsBelow(relative, level, least, most));
  }
  if (stopped(run, 'hole shapes', 0.8)) return failed('cancelled');
  const marks: HoleMark[] = [];
  for (const family of familiesOf(blobs)) {
    const seed = family.at(-1) as Blob;
    const at: Px = [seed.x + box.left, seed.y + box.top];
    if (!isInPolygon(at, region) || ignore.some((o) => isInPolygon(at, o))) continue;
    const shape = shapeOf(relative, family, [box.left, box.top], scale);

    if (!shape) continue;
    const confidence = confidenceOf(shape);
    if (confidence > BELIEVED) marks.push({ ...shape.mark, confidence });
  }
  return marks;
}

function areaOfPixel(scale: Scale, [x, y]: Px): number {
  const o = scale.toMm([x, y]);
  const u = scale.toMm([x + 1, y]);
  const v = scale.toMm([x, y + 1]);
  return apart(o, u) * apart(o, v);
}

/**
 * Blobs of different thresholds that lie in one another, darkest first. A compact blob takes the place of the specks
 * it swallows (the uneven floor of a large hole); a ragged one (two holes run together) is passed over.
 */
function familiesOf(blobs: readonly Blob[]): Blob[][] {
  let families: Blob[][] = [];
  for (const blob of blobs) {
    const inside = families.filter((f) => {
      const last = f.at(-1) as Blob;
      return last.level < blob.level && Math.hypot(last.x - blob.x, last.y - blob.y) < Math.max(0.9 * blob.a, 1.5);
    });
    if (inside.length === 0) families.push([blob]);
    else if (inside.length === 1) (inside[0] as Blob[]).push(blob);
    else if (isRound(blob)) families = [...families.filter((f) => !inside.includes(f)), [blob]];
  }
  return families;
}

/**
 * What a shape must show to be called a mark, and from where on it counts in full. Trade estimate, from the
 * developers' photos.
 */
const SHAPE = { depth: [0.5, 0.65], steepness: [0.2, 0.26], roughness: [0.1, 0.05], roundLevels: [1.5, 5.5] } as const;
/** Least product of the four. Mould spots, the commonest look-alikes, are ragged and shallow at once. */
const BELIEVED = 0.42;

/** 0 (no hole) to 1: all four signs multiplied, so that two half-convincing ones do not pass. */
function confidenceOf(shape: HoleShape): number {
  const rise = ([none, full]: readonly [number, number], v: number): number =>
    Math.min(1, Math.max(0, (v - none) / (full - none)));
  return (
    rise(SHAPE.depth, shape.depth) *
    rise(SHAPE.steepness, shape.steepness) *
    rise(SHAPE.roughness, shape.roughness) *
    rise(SHAPE.roundLevels, shape.roundLevels)
  );
}
