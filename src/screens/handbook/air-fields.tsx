import type { Air } from '../../core/physics/air.ts';
import { NumberField } from '../../ui/field.tsx';

/** Temperature and humidity, within what the equations hold for. */
export function AirFields({
  air,
  onChange,
  of = 'the room',
}: {
  readonly air: Air;
  readonly onChange: (air: Partial<Air>) => void;
  readonly of?: string;
}) {
  return (
    <>
      <NumberField
        label={`Temperature of ${of}`}
        unit="°C"
        step={1}
        min={0}
        max={45}
        value={air.temperatureC}
        onChange={(temperatureC) => temperatureC !== null && onChange({ temperatureC })}
      />
      <NumberField
        label={`Humidity of ${of}`}
        unit="%"
        step={5}
        min={5}
        max={100}
        chips={[35, 45, 55, 65, 80]}
        value={air.relativeHumidityPct}
        onChange={(relativeHumidityPct) => relativeHumidityPct !== null && onChange({ relativeHumidityPct })}
      />
    </>
  );
}
