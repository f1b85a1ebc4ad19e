import { sentenceOf } from '../text/errors.ts';

/** The app could not open its storage: says why and what to do, and touches nothing. */
export function StartFailed({ error }: { readonly error: unknown }) {
  return (
    <main class="first-paint">
      <h1>Blockworth cannot open its shelf</h1>
      <p>{sentenceOf(error)}</p>
      <p>Nothing has been changed or deleted.</p>
      <p>
        <button type="button" onClick={() => location.reload()}>
          Try again
        </button>
      </p>
    </main>
  );
}
