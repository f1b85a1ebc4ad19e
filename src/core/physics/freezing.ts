import type { CautionId, WithCautions } from './cautions.ts';
import { coreHours } from './heat-flow.ts';
import { requireRange } from './range.ts';
import type { BestLikelyWorst, Sourced } from './sourced.ts';

export interface ColdStep {
  readonly do: 'freeze' | 'thaw' | 'warmInBag';
  readonly leastHours: number;
  readonly mostHours: number;
}
const freeze = (leastHours: number, mostHours = leastHours): ColdStep => ({ do: 'freeze', leastHours, mostHours });
const thaw = (hours: number): ColdStep => ({ do: 'thaw', leastHours: hours, mostHours: hours });
const days = (count: number) => count * 24;

/** One published way to kill insects by cold. */
export interface FreezeRegime extends Sourced {
  /** The freezer must be at least this cold. */
  readonly freezerC: number;
  readonly steps: readonly ColdStep[];
  /** The hours count from the time the core is cold; otherwise from the time the block goes in. */
  readonly fromColdCore: boolean;
}

/** Regimes as published, mildest freezer first. */
export const FREEZE_REGIMES = {
  minus18Fortnight: {
    freezerC: -18,
    steps: [freeze(days(14))],
    fromColdCore: false,
    source: 'UK museum pest guidance, as remembered',
    confidence: 'memory',
  },
  minus20Week: {
    freezerC: -20,
    steps: [freeze(days(7))],
    fromColdCore: false,
    source: 'Canadian Conservation Institute Notes 3/3, as remembered',
    confidence: 'memory',
  },
  minus20Survey: {
    freezerC: -20,
    steps: [freeze(days(6), days(10))],
    fromColdCore: false,
    source: 'US National Park Service Conserve O Gram 3/6 (1994), survey of the literature',
    confidence: 'looked-up',
  },
  minus20TwoCycles: {
    freezerC: -20,
    // The source gives no thaw; the block warms up in its bag between, as always.
    steps: [freeze(48), { do: 'warmInBag', leastHours: 24, mostHours: 24 }, freeze(48)],
    fromColdCore: false,
    source: 'US National Park Service Conserve O Gram 3/6 (1994)',
    confidence: 'looked-up',
  },
  minus20FreezeThawFreeze: {
    freezerC: -20,
    steps: [freeze(days(3)), thaw(days(2)), freeze(days(3))],
    fromColdCore: false,
    source: 'UK museum practice, conservation mailing list 2007; given for −20 to −30 °C',
    confidence: 'looked-up',
  },
  minus30Core: {
    freezerC: -30,
    steps: [freeze(days(2))],
    fromColdCore: true,
    source: 'UK museum practice, conservation mailing list 2007',
    confidence: 'looked-up',
  },
  minus30ThreeDays: {
    freezerC: -30,
    steps: [freeze(days(3))],
    fromColdCore: false,
    source: 'Canadian Conservation Institute Notes 3/3 and UK guidance, as remembered',
    confidence: 'memory',
  },
  minus32ThreeDays: {
    freezerC: -32,
    steps: [freeze(72), { do: 'warmInBag', leastHours: 24, mostHours: 24 }],
    fromColdCore: false,
    source: 'a large US collection, pest list 2024',
    confidence: 'looked-up',
  },
} as const satisfies Record<string, FreezeRegime>;
export type FreezeRegimeId = keyof typeof FREEZE_REGIMES;

/**
 * What holds for every regime.
 * SOURCE: freezing guidance in a conservation thesis; pest list replies 2010 and 2024 (all looked up).
 */
export const FREEZING = {
  startAboveC: 18,
  hoursToZeroC: 4,
  bagMicrometres: { low: 100, high: 150 },
  sealedWhileWarmingHours: 24,
  rounds: { low: 2, high: 3 },
  restDays: { low: 7, high: 14 },
  /** Hours until the freezer's temperature was reached: heavy wool, and wood inside upholstery. Bergh et al. 2006. */
  measuredLagHours: { wool: 20, insideUpholstery: 36 },
  /** Lumps of old animal glue let go at −30 °C; a longer −20 °C run left them whole. */
  animalGlueFailsAtC: -30,
  /** Larvae have outlived a freeze meant for another beetle. */
  hasFailed: true,
  cautions: ['freezeRefused', 'freezeAnimalGlue', 'freezeCanFail', 'staySealed'],
} as const satisfies WithCautions & Record<string, unknown>;

