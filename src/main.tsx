import { signal } from '@preact/signals';
import { render } from 'preact';
import { catalogue } from './catalogue/index.ts';
import { goOffline } from './offline.ts';
import { StartFailed } from './parts/start-failed.tsx';
import { openStore } from './store/open-store.ts';
import { ERROR_SENTENCES } from './text/errors.ts';
import { AppContext } from './ui/app.ts';
import { Outlet } from './ui/router.tsx';
import { StatusBar } from './ui/status-bar.tsx';

const now = (): number => Date.now();

/** A sentence in place of the first paint, while the shelf cannot be opened yet. */
function say(root: HTMLElement, sentence: string): void {
  const line = root.querySelector('.first-paint p');
  if (line) line.textContent = sentence;
}

/** The composition root: opens the storage, builds the store, draws the app. The only one that knows everyone. */
async function start(): Promise<void> {
  const root = document.getElementById('app');
  if (!root) throw new Error('No #app in the page.');
  try {
    const store = await openStore(now, (status) => {
      if (status === 'close-other-windows') say(root, ERROR_SENTENCES[status]);
    });
    const cleared = signal((await store.repository.identity()).cleared);
    root.replaceChildren();
    render(
      <AppContext.Provider value={{ store, catalogue, now, cleared }}>
        <StatusBar />
        <Outlet onArrive={() => document.querySelector<HTMLElement>('h1')?.focus({ preventScroll: true })} />
      </AppContext.Provider>,
      root,
    );
    performance.mark('blockworth-ready');
  } catch (error) {
    root.replaceChildren();
    render(<StartFailed error={error} />, root);
  }
  await goOffline();
}

void start();
