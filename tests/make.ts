import { catalogue } from '../src/catalogue/index.ts';
import type { Case } from '../src/core/assess.ts';
import { blank, plainTerms } from '../src/core/blank.ts';
import { applicableKinds, settingOf } from '../src/core/block.ts';
import type { Catalogue, ThreePoint, Treatment } from '../src/core/catalogue.ts';
import {
  type Fields,
  type Finding,
  type HatBlock,
  type Job,
  type JobLot,
  type Mark,
  type Offer,
  type RecordOf,
  type RecordType,
  type SaleTerms,
  SCHEMA,
  type Settings,
  type Stint,
  type Survey,
  type WorkStep,
} from '../src/core/records.ts';
import type { ForecastCase } from '../src/core/simulate/simulate.ts';
import { type ExampleLot, lanthorn } from '../src/demo/lanthorn.ts';
import { DEVICE, id } from './store/make.ts';

/** A record as the sums see it: nobody asks it when it was written, and random cases need them by the thousand. */
const make = <T extends RecordType>(type: T, fields: Partial<Fields<T>> & { readonly id: string }): RecordOf<T> =>
  ({
    ...blank[type],
    schema: SCHEMA,
    device: DEVICE,
    stamps: {},
    deleted: null,
    ...fields,
    type,
  }) as unknown as RecordOf<T>;

/** A plain lime crown in one piece, common, its prices left to the catalogue. */
export const aBlock = (fields: Partial<Fields<'block'>> = {}): HatBlock =>
  make('block', {
    id: id(1),
    name: 'Dome crown',
    blockType: 'domeCrown',
    materials: ['lime'],
    partsFound: 1,
    partsExpected: 1,
    shapeValue: 'common',
    ...fields,
  });

/** A survey in which nothing has been looked at. */
export const aSurvey = (fields: Partial<Fields<'survey'>> = {}): Survey =>
  make('survey', { id: id(2), blockId: id(1), ...fields });

/** A small check at the tip. Ids follow the number, so that two findings of a test are two. */
export const aFinding = (fields: Partial<Fields<'finding'>> = {}): Finding =>
  make('finding', {
    id: id(100 + (fields.number ?? 1)),
    blockId: id(1),
    surveyId: id(2),
    kind: 'check',
    zone: 'tip',
    answers: { widthMm: 0.2, depthMm: 3, lengthMm: 28 },
    ...fields,
  });

/** A size stamp on the base, worth keeping. */
export const aMark = (fields: Partial<Fields<'mark'>> & { readonly number?: number } = {}): Mark => {
  const { number = 1, ...rest } = fields;
  return make('mark', { id: id(200 + number), blockId: id(1), kind: 'sizeInch', text: '22½', ...rest });
};

/** What somebody changed or did of a step; ids follow the number. */
export const aStep = (fields: Partial<Fields<'step'>> & { readonly number?: number } = {}): WorkStep => {
  const { number = 1, ...rest } = fields;
  return make('step', { id: id(300 + number), blockId: id(1), ...rest });
};

/** An hour of work by the timer on step 1; ids follow the number. */
export const aStint = (fields: Partial<Fields<'stint'>> & { readonly number?: number } = {}): Stint => {
  const { number = 1, ...rest } = fields;
  return make('stint', {
    ...{ id: id(400 + number), blockId: id(1), stepId: id(301), began: '2026-11-10T19:00:00Z' },
    ...{ ended: '2026-11-10T20:00:00Z', minutes: 60 },
    ...rest,
  });
};

/** An hour's gluing that took an hour; ids follow the number. */
export const aJob = (fields: Partial<Fields<'job'>> & { readonly number?: number } = {}): Job => {
  const { number = 1, ...rest } = fields;
  return make('job', {
    ...{ id: id(500 + number), blockId: id(1), treatment: 'reglue', reference: 'glueAndFill' },
    ...{ estimateHours: 1, lowHours: 0.7, highHours: 1.5, actualHours: 1 },
    ...rest,
  });
};

/** Several blocks at one price, none in it yet. */
export const aJobLot = (fields: Partial<Fields<'lot'>> & { readonly id?: string } = {}): JobLot =>
  make('lot', { id: id(4), title: 'Box of small pieces', ...fields });

