import { useMemo } from 'preact/hooks';
import type { Patch } from '../core/changes.ts';
import { type BroughtHome, broughtHome } from '../core/going-home.ts';
import { carrierOf, type NotBought } from '../core/lot-price.ts';
import type { LotRow } from '../core/lots.ts';
import type { Fields, HatBlock, JobLot, Offer, Sale } from '../core/records.ts';
import { create, type Edit, remove, set } from '../store/edits.ts';
import type { Store } from '../store/store.ts';
import { useApp } from '../ui/app.ts';
import { lastPosition } from './chain-order.ts';
import { jobName } from './lot-name.ts';
import { purchaseStep } from './purchase.ts';

/** Figures a block by itself and a job lot share. */
export type LotPatch = Pick<
  Patch<'lot'>,
  'priceAsked' | 'estimateLow' | 'estimateHigh' | 'bidNow' | 'pinned' | 'notBought' | 'fromPictures' | 'objectNumber'
>;

/** What is said of a lot when going home. */
export interface Decided {
  readonly row: LotRow;
  readonly fate: 'bought' | NotBought;
  /** Hammer or ticket price, of a lot that was bought. */
  readonly price: number | null;
}

/** What a person does at a sale; see `actionsOn` for how it is saved. */
export function saleActionsOn(store: Store, now: () => number) {
  const instant = (): string => new Date(now()).toISOString();
  const change = (label: string, ...edits: readonly Edit[]): void => {
    store.change(label, edits).catch(() => undefined);
  };
  const patchOf = (carrier: HatBlock | JobLot, patch: LotPatch): Edit =>
    carrier.type === 'lot' ? set('lot', carrier.id, patch) : set('block', carrier.id, patch);
  /** A lot is paid: said once of the lot, and of each block of a job lot that bears a share. */
  const payments = (
    { lot }: LotRow,
    { saleId, currency }: HatBlock | JobLot,
    price: number,
    brought: readonly BroughtHome[],
  ): Edit[] => {
    const at = instant();
    const paid = (blockId: string, amount: number, fees: number, note = ''): Edit =>
      create('offer', store.newId(), { blockId, saleId, what: 'paid', amount, currency, at, fees, note });
    const fees = brought.reduce((sum, one) => sum + one.fees, 0);
    const before = lot.offers.filter(({ what }) => what === 'paid').at(-1);
    const whole = before?.amount === price ? set('offer', before.id, { fees }) : paid(lot.id, price, fees);
    const { job } = lot;
    return job
      ? [
          whole,
          ...brought
            .filter((one) => one.price + one.fees > 0)
            .map((one) => paid(one.blockId, one.price, one.fees, `Share of ${jobName(job)}`)),
        ]
      : [whole];
  };
  const bringHome = (sale: Sale, row: LotRow, price: number, today: string): Edit[] => {
    const carrier = carrierOf(row.lot);
    if (!carrier) return [];
    const brought = broughtHome(row, price, sale.terms);
    return [
      patchOf(carrier, { notBought: null }),
      ...payments(row, carrier, price, brought),
      ...brought.flatMap(({ blockId, place, watch }) => [
        set('block', blockId, { place }),
        create('statement', store.newId(), {
          blockId,
          position: lastPosition(store.statementsOf(blockId)),
          ...purchaseStep(sale, store.photosOf(blockId)),
        }),
        ...(watch
          ? [
              create('quarantine', store.newId(), {
                blockId,
                begunOn: today,
                reason: watch,
                why: 'Seen before it was bought',
              }),
            ]
          : []),
      ]),
    ];
  };
  const leaveThere = ({ lot }: LotRow, reason: string): Edit[] => {
    const carrier = carrierOf(lot);
    return carrier
      ? [
          patchOf(carrier, { notBought: reason }),
          ...lot.blocks.map(({ block }) => set('block', block.id, { place: 'letGo' })),
        ]
      : [];
  };
  return {
    /** A job lot, with blocks already looked at put into it or none yet. */
    startLot(sale: Sale, fields: Partial<Fields<'lot'>> = {}, blocks: readonly HatBlock[] = []): string {
      const id = store.newId();
      change(
        'a job lot',
        create('lot', id, { saleId: sale.id, currency: sale.currency, example: sale.example, ...fields }),
        ...blocks.map((block) => set('block', block.id, { lotId: id })),
      );
      return id;
    },
    setLot: (lot: JobLot, patch: Patch<'lot'>) => change('the job lot', set('lot', lot.id, patch)),
    setFigures: (carrier: HatBlock | JobLot, patch: LotPatch, label: string) => change(label, patchOf(carrier, patch)),
    /** Not let go after all: it stands on the table again, and the sums count it. */
    backOnTable: (carrier: HatBlock | JobLot) =>
      change(
        'putting it back on the table',
        patchOf(carrier, { notBought: null }),
        ...(carrier.type === 'lot' ? store.blocksOfLot(carrier.id) : [carrier]).map(({ id }) =>
          set('block', id, { place: 'lookingAt' }),
        ),
      ),
    putInto: (block: HatBlock, lotId: string | null) =>
      change(lotId ? 'putting it into the lot' : 'taking it out of the lot', set('block', block.id, { lotId })),
    /** The blocks stay, each a lot by itself. */
    removeLot: (lot: JobLot) =>
      change(
        'removing the job lot',
        ...store.blocksOfLot(lot.id).map(({ id }) => set('block', id, { lotId: null })),
        remove(lot.id),
      ),
    /** Something said about the price; a new asking price is also what is asked from now on. */
    offer(carrier: HatBlock | JobLot, what: Offer['what'], amount: number): void {
      const { id, saleId, currency } = carrier;
      change(
        'an offer',
        create('offer', store.newId(), { blockId: id, saleId, what, amount, currency, at: instant() }),
        ...(what === 'asked' ? [patchOf(carrier, { priceAsked: amount })] : []),
      );
    },
    /**
     * The day is over: what was bought goes to the shelf or apart with what it cost and how it came, the rest is let go with
     * its reason. One change, so that undo brings the whole table back.
     */
    goHome: (sale: Sale, decided: readonly Decided[], today: string) =>
      change(
        'going home',
        ...decided.flatMap(({ row, fate, price }) =>
          fate === 'bought' ? bringHome(sale, row, price ?? 0, today) : leaveThere(row, fate),
        ),
      ),
  };
}

export type SaleActions = ReturnType<typeof saleActionsOn>;

export function useSaleActions(): SaleActions {
  const { store, now } = useApp();
  return useMemo(() => saleActionsOn(store, now), [store, now]);
}
