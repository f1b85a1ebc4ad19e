import { useEffect, useRef, useState } from 'preact/hooks';
import type { Sale } from '../core/records.ts';
import type { DateReading } from '../text/edtf-words.ts';
import { TextField } from '../ui/field.tsx';

type UncertainDate = Sale['when'];
type Read = (typed: string) => DateReading;

const grammar = () => import('../text/edtf-words.ts').then(({ edtfFromWords }): Read => edtfFromWords);

/** A date as one knows it, in words; below it, how it was understood. What is not understood is kept as typed. */
export function DateField({
  label,
  value,
  onChange,
}: {
  readonly label: string;
  readonly value: UncertainDate;
  readonly onChange: (value: UncertainDate) => void;
}) {
  const [read, setRead] = useState<Read>();
  const typedHere = useRef(false);
  useEffect(() => {
    let here = true;
    // Without the grammar the words are still kept, only not understood yet.
    grammar().then(
      (loaded) => here && setRead(() => loaded),
      () => undefined,
    );
    return () => {
      here = false;
    };
  }, []);

  const understand = (words: string): UncertainDate => {
    const reading = words.trim() === '' ? undefined : read?.(words);
    return { words, edtf: reading?.ok ? reading.edtf : null };
  };
  // Words typed while the grammar was on its way.
  useEffect(() => {
    const understood = understand(value.words);
    if (typedHere.current && value.edtf === null && understood.edtf !== null) onChange(understood);
  }, [read]);

  const reading = read && value.words.trim() !== '' ? read(value.words) : undefined;
  return (
    <TextField
      label={label}
      value={value.words}
      placeholder="about 1931"
      hint={
        reading === undefined
          ? 'In words or figures: 17 October 2026, 1930s, before 1940, 1931–64, about 1958.'
          : reading.ok
            ? `Understood as: ${reading.meaning}.`
            : `${reading.reason} Kept as you typed it.`
      }
      onChange={(words) => {
        typedHere.current = true;
        onChange(understand(words));
      }}
    />
  );
}
