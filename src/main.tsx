import { render } from 'preact';
import { catalogue } from './catalogue/index.ts';
import { goOffline } from './offline.ts';
import { StartFailed } from './parts/start-failed.tsx';
import { openStore } from './store/open-store.ts';
import { AppContext } from './ui/app.ts';
import { Outlet } from './ui/router.tsx';
import { StatusBar } from './ui/status-bar.tsx';

/** The composition root: opens the storage, builds the store, draws the app. The only one that knows everyone. */
async function start(): Promise<void> {
  const root = document.getElementById('app');
  if (!root) throw new Error('No #app in the page.');
  try {
    const store = await openStore(() => Date.now());
    root.replaceChildren();
    render(
      <AppContext.Provider value={{ store, catalogue, now: () => Date.now() }}>
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
