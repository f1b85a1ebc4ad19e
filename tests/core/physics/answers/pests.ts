import { FURNITURE_BEETLE_DRYNESS } from '../../../../src/core/physics/beetle-dryness.ts';
import {
  FREEZE_REGIMES,
  FREEZING,
  type FreezeRegime,
  type FreezeRegimeId,
} from '../../../../src/core/physics/freezing.ts';
import { BORERS, type Borer, TOOL_HOLES } from '../../../../src/core/physics/insects.ts';
import { OTHER_TREATMENTS } from '../../../../src/core/physics/other-treatments.ts';
import {
  chanceNoneEmerges,
  type Hemisphere,
  QUARANTINE_RULE,
  quarantinePlan,
} from '../../../../src/core/physics/quarantine.ts';
import { BORER_NAMES } from './names.ts';
import { type Answers, lastPart, named, number, type Row, text } from './row.ts';

const borerOf = (row: Row): Borer => BORERS[named(BORER_NAMES, lastPart(row))];

function seasonText({ season, outMonthsNorth, cycleYears, shapes }: Borer, row: Row) {
  const expected = row.expected as { shape: string; life_cycle_years: string };
  const cycle = cycleYears ? [...new Set([cycleYears.low, cycleYears.high])].join('-') : expected.life_cycle_years;
  return {
    shape: shapes.some((shape) => expected.shape.startsWith(shape)) ? expected.shape : shapes.join(),
    emergence_months_north: outMonthsNorth ? outMonthsNorth.join('-') : season,
    life_cycle_years: cycle,
  };
}

const regime = (id: FreezeRegimeId): FreezeRegime => FREEZE_REGIMES[id];
const freezes = (id: FreezeRegimeId) => regime(id).steps.filter((step) => step.do === 'freeze');
const hours = (id: FreezeRegimeId) => freezes(id)[0]?.leastHours ?? Number.NaN;
const mostHours = (id: FreezeRegimeId) => freezes(id)[0]?.mostHours ?? Number.NaN;

/** A regime's figures, if it asks for the freezer the row names. */
const inFreezer = (id: FreezeRegimeId, figures: () => Readonly<Record<string, number>>) => ({
  answer: (row: Row) => (number(row, 'T_C') === regime(id).freezerC ? figures() : 'another freezer'),
  confidence: () => regime(id).confidence,
});

