import { path } from '../ui/router.tsx';
import { signposts } from './under-way.ts';
import css from './under-way-bar.module.css';

/** On every screen but Keeping: a backup being made or a file being taken in, how far it is, and the way to it. */
export function UnderWayBar() {
  if (path.value.startsWith('/keeping')) return null;
  return (
    <>
      {Object.entries(signposts).map(([name, { shown, putAway }]) => {
        const sign = shown.value;
        if (!sign) return null;
        const { words, done, of, isBad } = sign;
        const isOver = done === null;
        return (
          <div key={name} class={css.bar} data-bad={isBad || undefined}>
            {/* Only the end is read out: every photograph would be too much. */}
            <p class="figures" role={isBad ? 'alert' : isOver ? 'status' : undefined}>
              {words}
            </p>
            <a href="#/keeping">{isOver ? 'See' : 'Keeping'}</a>
            {isOver && (
              <button type="button" aria-label="Put this away" onClick={putAway}>
                ×
              </button>
            )}
            {!isOver && of > 0 && <progress value={done} max={of} aria-label={words} />}
          </div>
        );
      })}
    </>
  );
}
