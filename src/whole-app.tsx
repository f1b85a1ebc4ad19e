import { effect } from '@preact/signals';
import { render } from 'preact';
import { catalogue } from './catalogue/index.ts';
import { createOwnRecord } from './parts/own-record.ts';
import { takePendingCapture } from './photos/drafts.ts';
import { interrupted } from './photos/interrupted.ts';
import { type App, AppContext } from './ui/app.ts';
import { to } from './ui/route.ts';
import { go, Outlet } from './ui/router.tsx';
import { StatusBar } from './ui/status-bar.tsx';
import { createForecaster } from './workers/forecaster.ts';

const startWorker = (): Worker =>
  new Worker(new URL('./workers/forecast.worker.ts', import.meta.url), { type: 'module', name: 'forecast' });

/** Back to where a photograph was being taken when the phone closed the page under the camera. */
function resumeCapture(): void {
  const context = takePendingCapture()?.context;
  if (context === undefined) return;
  interrupted.value = context;
  let blockId: unknown;
  try {
    blockId = (JSON.parse(context) as { blockId?: unknown }).blockId;
  } catch {
    // The context of a new block is a word, not a record.
  }
  go(typeof blockId === 'string' ? to('/block/:id', { id: blockId }) : '#/look', { replace: true });
}

/** Draws the app with everything it knows. Apart from `main.tsx`, so that the shelf can be there before the catalogue. */
export function drawApp(root: HTMLElement, given: Pick<App, 'store' | 'now'>): void {
  const app: App = {
    ...given,
    catalogue,
    own: createOwnRecord(given.store, catalogue),
    forecaster: createForecaster(startWorker),
  };
  // The thumb's side: what is reached most lies there.
  effect(() => {
    document.documentElement.dataset.hand = given.store.settings.value.hand;
  });
  resumeCapture();
  render(
    <AppContext.Provider value={app}>
      <StatusBar />
      <Outlet onArrive={() => document.querySelector<HTMLElement>('h1')?.focus({ preventScroll: true })} />
    </AppContext.Provider>,
    root,
  );
}
