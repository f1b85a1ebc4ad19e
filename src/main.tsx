import { render } from 'preact';
import { EarlyShelf } from './parts/early-shelf.tsx';
import { StartFailed } from './parts/start-failed.tsx';
import { openStore } from './store/open-store.ts';
import { ERROR_SENTENCES } from './text/errors.ts';

const now = (): number => Date.now();

/** A sentence in place of the first paint, while the shelf cannot be opened yet. */
function say(root: HTMLElement, sentence: string): void {
  const line = root.querySelector('.first-paint p');
  if (line) line.textContent = sentence;
}

/**
 * The composition root: opens the storage, shows the blocks, then brings the catalogue and the whole app. With
 * `whole-app.tsx` the only one that knows everyone.
 */
async function start(): Promise<void> {
  const root = document.getElementById('app');
  if (!root) throw new Error('No #app in the page.');
  // Asked for at once, needed last: half of all code is the catalogue.
  const wholeApp = import('./whole-app.tsx');
  wholeApp.catch(() => undefined);
  try {
    const store = await openStore(now, (status) => {
      if (status === 'close-other-windows') say(root, ERROR_SENTENCES[status]);
    });
    if (location.hash.length < 3) {
      root.replaceChildren();
      render(<EarlyShelf store={store} />, root);
      performance.mark('blockworth-shelf');
    }
    const { drawApp } = await wholeApp;
    render(null, root);
    root.replaceChildren();
    drawApp(root, { store, now });
    performance.mark('blockworth-ready');
  } catch (error) {
    render(null, root);
    root.replaceChildren();
    render(<StartFailed error={error} />, root);
  }
  const { goOffline } = await import('./offline.ts');
  await goOffline();
}

void start();
