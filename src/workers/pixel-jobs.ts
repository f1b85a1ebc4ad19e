import type { Crop } from '../core/before-after.ts';
import {
  areaOf,
  fittedSize,
  legsOf,
  type PictureSize,
  type Spot,
  simplified,
  toPixel,
  toSpot,
} from '../core/mark-geometry.ts';
import type { Rgb } from '../core/physics/colour.ts';
import { inPixels, joined, type PlaneMap } from '../core/plane-map.ts';
import type { PhotoScale } from '../core/records.ts';
import { sharpenCorners } from '../pixels/card.ts';
import { chipGain } from '../pixels/chip.ts';
import {
  type CrackSize,
  crackSize,
  type Failed,
  findCard,
  findHoles,
  type Img,
  type Px,
  pinLine,
  type Quality,
  quality,
  type Registration,
  type Running,
  refineCard,
  refineCoin,
  register,
  type Scale,
  type StainShare,
  stainShare,
  suggestCracks,
  traceCrack,
} from '../pixels/index.ts';
import { ridgeField } from '../pixels/ridge.ts';
import { warp } from '../pixels/warp.ts';
import { patchAround, patchColour } from './patch-colour.ts';
import { type ScaleFacts, scaleOf } from './scale-of.ts';

/*
 * What the pixel worker can do. Everything outside speaks in spots, shares of the picture; pixels of the working image
 * are known in here only. Same input, same output.
 */

/** Version of the measuring methods, stored beside what they measured. */
export const METHOD_VERSION = 1;

/** How far round the first tap of a crack the lines are worked out ahead: most cracks are shorter. */
const AHEAD_PX = 384;

type Fit = Pick<PhotoScale, 'corners' | 'rim' | 'sigmaOfWidth'>;
export type ReferenceFit = (Fit & { readonly ok: true; readonly tiltDeg: number | null }) | Failed;

export type Crack = {
  readonly ok: true;
  readonly path: readonly Spot[];
  /** Legs whose line is too faint to be sure of; leg 0 lies between the first two taps. */
  readonly weakLegs: readonly number[];
  /** The path cut at the taps. */
  readonly legs: readonly (readonly Spot[])[];
  /** Null without a scale. */
  readonly size: CrackSize | Failed | null;
};

export interface FoundHole {
  readonly spot: Spot;
  /** Half axes on screen, as shares of the picture's width. */
  readonly radius: number;
  readonly diameterMm: number;
  readonly sigmaMm: number | null;
  readonly confidence: number;
}

export interface HoleSummary {
  readonly areaMm2: number;
  /** They follow a straight line more closely than chance would have it. */
  readonly inLine: boolean;
}

const px = (spots: readonly Spot[], img: PictureSize): Px[] => spots.map((spot) => toPixel(spot, img));
const spots = (places: readonly Px[], img: PictureSize): Spot[] => places.map((place) => toSpot(place, img));

/** Reflectance of a photographer's grey card. Source: common practice, no source. */
const GREY_CARD = 0.18;

/** More lines than this on a photograph are a puzzle, not a help. */
const MOST_SUGGESTIONS = 8;

/** How far a straightened line may be from the traced one: under the width of a pixel. */
const STRAIGHTEN_PX = 0.4;

function fitOf(corners: readonly Px[], sigmaPx: number, img: PictureSize): ReferenceFit {
  return {
    ok: true,
    corners: spots(corners, img).map(([x, y]): [number, number] => [x, y]),
    rim: null,
    sigmaOfWidth: sigmaPx / img.width,
    tiltDeg: null,
  };
}

/** A made-up circle for a hole added by hand: where the scale stands at that spot. */
function mmPerPx(scale: Scale, [x, y]: Px): number {
  const [ax, ay] = scale.toMm([x - 1, y]);
  const [bx, by] = scale.toMm([x + 1, y]);
  return Math.hypot(ax - bx, ay - by) / 2;
}

