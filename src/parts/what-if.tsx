import { useMemo, useState } from 'preact/hooks';
import type { Forecast } from '../core/simulate/simulate.ts';
import { moneyAbout, percent } from '../text/format.ts';
import { Button } from '../ui/button.tsx';
import { MoneyField, SelectField } from '../ui/field.tsx';
import type { BlockCase } from './use-case.ts';
import { useForecast, useForecastCase, type WhatIf } from './use-forecast.ts';
import { useNames } from './use-names.ts';
import css from './what-if.module.css';

/** Tries something out on the same luck, and writes nothing down: another price or rate, a repair that fails, a look. */
export function WhatIfPanel({ of, now }: { readonly of: BlockCase; readonly now: Forecast | undefined }) {
  const [open, setOpen] = useState(false);
  return (
    <details class={css.whatIf} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>What if…</summary>
      {open && <Trial of={of} now={now} />}
    </details>
  );
}

function Trial({ of, now }: { readonly of: BlockCase; readonly now: Forecast | undefined }) {
  const { findingName, kindTerm } = useNames(of);
  const { block, settings, assessment } = of;
  const [price, setPrice] = useState(block.priceAsked);
  const [rate, setRate] = useState<number | null>(settings.hourlyRate);
  const [failing, setFailing] = useState('');
  const [clear, setClear] = useState('');
  const whatIf = useMemo<WhatIf>(
    () => ({
      priceAsked: price,
      hourlyRate: rate ?? settings.hourlyRate,
      ...(failing ? { failing: [failing] } : {}),
      ...(clear ? { noneSeen: [clear] } : {}),
    }),
    [price, rate, failing, clear, settings.hourlyRate],
  );
  const { forecast } = useForecast(useForecastCase(of, whatIf), `${block.id} what if`);
  const repairs = assessment.graded.filter(({ loss }) => loss.chance !== null);
  const unknown = assessment.kinds.filter(({ state }) => state === 'notLooked');
  const say = (limit: number | null | undefined): string =>
    limit === undefined ? '…' : limit === null ? 'nothing' : moneyAbout(limit, block.currency);
  return (
    <div>
      <MoneyField label="They asked" currency={block.currency} value={price} onChange={setPrice} />
      <MoneyField label="My hour were worth" currency={block.currency} value={rate} onChange={setRate} />
      {repairs.length > 0 && (
        <SelectField
          label="This repair failed"
          value={failing}
          options={[
            { id: '', label: 'None' },
            ...repairs.map(({ finding }) => ({ id: finding.id, label: findingName(finding.id) })),
          ]}
          onChange={setFailing}
        />
      )}
      {unknown.length > 0 && (
        <SelectField
          label="I looked for this and saw none"
          value={clear}
          options={[
            { id: '', label: 'Nothing more' },
            ...unknown.map(({ kind }) => ({ id: kind, label: kindTerm(kind) })),
          ]}
          onChange={setClear}
        />
      )}
      <table class="figures" aria-live="polite">
        <thead>
          <tr>
            <td />
            <th scope="col">Now</th>
            <th scope="col">Then</th>
          </tr>
        </thead>
        <tbody>
          <tr>
            <th scope="row">Pay up to</th>
            <td>{say(now?.limit)}</td>
            <td>{say(forecast?.limit)}</td>
          </tr>
          <tr>
            <th scope="row">It works again</th>
            <td>{now ? percent(now.works) : '…'}</td>
            <td>{forecast ? percent(forecast.works) : '…'}</td>
          </tr>
          <tr>
            <th scope="row">Loss at the price</th>
            <td>{now?.lossChance == null ? '–' : percent(now.lossChance)}</td>
            <td>{forecast?.lossChance == null ? '–' : percent(forecast.lossChance)}</td>
          </tr>
        </tbody>
      </table>
      <Button
        look="quiet"
        onPress={() => {
          setPrice(block.priceAsked);
          setRate(settings.hourlyRate);
          setFailing('');
          setClear('');
        }}
      >
        Back to how it is
      </Button>
    </div>
  );
}
