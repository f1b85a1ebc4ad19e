import type { Sale } from '../../core/records.ts';
import { useApp } from '../../ui/app.ts';

/** The sale the last block was looked at in: seller, place and terms carry over to the next one there. */
export function useLastSale(): Sale | undefined {
  const { store } = useApp();
  const last = store.blocks.value
    .filter(({ place, saleId }) => place === 'lookingAt' && saleId !== null)
    .reduce<string | undefined>((newest, { id }) => (newest === undefined || id > newest ? id : newest), undefined);
  const saleId = last ? store.get('block', last)?.saleId : undefined;
  return saleId ? store.get('sale', saleId) : undefined;
}
