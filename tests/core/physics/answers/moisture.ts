import { airAt } from '../../../../src/core/physics/air.ts';
import {
  type Body,
  daysToShare,
  MEASURED_DIFFUSION,
  paceAt,
  timeToShare,
} from '../../../../src/core/physics/diffusion.ts';
import {
  DRYING_ABOVE_WETTING_POINTS,
  EMC_COEFFICIENTS,
  EMC_TABLE_SPAN,
  equilibriumMoisturePct,
  equilibriumMoisturePctFahrenheit,
  humidityHolding,
} from '../../../../src/core/physics/equilibrium-moisture.ts';
import { massLossG, moistureFromWeighing } from '../../../../src/core/physics/weighing.ts';
import { type Answers, number, numbers, type Row, text } from './row.ts';

const celsius = (fahrenheit: number) => ((fahrenheit - 32) * 5) / 9;
const body = (row: Row) => text(row, 'shape') as Body;

function widestGapBetweenForms(): number {
  let widest = 0;
  for (let t = 30; t <= 140; t++)
    for (let rh = 1; rh <= 99; rh++)
      widest = Math.max(
        widest,
        Math.abs(equilibriumMoisturePct(celsius(t), rh) - equilibriumMoisturePctFahrenheit(t, rh)),
      );
  return widest;
}

const afterWarming = (row: Row) =>
  airAt({ temperatureC: number(row, 'T1_C'), relativeHumidityPct: number(row, 'RH1') }, number(row, 'T2_C'))
    .relativeHumidityPct;

export const MOISTURE: Answers = {
  'emc.coeff.celsius': { answer: () => EMC_COEFFICIENTS.celsius },
  'emc.coeff.fahrenheit': { answer: () => EMC_COEFFICIENTS.fahrenheit },
  'emc.range': {
    answer: () => ({
      T_min_C: EMC_TABLE_SPAN.lowestC,
      T_max_C: EMC_TABLE_SPAN.highestC,
      RH_min: EMC_TABLE_SPAN.driestPct,
      RH_max: EMC_TABLE_SPAN.dampestPct,
    }),
  },
  'emc.table42': {
    answer: (row) => equilibriumMoisturePctFahrenheit(number(row, 'T_F'), number(row, 'RH_percent')),
  },
  'emc.table42.matrix': {
    answer: (row) =>
      numbers(row, 'rows_F').map((t) => [
        String(t),
        ...numbers(row, 'cols_RH').map((rh) => equilibriumMoisturePct(celsius(t), rh)),
      ]),
  },
  'emc.eq': { answer: (row) => equilibriumMoisturePct(number(row, 'T_C'), number(row, 'RH_percent')) },
  'emc.hot_car': { answer: (row) => equilibriumMoisturePct(number(row, 'T_C'), number(row, 'RH_percent')) },
  'emc.cf_agreement': { answer: widestGapBetweenForms },
  'emc.inverse': {
    answer: (row) => {
      const held = humidityHolding(number(row, 'T_C'), number(row, 'MC_percent'));
      return held.kind === 'found' ? held.relativeHumidityPct : held.kind;
    },
  },
  'emc.hysteresis': {
    answer: () => ({ min: DRYING_ABOVE_WETTING_POINTS.low, max: DRYING_ABOVE_WETTING_POINTS.high }),
  },
  'rh.heated': { answer: afterWarming },
  'mass.mc': {
    answer: (row) => moistureFromWeighing(number(row, 'm1_g'), number(row, 'M1_percent'), number(row, 'm2_g')),
  },
  'mass.loss': {
    answer: (row) => massLossG(number(row, 'm1_g'), number(row, 'M1_percent'), number(row, 'M2_percent')),
  },
  'diffusion.const': {
    answer: (row) => ({ t50: timeToShare(body(row), 0.5), t90: timeToShare(body(row), 0.9) }),
  },
  'diffusion.days': {
    answer: (row) => {
      const days = (share: number) =>
        daysToShare(body(row), number(row, 'L_mm'), share, number(row, 'D_m2_s')).likelyDays;
      return { t50_d: days(0.5), t90_d: days(0.9) };
    },
  },
  'diffusion.D.spruce': {
    answer: () => {
      const { radialM2PerS, tangentialM2PerS, longitudinalM2PerS } = MEASURED_DIFFUSION.spruce;
      return { radial: radialM2PerS, tangential: tangentialM2PerS, longitudinal: longitudinalM2PerS };
    },
    confidence: () => MEASURED_DIFFUSION.spruce.confidence,
  },
  'diffusion.D.beech_ratio': {
    answer: () => ({
      slower_min: MEASURED_DIFFUSION.beech.slowerThanSpruce.low,
      slower_max: MEASURED_DIFFUSION.beech.slowerThanSpruce.high,
      longitudinal_up_to: MEASURED_DIFFUSION.beech.alongOverAcrossUpTo,
    }),
    confidence: () => MEASURED_DIFFUSION.beech.confidence,
  },
  'diffusion.temp': { answer: (row) => paceAt(number(row, 'T2_C'), number(row, 'T1_C')) },
  'diffusion.observed.panel10': {
    answer: () => MEASURED_DIFFUSION.panelOpenOnOneFace.halfwayDays,
    confidence: () => MEASURED_DIFFUSION.panelOpenOnOneFace.confidence,
  },
  'diffusion.observed.cracklag': {
    answer: () => MEASURED_DIFFUSION.openCrackBehindRoom.lagHours,
    confidence: () => MEASURED_DIFFUSION.openCrackBehindRoom.confidence,
  },
};
