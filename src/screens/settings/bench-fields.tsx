import type { Settings } from '../../core/records.ts';
import { useActions } from '../../parts/actions.ts';
import { NumberField } from '../../ui/field.tsx';
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
      <fieldset class={css.week}>
        <legend>Evenings at the bench</legend>
        <div>
          {weekdays.map((name, day) => (
            <button
              key={name}
              type="button"
              aria-pressed={evenings[day] ?? false}
              aria-label={name}
              disabled={isLast(day)}
              onClick={() => actions.setSettings({ evenings: evenings.map((free, at) => (at === day ? !free : free)) })}
            >
              {name.slice(0, 3)}
            </button>
          ))}
        </div>
      </fieldset>
      <p class={css.hint}>
        Waits for glue and drying run on every day. One evening always stays, or nothing gets done.
      </p>
    </>
  );
}
