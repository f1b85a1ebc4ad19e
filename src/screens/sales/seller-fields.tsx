import type { Sale } from '../../core/records.ts';
import { useActions } from '../../parts/actions.ts';
import { OtherWords } from '../../parts/other-words.tsx';
import { TextField, TickField } from '../../ui/field.tsx';

/** Who sells, and whether the name stays here. */
export function SellerFields({ sale }: { readonly sale: Sale }) {
  const actions = useActions();
  return (
    <>
      <TextField label="Who sells" value={sale.seller} onChange={(seller) => actions.setSale(sale, { seller })} />
      <OtherWords record={sale} path="seller" />
      <TickField
        label="Keep the name to yourself"
        hint="Reports then say “private seller”. Keep a name only as long as title, warranty or tax need it."
        value={sale.sellerIsPrivate}
        onChange={(sellerIsPrivate) => actions.setSale(sale, { sellerIsPrivate })}
      />
    </>
  );
}
