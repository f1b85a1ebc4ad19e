import { formatEighths, usSize } from '../core/hat-sizes.ts';
import { sizesCm } from '../core/shelf-gaps.ts';
import { useApp } from '../ui/app.ts';
import { useActions } from './actions.ts';
import css from './usual-sizes.module.css';

/** Head sizes hats are made in, whole centimetres. Common practice, no source. */
const SIZES = [50, 51, 52, 53, 54, 55, 56, 57, 58, 59, 60, 61, 62, 63, 64] as const;

/** The head sizes the owner works in, each a button: gaps on the shelf are counted against them. */
export function UsualSizes() {
  const { store } = useApp();
  const actions = useActions();
  const { usualSizes, units } = store.settings.value;
  const chosen = sizesCm(usualSizes);
  const say = (cm: number): string => (units === 'inch' ? `US ${formatEighths(usSize(cm * 10))}` : `${cm} cm`);
  return (
    <fieldset class={css.sizes}>
      <legend>Head sizes you work in</legend>
      <div>
        {SIZES.map((cm) => (
          <button
            key={cm}
            type="button"
            aria-pressed={chosen.includes(cm)}
            onClick={() =>
              actions.setSettings({
                usualSizes: (chosen.includes(cm) ? chosen.filter((other) => other !== cm) : [...chosen, cm])
                  .sort((a, b) => a - b)
                  .map((size) => size * 10),
              })
            }
          >
            {say(cm)}
          </button>
        ))}
      </div>
    </fieldset>
  );
}
