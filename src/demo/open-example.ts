import { plainTerms } from '../core/blank.ts';
import { applicableKinds, settingOf } from '../core/block.ts';
import type { Catalogue } from '../core/catalogue.ts';
import { create, type Edit } from '../store/edits.ts';
import type { Store } from '../store/store.ts';
import { type ExampleLot, lanthorn } from './lanthorn.ts';

/** When the example was looked at: the day of the invented sale, in its opening hours. */
const BEGUN = '2026-10-17T09:40:00Z';
const pence = (pounds: number | null): number | null => (pounds === null ? null : Math.round(pounds * 100));

/** One lot as records: block, a survey with everything looked at, findings, marks, and where it came from. */
function editsOf(
  lot: ExampleLot,
  { saleId, lotId }: { readonly saleId: string; readonly lotId: string | null },
  { newId }: Pick<Store, 'newId'>,
  catalogue: Catalogue,
): Edit[] {
  const blockId = newId();
  const surveyId = newId();
  const block = {
    name: lot.name,
    objectNumber: lot.number,
    blockType: lot.type,
    materials: [...lot.materials],
    saleId,
    lotId,
    partsFound: lot.parts[0],
    partsExpected: lot.parts[1],
    shapeValue: lot.shapeValue,
    currency: 'GBP',
    priceAsked: pence(lot.asked),
    newPrice: pence(lot.newPrice),
    equalUsedPrice: pence(lot.equalUsed),
    fallbackPrice: pence(lot.fallback),
    hatsPerYear: lot.use?.hats ?? null,
    marginPerHat: pence(lot.use?.margin ?? null),
    blockShare: lot.use?.share ?? null,
    note: lot.seen,
    example: true,
  };
  const found = new Set(lot.findings.map(({ kind }) => kind));
  const clear = applicableKinds(settingOf(block, catalogue), catalogue).filter((kind) => !found.has(kind));
  return [
    create('block', blockId, block),
    create('survey', surveyId, {
      blockId,
      begun: BEGUN,
      reason: 'Before buying',
      surveyor: 'Wren Hallowby',
      measures: { ...lot.measures },
      noneSeen: Object.fromEntries(clear.map((kind) => [kind, true as const])),
      stationsDone: Object.fromEntries(Object.keys(catalogue.stations).map((id) => [id, true as const])),
    }),
    ...lot.findings.map(({ kind, zone, answers }, index) =>
      create('finding', newId(), { blockId, surveyId, number: index + 1, kind, zone, answers: { ...answers } }),
    ),
    ...lot.marks.map((mark) => create('mark', newId(), { blockId, ...mark })),
    ...lanthorn.story.map((step, position) =>
      create('statement', newId(), { blockId, ...step, evidence: [...step.evidence], position }),
    ),
  ];
}

/** Puts the example sale on the shelf: nine lots and the nine pieces of the mixed box, all marked as example, as one step. */
export function openExample(store: Store, catalogue: Catalogue): Promise<void> {
  const saleId = store.newId();
  const boxId = store.newId();
  const sale = create('sale', saleId, {
    title: lanthorn.title,
    place: lanthorn.place,
    when: lanthorn.date,
    channel: 'shopClosing',
    terms: { ...plainTerms, way: 'haggle' },
    origin: 'dampStore',
    seller: lanthorn.seller,
    sellerIsPrivate: true,
    currency: 'GBP',
    budget: pence(lanthorn.budget),
    note: lanthorn.note,
    example: true,
  });
  const box = create('lot', boxId, {
    saleId,
    ...lanthorn.boxLot,
    currency: 'GBP',
    priceAsked: pence(lanthorn.boxAsked),
    example: true,
  });
  // Ids carry the time of their making; made from the last lot to the first, the shelf shows L01 on top.
  const inLot = (lots: readonly ExampleLot[], lotId: string | null) =>
    lots.map((lot) => ({ lot, in: { saleId, lotId } }));
  const lots = [...inLot(lanthorn.lots, null), ...inLot(lanthorn.box, boxId)].reverse();
  return store.change('opening the example sale', [
    sale,
    box,
    ...lots.flatMap(({ lot, in: where }) => editsOf(lot, where, store, catalogue)),
  ]);
}
