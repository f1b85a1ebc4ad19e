import { useEffect, useRef, useState } from 'preact/hooks';
import { Page } from '../../ui/page.tsx';
import { type Params, to } from '../../ui/route.ts';
import { calculators } from './all-calculators.ts';
import type { Calculator } from './calculator.ts';
import css from './calculators.module.css';

/** All calculators on one page, folded; the one in the address is open and in view. */
export default function CalculatorsScreen({ params }: { params: Params }) {
  return (
    <Page
      title="Calculators"
      back={{ href: to('/handbook'), label: 'Handbook' }}
      under="Sums over figures you type in here; nothing is stored."
    >
      {calculators.map((calculator) => (
        <Folded key={calculator.id} calculator={calculator} wanted={calculator.id === params.calculator} />
      ))}
    </Page>
  );
}

function Folded({ calculator, wanted }: { readonly calculator: Calculator; readonly wanted: boolean }) {
  const { title, about, Panel } = calculator;
  const [open, setOpen] = useState(wanted);
  const details = useRef<HTMLDetailsElement>(null);
  useEffect(() => {
    setOpen(wanted);
    if (wanted) details.current?.scrollIntoView({ block: 'start' });
  }, [wanted]);
  return (
    <details ref={details} class={css.calculator} open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>
        <h2>{title}</h2>
        <span>{about}</span>
      </summary>
      {open && <Panel />}
    </details>
  );
}
