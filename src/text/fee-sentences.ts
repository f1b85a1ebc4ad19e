import type { SaleTerms } from '../core/records.ts';
import { minor } from '../core/units.ts';
import { allInAt, highestPriceFor } from '../core/worth.ts';
import { minorDigits, money } from './format.ts';

const priceWord: Record<SaleTerms['way'], string> = {
  auction: 'A hammer price',
  ticket: 'A ticket',
  haggle: 'A price',
};

/** Round sums of a currency to show terms on: 100 and 120, or ten thousand and twelve where there are no cents. */
export function sampleSums(currency: string): { readonly price: number; readonly limit: number } {
  const digits = minorDigits(currency);
  const unit = digits === 0 ? 100 : 10 ** digits;
  return { price: 100 * unit, limit: 120 * unit };
}

/** “A hammer price of £100 costs £128.80 in all.” */
export const costSentence = (price: number, terms: SaleTerms, currency: string): string =>
  `${priceWord[terms.way]} of ${money(price, currency)} costs ${money(allInAt(price, terms), currency)} in all.`;

/** “For £120 in all, bid up to £78.67.” */
export function limitPriceSentence(limit: number, terms: SaleTerms, currency: string): string {
  const highest = highestPriceFor(minor(limit), terms);
  const verb = terms.way === 'auction' ? 'bid up to' : 'pay up to';
  if (highest === null)
    return `For ${money(limit, currency)} in all there is no price to give: the costs alone are more.`;
  return `For ${money(limit, currency)} in all, ${verb} ${money(highest, currency)}.`;
}

/** Both ways at once, on round sums: the live line under a sale's terms. */
export function termsSentence(terms: SaleTerms, currency: string): string {
  const { price, limit } = sampleSums(currency);
  return `${costSentence(price, terms, currency)} ${limitPriceSentence(limit, terms, currency)}`;
}
