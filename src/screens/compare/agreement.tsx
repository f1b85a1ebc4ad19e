import type { BeforeAfter } from '../../core/before-after.ts';
import css from './compare.module.css';
import type { LineUp } from './use-line-up.ts';

/**
 * Under this the photographs lie over each other, but not so that a fine edge could be trusted. Seven drawn pairs in other
 * light, lined up to a fifth of a pixel, agreed by 0.63 to 0.89; the limit itself is a trade estimate.
 */
const ROUGH_BELOW = 0.5;

/** How well the two lie over each other, in words and as the figure it comes from; or why they do not. */
export function Agreement({ pair, state }: { readonly pair: BeforeAfter; readonly state: LineUp }) {
  const { alignment } = pair;
  if (state.at === 'failed') return <p role="alert">{state.sentence}</p>;
  if (state.at === 'unlike') {
    return (
      <p role="alert" class={css.unsure}>
        These could not be lined up{state.taps.length > 0 ? ' by the places tapped' : ''}: too little looks the same in
        both.{' '}
        {state.taps.length > 0
          ? 'Move the places, or take them as they are.'
          : 'Tap four places that are still the same.'}
      </p>
    );
  }
  if (!alignment) {
    return (
      <p class={css.said}>Not lined up yet, so only side by side. Lighter and darker, moved or turned is all right.</p>
    );
  }
  const { agreement, method } = alignment;
  const how = method === 'features' ? 'by itself' : 'by the places tapped';
  if (agreement === null) {
    return (
      <p class={css.unsure}>
        Lined up {how} alone: the pictures were not asked. Check an edge before you trust a difference.
      </p>
    );
  }
  const figure = `agreement ${agreement.toFixed(2)} of 1`;
  return agreement < ROUGH_BELOW ? (
    <p class={css.unsure}>
      Only roughly lined up {how} ({figure}). Tap four places to do better.
    </p>
  ) : (
    <p class={css.said}>
      Lined up {how} ({figure}). True for a flat face; on a curve only near the middle.
    </p>
  );
}
