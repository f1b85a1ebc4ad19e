import type { LotRow } from '../core/lots.ts';
import type { Sale } from '../core/records.ts';
import { useApp } from '../ui/app.ts';
import { useLots } from './use-lots.ts';

/** The sale a block or a job lot is in. Tracked; undefined when it is in none, or gone. */
export function useSaleOf(id: string): Sale | undefined {
  const { store } = useApp();
  const saleId = (store.get('lot', id) ?? store.get('block', id))?.saleId;
  return saleId ? store.get('sale', saleId) : undefined;
}

/** A lot's line of the table; a block that lies in a job lot has its lot's. */
export function useLotRow(sale: Sale, id: string): LotRow | undefined {
  const { rows } = useLots(sale);
  return rows.find((row) => row.id === id || row.blocks.some((block) => block.id === id));
}
