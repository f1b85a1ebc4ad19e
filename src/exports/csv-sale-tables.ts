import type { Catalogue } from '../core/catalogue.ts';
import type { JobLot, SaleTerms } from '../core/records.ts';
import { notBoughtWords } from '../text/lots.ts';
import { amount, type Column, type CsvTable, perCent, type TableMaker, term } from './csv-maker.ts';

/** What the saleroom says of a lot, and what became of it: of a block by itself and of a job lot alike. */
export const lotFigures: Column<
  Pick<JobLot, 'estimateLow' | 'estimateHigh' | 'bidNow' | 'pinned' | 'notBought' | 'currency'>
>[] = [
  ['estimate from', ({ estimateLow, currency }) => amount(estimateLow, currency)],
  ['estimate to', ({ estimateHigh, currency }) => amount(estimateHigh, currency)],
  ['bid that stood', ({ bidNow, currency }) => amount(bidNow, currency)],
  ['taken or left by hand', ({ pinned }) => pinned ?? null],
  ['not bought', ({ notBought }) => (notBought ? notBoughtWords(notBought) : null)],
];

/** `24 % up to 500; 20 %`. */
const premiumWords = ({ premium }: SaleTerms, currency: string): string =>
  premium
    .map(({ upTo, rate }) => `${perCent(rate)} %${upTo === null ? '' : ` up to ${amount(upTo, currency)}`}`)
    .join('; ');

const answers = (diligence: Readonly<Record<string, string>>, { dueDiligence }: Catalogue): string =>
  Object.entries(diligence)
    .filter(([, answer]) => answer !== '')
    .map(([id, answer]) => `${dueDiligence.find((one) => one.id === id)?.ask ?? id} ${answer}`)
    .join('; ');

/** Sales, the job lots in them, and what was asked, offered and paid. */
export function saleTables({ table, ofBlock, sales, catalogue }: TableMaker): CsvTable[] {
  return [
    table('sale', 'sales', 'sales and sellers', [
      ['id', ({ id }) => id],
      ['title', ({ title }) => title],
      ['place', ({ place }) => place],
      ['when', ({ when }) => when.words],
      ['when (EDTF)', ({ when }) => when.edtf],
      ['kind', ({ channel }) => term(catalogue.channels, channel)],
      ['seller', ({ seller }) => seller],
      ['currency', ({ currency }) => currency],
      ['terms', ({ terms }) => terms.way],
      ['premium', ({ terms, currency }) => premiumWords(terms, currency)],
      ['VAT %', ({ terms }) => perCent(terms.vatRate)],
      ['VAT on', ({ terms }) => terms.vatOn],
      [
        'fixed costs',
        ({ terms, currency }) =>
          terms.fixedCosts.map(({ what, amount: cost }) => `${what} ${amount(cost, currency)}`).join('; '),
      ],
      ['asked about', ({ diligence }) => answers(diligence, catalogue)],
      ['budget', ({ budget, currency }) => amount(budget, currency)],
      ['note', ({ note }) => note],
    ]),
    table('lot', 'lots', 'job lots: several blocks at one price', [
      ['id', ({ id }) => id],
      ['sale id', ({ saleId }) => saleId],
      ['sale', ({ saleId }) => sales.get(saleId ?? '')?.title ?? ''],
      ['number', ({ objectNumber }) => objectNumber],
      ['title', ({ title }) => title],
      ['currency', ({ currency }) => currency],
      ['asked', ({ priceAsked, currency }) => amount(priceAsked, currency)],
      ['cost of disposal', ({ disposal, currency }) => amount(disposal, currency)],
      ...lotFigures,
      ['note', ({ note }) => note],
    ]),
    table('offer', 'offers', 'what was asked, offered and paid', [
      ['id', ({ id }) => id],
      ['sale id', ({ saleId }) => saleId],
      ...ofBlock,
      ['what', ({ what }) => what],
      ['amount', (offer) => amount(offer.amount, offer.currency)],
      ['fees on top', ({ fees, currency }) => amount(fees, currency)],
      ['currency', ({ currency }) => currency],
      ['at (UTC)', ({ at }) => at],
      ['note', ({ note }) => note],
    ]),
  ];
}
