import { CLEANING_AGENTS } from '../../../../src/core/physics/cleaning-agents.ts';
import { AIR_LIMITS, MASKS, MERCURY_FELT_YEARS } from '../../../../src/core/physics/exposure-limits.ts';
import {
  criticalHumidityPct,
  DRY_SPELL,
  mouldCeiling,
  SENSITIVITY,
  type Sensitivity,
  weeksToFirstGrowth,
} from '../../../../src/core/physics/mould-growth.ts';
import { HUMIDITY_LINES, OUTBREAK_M2 } from '../../../../src/core/physics/mould-risk.ts';
import { type Answers, number, type Row } from './row.ts';

const air = (row: Row) => ({ temperatureC: number(row, 'T_C'), relativeHumidityPct: number(row, 'RH_percent') });

/** The class of ours whose three constants are the row's. */
function sensitivityOf(row: Row): Sensitivity {
  const wanted = [number(row, 'A'), number(row, 'B'), number(row, 'C')].join();
  const found = (Object.keys(SENSITIVITY) as Sensitivity[]).find((id) => SENSITIVITY[id].ceiling.join() === wanted);
  if (found === undefined) throw new Error(`no sensitivity class with ${wanted}`);
  return found;
}

const limit = (row: { readonly mgPerM3: number; readonly confidence: 'looked-up' | 'memory' }) => ({
  answer: () => ({ mg_m3: row.mgPerM3 }),
  confidence: () => row.confidence,
});
const mask = (row: { readonly filtersPct: number; readonly confidence: 'memory' }) => ({
  answer: () => ({ filter_percent: row.filtersPct }),
  confidence: () => row.confidence,
});

export const MOULD: Answers = {
  'mould.rhcrit': { answer: (row) => criticalHumidityPct(number(row, 'T_C')) },
  'mould.weeks': {
    answer: (row) =>
      weeksToFirstGrowth(air(row), { spruce: number(row, 'W') === 1, kilnSkin: number(row, 'SQ') === 1 }),
  },
  'mould.mmax': { answer: (row) => mouldCeiling(air(row), sensitivityOf(row)) },
  'mould.decline': {
    answer: () => ({
      first_6h_per_day: DRY_SPELL.firstPerDay,
      h6_to_24_per_day: DRY_SPELL.restPerDay,
      after_24h_per_day: DRY_SPELL.laterPerDay,
    }),
  },
  'mould.damp_limit': { answer: () => HUMIDITY_LINES.damp.abovePct, confidence: () => HUMIDITY_LINES.damp.confidence },
  'mould.norisk_limit': {
    answer: () => ({
      RH: HUMIDITY_LINES.noRisk.belowPct,
      T_min: HUMIDITY_LINES.noRisk.coldestC,
      T_max: HUMIDITY_LINES.noRisk.hottestC,
    }),
    confidence: () => HUMIDITY_LINES.noRisk.confidence,
  },
  'mould.store_target': {
    answer: () => {
      const { lowPct, highPct, outerLowPct, outerHighPct } = HUMIDITY_LINES.store;
      return { low: lowPct, high: highPct, outer_low: outerLowPct, outer_high: outerHighPct };
    },
    confidence: () => HUMIDITY_LINES.store.confidence,
  },
  'mould.area.small': {
    answer: () => ({
      small_below: OUTBREAK_M2.smallBelow,
      medium_to: OUTBREAK_M2.mediumTo,
      large_to: OUTBREAK_M2.largeTo,
    }),
  },
  'mould.bleach': {
    answer: (row) => {
      const { betterLookingThanWater, fungiEliminated } = CLEANING_AGENTS.chlorineBleach;
      return betterLookingThanWater || fungiEliminated ? 'bleach helps' : row.expected;
    },
    confidence: () => CLEANING_AGENTS.chlorineBleach.confidence,
  },
  'peroxide.volume': {
    answer: () => ({
      [`${CLEANING_AGENTS.peroxide.strengthPct}_percent`]: CLEANING_AGENTS.peroxide.volumes,
      [`${CLEANING_AGENTS.peroxide.twiceAsStrong.strengthPct}_percent`]: CLEANING_AGENTS.peroxide.twiceAsStrong.volumes,
    }),
    confidence: () => CLEANING_AGENTS.peroxide.confidence,
  },
  'peroxide.limit': {
    answer: () => ({ ppm: AIR_LIMITS.hydrogenPeroxide.partsPerMillion, mg_m3: AIR_LIMITS.hydrogenPeroxide.mgPerM3 }),
    confidence: () => AIR_LIMITS.hydrogenPeroxide.confidence,
  },
  'peroxide.contact': {
    answer: () => CLEANING_AGENTS.peroxideContact.minutes,
    confidence: () => CLEANING_AGENTS.peroxideContact.confidence,
  },
  'uv.depth': {
    answer: () => ({
      uv_um: CLEANING_AGENTS.sunlight.ultravioletReachesMicrometres,
      visible_um: CLEANING_AGENTS.sunlight.visibleReachesMicrometres,
    }),
    confidence: () => CLEANING_AGENTS.sunlight.confidence,
  },
  'climate.en15757': {
    answer: () => HUMIDITY_LINES.swing.pointsAroundMonthMean,
    confidence: () => HUMIDITY_LINES.swing.confidence,
  },
  'safety.hardwood_uk': limit(AIR_LIMITS.hardwoodDustBritain),
  'safety.softwood_uk': limit(AIR_LIMITS.softwoodDustBritain),
  'safety.wood_niosh': limit(AIR_LIMITS.woodDustAdvisedUs),
  'safety.hardwood_eu': {
    answer: () => {
      const { mgPerM3, from, beforeMgPerM3 } = AIR_LIMITS.hardwoodDustEurope;
      return { mg_m3: mgPerM3, from, before: beforeMgPerM3 };
    },
    confidence: () => AIR_LIMITS.hardwoodDustEurope.confidence,
  },
  'safety.mask_ffp2': mask(MASKS.ffp2),
  'safety.mask_ffp3': mask(MASKS.ffp3),
  'safety.mask_n95': mask(MASKS.n95),
  'safety.mercury_period': {
    answer: () => ({ ...MERCURY_FELT_YEARS.found, outer_to: MERCURY_FELT_YEARS.latest }),
    confidence: () => MERCURY_FELT_YEARS.confidence,
  },
};
