import { render } from 'preact';
import { catalogue } from './catalogue/index.ts';
import { createOwnRecord } from './parts/own-record.ts';
import { type App, AppContext } from './ui/app.ts';
import { Outlet } from './ui/router.tsx';
import { StatusBar } from './ui/status-bar.tsx';
import { createForecaster } from './workers/forecaster.ts';

const startWorker = (): Worker =>
  new Worker(new URL('./workers/forecast.worker.ts', import.meta.url), { type: 'module', name: 'forecast' });

/** Draws the app with everything it knows. Apart from `main.tsx`, so that the shelf can be there before the catalogue. */
export function drawApp(root: HTMLElement, given: Pick<App, 'store' | 'now' | 'cleared'>): void {
  const app: App = {
    ...given,
    catalogue,
    own: createOwnRecord(given.store, catalogue),
    forecaster: createForecaster(startWorker),
  };
  render(
    <AppContext.Provider value={app}>
      <StatusBar />
      <Outlet onArrive={() => document.querySelector<HTMLElement>('h1')?.focus({ preventScroll: true })} />
    </AppContext.Provider>,
    root,
  );
}
