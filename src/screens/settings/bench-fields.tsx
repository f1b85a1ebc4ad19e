import type { Settings } from '../../core/records.ts';
import { useActions } from '../../parts/actions.ts';
import { NumberField } from '../../ui/field.tsx';
import { SeveralField } from '../../ui/several-field.tsx';
import css from './settings.module.css';

const weekdays = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'] as const;

/** When the owner’s hands are free: days and plans count on it. At least one evening stays. */
export function BenchFields({ settings }: { readonly settings: Settings }) {
  const actions = useActions();
  const { evenings } = settings;
  const isLast = (day: number): boolean => evenings.filter(Boolean).length === 1 && (evenings[day] ?? false);
  return (
    <>
      <NumberField
        label="Hours in an evening"
        unit="h"
        step={0.5}
        min={0.5}
        max={14}
        chips={[1, 2.5, 4, 8]}
        value={settings.eveningHours}
        onChange={(hours) => hours !== null && actions.setSettings({ eveningHours: hours })}
      />
      <SeveralField
        label="Evenings at the bench"
        options={weekdays.map((name, day) => ({
          id: day,
          label: name.slice(0, 3),
          name,
          chosen: evenings[day] ?? false,
          fixed: isLast(day),
        }))}
        onToggle={(day) => actions.setSettings({ evenings: evenings.map((free, at) => (at === day ? !free : free)) })}
      />
      <p class={css.hint}>
        Waits for glue and drying run on every day. One evening always stays, or nothing gets done.
      </p>
    </>
  );
}
