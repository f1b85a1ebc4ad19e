import type { Store } from '../store/store.ts';
import css from './early-shelf.module.css';

/**
 * The shelf before the catalogue is here: the blocks' names and the one button, usable at once on a slow phone. What
 * needs the catalogue (drawings, verdicts, limits) takes its place a moment later.
 */
export function EarlyShelf({ store }: { readonly store: Store }) {
  const blocks = store.blocks.value;
  return (
    <main class={css.early}>
      <h1>Blockworth</h1>
      <ul>
        {blocks.slice(0, 40).map(({ id, objectNumber, name }) => (
          <li key={id}>
            <a href={`#/block/${id}`}>{[objectNumber, name || 'Unnamed block'].filter(Boolean).join(' ')}</a>
          </li>
        ))}
      </ul>
      <p>
        <a class={css.look} href="#/look">
          Look at a block
        </a>
      </p>
    </main>
  );
}