export const pixelJobs = {
  /** A card lying clear, without taps; null when none is seen. */
  findCard(img: Img, _: null, run: Running): ReferenceFit {
    const found = findCard(img, run);
    return found.ok ? fitOf(found.corners, found.sigmaPx, img) : found;
  },
  refineCard(img: Img, taps: readonly Spot[], run: Running): ReferenceFit {
    const found = refineCard(img, px(taps, img), run);
    return found.ok ? fitOf(found.corners, found.sigmaPx, img) : found;
  },
  /** A sheet's corners are sharp: the taps are where its sides meet. */
  refineSheet(img: Img, taps: readonly Spot[], run: Running): ReferenceFit {
    if (taps.length !== 4) return { ok: false, why: 'too-few-points' };
    const found = sharpenCorners(img, px(taps, img) as unknown as Parameters<typeof sharpenCorners>[1], run);
    return found.ok ? fitOf(found.corners, found.sigmaPx, img) : found;
  },
  refineCoin(img: Img, taps: readonly Spot[], run: Running): ReferenceFit {
    const found = refineCoin(img, px(taps, img), run);
    if (!found.ok) return found;
    const { cx, cy, a, b, theta } = found.ellipse;
    const [x, y] = toSpot([cx, cy], img);
    return {
      ok: true,
      corners: [],
      rim: { centre: [x, y], a: a / img.width, b: b / img.width, angle: theta },
      sigmaOfWidth: found.sigmaPx / img.width,
      tiltDeg: found.tiltDeg,
    };
  },

  /** Works out, while the person looks for its other end, what following a crack from here will need. */
  prepareCrack(img: Img, from: Spot): null {
    const [x, y] = toPixel(from, img);
    const within = (place: number, most: number): number => Math.min(most, Math.max(0, Math.round(place)));
    ridgeField(
      img,
      within(x - AHEAD_PX, img.width - 1),
      within(y - AHEAD_PX, img.height - 1),
      within(x + AHEAD_PX, img.width),
      within(y + AHEAD_PX, img.height),
    );
    return null;
  },

  traceCrack(
    img: Img,
    given: { readonly taps: readonly Spot[]; readonly snapPx: number; readonly facts: ScaleFacts | null },
    run: Running,
  ): Crack | Failed {
    const found = traceCrack(img, px(given.taps, img), { snapPx: given.snapPx }, run);
    if (!found.ok) return found;
    const scale = given.facts && scaleOf(given.facts, img);
    const path = spots(found.path, img);
    return {
      ok: true,
      path: simplified(path, STRAIGHTEN_PX, img),
      weakLegs: found.weakLegs,
      legs: legsOf(path, given.taps, img).map((leg) => simplified(leg, STRAIGHTEN_PX, img)),
      size: scale && ('ok' in scale ? scale : crackSize(img, found.path, scale)),
    };
  },

  /** Lines that may be cracks, likeliest first; about half are none, see `suggestCracks`. */
  suggestCracks(
    img: Img,
    _: null,
    run: Running,
  ): { readonly ok: true; readonly lines: readonly (readonly Spot[])[] } | Failed {
    const { width, height } = img;
    const whole: Px[] = [
      [0, 0],
      [width, 0],
      [width, height],
      [0, height],
    ];
    const found = suggestCracks(img, whole, run);
    if (!Array.isArray(found)) return found as Failed;
    return {
      ok: true,
      lines: found.slice(0, MOST_SUGGESTIONS).map(({ path }) => simplified(spots(path, img), STRAIGHTEN_PX, img)),
    };
  },

  findHoles(
    img: Img,
    { outline, facts }: { readonly outline: readonly Spot[]; readonly facts: ScaleFacts },
    run: Running,
  ): { readonly ok: true; readonly holes: readonly FoundHole[] } | Failed {
    const scale = scaleOf(facts, img);
    if ('ok' in scale) return scale;
    const found = findHoles(img, px(outline, img), scale, [], run);
    if ('ok' in found) return found;
    return {
      ok: true,
      holes: found.map(({ x, y, majorMm, minorMm, sigmaMm, confidence }) => {
        const diameterMm = Math.sqrt(majorMm * minorMm);
        return {
          spot: toSpot([x, y], img),
          radius: diameterMm / 2 / mmPerPx(scale, [x, y]) / img.width,
          diameterMm,
          sigmaMm,
          confidence,
        };
      }),
    };
  },

  /** What the counted holes say together: the area looked at, and whether they follow a line. */
  weighHoles(
    img: Img,
    given: { readonly outline: readonly Spot[]; readonly holes: readonly Spot[]; readonly facts: ScaleFacts },
  ): (HoleSummary & { readonly ok: true }) | Failed {
    const scale = scaleOf(given.facts, img);
    if ('ok' in scale) return scale;
    const areaMm2 = areaOf(px(given.outline, img).map(scale.toMm));
    const line = pinLine(px(given.holes, img).map(scale.toMm), areaMm2);
    return { ok: true, areaMm2, inLine: line?.aligned ?? false };
  },

  /** A hole a person points at: measured where it is found, else of the size given. */
  holeAt(
    img: Img,
    { spot, facts, otherwiseMm }: { readonly spot: Spot; readonly facts: ScaleFacts; readonly otherwiseMm: number },
    run: Running,
  ): (FoundHole & { readonly ok: true }) | Failed {
    const scale = scaleOf(facts, img);
    if ('ok' in scale) return scale;
    const [x, y] = toPixel(spot, img);
    const mm = mmPerPx(scale, [x, y]);
    const half = Math.max(24, 8 / mm);
    const round: Px[] = [
      [x - half, y - half],
      [x + half, y - half],
      [x + half, y + half],
      [x - half, y + half],
    ];
    const seen = findHoles(img, round, scale, [], run);
    const near = 'ok' in seen ? undefined : seen.find((hole) => Math.hypot(hole.x - x, hole.y - y) * mm < hole.majorMm);
    if (!near)
      return {
        ok: true,
        spot,
        radius: otherwiseMm / 2 / mm / img.width,
        diameterMm: otherwiseMm,
        sigmaMm: null,
        confidence: 0,
      };
    const diameterMm = Math.sqrt(near.majorMm * near.minorMm);
    return {
      ok: true,
      spot: toSpot([near.x, near.y], img),
      radius: diameterMm / 2 / mm / img.width,
      diameterMm,
      sigmaMm: near.sigmaMm,
      confidence: near.confidence,
    };
  },

  stainShare(
    img: Img,
    given: { readonly outline: readonly Spot[]; readonly clean: Spot; readonly stained: Spot },
    run: Running,
  ): StainShare | Failed {
    return stainShare(img, px(given.outline, img), toPixel(given.clean, img), toPixel(given.stained, img), run);
  },

  /**
   * sRGB of the wood round each spot, averaged in linear light; null too near the edge. With a spot on a grey card the
   * colours are freed of the colour of the light; a card that cannot be measured by leaves them as lit and says why.
   */
  colours(
    img: Img,
    { at, grey }: { readonly at: readonly Spot[]; readonly grey: Spot | null },
  ): { readonly colours: readonly (Rgb | null)[]; readonly grey: 'none' | 'used' | Failed['why'] } {
    const chip = grey && chipGain(img, patchAround(toPixel(grey, img)), GREY_CARD);
    const gain = chip?.ok ? chip.gain : undefined;
    return {
      colours: at.map((spot) => patchColour(img, toPixel(spot, img), gain)),
      grey: chip ? (chip.ok ? 'used' : chip.why) : 'none',
    };
  },

  quality(img: Img, _: null): Quality {
    return quality(img);
  },
} as const;

