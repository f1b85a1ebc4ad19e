import { useState } from 'preact/hooks';
import { ellipseCircumferenceMm, ovalFromCircumference, ovalNumber, ovalRatio } from '../../../core/ellipse.ts';
import { ellipseCheck } from '../../../parts/ellipse-check.ts';
import { LengthField } from '../../../parts/length-field.tsx';
import { length } from '../../../text/format.ts';
import { useApp } from '../../../ui/app.ts';
import { NumberField } from '../../../ui/field.tsx';
import type { Calculator } from '../calculator.ts';
import css from '../calculators.module.css';
import { Results } from '../results.tsx';

/** From the callipers to the circumference. */
function FromCallipers() {
  const { units } = useApp().store.settings.value;
  const [lengthMm, setLength] = useState<number | null>(null);
  const [widthMm, setWidth] = useState<number | null>(null);
  const [tape, setTape] = useState<number | null>(null);
  const oval = lengthMm && widthMm ? { lengthMm, widthMm } : undefined;
  return (
    <>
      <h3>From callipers</h3>
      <LengthField label="Length, front to back" valueMm={lengthMm} stepMm={1} maxMm={600} onChange={setLength} />
      <LengthField label="Width, side to side" valueMm={widthMm} stepMm={1} maxMm={600} onChange={setWidth} />
      <LengthField
        label="Tape, to check against"
        hint="Leave it empty if you have none."
        valueMm={tape}
        stepMm={1}
        maxMm={1900}
        onChange={setTape}
      />
      <Results
        rows={
          oval && [
            ['Circumference', length(ellipseCircumferenceMm(oval), units)],
            ['Oval number, length less width', `${Math.round(ovalNumber(oval))} mm`],
            ['Length over width', ovalRatio(oval).toFixed(2)],
          ]
        }
        source="Ramanujan’s second formula for the ellipse; for hat ovals as good as exact. Oval 36 is usual (a block maker’s notes)."
      />
      {oval && tape !== null && (
        <p class={css.note}>{ellipseCheck({ lengthMm: oval.lengthMm, widthMm: oval.widthMm, circRopeMm: tape })}</p>
      )}
    </>
  );
}

/** From circumference and oval number to length and width. */
function FromOval() {
  const { units } = useApp().store.settings.value;
  const [circumference, setCircumference] = useState<number | null>(null);
  const [number, setNumber] = useState<number | null>(36);
  const isAsked = circumference !== null && circumference > 0 && number !== null;
  const oval = isAsked ? ovalFromCircumference(circumference, number) : null;
  return (
    <>
      <h3>From circumference and oval number</h3>
      <LengthField label="Circumference" valueMm={circumference} stepMm={1} maxMm={1900} onChange={setCircumference} />
      <NumberField
        label="Oval number"
        unit="mm"
        step={1}
        max={200}
        chips={[30, 36, 50]}
        value={number}
        onChange={setNumber}
      />
      <Results
        rows={
          oval
            ? [
                ['Length', length(oval.lengthMm, units)],
                ['Width', length(oval.widthMm, units)],
              ]
            : undefined
        }
        empty={isAsked ? 'There is no such oval: it would be flat.' : 'Fill in the circumference.'}
        source="The same formula turned round, by Newton’s steps."
      />
    </>
  );
}

function OvalPanel() {
  return (
    <div class={css.pair}>
      <div>
        <FromCallipers />
      </div>
      <div>
        <FromOval />
      </div>
    </div>
  );
}

export default {
  id: 'oval',
  order: 3,
  title: 'Circumference and oval',
  about: 'Callipers into circumference and oval number, and back.',
  Panel: OvalPanel,
} satisfies Calculator;