export const anOffer = (fields: Partial<Fields<'offer'>> & { readonly id?: string } = {}): Offer =>
  make('offer', { id: id(5), blockId: id(1), ...fields });

export const someSettings = (fields: Partial<Fields<'settings'>> = {}): Settings =>
  make('settings', { id: id(3), ...fields });

export const someTerms = (fields: Partial<SaleTerms> = {}): SaleTerms => ({ ...plainTerms, ...fields });

/** A case with everything optional: a plain crown, nothing looked at, a ticket price, £14 an hour. */
export const aCase = (facts: Partial<Case> = {}): Case => ({
  block: aBlock(),
  survey: aSurvey(),
  findings: [],
  terms: plainTerms,
  settings: someSettings(),
  pace: {},
  ...facts,
});

export const aForecastCase = (facts: Partial<ForecastCase> = {}): ForecastCase => ({
  ...aCase(facts),
  origin: 'unknown',
  tallies: {},
  seed: 1,
  ...facts,
});

/** A survey in which every kind the block can have was looked for, and every station of the walk done. */
export function everythingLookedAt(
  block: HatBlock,
  findings: readonly Pick<Finding, 'kind'>[],
  known: Catalogue = catalogue,
): Survey {
  const found = new Set(findings.map(({ kind }) => kind));
  const none = applicableKinds(settingOf(block, known), known).filter((kind) => !found.has(kind));
  return aSurvey({
    noneSeen: Object.fromEntries(none.map((kind) => [kind, true as const])),
    stationsDone: Object.fromEntries(Object.keys(known.stations).map((station) => [station, true as const])),
    measures: { circRopeMm: 570 },
  });
}

const pence = (pounds: number | null): number | null => (pounds === null ? null : Math.round(pounds * 100));

/** A lot of the example sale as a case, everything looked at, at the price on its ticket. */
export function caseOfLot(number: string): Case {
  const lot: ExampleLot | undefined = [...lanthorn.lots, ...lanthorn.box].find((each) => each.number === number);
  if (!lot) throw new Error(`No lot ${number} in the example sale.`);
  const findings = lot.findings.map(({ kind, zone, answers }, index) =>
    aFinding({ number: index + 1, kind, zone, answers: { ...answers } }),
  );
  const block = aBlock({
    name: lot.name,
    objectNumber: lot.number,
    blockType: lot.type,
    materials: [...lot.materials],
    partsFound: lot.parts[0],
    partsExpected: lot.parts[1],
    shapeValue: lot.shapeValue,
    priceAsked: pence(lot.asked),
    newPrice: pence(lot.newPrice),
    equalUsedPrice: pence(lot.equalUsed),
    fallbackPrice: pence(lot.fallback),
    hatsPerYear: lot.use?.hats ?? null,
    marginPerHat: pence(lot.use?.margin ?? null),
    blockShare: lot.use?.share ?? null,
  });
  const survey = { ...everythingLookedAt(block, findings), measures: { ...lot.measures } };
  return aCase({ block, survey, findings });
}

/** The likely value for all three points. */
const certainly = ({ m }: ThreePoint): ThreePoint => ({ o: m, m, p: m });

/** The catalogue without chance: every repair holds, every step takes the likely time. */
export const certain: Catalogue = {
  ...catalogue,
  model: { ...catalogue.model, successMultiplier: [0, 0, 0, 0, 0] },
  damage: mapValues(catalogue.damage, (kind) => ({ ...kind, baseSuccess: 1 })),
  treatments: mapValues(catalogue.treatments, withoutSpread),
};

function withoutSpread(treatment: Treatment): Treatment {
  const { setUpHours, per, waitHours } = treatment;
  return {
    ...treatment,
    setUpHours: certainly(setUpHours),
    per: per && { ...per, hours: certainly(per.hours) },
    waitHours: certainly(waitHours),
  };
}

/** A catalogue with one treatment replaced. */
export const withTreatment = (id: string, change: Partial<Treatment>, known: Catalogue = catalogue): Catalogue => ({
  ...known,
  treatments: mapValues(known.treatments, (one, key) => (key === id ? { ...one, ...change } : one)),
});

function mapValues<T>(table: Readonly<Record<string, T>>, change: (value: T, key: string) => T): Record<string, T> {
  return Object.fromEntries(Object.entries(table).map(([key, value]) => [key, change(value, key)]));
}