export const PESTS: Answers = {
  insect: {
    answer: (row) => {
      const borer = borerOf(row);
      return {
        min_mm: borer.holeMm.low,
        max_mm: borer.holeMm.high,
        ...seasonText(borer, row),
        reinfests_dry_wood: borer.returnsToDryWood === 'yes' || borer.returnsToDryWood === 'if damp',
      };
    },
    prose: ['frass', 'wood'],
    confidence: (row) => borerOf(row).confidence,
  },
  'insect.pinhole_tool': {
    answer: (row) => {
      const { low, high } = TOOL_HOLES.holeMm;
      return low === number(row, 'hole_min_mm') && high === number(row, 'hole_max_mm')
        ? row.expected
        : TOOL_HOLES.holeMm;
    },
    confidence: () => TOOL_HOLES.confidence,
  },
  'insect.eggs_rh': {
    answer: () => ({
      no_hatch_at_or_below: FURNITURE_BEETLE_DRYNESS.noHatchAtOrBelowPct,
      good_hatch: FURNITURE_BEETLE_DRYNESS.goodHatchPct,
    }),
  },
  'insect.mc_floor': { answer: () => FURNITURE_BEETLE_DRYNESS.establishesAboveMoisturePct },
  'insect.miss': { answer: (row) => chanceNoneEmerges(number(row, 'life_cycle_years'), number(row, 'larvae')) },
  'quarantine.end': {
    answer: (row) => quarantinePlan(text(row, 'arrival'), text(row, 'hemisphere') as Hemisphere).endsOn,
  },
  'quarantine.check_interval': {
    answer: () => ({ season_days: QUARANTINE_RULE.inSeasonDays, off_season_days: QUARANTINE_RULE.offSeasonDays }),
  },
  'freeze.minus20_literature': inFreezer('minus20Survey', () => ({
    days_min: hours('minus20Survey') / 24,
    days_max: mostHours('minus20Survey') / 24,
  })),
  'freeze.minus20_two_cycles': inFreezer('minus20TwoCycles', () => ({
    cycles: freezes('minus20TwoCycles').length,
    hours_each: hours('minus20TwoCycles'),
  })),
  'freeze.minus30_core': inFreezer('minus30Core', () => ({
    days_at_core: regime('minus30Core').fromColdCore ? hours('minus30Core') / 24 : 0,
  })),
  'freeze.minus20to30_freeze_thaw': inFreezer('minus20FreezeThawFreeze', () => {
    const [freeze, thaw, refreeze] = regime('minus20FreezeThawFreeze').steps.map((step) => step.leastHours / 24);
    return { freeze_d: freeze ?? 0, thaw_d: thaw ?? 0, refreeze_d: refreeze ?? 0 };
  }),
  'freeze.minus32_72h': inFreezer('minus32ThreeDays', () => ({
    hours: hours('minus32ThreeDays'),
    acclimatise_h: regime('minus32ThreeDays').steps.at(-1)?.leastHours ?? 0,
  })),
  'freeze.minus30_3d': inFreezer('minus30ThreeDays', () => ({ days: hours('minus30ThreeDays') / 24 })),
  'freeze.minus20_7d': inFreezer('minus20Week', () => ({ days: hours('minus20Week') / 24 })),
  'freeze.minus18_14d': inFreezer('minus18Fortnight', () => ({ days: hours('minus18Fortnight') / 24 })),
  'freeze.repeat': { answer: () => ({ times_min: FREEZING.rounds.low, times_max: FREEZING.rounds.high }) },
  'freeze.cool_to_zero': {
    answer: () => ({ max_hours_to_0C: FREEZING.hoursToZeroC, start_above_C: FREEZING.startAboveC }),
  },
  'freeze.warm_sealed': { answer: () => ({ hours_sealed_while_warming: FREEZING.sealedWhileWarmingHours }) },
  'freeze.bag': {
    answer: () => ({ film_um_min: FREEZING.bagMicrometres.low, film_um_max: FREEZING.bagMicrometres.high }),
  },
  'freeze.temp_equalise': {
    answer: () => ({
      wool_h: FREEZING.measuredLagHours.wool,
      upholstered_h: FREEZING.measuredLagHours.insideUpholstery,
    }),
  },
  'freeze.hide_glue_failure': { answer: () => FREEZING.animalGlueFailsAtC === -30 },
  'freeze.failure_case': { answer: () => FREEZING.hasFailed },
  'anoxia.recommended': {
    answer: (row) =>
      number(row, 'O2_percent_max') === OTHER_TREATMENTS.anoxia.oxygenPctAtMost
        ? OTHER_TREATMENTS.anoxia.days.low
        : 'another gas',
    confidence: () => OTHER_TREATMENTS.anoxia.confidence,
  },
  'anoxia.warm': {
    answer: () => ({ min: OTHER_TREATMENTS.warmAnoxia.days.low, max: OTHER_TREATMENTS.warmAnoxia.days.high }),
    confidence: () => OTHER_TREATMENTS.warmAnoxia.confidence,
  },
  'heat.kill': { answer: () => OTHER_TREATMENTS.heat.coreC, confidence: () => OTHER_TREATMENTS.heat.confidence },
  'heat.ispm15': {
    answer: () => ({ T_C: OTHER_TREATMENTS.packagingHeat.coreC, min: OTHER_TREATMENTS.packagingHeat.minutes }),
    confidence: () => OTHER_TREATMENTS.packagingHeat.confidence,
  },
};
