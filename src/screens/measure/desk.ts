import { type Signal, signal } from '@preact/signals';
import { useLayoutEffect } from 'preact/hooks';
import { apartPx, fittedSize, type PictureSize, type Spot, toPixel } from '../../core/mark-geometry.ts';
import type { PictureView } from '../../core/picture-view.ts';
import type { MarkShape, Photo, PhotoMark } from '../../core/records.ts';
import type { BlockCase } from '../../parts/use-case.ts';
import type { Scale } from '../../pixels/index.ts';
import { WORKING_LONG_SIDE_PX } from '../../workers/decode.ts';
import type { PictureSource } from '../../workers/pixels.ts';
import { type ScaleFacts, scaleOf } from '../../workers/scale-of.ts';

/** Something drawn over the photograph while a tool is at work. */
export interface Drawn {
  readonly key: string;
  readonly shape: MarkShape | 'ring' | 'shade';
  readonly points: readonly Spot[];
  /** Of a shade: what it covers, as an SVG path in pixels of the working image. */
  readonly path?: string;
  /** Of a ring, as a share of the picture's width. */
  readonly radius?: number;
  readonly look?: 'plain' | 'chosen' | 'unsure' | 'struck';
  /** Number or short word beside it. */
  readonly label?: string;
}

/** What the tool in hand lets the stage do. */
export interface Work {
  readonly drawn: readonly Drawn[];
  /** Spots that can be dragged and nudged. */
  readonly handles: readonly Spot[];
  readonly onTap: (spot: Spot) => void;
  /** `done` at the end of a drag or after a nudge. */
  readonly onMove: (index: number, spot: Spot, done: boolean) => void;
  readonly onRemove?: ((index: number) => void) | undefined;
}

export const NO_WORK: Work = { drawn: [], handles: [], onTap: () => {}, onMove: () => {} };

/** A photograph on the bench with everything the tools share. */
export interface Desk {
  readonly of: BlockCase;
  readonly photo: Photo;
  readonly marks: readonly PhotoMark[];
  readonly picture: PictureSource;
  /** Of the working image: all pixels outside the worker are counted in it. */
  readonly size: PictureSize;
  readonly facts: ScaleFacts | null;
  readonly scale: Scale | null;
  readonly stage: Stage;
}

/** What stage and tools tell each other without drawing the whole screen again. */
export interface Stage {
  readonly work: Signal<Work>;
  readonly view: Signal<PictureView | null>;
  /** The handle picked up for nudging. */
  readonly held: Signal<number | null>;
  /** For the live region. */
  readonly said: Signal<string>;
  /** How the picture is magnified; set by the stage when it is there. */
  magnify: { readonly by: (factor: number) => void; readonly fit: () => void };
}

export const ZOOM_STEP = 1.5;

export const createStage = (): Stage => ({
  work: signal(NO_WORK),
  view: signal(null),
  held: signal(null),
  said: signal(''),
  magnify: { by: () => {}, fit: () => {} },
});

export const workingSize = (photo: Photo): PictureSize => fittedSize(photo, WORKING_LONG_SIDE_PX);

export function factsOf(photo: Photo): ScaleFacts | null {
  return photo.scale && { scale: photo.scale, focal35: photo.focal35 };
}

export function pageScale(facts: ScaleFacts | null, size: PictureSize): Scale | null {
  const scale = facts && scaleOf(facts, size);
  return !scale || 'ok' in scale ? null : scale;
}

/** Hands the stage what the tool draws and does; taken away when the tool is laid down. */
export function useWork(stage: Stage, work: Work): void {
  useLayoutEffect(() => {
    stage.work.value = work;
    // A point taken back is no longer held.
    if ((stage.held.peek() ?? 0) >= work.handles.length) stage.held.value = null;
  });
  useLayoutEffect(
    () => () => {
      stage.work.value = NO_WORK;
      stage.held.value = null;
    },
    [stage],
  );
}

export interface Length {
  readonly mm: number;
  readonly sigmaMm: number;
}

/** Straight length between two spots; null without a scale or beyond the horizon of its plane. */
export function straightLength({ scale, size }: Pick<Desk, 'scale' | 'size'>, a: Spot, b: Spot): Length | null {
  if (!scale || apartPx(a, b, size) === 0) return null;
  const [from, to] = [toPixel(a, size), toPixel(b, size)];
  const [u, v] = [scale.toMm(from), scale.toMm(to)];
  const mm = Math.hypot(u[0] - v[0], u[1] - v[1]);
  return Number.isFinite(mm) ? { mm, sigmaMm: scale.sigmaMm(from, to) } : null;
}
