import { effect } from '@preact/signals';
import { render } from 'preact';
import { catalogue } from './catalogue/index.ts';
import { keepBadge } from './parts/badge.ts';
import { createOwnRecord } from './parts/own-record.ts';
import { UnderWayBar } from './parts/under-way-bar.tsx';
import { takePendingCapture } from './photos/drafts.ts';
import { interrupted } from './photos/interrupted.ts';
import { type App, AppContext } from './ui/app.ts';
import { to } from './ui/route.ts';
import { go, Outlet } from './ui/router.tsx';
import { StatusBar } from './ui/status-bar.tsx';
import { createForecaster } from './workers/forecaster.ts';
import { createBenchScheduler } from './workers/scheduler.ts';

const startWorker = (): Worker =>
  new Worker(new URL('./workers/forecast.worker.ts', import.meta.url), { type: 'module', name: 'forecast' });

const startScheduleWorker = (): Worker =>
  new Worker(new URL('./workers/schedule.worker.ts', import.meta.url), { type: 'module', name: 'schedule' });

/** When a record was made, by its id, in Unix milliseconds. Source: UUIDv7, RFC 9562, 5.7. */
const madeMs = (id: string): number => Number.parseInt(id.slice(0, 8) + id.slice(9, 13), 16);

/** Back to where a photograph was being taken when the phone closed the page under the camera. */
function resumeCapture({ all }: App['store']): void {
  const pending = takePendingCapture();
  if (!pending) return;
  // A phone that dies can bring the note back after it was torn up; then the photograph is here.
  const last = all('photo').value.at(-1);
  if (last && madeMs(last.id) >= pending.begunMs) return;
  const { context } = pending;
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
    scheduler: createBenchScheduler(startScheduleWorker),
  };
  // The thumb's side: what is reached most lies there.
  effect(() => {
    document.documentElement.dataset.hand = given.store.settings.value.hand;
  });
  keepBadge(app, navigator);
  resumeCapture(given.store);
  render(
    <AppContext.Provider value={app}>
      <StatusBar />
      <UnderWayBar />
      <Outlet onArrive={() => document.querySelector<HTMLElement>('h1')?.focus({ preventScroll: true })} />
    </AppContext.Provider>,
    root,
  );
}
