import { useEffect, useState } from 'preact/hooks';
import { useApp } from './app.ts';
import css from './status-bar.module.css';

/** What was just done, with its undo, until put away; and for a screen reader, whether it is saved. */
export function StatusBar() {
  const { store } = useApp();
  const undoable = store.undoable.value;
  const saving = store.saving.value;
  const [putAway, setPutAway] = useState(false);
  // The next change brings the bar back.
  useEffect(() => {
    if (saving === 'saving') setPutAway(false);
  }, [saving]);
  const said = saving === 'saving' ? 'Saving…' : saving === 'saved' ? 'Saved on this phone' : 'Not saved';
  return (
    <>
      <p class="visually-hidden" role="status">
        {said}
      </p>
      {undoable && !putAway && (
        <div class={css.bar}>
          <span data-state={typeof saving === 'string' ? saving : 'failed'} aria-hidden="true">
            {saving === 'saved' ? 'Saved' : said}
          </span>
          <button type="button" onClick={() => store.undo()}>
            Undo {undoable}
          </button>
          <button type="button" class={css.away} aria-label="Put this away" onClick={() => setPutAway(true)}>
            ×
          </button>
        </div>
      )}
    </>
  );
}
