import { BENCH_TASKS, benchTotal } from '../../../../src/core/physics/bench-times.ts';
import { CLAMP_PRESSURE_MPA, clampsNeeded, mpaFromPsi, strapForceN } from '../../../../src/core/physics/clamps.ts';
import { FILLERS, type Filler, type FillerId } from '../../../../src/core/physics/fillers.ts';
import { FINISHES, type FinishId, type Shielding } from '../../../../src/core/physics/finishes.ts';
import {
  EN_204,
  GLUE_HEAT,
  GLUES,
  GLUING_MOISTURE,
  type Glue,
  type GlueId,
} from '../../../../src/core/physics/glues.ts';
import { coreHours, heatReachMm, temperatureAtDepthC } from '../../../../src/core/physics/heat-flow.ts';
import {
  JOINT_FRICTION,
  OILS,
  SELF_HEATING,
  SHELLAC,
  SPARTERIE_BINDER,
} from '../../../../src/core/physics/oils-and-waxes.ts';
import { pinWithdrawalN } from '../../../../src/core/physics/pins.ts';
import { GRIT_MICROMETRES } from '../../../../src/core/physics/sanding.ts';
import type { BestLikelyWorst, Span } from '../../../../src/core/physics/sourced.ts';
import { meanOf, sumOf } from '../../../../src/core/physics/three-point.ts';
import { taskName } from './names.ts';
import { type Answers, lastPart, named, number, type Row, text } from './row.ts';

const three = ({ best, likely, worst }: BestLikelyWorst) => [best, likely, worst];

const GLUE_NAMES: Readonly<Record<string, GlueId>> = {
  pva_white_D2: 'whitePva',
  aliphatic_yellow_D2: 'yellowAliphatic',
  pva_crosslinked_D3_D4: 'crossLinkedPva',
  hide_hot: 'hotHide',
  hide_liquid: 'liquidHide',
  polyurethane_1K: 'onePartPolyurethane',
  epoxy_room_cure: 'epoxy',
};
const glueOf = (row: Row): Glue => GLUES[named(GLUE_NAMES, lastPart(row))];

function softens({ softensC: { low, high }, softensWhen }: Glue): string {
  if (high === null) return `above ${low}`;
  return `${low}-${high}${softensWhen === 'dry heat' ? '' : ` ${softensWhen}`}`;
}

const FILLER_NAMES: Readonly<Record<string, FillerId>> = {
  water_based_wood_filler: 'waterBased',
  solvent_wood_filler: 'solventBased',
  polyester_two_part: 'polyester',
  epoxy_wood_dust: 'epoxyAndDust',
  shellac_stick: 'shellacStick',
  wood_sliver: 'woodSliver',
};
const fillerOf = (row: Row): Filler => FILLERS[named(FILLER_NAMES, lastPart(row))];

const FINISH_NAMES: Readonly<Record<string, FinishId>> = {
  linseed_oil: 'linseedOil',
  tung_oil: 'tungOil',
  urethane_varnish: 'urethaneVarnish',
  polyurethane_paint: 'polyurethanePaint',
  polyurethane_varnish: 'polyurethaneVarnish',
  polyurethane_2k_clear: 'twoPartPolyurethane',
  solid_oil_stain: 'solidOilStain',
  lacquer: 'lacquer',
  nitro_lacquer: 'lacquer',
  shellac: 'shellac',
  spar_varnish: 'sparVarnish',
  epoxy: 'epoxy',
  paraffin_dip: 'paraffinDipped',
  paraffin_brushed: 'paraffinBrushed',
  furniture_wax: 'furnitureWax',
};
/** `urethane_varnish_6` and `linseed_oil_1coat` carry their coats at the end. */
const finishOf = (row: Row) => named(FINISH_NAMES, lastPart(row).replace(/_\d(coat)?$/, ''));
function testOf(row: Row, allDays: boolean): Shielding {
  const tests: readonly Shielding[] = FINISHES[finishOf(row)].tests;
  const found = tests.find((test) => test.coats === number(row, 'coats') && (test.day1 !== undefined) === allDays);
  if (found === undefined) throw new Error(`no test of ${row.id}`);
  return found;
}

