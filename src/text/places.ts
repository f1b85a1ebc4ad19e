import type { Place } from '../core/records.ts';

/** Where a block stands, in the words of the shelf. */
export const placeWords: Readonly<Record<Place, string>> = {
  lookingAt: 'Looking at',
  quarantine: 'In quarantine',
  toDo: 'To do',
  onTheBench: 'On the bench',
  ready: 'Ready',
  letGo: 'Let go',
};
