import { climateOf, ROOM_BOUNDS } from '../../core/climate.ts';
import type { Settings } from '../../core/records.ts';
import { useActions } from '../../parts/actions.ts';
import { ChoiceField, NumberField } from '../../ui/field.tsx';

const hemispheres = [
  { id: 'north', label: 'North', text: 'beetles fly April to September' },
  { id: 'south', label: 'South', text: 'October to March' },
] as const;

/** The air blocks live in and the half of the globe: cracks, mould and quarantine are reckoned from them. */
export function ClimateFields({ settings }: { readonly settings: Settings }) {
  const actions = useActions();
  const { room, hemisphere } = climateOf(settings);
  return (
    <>
      <NumberField
        label="Temperature of the room"
        unit="°C"
        step={1}
        min={ROOM_BOUNDS.coldestC}
        max={ROOM_BOUNDS.hottestC}
        chips={[12, 16, 20, 24]}
        value={room.temperatureC}
        onChange={(degrees) => degrees !== null && actions.setSettings({ roomTemperatureC: degrees })}
      />
      <NumberField
        label="Humidity of the room"
        hint="As a hygrometer on the shelf shows it over some weeks. Store blocks at 45 to 55 %."
        unit="%"
        step={5}
        min={ROOM_BOUNDS.driestPct}
        max={ROOM_BOUNDS.dampestPct}
        chips={[35, 45, 55, 65]}
        value={room.relativeHumidityPct}
        onChange={(percent) => percent !== null && actions.setSettings({ roomHumidityPct: percent })}
      />
      <ChoiceField
        label="Half of the globe"
        hint="Decides when quarantine may end: wood beetles leave the wood in the warm months."
        value={hemisphere}
        options={hemispheres}
        onChange={(half) => half && actions.setSettings({ hemisphere: half })}
      />
    </>
  );
}
