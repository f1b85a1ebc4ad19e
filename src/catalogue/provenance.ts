import type { Catalogue, Term } from '../core/catalogue.ts';

/** How a block passed from hand to hand; `text` is how the statement opens. Forms: S15, S16. */
export const transfers = {
  madeFor: { term: 'Made for', text: 'made for' },
  orderedBy: { term: 'Ordered by', text: 'ordered by' },
  boughtFrom: { term: 'Bought from', text: 'bought from' },
  boughtAtAuctionFrom: { term: 'Bought at auction from', text: 'bought at auction from' },
  givenBy: { term: 'Given by', text: 'given by' },
  inheritedByDescent: { term: 'Inherited by descent', text: 'by descent' },
  foundWith: { term: 'Found with', text: 'found with' },
  lentBy: { term: 'Lent by', text: 'lent by' },
  takenOverWithWorkshopOf: { term: 'Taken over with the workshop of', text: 'taken over with the workshop of' },
  unknown: { term: 'Unknown', text: 'by unknown steps' },
} as const satisfies Record<string, Term>;

/** How sure a statement is, the word it is opened with, and what it needs. Words: S16; requirements our own, from memory. */
export const certainties = {
  certain: { term: 'Certain', say: '', needs: 'A document naming this block, or two independent sources.' },
  probable: { term: 'Probable', say: 'probably', needs: 'One good source and nothing against it.' },
  possible: { term: 'Possible', say: 'possibly', needs: 'Story or resemblance only.' },
  disproved: {
    term: 'Disproved',
    say: 'formerly thought',
    needs: 'Contradicting evidence; keep the old statement.',
    refuted: true,
  },
} as const satisfies Catalogue['certainties'];

export const evidence = {
  stamp: { term: 'Stamp', text: 'A stamp or brand on the block.' },
  label: { term: 'Label', text: 'A label or ticket on the block.' },
  inventoryEntry: { term: 'Inventory entry', text: 'An entry in a workshop’s or house’s book: page and when seen.' },
  receipt: { term: 'Receipt', text: 'A receipt or invoice.' },
  photographInUse: { term: 'Photograph in use', text: 'An old photograph that shows it in use.' },
  catalogue: { term: 'Catalogue', text: 'A maker’s or sale catalogue.' },
  spokenStatement: { term: 'Spoken statement', text: 'Who said it, when, and how they know.' },
  woodOrConstruction: { term: 'Wood or construction', text: 'What the making itself shows.' },
  none: { term: 'None', text: 'Nothing but the statement.' },
} as const satisfies Record<string, Term>;

/** The buyer's card, one minute, kept with the purchase. Heads after S37, wording our own. */
export const dueDiligence = [
  { id: 'seller', ask: 'Who sells, and how do you know them?' },
  { id: 'rightToSell', ask: 'What gives them the right to sell?' },
  { id: 'priceAgainstUsual', ask: 'How does the price compare with the usual?' },
  { id: 'whereKept', ask: 'Where has the block been?' },
  { id: 'papersSeen', ask: 'Which papers did you see?' },
  { id: 'registerAsked', ask: 'Was a stolen-goods register asked, or why not?' },
  { id: 'receipt', ask: 'Receipt number?' },
  { id: 'doubts', ask: 'What doubts are left?' },
] as const satisfies Catalogue['dueDiligence'];
