import { useMemo } from 'preact/hooks';
import type { Settings } from '../../core/records.ts';
import { useActions } from '../../parts/actions.ts';
import { currencyOptions } from '../../parts/currency-options.ts';
import { PercentField } from '../../parts/percent-field.tsx';
import { MoneyField, NumberField, SelectField } from '../../ui/field.tsx';

/** What the most worth paying rests on besides the block itself. */
export function MoneyFields({ settings }: { readonly settings: Settings }) {
  const actions = useActions();
  const currencies = useMemo(() => currencyOptions(settings.currency), [settings.currency]);
  return (
    <>
      <SelectField
        label="Currency"
        hint="For new blocks and sales. Amounts already written keep theirs; nothing is converted."
        value={settings.currency}
        options={currencies}
        onChange={(currency) => actions.setSettings({ currency })}
      />
      <MoneyField
        label="An hour of your own work"
        hint="Own hours are money: what you would earn at the bench instead."
        currency={settings.currency}
        value={settings.hourlyRate}
        onChange={(rate) => rate !== null && rate >= 0 && actions.setSettings({ hourlyRate: rate })}
      />
      <PercentField
        label="Gain you ask"
        hint="Share of a block’s worth that must be left to you when all is paid. The limit falls as it rises."
        share={settings.gain}
        step={5}
        chips={[0, 10, 15, 25]}
        onChange={(gain) => actions.setSettings({ gain })}
      />
      <PercentField
        label="Discount rate"
        hint="For value in use: what money later is worth less than money now, each year."
        share={settings.discountRate}
        chips={[5, 8, 12]}
        onChange={(discountRate) => actions.setSettings({ discountRate })}
      />
      <NumberField
        label="Years a block should earn"
        hint="For value in use, with hats a year and the margin on each."
        unit="years"
        step={1}
        min={1}
        max={40}
        chips={[3, 6, 10]}
        value={settings.horizonYears}
        onChange={(years) => years !== null && actions.setSettings({ horizonYears: years })}
      />
    </>
  );
}
