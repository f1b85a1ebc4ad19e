import { useEffect, useState } from 'preact/hooks';

/**
 * Rows being edited. What does not hold together yet (a slice that ends below the one before) stays here until it does;
 * only what holds is stored, so that every sum over the stored rows can be made.
 */
export function useDraft<T>(stored: T, holds: (rows: T) => boolean, onChange: (rows: T) => void) {
  const [draft, setDraft] = useState<T>();
  // Undo, or another window, has the last word; a mere save does not, so rows are compared by what they say.
  useEffect(() => setDraft(undefined), [JSON.stringify(stored)]);
  const rows = draft ?? stored;
  return {
    rows,
    wrong: draft !== undefined,
    edit(next: T): void {
      if (!holds(next)) {
        setDraft(next);
        return;
      }
      setDraft(undefined);
      onChange(next);
    },
  };
}
