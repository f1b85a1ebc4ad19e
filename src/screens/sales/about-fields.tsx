import { useMemo } from 'preact/hooks';
import { ORIGINS, type Origin } from '../../core/catalogue.ts';
import type { Sale } from '../../core/records.ts';
import { useActions } from '../../parts/actions.ts';
import { currencyOptions } from '../../parts/currency-options.ts';
import { DateField } from '../../parts/date-field.tsx';
import { OtherWords } from '../../parts/other-words.tsx';
import { useApp } from '../../ui/app.ts';
import { ChoiceField, SelectField, TextField } from '../../ui/field.tsx';

const originWords: Record<Origin, { readonly label: string; readonly text: string }> = {
  workshopInUse: { label: 'Workshop in use', text: 'dry and looked after' },
  dealer: { label: 'Dealer or shop', text: 'dry, passed through hands' },
  dampStore: { label: 'Damp store', text: 'cellar, shed, attic' },
  unknown: { label: 'Not known', text: '' },
};

/** What, where, when, and where the blocks were kept until now. */
export function AboutFields({ sale }: { readonly sale: Sale }) {
  const { catalogue } = useApp();
  const actions = useActions();
  const currencies = useMemo(() => currencyOptions(sale.currency), [sale.currency]);
  return (
    <>
      <TextField label="Title" value={sale.title} onChange={(title) => actions.setSale(sale, { title })} />
      <OtherWords record={sale} path="title" />
      <TextField
        label="Place"
        hint="As you would say it. It is not looked up anywhere."
        value={sale.place}
        onChange={(place) => actions.setSale(sale, { place })}
      />
      <OtherWords record={sale} path="place" />
      <DateField label="When" value={sale.when} onChange={(when) => actions.setSale(sale, { when })} />
      <SelectField
        label="Kind of sale"
        hint={catalogue.channels[sale.channel]?.text ?? ''}
        value={sale.channel}
        options={[
          ...(sale.channel in catalogue.channels ? [] : [{ id: sale.channel, label: sale.channel }]),
          ...Object.entries(catalogue.channels).map(([id, { term }]) => ({ id, label: term })),
        ]}
        onChange={(channel) => actions.setSale(sale, { channel })}
      />
      <ChoiceField
        label="Where the blocks were kept"
        hint="Decides what to expect of a block before it is looked at: worm and mould in a damp store, wear in a workshop."
        value={sale.origin}
        options={ORIGINS.map((id) => ({ id, ...originWords[id] }))}
        onChange={(origin) => origin && actions.setSale(sale, { origin })}
      />
      <SelectField
        label="Currency"
        hint="Of the terms and of blocks looked at from now on; nothing is converted."
        value={sale.currency}
        options={currencies}
        onChange={(currency) => actions.setSale(sale, { currency })}
      />
      <TextField label="Note" lines={3} value={sale.note} onChange={(note) => actions.setSale(sale, { note })} />
      <OtherWords record={sale} path="note" />
    </>
  );
}
