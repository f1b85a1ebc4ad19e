import { catalogue } from '../../src/catalogue/index.ts';
import { assess } from '../../src/core/assess.ts';
import { blank } from '../../src/core/blank.ts';
import type { Fields, RecordOf, RecordType } from '../../src/core/records.ts';
import { SCHEMA } from '../../src/core/records.ts';
import { lanthorn } from '../../src/demo/lanthorn.ts';
import type { BenchCase } from '../../src/reports/case.ts';
import { caseOfLot } from '../make.ts';
import { DEVICE, id } from '../store/make.ts';

let count = 5000;
const record = <T extends RecordType>(type: T, fields: Partial<Fields<T>>): RecordOf<T> =>
  ({
    ...blank[type],
    ...{ id: id(++count), schema: SCHEMA, device: DEVICE, stamps: {}, deleted: null },
    ...fields,
    type,
  }) as unknown as RecordOf<T>;

export interface TakenPhoto {
  readonly sha256: string;
  readonly width: number;
  readonly height: number;
  readonly bytes: number;
}

/** Names that may not leave the workshop unless ticked, and a person the demo does not have, in Greek and Cyrillic. */
export const SELLER = 'Odile Ferncastle';
export const PLACE = 'Averley-on-Mere';
export const GREEK = 'Ευφροσύνη';
export const CYRILLIC = 'Щукина';

/**
 * A lot of the example sale after some work: a repair that held, hours, a purchase, a chain with a gap and doubt, and the
 * photographs given, by turns before and after. Everything invented.
 */
export function benchCase(lot: string, photos: readonly TakenPhoto[] = [], change: Partial<BenchCase> = {}): BenchCase {
  count = 5000;
  const facts = caseOfLot(lot);
  const findings = facts.findings.map((finding, index) =>
    index === 0 ? { ...finding, note: `Odile said it was so in 1990; ${GREEK} and ${CYRILLIC} agree.` } : finding,
  );
  const found = [...lanthorn.lots, ...lanthorn.box].find(({ number }) => number === lot);
  const block = {
    ...facts.block,
    made: { words: 'about 1930', edtf: '1930~' },
    note: found?.seen ?? '',
  };
  const survey = { ...facts.survey, begun: '2026-10-17T09:40:00Z', surveyor: 'Wren Hallowby', reason: 'Before buying' };
  const settings = { ...facts.settings, ownerName: 'Wren Hallowby', hourlyRate: 1400 };
  const sale = record('sale', {
    title: lanthorn.title,
    place: PLACE,
    when: lanthorn.date,
    seller: lanthorn.seller,
    sellerIsPrivate: true,
    diligence: { seller: `${SELLER}, met at the desk`, receipt: '7' },
  });
  const chain = [
    {
      transfer: 'madeFor',
      party: 'a model-hat house',
      when: { words: 'about 1935', edtf: '1935~' },
      certainty: 'probable',
      evidence: [{ kind: 'stamp', text: 'style number on the key' }],
    },
    {
      transfer: 'takenOverWithWorkshopOf',
      party: 'that house, by the Lanthorn Playhouse',
      when: { words: '1958', edtf: '1958' },
      certainty: 'certain',
      evidence: [{ kind: 'inventoryEntry', text: 'inventory book p. 41, seen 17 October 2026' }],
      direct: true,
    },
    {
      transfer: 'boughtFrom',
      party: SELLER,
      partyIsPrivate: true,
      place: PLACE,
      when: { words: '17 October 2026', edtf: '2026-10-17' },
      certainty: 'certain',
      evidence: [{ kind: 'receipt', text: 'receipt 7' }],
    },
  ];
  const statements = chain.map((step, position) => record('statement', { blockId: block.id, position, ...step }));
  const [first, second] = findings;
  const marks = (found?.marks ?? []).map((mark) => record('mark', { blockId: block.id, ...mark }));
  const taken = photos.map((photo, index) =>
    record('photo', {
      blockId: block.id,
      view: index === 2 ? 'marks' : index % 2 === 0 ? 'threeQuarter' : 'threeQuarter',
      stage: index % 2 === 0 ? 'before' : 'after',
      ...photo,
      mime: 'image/jpeg',
      thumbnail: photo.sha256,
      taken: { local: `2026-10-${17 + (index % 2)}T11:42:09`, offset: '+01:00', from: 'camera' },
      position: { latitude: 51.17725, longitude: -2.98764 },
      caption: index === 0 ? `${GREEK}, as it stood on the trestle` : '',
    }),
  );
  const work = [
    { treatment: 'dryClean', estimateHours: 0.5, lowHours: 0.3, highHours: 0.8, actualHours: 0.75 },
    { treatment: 'dryToConstantWeight', estimateHours: 1, lowHours: 0.6, highHours: 1.7, actualHours: 1.25 },
  ].filter(({ treatment }) => treatment in catalogue.treatments);
  const jobs = work.map((job, index) =>
    record('job', { blockId: block.id, at: `2026-11-0${index + 2}T19:00:00Z`, ...job }),
  );
  return {
    ...{ block, survey, findings, settings, sale, statements, marks, jobs },
    photos: taken,
    ...{ photoMarks: [], alignments: [], stints: [] },
    steps: [
      record('step', {
        blockId: block.id,
        words: 'Left the window open for a night',
        added: true,
        done: { at: '2026-11-05T20:00:00Z', offset: '+00:00' },
        note: 'Dry and cold.',
      }),
    ],
    repairs:
      first && second
        ? [
            record('repair', { blockId: block.id, findingId: first.id, kind: first.kind, chance: 0.9, held: true }),
            record('repair', { blockId: block.id, findingId: second.id, kind: second.kind, chance: 0.8, held: false }),
          ]
        : [],
    expenses: [record('expense', { blockId: block.id, what: 'Wax', amount: 420, currency: 'GBP', on: '2026-11-02' })],
    offers: [
      record('offer', { blockId: block.id, what: 'paid', amount: 5200, currency: 'GBP', at: '2026-10-17T11:00:00Z' }),
    ],
    assessment: assess({ ...facts, block, survey, findings, settings }, catalogue),
    ...change,
  };
}
