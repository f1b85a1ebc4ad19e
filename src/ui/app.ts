import type { Signal } from '@preact/signals';
import { createContext } from 'preact';
import { useContext } from 'preact/hooks';
import type { Catalogue } from '../core/catalogue.ts';
import type { Store } from '../store/store.ts';

/** What `main.tsx` makes once and every screen may use. */
export interface App {
  readonly store: Store;
  readonly catalogue: Catalogue;
  /** Now, as Unix milliseconds: screens do not ask the clock themselves. */
  readonly now: () => number;
  /** The phone emptied our storage since last time, and nobody has said they know. */
  readonly cleared: Signal<boolean>;
}

export const AppContext = createContext<App | undefined>(undefined);

export function useApp(): App {
  const app = useContext(AppContext);
  if (!app) throw new Error('No App in context: expected screens to be drawn inside AppContext.Provider.');
  return app;
}
