import { signal } from '@preact/signals';
import type { ComponentType } from 'preact';
import { useEffect, useLayoutEffect, useState } from 'preact/hooks';
import { matches, type Params, type Route } from './route.ts';
import { SafetyNet } from './safety-net.tsx';

const found = import.meta.glob<{ routes: readonly Route[] }>('../screens/*/route.ts', { eager: true });
const routes = Object.values(found).flatMap((module) => module.routes);

const readPath = (): string => location.hash.replace(/^#/, '') || '/';
/** Path after the `#`, kept in step with the address. */
export const path = signal(readPath());
addEventListener('hashchange', () => {
  path.value = readPath();
});

/** Goes to an address made by `to()`. `replace` leaves no step behind to go back to. */
export function go(address: string, { replace = false } = {}): void {
  if (replace) location.replace(address);
  else location.hash = address;
}

/** One step back, or to `otherwise` when the app was opened here. */
export function back(otherwise: string): void {
  if (history.length > 1) history.back();
  else go(otherwise, { replace: true });
}

type Screen = ComponentType<{ params: Params }>;
type Loaded = { readonly route: Route; readonly params: Params; readonly Screen: Screen; readonly address: string };

/** Hands an error that came while loading to the net that catches those that come while drawing. */
function Thrown({ error }: { readonly error: unknown }): never {
  throw error;
}

/** Draws the screen the address names; keeps the old one until the new one's code is here. */
export function Outlet({ onArrive }: { onArrive: (route: Route) => void }) {
  const [shown, setShown] = useState<Loaded>();
  const [failed, setFailed] = useState<unknown>();
  const address = path.value;
  useEffect(() => {
    let current = true;
    const hit = routes.flatMap((route) => {
      const params = matches(route, address.split('?')[0] ?? '/');
      return params ? [{ route, params }] : [];
    })[0];
    if (!hit) {
      go('#/', { replace: true });
      return;
    }
    hit.route.load().then(
      ({ default: Screen }) => {
        if (!current) return;
        setFailed(undefined);
        setShown({ ...hit, Screen, address });
      },
      (error: unknown) => current && setFailed(error),
    );
    return () => {
      current = false;
    };
  }, [address]);
  // Once it is drawn, not before: the heading that gets the focus must be the new one.
  useLayoutEffect(() => {
    if (!shown) return;
    onArrive(shown.route);
    scrollTo(0, 0);
  }, [shown]);
  if (failed)
    return (
      <SafetyNet>
        <Thrown error={failed} />
      </SafetyNet>
    );
  if (!shown) return null;
  const { Screen, params, address: drawn } = shown;
  return (
    <SafetyNet key={drawn}>
      <Screen params={params} />
    </SafetyNet>
  );
}
