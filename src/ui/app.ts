import type { ReadonlySignal } from '@preact/signals';
import { createContext } from 'preact';
import { useContext } from 'preact/hooks';
import type { Catalogue } from '../core/catalogue.ts';
import type { PaceBook } from '../core/plan.ts';
import type { Tallies } from '../core/simulate/belief.ts';
import type { Store } from '../store/store.ts';
import type { Forecaster } from '../workers/forecaster.ts';
import type { BenchScheduler } from '../workers/scheduler.ts';

/** What `main.tsx` makes once and every screen may use. */
export interface App {
  readonly store: Store;
  readonly catalogue: Catalogue;
  /** Now, as Unix milliseconds: screens do not ask the clock themselves. */
  readonly now: () => number;
  /** What the owner's own log and surveys teach: pace by kind of work, and how often what is found. */
  readonly own: { readonly pace: ReadonlySignal<PaceBook>; readonly tallies: ReadonlySignal<Tallies> };
  readonly forecaster: Forecaster;
  readonly scheduler: BenchScheduler;
}

export const AppContext = createContext<App | undefined>(undefined);

export function useApp(): App {
  const app = useContext(AppContext);
  if (!app) throw new Error('No App in context: expected screens to be drawn inside AppContext.Provider.');
  return app;
}