/** Long side of a crop made to be printed, px: 8 cm at 300 dots an inch, and no less than the screen shows. */
const PRINTED_LONG_SIDE_PX = 1000;

/** Work on two photographs of the same block. */
export const pairJobs = {
  /** Takes spots of the first picture to the second; `map` is row by row, in pixels of the working images. */
  register(
    before: Img,
    after: Img,
    taps: readonly (readonly [Spot, Spot])[] | null,
    run: Running,
  ): (Registration & { readonly sizes: readonly [PictureSize, PictureSize] }) | Failed {
    const pairs = taps?.map(([a, b]): [Px, Px] => [toPixel(a, before), toPixel(b, after)]);
    const found = register(before, after, pairs, run);
    if (!found.ok) return found;
    const sizeOf = ({ width, height }: Img): PictureSize => ({ width, height });
    return { ...found, sizes: [sizeOf(before), sizeOf(after)] };
  },
  /** The same part of both pictures, the second laid over the first: what a comparison prints. */
  alignedCrops(
    before: Img,
    after: Img,
    given: { readonly map: PlaneMap; readonly crop: Crop },
  ): readonly [before: Img, after: Img] {
    const { crop, map } = given;
    const size = fittedSize(
      { width: crop.width * before.width, height: crop.height * before.height },
      PRINTED_LONG_SIDE_PX,
    );
    const part: PlaneMap = [crop.width, 0, crop.x, 0, crop.height, crop.y, 0, 0, 1];
    return [
      warp(before, inPixels(part, size, before), size.width, size.height),
      warp(after, inPixels(joined(map, part), size, after), size.width, size.height),
    ];
  },
} as const;

export type SingleJobs = typeof pixelJobs;
export type PairJobs = typeof pairJobs;
export type JobName = keyof SingleJobs | keyof PairJobs;

type AnswerOf<F> = F extends (...given: never[]) => infer A ? A : never;
export type Given<J extends JobName> = J extends keyof SingleJobs
  ? Parameters<SingleJobs[J]>[1]
  : J extends keyof PairJobs
    ? Parameters<PairJobs[J]>[2]
    : never;
export type Answer<J extends JobName> = J extends keyof SingleJobs
  ? AnswerOf<SingleJobs[J]>
  : J extends keyof PairJobs
    ? AnswerOf<PairJobs[J]>
    : never;
