import type { Fields, Photo, Sale } from '../core/records.ts';
import { money } from '../text/format.ts';
import { inOrder } from '../text/provenance.ts';
import type { BlockCase } from './use-case.ts';

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

/** Views that show a paper: receipt, ticket, page of a book. */
const PAPER = 'paper';

/**
 * The owner’s own purchase as a step, filled from the sale; what it does not say is left open. A receipt, its number or
 * its photograph, makes it certain; without one there is the buyer’s word, and it is probable.
 */
export function purchaseStep(sale: Sale | undefined, photos: readonly Pick<Photo, 'view' | 'caption'>[]) {
  const receipt = sale?.diligence.receipt?.trim();
  const papers = photos.filter(({ view }) => view === PAPER);
  const evidence = [
    ...(receipt ? [receipt] : []),
    ...papers.map(({ caption }) => caption.trim() || 'photographed with the block'),
  ].map((text) => ({ kind: 'receipt', text }));
  return {
    transfer: sale?.terms.way === 'auction' ? 'boughtAtAuctionFrom' : 'boughtFrom',
    party: sale?.seller ?? '',
    partyIsPrivate: sale?.sellerIsPrivate ?? true,
    place: sale?.place ?? '',
    when: sale?.when ?? { words: '', edtf: null },
    certainty: evidence.length > 0 ? 'certain' : 'probable',
    evidence,
  } satisfies Partial<Fields<'statement'>>;
}
