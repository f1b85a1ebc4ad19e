import { useState } from 'preact/hooks';
import { readingsAgainstTape, stampReadings } from '../../../core/size-stamps.ts';
import { LengthField } from '../../../parts/length-field.tsx';
import { readingSentence } from '../../../parts/stamped-size.ts';
import { ukScaleOf } from '../../../parts/uk-scale.ts';
import { useApp } from '../../../ui/app.ts';
import { TextField } from '../../../ui/field.tsx';
import type { Calculator } from '../calculator.ts';
import { Results } from '../results.tsx';

function Stamp() {
  const { store } = useApp();
  const settings = store.settings.value;
  const scale = ukScaleOf(settings);
  const [text, setText] = useState('');
  const [tape, setTape] = useState<number | null>(null);
  const readings = tape === null ? stampReadings(text, scale) : readingsAgainstTape(text, tape, scale);
  return (
    <>
      <TextField label="Stamp, as you read it" hint="22½, 22 1/2, 57, 7⅛, 57,5" value={text} onChange={setText} />
      <LengthField label="Tape at the rope line" valueMm={tape} stepMm={1} maxMm={800} onChange={setTape} />
      <Results
        rows={
          readings.length === 0
            ? undefined
            : readings.map((reading, index) => [
                readingSentence(reading, settings.units),
                tape !== null && index === 0 ? 'nearest' : '',
              ])
        }
        empty={
          text.trim() === ''
            ? 'Fill in the stamp; the tape then decides between its readings.'
            : 'No size on any scale: inches 19–26, centimetres 47–68, hat sizes 5¾–8½, French points 0–9½.'
        }
        source="Ranges of the scales: from memory. A stamp alone is ambiguous; the tape wins, and the stamp is left as it is."
      />
    </>
  );
}

export default {
  id: 'stamp',
  order: 2,
  title: 'Size stamp against the tape',
  about: 'What a stamped number can mean, and which meaning the tape bears out.',
  Panel: Stamp,
} satisfies Calculator;