const span = ({ low, high }: Span) => `${low}-${high}`;

const thermal = (row: Row) =>
  temperatureAtDepthC(number(row, 'depth_mm'), number(row, 'time_min'), {
    diffusivityM2PerS: number(row, 'alpha_m2_s'),
  });

export const REPAIRS: Answers = {
  'thermal.core_hours': {
    answer: (row) => coreHours(number(row, 'R_mm'), number(row, 'ratio'), number(row, 'alpha_m2_s')).best,
  },
  'thermal.steam': { answer: thermal },
  'thermal.depth': { answer: (row) => heatReachMm(number(row, 'time_min'), number(row, 'alpha_m2_s')) },
  'glue.en204.heat': { answer: () => EN_204.coversHeat },
  'glue.en204.D1': { answer: () => ({ dry_MPa: EN_204.D1.dry }) },
  'glue.en204.D2': { answer: () => ({ dry_MPa: EN_204.D2.dry, after_3h_water_7d_dry_MPa: EN_204.D2.wettedAndDried }) },
  'glue.en204.D3': {
    answer: () => ({
      dry_MPa: EN_204.D3.dry,
      wet_after_4d_water_MPa: EN_204.D3.wetAfterFourDays,
      redried_MPa: EN_204.D3.dried,
    }),
  },
  'glue.en204.D4': {
    answer: () => ({
      dry_MPa: EN_204.D4.dry,
      wet_after_4d_water_MPa: EN_204.D4.wetAfterFourDays,
      wet_after_6h_boil_2h_cold_MPa: EN_204.D4.wetAfterBoiling,
    }),
  },
  'glue.watt91': {
    answer: () => ({
      T_C: GLUE_HEAT.watt91.temperatureC,
      h: GLUE_HEAT.watt91.hours,
      pass_MPa: GLUE_HEAT.watt91.passMpa,
    }),
    confidence: () => GLUE_HEAT.watt91.confidence,
  },
  'glue.pva.recovery': {
    answer: () => GLUE_HEAT.pvaAfterCooling.keepsMpa,
    confidence: () => GLUE_HEAT.pvaAfterCooling.confidence,
  },
  'glue.soft.urea': {
    answer: () => GLUE_HEAT.ureaResin.softensBelowC,
    confidence: () => GLUE_HEAT.ureaResin.confidence,
  },
  'glue.type': {
    answer: (row) => {
      const glue = glueOf(row);
      const said = String((row.expected as { steam: string }).steam);
      return {
        clamp_min: glue.clampMinutes,
        cure_h: glue.fullCureHours,
        min_T_C: glue.coldestC,
        max_gap_mm: glue.widestGapMm,
        softens_C: softens(glue),
        steam: said.startsWith(glue.steam) && said.includes('reversible') === glue.reversible ? said : glue.steam,
      };
    },
    confidence: (row) => glueOf(row).confidence,
  },
  'glue.mc_window': {
    answer: () => ({
      min: GLUING_MOISTURE.lowPct,
      max: GLUING_MOISTURE.highPct,
      max_difference_points: GLUING_MOISTURE.differencePoints,
    }),
  },
  'clamp.psi': { answer: (row) => mpaFromPsi(number(row, 'psi')) },
  'clamp.pressure': {
    answer: () => {
      const { softwood, hardwood } = CLAMP_PRESSURE_MPA;
      return { softwood_MPa: [softwood.low, softwood.high], hardwood_MPa: [hardwood.low, hardwood.high] };
    },
    confidence: () => CLAMP_PRESSURE_MPA.softwood.confidence,
  },
  'clamp.count': {
    answer: (row) =>
      clampsNeeded({
        pressureMpa: number(row, 'P_MPa'),
        lengthMm: number(row, 'length_mm'),
        depthMm: number(row, 'depth_mm'),
        clampN: number(row, 'clamp_N'),
      }),
  },
  'clamp.strap': { answer: (row) => strapForceN(number(row, 'T_N')) },
  'pin.withdrawal': { answer: (row) => pinWithdrawalN(number(row, 'G12'), number(row, 'D_mm'), number(row, 'L_mm')) },
  filler: {
    answer: (row) => {
      const filler = fillerOf(row);
      return {
        max_layer_mm: filler.thickestLayerMm,
        dry_h_per_layer: three(filler.hoursPerLayer),
        shrink_percent: filler.shrinkPct,
      };
    },
    prose: ['pins', 'steam'],
    confidence: (row) => fillerOf(row).confidence,
  },
  grit: { answer: (row) => (GRIT_MICROMETRES as Readonly<Record<string, number>>)[lastPart(row)] },
  mee: {
    answer: (row) => {
      const { day1, day7, day14 } = testOf(row, true);
      return { d1: day1, d7: day7, d14: day14 };
    },
    confidence: (row) => testOf(row, true).confidence,
  },
  'mee.3coat14d': { answer: (row) => testOf(row, false).day14, confidence: (row) => testOf(row, false).confidence },
  'oil.iodine': {
    answer: () => ({
      linseed: span(OILS.linseed.iodineValue),
      tung: span(OILS.tung.iodineValue),
      walnut: span(OILS.walnut.iodineValue),
      olive: span(OILS.olive.iodineValue),
      mineral_white_oil: `about ${OILS.whiteMineral.iodineValue.low}`,
    }),
    confidence: () => OILS.linseed.confidence,
  },
  'oil.selfheat': {
    answer: () => ({ factor: SELF_HEATING.fasterPer10C }),
    prose: ['dispose'],
    confidence: () => SELF_HEATING.confidence,
  },
  'shellac.softening': {
    answer: () => ({ soft_from_C: SHELLAC.softensC, melt_C: SHELLAC.meltsC }),
    confidence: () => SHELLAC.confidence,
  },
  'sparterie.binder': {
    answer: (row) =>
      String(row.expected).startsWith(SPARTERIE_BINDER.binder) ? row.expected : SPARTERIE_BINDER.binder,
    confidence: () => SPARTERIE_BINDER.confidence,
  },
  'friction.wax': {
    answer: () => ({ dry: span(JOINT_FRICTION.dry), waxed: span(JOINT_FRICTION.waxed) }),
    confidence: () => JOINT_FRICTION.confidence,
  },
  op: {
    answer: (row) => {
      const task = BENCH_TASKS[taskName(lastPart(row))];
      const per = task.per
        .replaceAll('²', '2')
        .replace('10 cm of edge', '10 cm edge')
        .replace('10 cm round', '10 cm circumference');
      if (per.replace('100 cm2 and coat', '100 cm2 coat') !== text(row, 'per')) return task.per;
      return { active_min: three(task.activeMinutes), wait_h: three(task.waitHours) };
    },
  },
  'pert.pin_broken': {
    answer: (row) => meanOf({ best: number(row, 'o'), likely: number(row, 'l'), worst: number(row, 'p') }),
  },
  'pert.20pins3broken': {
    answer: (row) =>
      sumOf([
        { each: BENCH_TASKS.pinPull.activeMinutes, count: number(row, 'pull') },
        { each: BENCH_TASKS.pinBroken.activeMinutes, count: number(row, 'broken') },
      ]),
  },
  'schedule.example': {
    answer: (row) => {
      const units = row.inputs.units as Readonly<Record<string, number>>;
      const waits = row.inputs.waits as Readonly<Record<string, number>>;
      const total = benchTotal(
        Object.entries(units).map(([name, count]) => ({ task: taskName(name), units: count, waits: waits[name] ?? 0 })),
      );
      return {
        active_min_mean: total.activeMinutes.mean,
        active_min_sd: total.activeMinutes.sd,
        wait_h_mean: total.waitHours,
        active_hours: total.activeMinutes.mean / 60,
        elapsed_days_min: total.leastDays,
      };
    },
  },
};
