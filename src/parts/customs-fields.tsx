import { entry } from '../core/catalogue.ts';
import type { ImportRules } from '../core/import-charges.ts';
import type { Customs } from '../core/records.ts';
import { dayWords } from '../text/days.ts';
import { money } from '../text/format.ts';
import { useApp } from '../ui/app.ts';
import { DayField } from '../ui/day-field.tsx';
import { ChoiceField, MoneyField, NumberField, SelectField, TextField, TickField } from '../ui/field.tsx';
import css from './customs.module.css';
import { PercentField } from './percent-field.tsx';

const NOWHERE = 'none';

/** A set of rules made the sale's own, with nothing travelling yet. */
function takenOver(rules: ImportRules): Customs {
  return {
    rules: { ...rules, bands: rules.bands.map((band) => ({ ...band })) },
    shipment: { freight: 0, insurance: 0, inland: 0, handling: 0, headings: 1, provedAntique: false },
  };
}

/** What a border adds: a dated set of rules to start from, every rate editable, and what travels with the price. */
export function CustomsFields({
  customs,
  currency,
  onChange,
}: {
  readonly customs: Customs | null;
  readonly currency: string;
  readonly onChange: (customs: Customs | null) => void;
}) {
  const { catalogue } = useApp();
  const sets = Object.entries(catalogue.importRules);
  const code = customs?.rules.code ?? NOWHERE;
  const known = entry(catalogue.importRules, code);
  const pick = (id: string): void => {
    const rules = entry(catalogue.importRules, id)?.rules;
    onChange(rules ? { ...takenOver(rules), ...(customs ? { shipment: customs.shipment } : {}) } : null);
  };
  return (
    <>
      <SelectField
        label="Over a border"
        hint={known?.text ?? 'Only when the lots come from another country.'}
        value={code}
        options={[
          { id: NOWHERE, label: 'No border' },
          ...sets.map(([id, { term }]) => ({ id, label: term })),
          ...(customs && !known ? [{ id: code, label: code }] : []),
        ]}
        onChange={pick}
      />
      {customs && (
        <>
          {customs.rules.currency !== currency && (
            <p class={css.warn}>
              These rules count in {customs.rules.currency}, the sale in {currency}: put the limits and flat duties over
              at today’s rate. Nothing is converted by itself.
            </p>
          )}
          <ShipmentFields customs={customs} currency={currency} onChange={onChange} />
          <details>
            <summary>Rates as of {dayWords(customs.rules.asOf)}</summary>
            <RuleFields customs={customs} currency={currency} onChange={onChange} />
          </details>
        </>
      )}
    </>
  );
}

interface Part {
  readonly customs: Customs;
  readonly currency: string;
  readonly onChange: (customs: Customs) => void;
}

function ShipmentFields({ customs, currency, onChange }: Part) {
  const { shipment } = customs;
  const set = (patch: Partial<Customs['shipment']>): void =>
    onChange({ ...customs, shipment: { ...shipment, ...patch } });
  const amounts = [
    { key: 'freight', label: 'Carriage to the border and over it' },
    { key: 'insurance', label: 'Insurance of the parcel' },
    { key: 'inland', label: 'Delivery from the border, billed apart' },
    { key: 'handling', label: 'Carrier’s fee for clearing it' },
  ] as const;
  return (
    <>
      {amounts.map(({ key, label }) => (
        <MoneyField
          key={key}
          label={label}
          currency={currency}
          value={shipment[key] || null}
          onChange={(amount) => set({ [key]: Math.max(0, amount ?? 0) })}
        />
      ))}
      <NumberField
        label="Tariff headings in the parcel"
        hint="Hat blocks alone are one: 8449."
        unit=""
        step={1}
        min={1}
        max={99}
        value={shipment.headings}
        onChange={(headings) => headings !== null && set({ headings })}
      />
      <TickField
        label="Proved over 100 years old"
        hint="With papers the customs accept; a stamp and a story are not proof."
        value={shipment.provedAntique}
        onChange={(provedAntique) => set({ provedAntique })}
      />
    </>
  );
}

type Band = Customs['rules']['bands'][number];

function RuleFields({ customs, currency, onChange }: Part) {
  const { rules } = customs;
  const set = (patch: Partial<Customs['rules']>): void => onChange({ ...customs, rules: { ...rules, ...patch } });
  const setBand = (index: number, patch: Partial<Band>): void =>
    set({ bands: rules.bands.map((band, at) => (at === index ? { ...band, ...patch } : band)) });
  return (
    <>
      <DayField label="Rates looked up on" value={rules.asOf} onChange={(asOf) => asOf && set({ asOf })} />
      <TextField label="Where you looked" value={rules.source} onChange={(source) => set({ source })} />
      {rules.bands.map((band, index) => (
        <BandFields
          key={index}
          band={band}
          name={nameOf(rules.bands, index, currency)}
          currency={currency}
          onChange={(patch) => setBand(index, patch)}
        />
      ))}
      {rules.antiqueVatShare < 1 && (
        <PercentField
          label="Share of the value VAT falls on when over 100 years old"
          share={rules.antiqueVatShare}
          onChange={(antiqueVatShare) => set({ antiqueVatShare })}
        />
      )}
    </>
  );
}

function nameOf(bands: readonly Band[], index: number, currency: string): string {
  const from = bands[index - 1]?.goodsUpTo ?? null;
  const upTo = bands[index]?.goodsUpTo ?? null;
  if (upTo !== null) return `goods to ${money(upTo, currency)}`;
  return from === null ? 'all goods' : `goods over ${money(from, currency)}`;
}

function BandFields({
  band,
  name,
  currency,
  onChange,
}: {
  readonly band: Band;
  readonly name: string;
  readonly currency: string;
  readonly onChange: (patch: Partial<Band>) => void;
}) {
  return (
    <fieldset class={css.band}>
      <legend>For {name}</legend>
      {band.goodsUpTo !== null && (
        <MoneyField
          label={`Limit, ${name}`}
          currency={currency}
          value={band.goodsUpTo}
          onChange={(goodsUpTo) => goodsUpTo !== null && goodsUpTo >= 0 && onChange({ goodsUpTo })}
        />
      )}
      <PercentField
        label={`Duty, ${name}`}
        step={0.1}
        share={band.dutyRate}
        onChange={(dutyRate) => onChange({ dutyRate })}
      />
      <ChoiceField
        label={`Duty falls on, ${name}`}
        value={band.dutyOn}
        options={[
          { id: 'goods', label: 'The price alone' },
          { id: 'goods-and-carriage', label: 'Price and carriage' },
        ]}
        onChange={(dutyOn) => dutyOn && onChange({ dutyOn })}
      />
      <MoneyField
        label={`Flat duty per heading, ${name}`}
        currency={currency}
        value={band.dutyPerHeading || null}
        onChange={(duty) => onChange({ dutyPerHeading: Math.max(0, duty ?? 0) })}
      />
      <PercentField label={`VAT, ${name}`} share={band.vatRate} onChange={(vatRate) => onChange({ vatRate })} />
      <TickField
        label={`The carrier charges for clearing, ${name}`}
        value={band.handlingCharged}
        onChange={(handlingCharged) => onChange({ handlingCharged })}
      />
    </fieldset>
  );
}
