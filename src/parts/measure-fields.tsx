import type { Station } from '../core/catalogue.ts';
import { entry } from '../core/catalogue.ts';
import { useApp } from '../ui/app.ts';
import { NumberField } from '../ui/field.tsx';
import { useActions } from './actions.ts';
import { ellipseCheck } from './ellipse-check.ts';
import css from './measure-fields.module.css';
import type { BlockCase } from './use-case.ts';

const unitWords = { mm: 'mm', g: 'g', count: '', pct: '%' } as const;

/** Parts have their own question; here come the measures of the station that this type wants, the others folded away. */
export function MeasureFields({ of, station }: { readonly of: BlockCase; readonly station: Station }) {
  const wanted = of.assessment.setting.type?.measures ?? ['circRopeMm', 'lengthMm', 'widthMm', 'weightG'];
  const here = station.measures.filter((id) => id !== 'partsFound' && id !== 'partsExpected');
  const first = here.filter((id) => wanted.includes(id));
  const rest = here.filter((id) => !wanted.includes(id));
  if (here.length === 0) return null;
  const check = ellipseCheck(of.survey.measures);
  return (
    <div>
      {first.map((id) => (
        <MeasureField key={id} of={of} id={id} />
      ))}
      {check && first.includes('circRopeMm') && <p class={css.check}>{check}</p>}
      {rest.length > 0 && (
        <details>
          <summary>Other measures</summary>
          {rest.map((id) => (
            <MeasureField key={id} of={of} id={id} />
          ))}
        </details>
      )}
    </div>
  );
}

function MeasureField({ of, id }: { readonly of: BlockCase; readonly id: string }) {
  const { catalogue } = useApp();
  const actions = useActions();
  const measure = entry(catalogue.measures, id);
  if (!measure) return null;
  const inches = of.settings.units === 'inch' && measure.unit === 'mm';
  const value = Object.hasOwn(of.survey.measures, id) ? (of.survey.measures[id] ?? null) : null;
  return (
    <NumberField
      label={measure.short}
      hint={measure.term === measure.short ? undefined : measure.term}
      unit={inches ? 'in' : unitWords[measure.unit]}
      step={inches ? 0.125 : measure.step}
      max={inches ? measure.max / 25.4 : measure.max}
      value={value === null ? null : inches ? value / 25.4 : value}
      onChange={(typed) =>
        actions.setMeasure(of.survey, id, typed === null ? null : inches ? Math.round(typed * 254) / 10 : typed)
      }
    />
  );
}
