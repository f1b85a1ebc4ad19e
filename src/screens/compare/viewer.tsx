import { useMemo } from 'preact/hooks';
import { type BeforeAfter, sharedCrop, WHOLE } from '../../core/before-after.ts';
import { AfterLayer, AlignedFrame, BeforeLayer } from '../../parts/aligned-frame.tsx';
import css from './compare.module.css';

export const WAYS = ['wipe', 'fade', 'sides'] as const;
export type Way = (typeof WAYS)[number];

/** The pair as one picture that changes under a slider, or as two of the same part side by side. */
export function Viewer({
  pair,
  way,
  position,
  onMove,
}: {
  readonly pair: BeforeAfter;
  readonly way: Way;
  /** Share of the before seen: of the width in a wipe, of the ink in a fade. */
  readonly position: number;
  readonly onMove: (position: number) => void;
}) {
  const { before, after, alignment } = pair;
  const h = alignment?.h ?? null;
  const crop = useMemo(() => sharedCrop(h), [h]);
  if (way === 'sides' || !h) {
    return (
      <div class={css.sides}>
        <figure>
          <AlignedFrame before={before} crop={crop}>
            <BeforeLayer before={before} crop={crop} alt="Before" />
          </AlignedFrame>
          <figcaption>Before</figcaption>
        </figure>
        <figure>
          <AlignedFrame before={h ? before : after} crop={crop}>
            {h ? (
              <AfterLayer after={after} crop={crop} h={h} alt="After" />
            ) : (
              <BeforeLayer before={after} crop={WHOLE} alt="After" />
            )}
          </AlignedFrame>
          <figcaption>After</figcaption>
        </figure>
      </div>
    );
  }
  /** A finger on the picture moves the edge as well; the slider below does the same for keys and screen readers. */
  const follow = (event: PointerEvent & { readonly currentTarget: HTMLElement }): void => {
    if (way !== 'wipe' || (event.type === 'pointermove' && event.buttons === 0)) return;
    const { left, width } = event.currentTarget.getBoundingClientRect();
    onMove(Math.min(1, Math.max(0, (event.clientX - left) / width)));
  };
  return (
    <div class={css.one} data-way={way} onPointerDown={follow} onPointerMove={follow}>
      <AlignedFrame before={before} crop={crop}>
        <BeforeLayer before={before} crop={crop} alt="Before" />
        <AfterLayer
          {...{ after, crop, h }}
          alt="After, laid over it"
          shownFrom={way === 'wipe' ? position : 0}
          opacity={way === 'fade' ? 1 - position : 1}
        />
        {way === 'wipe' && <span class={css.edge} style={{ insetInlineStart: `${position * 100}%` }} />}
        <span class={css.word}>Before</span>
        <span class={css.word} data-end>
          After
        </span>
      </AlignedFrame>
    </div>
  );
}
