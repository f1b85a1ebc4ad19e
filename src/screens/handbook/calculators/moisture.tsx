import { useState } from 'preact/hooks';
import { sourceOfWood } from '../../../core/advice/wood-of-block.ts';
import { type Air, airAt, dewPointC } from '../../../core/physics/air.ts';
import {
  DRYING_ABOVE_WETTING_POINTS,
  equilibriumMoisturePct,
  readMoisture,
} from '../../../core/physics/equilibrium-moisture.ts';
import { storeClimate } from '../../../core/physics/mould-risk.ts';
import { type AcrossGrain, widthChange } from '../../../core/physics/movement.ts';
import { WOODS, type WoodId } from '../../../core/physics/woods.ts';
import { Cautions } from '../../../parts/cautions.tsx';
import { LengthField } from '../../../parts/length-field.tsx';
import { pct, tidy } from '../../../text/advice/figures.ts';
import { length, opening } from '../../../text/format.ts';
import { useApp } from '../../../ui/app.ts';
import { ChoiceField, NumberField } from '../../../ui/field.tsx';
import { AirFields } from '../air-fields.tsx';
import type { Calculator } from '../calculator.ts';
import css from '../calculators.module.css';
import { Results } from '../results.tsx';
import { useRoom } from '../use-room.ts';
import { WoodField } from '../wood-field.tsx';

const moistureWords = (air: Air): string => {
  const reading = readMoisture(air);
  if (reading.kind === 'near-saturation') return 'near saturation';
  return `${pct(reading.moisturePct)}${reading.kind === 'outside-table' ? `, ${reading.because} than the table reaches` : ''}`;
};

const shelf = {
  right: 'right, 45 to 55 %',
  bearable: 'bearable',
  'too dry': 'too dry: wood cracks',
  'too damp': 'too damp: beetles and, higher, mould',
} as const;

const { low, high } = DRYING_ABOVE_WETTING_POINTS;

/** What wood holds in an air, and what becomes of that air warmed or cooled. */
function InAir({ air, onChange }: { readonly air: Air; readonly onChange: (air: Partial<Air>) => void }) {
  const [warmedC, setWarmed] = useState<number | null>(45);
  const after = warmedC === null ? undefined : airAt(air, warmedC);
  const dries = after?.kind === 'air' && after.relativeHumidityPct < air.relativeHumidityPct;
  return (
    <>
      <h3>Wood in air</h3>
      <AirFields air={air} onChange={onChange} />
      <Results
        rows={[
          ['Wood finally holds', moistureWords(air)],
          ['As a shelf for blocks', shelf[storeClimate(air.relativeHumidityPct)]],
          ['Dew below', `${tidy(dewPointC(air), 0)} °C`],
        ]}
        source={`USDA Wood Handbook FPL-GTR-282 (2021), eq. 4-5. One piece may lie points off: at 50 % wood that dries holds ${low} to ${high} points more than wood that wets. Dew by the Magnus formula.`}
      />
      <NumberField
        label="The same air at"
        hint="A parked car in the sun, a cold hall, a freezer."
        unit="°C"
        step={1}
        min={-30}
        max={60}
        chips={[5, 20, 45]}
        value={warmedC}
        onChange={setWarmed}
      />
      {dries && <Cautions ids={['parkedCar', 'noOven']} />}
      {after?.kind === 'dew' && <Cautions ids={['staySealed']} />}
      <Results
        rows={
          after && [
            [
              'Humidity then',
              after.kind === 'dew'
                ? `100 %: dew from ${tidy(after.dewPointC, 0)} °C down`
                : pct(after.relativeHumidityPct, 0),
            ],
            ['Wood would finally hold', moistureWords(after)],
          ]
        }
        source="No water given or taken: Magnus formula, constants of the WMO guide (2008). Warming air dries it."
      />
    </>
  );
}

const directions = [
  { id: 'tangential', label: 'Along the rings', text: 'flat-sawn, moves most' },
  { id: 'radial', label: 'Across the rings', text: 'quarter-sawn' },
] as const;

/** How much a width across the grain moves between two airs. */
function Movement({ from }: { readonly from: Air }) {
  const { units } = useApp().store.settings.value;
  const [wood, setWood] = useState<WoodId>('lime');
  const [along, setAlong] = useState<AcrossGrain>('tangential');
  const [widthMm, setWidth] = useState<number | null>(30);
  const [humidity, setHumidity] = useState<number | null>(65);
  const step =
    humidity === null
      ? undefined
      : {
          fromMoisturePct: equilibriumMoisturePct(from.temperatureC, from.relativeHumidityPct),
          toMoisturePct: equilibriumMoisturePct(from.temperatureC, humidity),
        };
  const change = widthMm && step ? widthChange(WOODS[wood], along, widthMm, step) : undefined;
  const sign = change && change.changeMm < 0 ? 'shrinks' : 'swells';
  return (
    <>
      <h3>A width that moves</h3>
      <WoodField wood={wood} onChange={setWood} />
      <ChoiceField
        label="The width runs"
        value={along}
        options={directions}
        onChange={(picked) => picked && setAlong(picked)}
      />
      <LengthField
        label="Width across the grain"
        hint="A key, a part, a brim."
        valueMm={widthMm}
        stepMm={1}
        maxMm={1000}
        onChange={setWidth}
      />
      <NumberField
        label="From that air to a humidity of"
        unit="%"
        step={5}
        min={5}
        max={95}
        chips={[35, 55, 65, 80]}
        value={humidity}
        onChange={setHumidity}
      />
      <Results
        rows={
          change &&
          step && [
            ['Moisture', `${pct(step.fromMoisturePct)} → ${pct(step.toMoisturePct)}`],
            [`It ${sign} by`, length(Math.abs(change.changeMm), units)],
            [
              'One piece or another',
              `${length(Math.abs(change.leastMm), units)} to ${length(Math.abs(change.mostMm), units)}`,
            ],
          ]
        }
        source={`Wood Handbook eq. 13-2, and 13-3 for wide steps. ${opening(sourceOfWood(wood).source)}.`}
      />
      <p class={css.note}>
        Skin in days, middle in months: a solid block lags far behind its room. A joint that sticks in summer is dried
        before it is pared.
      </p>
    </>
  );
}

function Moisture() {
  const [air, setAir] = useRoom();
  return (
    <div class={css.pair}>
      <div>
        <InAir air={air} onChange={setAir} />
      </div>
      <div>
        <Movement from={air} />
      </div>
    </div>
  );
}

export default {
  id: 'moisture',
  order: 6,
  title: 'Moisture and air',
  about: 'What wood holds in a room, what a warm car does to it, how much a width moves.',
  Panel: Moisture,
} satisfies Calculator;
