import type { WithCautions } from './cautions.ts';
import type { Span } from './sourced.ts';
import type { Wood } from './wood.ts';
import { AMERICAN_WOODS } from './woods-american.ts';
import { EUROPEAN_WOODS } from './woods-european.ts';
import { IMPORTED_WOODS } from './woods-imported.ts';

/** Every wood with movement figures. European names stand for genus averages, American ones for a species. */
export const WOODS = { ...EUROPEAN_WOODS, ...AMERICAN_WOODS, ...IMPORTED_WOODS } as const satisfies Record<
  string,
  Wood
>;
export type WoodId = keyof typeof WOODS;
export const WOOD_IDS = Object.keys(WOODS) as WoodId[];

/**
 * Woods a survey's material may stand for, likeliest first: a label such as "limewood / basswood" does not say from which continent.
 * Keys are the material codes of the trade vocabulary. Plywood and sapele have no figures here: crack rules do not apply or are unknown.
 */
export const WOODS_OF_MATERIAL = {
  lime: ['lime', 'americanBasswood'],
  alder: ['alder', 'redAlder'],
  poplar: ['yellowPoplar', 'poplar', 'quakingAspen', 'easternCottonwood'],
  mahogany: ['mahogany', 'mahoganyGenus', 'africanMahogany'],
  beech: ['beech', 'americanBeech'],
  pine: ['scotsPine', 'easternWhitePine', 'ponderosaPine', 'sugarPine'],
  balsa: ['balsa'],
} as const satisfies Record<string, readonly WoodId[]>;

/**
 * Moisture above which wood stops swelling, percent: rich in extractives early, pale hardwoods late; 30 is the planning figure between.
 * SOURCE: chapter on wood in The Structural Conservation of Panel Paintings (Getty 1998) (looked up); 30 from memory.
 */
export const SWELLING_ENDS_PCT = {
  mahogany: { low: 22, high: 24 },
  beechAndBirch: { low: 32, high: 34 },
  planning: 30,
} as const;

/**
 * Woods named for hat blocks: the first three seen in one university costume shop's stock (looked up), the rest from memory.
 * SOURCE: costume technology student's notes, 2017; trade memory.
 */
export const BLOCK_WOODS = {
  seen: ['americanBasswood', 'poplar', 'balsa'],
  remembered: ['lime', 'alder', 'beech', 'obeche'],
} as const satisfies Record<string, readonly WoodId[]>;

/** Very old wood still swells and shrinks. SOURCE: same chapter, Getty 1998 (looked up). */
export const AGE_STOPS_MOVEMENT = false;

/** Moisture at which one block maker supplies new blocks, percent. SOURCE: a maker's note, 2012 (looked up). */
export const NEW_BLOCK_MOISTURE_PCT = { low: 12, high: 15, cautions: ['parkedCar'] } as const satisfies Span &
  WithCautions;
