import { useState } from 'preact/hooks';
import { ACTIVITIES, type Activity } from '../../../core/advice/borers.ts';
import { QUARANTINE_CAUTIONS, quarantineAnswer, sourcesOfQuarantine } from '../../../core/advice/quarantine.ts';
import { climateOf } from '../../../core/climate.ts';
import type { Hemisphere } from '../../../core/physics/quarantine.ts';
import { quarantineWords } from '../../../text/advice/quarantine.ts';
import { dayHere } from '../../../text/days.ts';
import { useApp } from '../../../ui/app.ts';
import { DayField } from '../../../ui/day-field.tsx';
import { ChoiceField, NumberField } from '../../../ui/field.tsx';
import { Advised } from '../advised.tsx';
import type { Calculator } from '../calculator.ts';
import css from '../calculators.module.css';

const halves = [
  { id: 'north', label: 'North' },
  { id: 'south', label: 'South' },
] as const;
const activities: Readonly<Record<Activity, string>> = {
  active: 'Fresh signs',
  inactive: 'Old, no fresh signs',
  unknown: 'Cannot tell',
};

function Quarantine() {
  const { store, now } = useApp();
  const climate = climateOf(store.settings.value);
  const today = dayHere(now());
  const [arrivedOn, setArrival] = useState<string | null>(today);
  const [dustOn, setDust] = useState<string | null>(null);
  const [hemisphere, setHemisphere] = useState<Hemisphere>(climate.hemisphere);
  const [activity, setActivity] = useState<Activity>('unknown');
  const [holeMm, setHole] = useState<number | null>(null);
  const dustCounts = arrivedOn !== null && dustOn !== null && dustOn >= arrivedOn;
  const answer =
    arrivedOn === null
      ? undefined
      : quarantineAnswer({
          arrivedOn,
          hemisphere,
          today,
          relativeHumidityPct: climate.room.relativeHumidityPct,
          freshDustOn: dustCounts ? [dustOn] : [],
          activity,
          clues: { followsPinningLine: false, ...(holeMm ? { holeMm } : {}) },
        });
  return (
    <div class={css.pair}>
      <div>
        <DayField label="It came, or comes, on" value={arrivedOn} onChange={setArrival} />
        <DayField
          label="Fresh dust last seen on"
          hint="Starts the clock again. Days before it came do not count."
          value={dustOn}
          {...(arrivedOn === null ? {} : { min: arrivedOn })}
          onChange={setDust}
        />
        <ChoiceField
          label="Half of the globe"
          value={hemisphere}
          options={halves}
          onChange={(half) => half && setHemisphere(half)}
        />
        <ChoiceField
          label="Alive?"
          value={activity}
          options={ACTIVITIES.map((id) => ({ id, label: activities[id] }))}
          onChange={(picked) => picked && setActivity(picked)}
        />
        <NumberField
          label="Hole across"
          hint="For the years its larvae take: furniture beetle 1–2 mm."
          unit="mm"
          step={0.1}
          max={12}
          chips={[1, 1.5, 2, 3]}
          value={holeMm}
          onChange={setHole}
        />
      </div>
      <div>
        <Advised
          words={answer && quarantineWords(answer)}
          cautions={QUARANTINE_CAUTIONS}
          sources={answer ? sourcesOfQuarantine(answer.borer) : []}
          source="A year and one whole flight season, whichever ends later: our rule round published months. Looks every 14 days in the season, 30 outside it: common practice."
          empty="Fill in the day it came."
        />
      </div>
    </div>
  );
}

export default {
  id: 'quarantine',
  order: 11,
  title: 'Quarantine dates',
  about: 'Until when a block is kept apart, when to look, and what a quiet summer is worth.',
  Panel: Quarantine,
} satisfies Calculator;
