import { useState } from 'preact/hooks';
import {
  formatEighths,
  hatSizeRow,
  mmFromFrenchPoints,
  mmFromInches,
  mmFromUkSize,
  mmFromUsSize,
  type UkScale,
} from '../../../core/hat-sizes.ts';
import { ukScaleOf } from '../../../parts/uk-scale.ts';
import { useApp } from '../../../ui/app.ts';
import { ChoiceField, NumberField } from '../../../ui/field.tsx';
import type { Calculator } from '../calculator.ts';
import { Results } from '../results.tsx';

interface Scale {
  readonly label: string;
  readonly unit: string;
  readonly step: number;
  readonly min: number;
  readonly max: number;
  readonly start: number;
  readonly toMm: (value: number, uk: UkScale) => number;
}

const scales = {
  cm: { label: 'cm', unit: 'cm', step: 0.5, min: 40, max: 75, start: 57, toMm: (value) => value * 10 },
  inches: { label: 'Inches', unit: 'in', step: 0.125, min: 16, max: 30, start: 22.5, toMm: mmFromInches },
  us: { label: 'US', unit: '', step: 0.125, min: 5, max: 9, start: 7.125, toMm: mmFromUsSize },
  uk: { label: 'UK', unit: '', step: 0.125, min: 5, max: 9, start: 7, toMm: mmFromUkSize },
  french: { label: 'French points', unit: 'points', step: 0.5, min: 0, max: 12, start: 5, toMm: mmFromFrenchPoints },
} as const satisfies Record<string, Scale>;
type ScaleId = keyof typeof scales;
const options = (Object.keys(scales) as ScaleId[]).map((id) => ({ id, label: scales[id].label }));

const orNone = (size: number | null): string => (size === null ? 'not on charts' : formatEighths(size));

function Sizes() {
  const { store } = useApp();
  const uk = ukScaleOf(store.settings.value);
  const [from, setFrom] = useState<ScaleId>('cm');
  const [value, setValue] = useState<number | null>(scales.cm.start);
  const scale: Scale = scales[from];
  const row = value === null ? undefined : hatSizeRow(scale.toMm(value, uk), uk);
  return (
    <>
      <ChoiceField
        label="The size I have is in"
        value={from}
        options={options}
        onChange={(picked) => {
          if (!picked) return;
          setFrom(picked);
          setValue(scales[picked].start);
        }}
      />
      <NumberField
        label="Size"
        hint={from === 'us' || from === 'uk' ? '⅛ is 0.125, ¼ is 0.25, ⅜ is 0.375, ⅝ is 0.625, ⅞ is 0.875.' : undefined}
        unit={scale.unit}
        step={scale.step}
        min={scale.min}
        max={scale.max}
        value={value}
        onChange={setValue}
      />
      <Results
        rows={
          row && [
            ['Centimetres, also EU', `${Number(row.cm.toFixed(1))} cm`],
            ['Inches', `${row.inches.toFixed(2)} in`],
            ['US', orNone(row.us)],
            ['UK', orNone(row.uk)],
            ['French points', orNone(row.frenchPoints)],
          ]
        }
        source={`US: inches of circumference ÷ π, to the nearest ⅛ (public size charts). UK: ${
          uk === 'as-us' ? 'as US, as you set it' : '⅛ under US'
        }. French: (cm − 47) ÷ 2, fitted to a printed table.`}
      />
    </>
  );
}

export default {
  id: 'sizes',
  order: 1,
  title: 'Hat sizes',
  about: 'Centimetres, inches, US, UK and French points, each into all the others.',
  Panel: Sizes,
} satisfies Calculator;
