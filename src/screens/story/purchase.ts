import type { Fields } from '../../core/records.ts';
import type { BlockCase } from '../../parts/use-case.ts';
import { money } from '../../text/format.ts';
import { inOrder } from '../../text/provenance.ts';

/** Transfers at a price. */
const PURCHASES: readonly string[] = ['boughtFrom', 'boughtAtAuctionFrom'];

const paidOf = ({ offers }: BlockCase) => offers.filter(({ what }) => what === 'paid').at(-1);

/** The price paid, printed with the newest step if that is a purchase; an earlier purchase was somebody else’s. */
export function pricesOf(of: BlockCase): ReadonlyMap<string, string> {
  const paid = paidOf(of);
  const last = inOrder(of.statements).at(-1);
  if (!paid || !last || !PURCHASES.includes(last.transfer)) return new Map();
  return new Map([[last.id, money(paid.amount, paid.currency)]]);
}

/** The owner’s own purchase as a step, filled from the sale; what it does not say is left open. */
export function purchaseStep({ sale }: BlockCase): Partial<Fields<'statement'>> {
  const receipt = sale?.diligence.receipt?.trim();
  return {
    transfer: sale?.terms.way === 'auction' ? 'boughtAtAuctionFrom' : 'boughtFrom',
    party: sale?.seller ?? '',
    partyIsPrivate: sale?.sellerIsPrivate ?? true,
    place: sale?.place ?? '',
    when: sale?.when ?? { words: '', edtf: null },
    certainty: 'certain',
    evidence: receipt ? [{ kind: 'receipt', text: receipt }] : [],
  };
}
