import type { PocketReference } from '../core/catalogue.ts';
import { memory, published } from './source.ts';

const ukTable = published('S06.');
const euro = published('S05.');
const usMint = published('S04.');
const iso216 = published('S08.');

const coin = (term: string, region: PocketReference['region'], diameterMm: number, source: PocketReference['source']) =>
  ({ term, kind: 'coin', region, mm: [diameterMm], source }) as const;
const paper = (
  term: string,
  region: PocketReference['region'],
  long: number,
  short: number,
  source: PocketReference['source'],
) => ({ term, kind: 'paper', region, mm: [long, short], source }) as const;

/** Things of known size that everybody carries, to give a photograph its scale. */
export const pocketReferences = {
  bankCard: {
    term: 'Bank or travel card (ISO ID-1)',
    kind: 'card',
    region: 'anywhere',
    mm: [85.6, 53.98],
    thicknessMm: 0.76,
    cornerRadiusMm: 3.18,
    source: published('S07. Corners are round: measure the straight part of the edge.'),
  },
  uk1p: coin('1p', 'uk', 20.3, memory('From memory; one stored table prints 20.03, taken as a slip.')),
  uk2p: coin('2p', 'uk', 25.9, ukTable),
  uk5p: coin('5p', 'uk', 18, ukTable),
  uk10p: coin('10p', 'uk', 24.5, ukTable),
  uk20p: {
    term: '20p (seven-sided)',
    kind: 'coinOfConstantWidth',
    region: 'uk',
    mm: [21.4],
    source: published('S06. Right as a calliper gap, wrong for fitting a circle.'),
  },
  uk50p: {
    term: '50p (seven-sided)',
    kind: 'coinOfConstantWidth',
    region: 'uk',
    mm: [27.3],
    source: published('S06. Right as a calliper gap, wrong for fitting a circle.'),
  },
  ukPound: {
    term: '£1 (twelve-sided)',
    kind: 'coin',
    region: 'uk',
    mm: [23.43],
    acrossFlatsMm: 23.03,
    source: published('S06, point to point; flat to flat from memory.'),
  },
  ukTwoPounds: coin('£2', 'uk', 28.4, ukTable),
  euro1c: coin('1 cent', 'euro', 16.25, euro),
  euro2c: coin('2 cent', 'euro', 18.75, euro),
  euro5c: coin('5 cent', 'euro', 21.25, euro),
  euro10c: coin('10 cent', 'euro', 19.75, euro),
  euro20c: coin('20 cent (notched edge)', 'euro', 22.25, euro),
  euro50c: coin('50 cent', 'euro', 24.25, euro),
  euro1: coin('€1', 'euro', 23.25, euro),
  euro2: coin('€2', 'euro', 25.75, euro),
  usCent: coin('US cent', 'us', 19.05, usMint),
  usNickel: coin('Nickel', 'us', 21.21, usMint),
  usDime: coin('Dime', 'us', 17.91, usMint),
  usQuarter: coin('Quarter', 'us', 24.26, usMint),
  usHalf: coin('Half dollar', 'us', 30.61, usMint),
  usDollar: coin('Dollar coin', 'us', 26.49, published('S04; other tables print 26.50.')),
  a4: paper('A4 sheet', 'anywhere', 297, 210, iso216),
  a5: paper('A5 sheet', 'anywhere', 210, 148, iso216),
  a6: paper('A6 sheet or postcard', 'anywhere', 148, 105, iso216),
  usLetter: paper('US Letter sheet', 'us', 279.4, 215.9, published('S08: 8½ × 11 in, 25.4 mm to the inch.')),
} as const satisfies Record<string, PocketReference>;
