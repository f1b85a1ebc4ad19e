import { useState } from 'preact/hooks';
import { entry } from '../../core/catalogue.ts';
import type { Settings } from '../../core/records.ts';
import { useActions } from '../../parts/actions.ts';
import { dayWords } from '../../text/days.ts';
import { useApp } from '../../ui/app.ts';
import { Button } from '../../ui/button.tsx';
import { DayField } from '../../ui/day-field.tsx';
import { NumberField } from '../../ui/field.tsx';
import css from './settings.module.css';

/** One pair of hands works on one block at a time; more of either would be another workshop. */
const FIXED = ['hands', 'bench'];

/** What there is to work with, and when nobody is there: the schedule of several blocks shares it out. */
export function WorkshopFields({ settings }: { readonly settings: Settings }) {
  const { catalogue } = useApp();
  const actions = useActions();
  const own = settings.capacities ?? {};
  return (
    <>
      {Object.entries(catalogue.resources)
        .filter(([id]) => !FIXED.includes(id))
        .map(([id, { term, note, capacity }]) => (
          <NumberField
            key={id}
            label={term}
            hint={note}
            unit=""
            step={1}
            min={0}
            max={99}
            value={entry(own, id) ?? capacity}
            onChange={(units) => {
              const { [id]: _, ...rest } = own;
              // The usual number is no choice of the owner's.
              actions.setSettings({
                capacities: units === null || units === capacity ? rest : { ...rest, [id]: units },
              });
            }}
          />
        ))}
      <DatesOff settings={settings} />
    </>
  );
}

function DatesOff({ settings }: { readonly settings: Settings }) {
  const actions = useActions();
  const [day, setDay] = useState<string | null>(null);
  const off = settings.datesOff ?? [];
  return (
    <fieldset class={css.off}>
      <legend>Evenings off</legend>
      {off.length > 0 && (
        <ul>
          {off.map((date) => (
            <li key={date}>
              <span>{dayWords(date)}</span>
              <Button
                look="quiet"
                label={`Remove ${dayWords(date)}`}
                onPress={() => actions.setSettings({ datesOff: off.filter((one) => one !== date) })}
              >
                Remove
              </Button>
            </li>
          ))}
        </ul>
      )}
      <DayField label="No evening at the bench on" value={day} onChange={setDay} />
      <Button
        disabled={day === null || off.includes(day)}
        onPress={() => {
          if (day === null) return;
          actions.setSettings({ datesOff: [...off, day].sort() });
          setDay(null);
        }}
      >
        Add the date
      </Button>
    </fieldset>
  );
}
