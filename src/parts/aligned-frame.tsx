import type { ComponentChildren } from 'preact';
import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { Crop } from '../core/before-after.ts';
import { asTransform, inPixels, inverted, joined, type PlaneMap, planeMap } from '../core/plane-map.ts';
import css from './aligned-frame.module.css';
import { StoredPicture } from './stored-picture.tsx';

/** What is needed of a photograph to lay it into a frame. */
export interface FramedPhoto {
  readonly sha256: string;
  readonly width: number;
  readonly height: number;
}

/** A window onto a part of the before photograph; what lies in it lies in the before photograph's own places. */
export function AlignedFrame({
  before,
  crop,
  children,
}: {
  readonly before: FramedPhoto;
  readonly crop: Crop;
  readonly children: ComponentChildren;
}) {
  const ratio = (crop.width * before.width) / (crop.height * before.height);
  return (
    <div class={css.frame} style={{ '--ratio': ratio }}>
      {children}
    </div>
  );
}

/** The before photograph in its frame. */
export function BeforeLayer({
  before,
  crop,
  alt,
}: {
  readonly before: FramedPhoto;
  readonly crop: Crop;
  readonly alt: string;
}) {
  const share = (value: number): string => `${value * 100}%`;
  const place = {
    inlineSize: share(1 / crop.width),
    blockSize: share(1 / crop.height),
    insetInlineStart: share(-crop.x / crop.width),
    insetBlockStart: share(-crop.y / crop.height),
  };
  return (
    <div class={css.layer} style={place}>
      <StoredPicture sha256={before.sha256} alt={alt} />
    </div>
  );
}

/**
 * The after photograph bent onto the before one, by the browser and not in its pixels.
 * @param shownFrom share of the frame's width left of which it is cut away @param opacity 0 to 1
 */
export function AfterLayer({
  after,
  crop,
  h,
  alt,
  shownFrom = 0,
  opacity = 1,
}: {
  readonly after: FramedPhoto;
  readonly crop: Crop;
  readonly h: readonly number[];
  readonly alt: string;
  readonly shownFrom?: number;
  readonly opacity?: number;
}) {
  const box = useRef<HTMLDivElement>(null);
  const [size, setSize] = useState({ width: 0, height: 0 });
  useLayoutEffect(() => {
    const element = box.current;
    if (!element) return;
    const measure = (): void => setSize({ width: element.clientWidth, height: element.clientHeight });
    measure();
    const watch = new ResizeObserver(measure);
    watch.observe(element);
    return () => watch.disconnect();
  }, []);
  const map = size.width > 0 ? laidOver(h, crop, after, size) : undefined;
  return (
    <div class={css.whole} ref={box} style={{ opacity, clipPath: `inset(0 0 0 ${shownFrom * 100}%)` }}>
      <div
        class={css.bent}
        style={{
          inlineSize: `${after.width}px`,
          blockSize: `${after.height}px`,
          transform: map ? asTransform(map) : 'scale(0)',
        }}
      >
        <StoredPicture sha256={after.sha256} alt={alt} />
      </div>
    </div>
  );
}

/** From the after photograph's own pixels to those of the frame; undefined for a map that has no way back. */
function laidOver(
  h: readonly number[],
  crop: Crop,
  after: FramedPhoto,
  frame: { readonly width: number; readonly height: number },
): PlaneMap | undefined {
  const map = planeMap(h);
  const back = map && inverted(map);
  if (!back) return undefined;
  const ofCrop: PlaneMap = [
    1 / crop.width,
    0,
    -crop.x / crop.width,
    0,
    1 / crop.height,
    -crop.y / crop.height,
    0,
    0,
    1,
  ];
  return inPixels(joined(ofCrop, back), after, frame);
}
