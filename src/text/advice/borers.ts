import { type Activity, type BorerAnswer, nameOfSuspect } from '../../core/advice/borers.ts';
import type { Clue, RankedSuspect } from '../../core/physics/borer-ranking.ts';
import { BORERS, type Borer, type Dust } from '../../core/physics/insects.ts';
import { LIFE_SIGNS, type LifeSign, type LifeVerdict, readLifeSigns } from '../../core/physics/signs-of-life.ts';
import { list, opening } from '../format.ts';
import type { AdviceWords } from './words.ts';

export const signWords: Readonly<Record<LifeSign, string>> = {
  dustReturnsAfterCleaning: 'little piles of dust that come back after cleaning',
  beetlesSeen: 'beetles on it or at the window',
  waspPinpricks: 'pinpricks of a wasp beside the holes',
  paleSharpRims: 'pale, sharp rims',
  cleanLightWoodInside: 'clean light wood inside the holes',
  darkOrDirtyHoles: 'dark or dirty holes',
  varnishOverHoles: 'varnish or wax over the holes',
  dustAfterKnocksOrTransport: 'dust after a knock or a journey',
  crumblesUnderThumbnail: 'wood that crumbles under a thumbnail',
  farLighterThanItsWood: 'a block far lighter than its wood',
};

/** What falls out, as a thumb and finger feel it. */
export const dustWords: Readonly<Record<Dust, string>> = {
  none: 'none',
  gritty: 'gritty',
  flour: 'like flour, pours out',
  talcPacked: 'like talc, packed hard',
  bunPellets: 'bun-shaped pellets',
  twoColouredPellets: 'pellets in two colours',
  sixSidedPellets: 'hard six-sided pellets',
  coarsePacked: 'coarse, packed',
};

export const clueWords: Readonly<Record<Clue, string>> = {
  followsPinningLine: 'pinning line',
  holeMm: 'size',
  dust: 'dust',
  shape: 'shape',
  wood: 'wood',
  darkWalls: 'walls',
  damp: 'damp',
  bark: 'bark',
  warmRegion: 'region',
};

const returnWords: Readonly<Record<Borer['returnsToDryWood'], string>> = {
  yes: 'returns to dry wood',
  'if damp': 'returns to damp wood',
  seldom: 'seldom returns',
  never: 'never returns to a block',
};

/** Rank in words: the shares order suspects and were measured nowhere. */
const rankWord = (share: number): string =>
  share >= 0.5 ? 'likeliest by far' : share >= 0.2 ? 'likely' : share >= 0.05 ? 'possible' : 'hardly';

export function suspectWords({ suspect, share, evidence }: RankedSuspect): readonly [string, string] {
  const against = evidence.filter(({ speaks }) => speaks === 'against').map(({ clue }) => clueWords[clue]);
  const back = suspect === 'toolHoles' ? 'harmless' : returnWords[BORERS[suspect].returnsToDryWood];
  return [
    opening(nameOfSuspect(suspect)),
    [rankWord(share), back, against.length > 0 && `against it: ${list(against)}`].filter(Boolean).join('; '),
  ];
}

const verdictOf = (sign: LifeSign): LifeVerdict['verdict'] => readLifeSigns({ [sign]: true }).verdict;
const signsThatSay = (verdict: LifeVerdict['verdict']): string =>
  list(LIFE_SIGNS.filter((sign) => verdictOf(sign) === verdict).map((sign) => signWords[sign]));

/** What to look for, sorted by what it says. */
export const signPoints: readonly string[] = [
  `Alive: ${signsThatSay('alive')}.`,
  `Perhaps alive: ${signsThatSay('perhaps-alive')}.`,
  `Old: ${signsThatSay('looks-old')}. Even then, watched before it is believed.`,
  `Proves nothing: ${signWords.dustAfterKnocksOrTransport}, because old galleries shed too.`,
];

const activityLead: Readonly<Record<Activity, string>> = {
  active: 'You saw fresh signs: treat it as alive.',
  inactive: 'You saw no fresh signs. That is how it looks, not proof: it is watched all the same.',
  unknown: 'Whether anything lives in it cannot be told yet.',
};
const SHOWN = 5;

/** Holes: the pinning line first, then the suspects in order, then the signs of life. */
export function borerWords({ askPinningLineFirst, looksLikePins, ranking, activity }: BorerAnswer): AdviceWords {
  const rows = ranking.ranked.slice(0, SHOWN).map(suspectWords);
  const shared = {
    facts: rows,
    points: [...signPoints, 'Sizes overlap, so this is an order of suspects, never one name.'],
  };
  if (askPinningLineFirst)
    return {
      title: 'First: do the holes follow the pinning line?',
      tone: 'care',
      lead: `Pins and tacks leave rows of holes as wide as a beetle’s, straight in, with a pressed or rusty rim. ${activityLead[activity]}`,
      ...shared,
    };
  if (looksLikePins)
    return {
      title: 'Rather pins than beetles',
      tone: 'ok',
      lead: 'A row along the pinning line: record them as pin and tack holes if nothing speaks against it. Keep the block apart until you are sure.',
      ...shared,
    };
  return { title: 'Which insect', tone: 'plain', lead: activityLead[activity], ...shared };
}
