import { useEffect, useRef } from 'preact/hooks';
import type { Shot } from '../../core/shot-list.ts';
import css from './camera.module.css';

/** The shot list: one row of standard views, done ones ticked, the one in hand marked; a tap takes another in hand. */
export function Shots({
  shots,
  inHand,
  onChoose,
}: {
  readonly shots: readonly Shot[];
  readonly inHand: string;
  readonly onChoose: (view: string) => void;
}) {
  const row = useRef<HTMLUListElement>(null);
  useEffect(() => {
    const chosen = row.current?.querySelector<HTMLElement>('[aria-pressed="true"]');
    if (!chosen || !row.current) return;
    // Only the row moves: the page stays where the thumb left it.
    row.current.scrollLeft = chosen.offsetLeft - (row.current.clientWidth - chosen.offsetWidth) / 2;
  }, [inHand]);
  return (
    <ul class={css.shots} ref={row} aria-label="Shot list">
      {shots.map(({ view, term, taken }) => (
        <li key={view}>
          <button
            type="button"
            aria-pressed={view === inHand}
            aria-label={`${term}, ${taken === 0 ? 'not taken yet' : taken === 1 ? 'taken' : `${taken} taken`}`}
            onClick={() => onChoose(view)}
          >
            {taken > 0 && <span aria-hidden="true">✓ </span>}
            {term}
          </button>
        </li>
      ))}
    </ul>
  );
}
