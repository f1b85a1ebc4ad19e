import { type Catalogue, entry } from '../core/catalogue.ts';
import type { SpentLine } from '../core/spent.ts';

const WORDS: Readonly<Record<Exclude<SpentLine['what'], 'expense' | 'consumables' | 'hours'>, string>> = {
  price: 'Price paid',
  fees: 'Fees on top',
  premium: 'Buyer’s premium',
  platform: 'Online charge',
  vat: 'VAT',
  fixed: 'Post, packing, journey',
};

/** What a line of what a block has cost is called. Hours are said by whoever knows for whom they are said. */
export function spentWords(
  { what, of, treatment }: SpentLine & { readonly what: Exclude<SpentLine['what'], 'hours'> },
  catalogue: Catalogue,
): string {
  const term = (id: string | undefined): string | undefined => entry(catalogue.treatments, id)?.term ?? id;
  if (what === 'expense')
    return [of || 'Something bought', treatment && `(${term(treatment)})`].filter(Boolean).join(' ');
  return what === 'consumables' ? `Consumables: ${term(of)}` : WORDS[what];
}
