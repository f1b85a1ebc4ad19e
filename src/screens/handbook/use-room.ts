import { useState } from 'preact/hooks';
import { climateOf } from '../../core/climate.ts';
import type { Air } from '../../core/physics/air.ts';
import { useApp } from '../../ui/app.ts';

/** The air to reckon with: the owner's room to begin with, and free to be changed here. */
export function useRoom(): readonly [Air, (air: Partial<Air>) => void] {
  const { store } = useApp();
  const [air, setAir] = useState<Air>(climateOf(store.settings.value).room);
  return [air, (change) => setAir((before) => ({ ...before, ...change }))];
}
