import { blank } from '../../src/core/blank.ts';
import { created } from '../../src/core/changes.ts';
import { formatStamp, type Stamp } from '../../src/core/clock.ts';
import type { Fields, RecordOf, RecordType } from '../../src/core/records.ts';

/** 1 January 2026, 00:00 UTC: when the tests begin. */
export const NEW_YEAR = Date.UTC(2026, 0, 1);
export const DEVICE = 'device00';

/** A stamp so many milliseconds after the tests begin. */
export const at = (ms: number, device = DEVICE, counter = 0): Stamp =>
  formatStamp({ ms: NEW_YEAR + ms, counter, device });

/** The n-th id; ids sort like their numbers. */
export const id = (n: number): string => `019b76da-a800-7000-8000-${n.toString(16).padStart(12, '0')}`;

export const newIds = (from = 1000) => {
  let n = from;
  return () => id(n++);
};

type Made<T extends RecordType> = Partial<Fields<T>> & { readonly id?: string; readonly stamp?: Stamp };

export function make<T extends RecordType>(
  type: T,
  { id: own = id(1), stamp = at(0), ...fields }: Made<T>,
): RecordOf<T> {
  return created(type, { ...blank[type], ...fields } as Fields<T>, { id: own, stamp, device: stamp.slice(-8) });
}

export const aBlock = (fields: Made<'block'> = {}) => make('block', { name: 'Tall crown', ...fields });
export const aSurvey = (fields: Made<'survey'> = {}) => make('survey', { id: id(2), blockId: id(1), ...fields });
export const aFinding = (fields: Made<'finding'> = {}) =>
  make('finding', { id: id(3), blockId: id(1), surveyId: id(2), kind: 'check', zone: 'ropeLine', ...fields });
export const aPhoto = (fields: Made<'photo'> = {}) =>
  make('photo', { id: id(4), blockId: id(1), sha256: '0'.repeat(64), thumbnail: '1'.repeat(64), ...fields });