export type FreezerOffer =
  | { readonly kind: 'regimes'; readonly ids: readonly FreezeRegimeId[] }
  | { readonly kind: 'not-cold-enough'; readonly neededC: number };

export const FREEZE_REGIME_IDS = Object.keys(FREEZE_REGIMES) as FreezeRegimeId[];

/**
 * Regimes a freezer can run, looked-up ones first. A household freezer at −15 °C kills nothing reliably.
 * @param freezerC −90 to 10
 * @throws RangeError outside that
 * SOURCE: {@link FREEZE_REGIMES}
 */
export function regimesFor(freezerC: number): FreezerOffer {
  requireRange('freezerC', freezerC, -90, 10);
  const ids = FREEZE_REGIME_IDS.filter((id) => freezerC <= FREEZE_REGIMES[id].freezerC);
  if (ids.length === 0) return { kind: 'not-cold-enough', neededC: FREEZE_REGIMES.minus18Fortnight.freezerC };
  const remembered = (id: FreezeRegimeId) => (FREEZE_REGIMES[id].confidence === 'memory' ? 1 : 0);
  return { kind: 'regimes', ids: [...ids].sort((a, b) => remembered(a) - remembered(b)) };
}

/**
 * Hours in and around the freezer for one round of a regime. The clock starts at the core for all of them: times counted from the
 * door are given for thin things, and a crown block is not thin.
 * @param radiusMm of the block taken as a cylinder, above 0 to 500 · startC 0 to 40, above the freezer
 * @returns core is the lag alone; round is lag for each freeze plus the regime's steps
 * @throws RangeError outside those
 * SOURCE: {@link coreHours}, core within 2 °C of the freezer; {@link FREEZE_REGIMES}
 */
export function freezeRoundHours(
  id: FreezeRegimeId,
  radiusMm: number,
  startC = 20,
): { readonly core: BestLikelyWorst; readonly round: BestLikelyWorst } {
  requireRange('startC', startC, 0, 40);
  const { freezerC, steps }: FreezeRegime = FREEZE_REGIMES[id];
  const core = coreHours(radiusMm, 2 / (startC - freezerC));
  const freezes = steps.filter((step) => step.do === 'freeze').length;
  const least = steps.reduce((sum, { leastHours }) => sum + leastHours, 0);
  const most = steps.reduce((sum, { mostHours }) => sum + mostHours, 0);
  return {
    core,
    round: {
      best: least + freezes * core.best,
      likely: (least + most) / 2 + freezes * core.likely,
      worst: most + freezes * core.worst,
    },
  };
}

/** What a block may be made of or bear that speaks against freezing, or for asking first. */
export const FREEZE_OBSTACLES = {
  plaster: { verdict: 'refuse', cautions: ['freezeRefused', 'plasterDry'] },
  papierMache: { verdict: 'refuse', cautions: ['freezeRefused', 'papierMacheDry'] },
  paintedOrGessoed: { verdict: 'refuse', cautions: ['freezeRefused'] },
  animalGlue: { verdict: 'no colder than −20 °C', cautions: ['freezeAnimalGlue'] },
  laminatedOrMultiPart: { verdict: 'ask first', cautions: ['freezeAnimalGlue'] },
} as const satisfies Record<string, WithCautions & { verdict: 'refuse' | 'no colder than −20 °C' | 'ask first' }>;
export type FreezeObstacle = keyof typeof FREEZE_OBSTACLES;

/**
 * May this block be frozen, and in which of the freezer's regimes? Refusals come from common practice, the glue rule from a report.
 * @param freezerC −90 to 10
 * @throws RangeError outside that
 * SOURCE: {@link FREEZE_OBSTACLES}
 */
export function freezeAnswer(
  freezerC: number,
  obstacles: readonly FreezeObstacle[],
):
  | FreezerOffer
  | { readonly kind: 'refused'; readonly because: readonly FreezeObstacle[]; readonly cautions: readonly CautionId[] } {
  const because = obstacles.filter((obstacle) => FREEZE_OBSTACLES[obstacle].verdict === 'refuse');
  if (because.length > 0)
    return {
      kind: 'refused',
      because,
      cautions: [...new Set(because.flatMap((one) => FREEZE_OBSTACLES[one].cautions))],
    };
  const offer = regimesFor(freezerC);
  if (offer.kind === 'not-cold-enough' || !obstacles.includes('animalGlue')) return offer;
  return { kind: 'regimes', ids: offer.ids.filter((id) => FREEZE_REGIMES[id].freezerC >= -20) };
}
