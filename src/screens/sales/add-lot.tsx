import type { LotRow } from '../../core/lots.ts';
import type { Sale } from '../../core/records.ts';
import { useSaleActions } from '../../parts/sale-actions.ts';
import { Button } from '../../ui/button.tsx';
import { to } from '../../ui/route.ts';
import { go } from '../../ui/router.tsx';
import css from './sales.module.css';

/** Starts a job lot; which blocks lie in it is said on its own page. */
export function AddLot({ sale, rows }: { readonly sale: Sale; readonly rows: readonly LotRow[] }) {
  const actions = useSaleActions();
  const none = rows.every(({ lot }) => lot.job === null);
  return (
    <>
      {none && <p class={css.hint}>A pair, a box, a shelf the seller will not split: worth what is wanted of it.</p>}
      <Button onPress={() => go(to('/lot/:id', { id: actions.startLot(sale) }))}>New job lot</Button>
    </>
  );
}
