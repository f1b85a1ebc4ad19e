/** What was seen of a possible infestation. Left out means not looked at. */
export interface LifeSigns {
  /** Little piles that come back after the block was cleaned. */
  readonly dustReturnsAfterCleaning?: boolean;
  readonly beetlesSeen?: boolean;
  readonly waspPinpricks?: boolean;
  readonly paleSharpRims?: boolean;
  readonly cleanLightWoodInside?: boolean;
  readonly darkOrDirtyHoles?: boolean;
  readonly varnishOverHoles?: boolean;
  /** Dust that falls after knocks or a journey: old galleries shed too, so it proves nothing. */
  readonly dustAfterKnocksOrTransport?: boolean;
  readonly crumblesUnderThumbnail?: boolean;
  readonly farLighterThanItsWood?: boolean;
}
export type LifeSign = keyof LifeSigns;

const SPEAKS = {
  dustReturnsAfterCleaning: 'alive',
  beetlesSeen: 'alive',
  waspPinpricks: 'recent',
  paleSharpRims: 'recent',
  cleanLightWoodInside: 'recent',
  darkOrDirtyHoles: 'old',
  varnishOverHoles: 'old',
  dustAfterKnocksOrTransport: 'nothing',
  crumblesUnderThumbnail: 'loss',
  farLighterThanItsWood: 'loss',
} as const satisfies Record<LifeSign, 'alive' | 'recent' | 'old' | 'nothing' | 'loss'>;

export const LIFE_SIGNS = Object.keys(SPEAKS) as LifeSign[];

export interface LifeVerdict {
  /** There is no "free of worm": the gentlest word is that it looks old. */
  readonly verdict: 'alive' | 'perhaps-alive' | 'looks-old' | 'cannot-tell';
  readonly because: readonly LifeSign[];
  /** Wood has been lost, whatever the verdict. */
  readonly structuralLoss: boolean;
  /** Signs still to look for. */
  readonly ask: readonly LifeSign[];
}

/**
 * Alive, perhaps alive, or old: one sure sign of life outweighs any number of signs of age.
 * SOURCE: pale rims and light wood inside from regional museums guidance (looked up); the rest common practice.
 */
export function readLifeSigns(signs: LifeSigns): LifeVerdict {
  const saying = (meaning: (typeof SPEAKS)[LifeSign]) =>
    LIFE_SIGNS.filter((sign) => signs[sign] && SPEAKS[sign] === meaning);
  const alive = saying('alive');
  const recent = saying('recent');
  const old = saying('old');
  const rest = {
    structuralLoss: saying('loss').length > 0,
    ask: LIFE_SIGNS.filter((sign) => signs[sign] === undefined),
  };
  if (alive.length > 0) return { verdict: 'alive', because: alive, ...rest };
  if (recent.length > 0) return { verdict: 'perhaps-alive', because: recent, ...rest };
  if (old.length > 0) return { verdict: 'looks-old', because: old, ...rest };
  return { verdict: 'cannot-tell', because: saying('nothing'), ...rest };
}
