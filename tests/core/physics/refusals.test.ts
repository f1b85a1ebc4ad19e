import { describe, expect, it } from 'vitest';
import * as air from '../../../src/core/physics/air.ts';
import { eggsIn } from '../../../src/core/physics/beetle-dryness.ts';
import * as geometry from '../../../src/core/physics/block-geometry.ts';
import { rankBorers } from '../../../src/core/physics/borer-ranking.ts';
import * as clamps from '../../../src/core/physics/clamps.ts';
import * as colour from '../../../src/core/physics/colour.ts';
import * as crack from '../../../src/core/physics/crack-geometry.ts';
import * as dents from '../../../src/core/physics/dents.ts';
import * as diffusion from '../../../src/core/physics/diffusion.ts';
import * as moisture from '../../../src/core/physics/equilibrium-moisture.ts';
import { erf } from '../../../src/core/physics/erf.ts';
import * as mixing from '../../../src/core/physics/filler-colour.ts';
import * as fillers from '../../../src/core/physics/fillers.ts';
import * as freezing from '../../../src/core/physics/freezing.ts';
import { gluesFor, readyToGlue } from '../../../src/core/physics/glues.ts';
import * as heat from '../../../src/core/physics/heat-flow.ts';
import * as humidifying from '../../../src/core/physics/humidifying.ts';
import * as growth from '../../../src/core/physics/mould-growth.ts';
import * as risk from '../../../src/core/physics/mould-risk.ts';
import * as movement from '../../../src/core/physics/movement.ts';
import * as oval from '../../../src/core/physics/oval.ts';
import * as pins from '../../../src/core/physics/pins.ts';
import * as quarantine from '../../../src/core/physics/quarantine.ts';
import * as sanding from '../../../src/core/physics/sanding.ts';
import * as three from '../../../src/core/physics/three-point.ts';
import * as weighing from '../../../src/core/physics/weighing.ts';
import * as strength from '../../../src/core/physics/wood-strength.ts';
import { WOODS } from '../../../src/core/physics/woods.ts';

const step = { fromMoisturePct: 8, toMoisturePct: 10 };
const wood = WOODS.lime.perPoint;

/** Every function that takes numbers, with one place left open for a bad one. */
const takers: readonly (readonly [string, (bad: number) => unknown])[] = [
  ['saturationPressureHPa', (x) => air.saturationPressureHPa(x)],
  ['dewPointC', (x) => air.dewPointC({ temperatureC: 20, relativeHumidityPct: x })],
  ['airAt', (x) => air.airAt({ temperatureC: 20, relativeHumidityPct: 50 }, x)],
  ['equilibriumMoisturePct', (x) => moisture.equilibriumMoisturePct(20, x)],
  ['equilibriumMoisturePct, temperature', (x) => moisture.equilibriumMoisturePct(x, 50)],
  ['equilibriumMoisturePctFahrenheit', (x) => moisture.equilibriumMoisturePctFahrenheit(x, 50)],
  ['humidityHolding', (x) => moisture.humidityHolding(20, x)],
  ['readMoisture', (x) => moisture.readMoisture({ temperatureC: x, relativeHumidityPct: 50 })],
  ['narrowChangeMm', (x) => movement.narrowChangeMm(x, 0.003, step)],
  ['wideChangeMm', (x) => movement.wideChangeMm(100, x, step)],
  ['widthChange', (x) => movement.widthChange(WOODS.lime, 'radial', 100, { ...step, toMoisturePct: x })],
  ['ovalDrift', (x) => movement.ovalDrift(200, 160, x)],
  ['ovalPerimeterMm', (x) => oval.ovalPerimeterMm(100, x)],
  ['halfAxesOf', (x) => oval.halfAxesOf(570, x)],
  ['shareDone', (x) => diffusion.shareDone('slab', x)],
  ['timeToShare', (x) => diffusion.timeToShare('slab', x)],
  ['daysToShare', (x) => diffusion.daysToShare('slab', x, 0.5)],
  ['paceAt', (x) => diffusion.paceAt(x, 12)],
  ['moistureFromWeighing', (x) => weighing.moistureFromWeighing(1500, 11, x)],
  ['massLossG', (x) => weighing.massLossG(1500, x, 8)],
  ['settling', (x) => weighing.settling(1500, 1500, x)],
  ['radialGapMm', (x) => crack.radialGapMm(x, wood, 4)],
  ['closingPoint', (x) => crack.closingPoint(x, 160, wood, 8, 20)],
  ['closingStrainPct', (x) => crack.closingStrainPct(1, x)],
  ['closingForceN', (x) => crack.closingForceN(x, 1, 100)],
  ['rimStressMpa', (x) => crack.rimStressMpa(300, x, 160)],
  ['humidifyingPlan', (x) => humidifying.humidifyingPlan(45, x)],
  ['rankBorers', (x) => rankBorers({ holeMm: x })],
  ['eggsIn', (x) => eggsIn(x)],
  ['chanceNoneEmerges', (x) => quarantine.chanceNoneEmerges(x, 3)],
  ['chanceNoneEmerges, larvae', (x) => quarantine.chanceNoneEmerges(3, x)],
  ['regimesFor', (x) => freezing.regimesFor(x)],
  ['freezeRoundHours', (x) => freezing.freezeRoundHours('minus30Core', x)],
  ['criticalHumidityPct', (x) => growth.criticalHumidityPct(x)],
  ['weeksToFirstGrowth', (x) => growth.weeksToFirstGrowth({ temperatureC: x, relativeHumidityPct: 90 })],
  ['mouldCeiling', (x) => growth.mouldCeiling({ temperatureC: 20, relativeHumidityPct: x }, 'bareWood')],
  ['mouldAfter', (x) => growth.mouldAfter(growth.NO_MOULD, x, { temperatureC: 20, relativeHumidityPct: 90 })],
  ['mouldWeather', (x) => risk.mouldWeather({ temperatureC: 20, relativeHumidityPct: x })],
  ['storeClimate', (x) => risk.storeClimate(x)],
  ['outbreakSize', (x) => risk.outbreakSize(x)],
  ['mouldRefusals', (x) => risk.mouldRefusals({ probeMm: x })],
  ['temperatureAtDepthC', (x) => heat.temperatureAtDepthC(x, 10)],
  ['heatReachMm', (x) => heat.heatReachMm(x)],
  ['steamReaches', (x) => heat.steamReaches(x)],
  ['coreHours', (x) => heat.coreHours(80, x)],
  ['gluesFor', (x) => gluesFor({ gapMm: x, roomC: 20, nearSteam: false })],
  ['readyToGlue', (x) => readyToGlue(x, 9)],
  ['clampsNeeded', (x) => clamps.clampsNeeded({ pressureMpa: 1, lengthMm: 100, depthMm: 60, clampN: x })],
  ['clampSpacingMm', (x) => clamps.clampSpacingMm(x)],
  ['strapForceN', (x) => clamps.strapForceN(x)],
  ['strapPressureMpa', (x) => clamps.strapPressureMpa(100, x, 60)],
  ['pinWithdrawalN', (x) => pins.pinWithdrawalN(x, 0.9, 10)],
  ['dentOf', (x) => dents.dentOf(x, 1)],
  ['crackVolumeMm3', (x) => dents.crackVolumeMm3(100, x, 10, 'even')],
  ['mixMm3', (x) => fillers.mixMm3(100, x)],
  ['layersFor', (x) => fillers.layersFor(x, 3)],
  ['fillPlan', (x) => fillers.fillPlan('polyester', { volumeMm3: x, depthMm: 2, onPinnedLine: false })],
  ['sizeStepsLost', (x) => sanding.sizeStepsLost(x, 565)],
  ['woodMassG', (x) => strength.woodMassG(x, 0.4, 12)],
  ['densitySpanKgM3', (x) => strength.densitySpanKgM3('lime', x)],
  ['domeAreaCm2', (x) => geometry.domeAreaCm2({ halfLengthMm: x, halfWidthMm: 80, heightMm: 90 })],
  ['domeVolumeCm3', (x) => geometry.domeVolumeCm3({ halfLengthMm: 100, halfWidthMm: 80, heightMm: x })],
  ['slopedBrimCm2', (x) => geometry.slopedBrimCm2(160, x, 30)],
  [
    'flatBrimCm2',
    (x) => geometry.flatBrimCm2({ halfLengthMm: 170, halfWidthMm: 148 }, { halfLengthMm: x, halfWidthMm: 80 }),
  ],
  ['sphericalCrownCm2', (x) => geometry.sphericalCrownCm2(95, x)],
  ['colourDifference', (x) => colour.colourDifference([50, x, 0], [50, 0, 0])],
  ['labOf', (x) => colour.labOf([x, 0, 0])],
  ['channelOf', (x) => colour.channelOf(x)],
  ['matchOf', (x) => colour.matchOf(x)],
  ['absorption', (x) => mixing.absorption(x)],
  ['reflectanceOf', (x) => mixing.reflectanceOf(x)],
  ['mixReflectance', (x) => mixing.mixReflectance(0.6, 0.1, x)],
  ['meanOf', (x) => three.meanOf({ best: 1, likely: x, worst: 3 })],
  ['sumOf', (x) => three.sumOf([{ each: { best: 1, likely: 2, worst: 3 }, count: x }])],
];

describe('numbers that cannot be', () => {
  it.each(takers)('%s refuses what is no number', (_name, take) => {
    expect(() => take(Number.NaN)).toThrow(RangeError);
  });

  it.each(takers)('%s refuses what has no end', (_name, take) => {
    expect(() => take(Number.NEGATIVE_INFINITY)).toThrow(RangeError);
    expect(() => take(Number.POSITIVE_INFINITY)).toThrow(RangeError);
  });

  it('are named, with what was expected instead', () => {
    expect(() => moisture.equilibriumMoisturePct(20, 101)).toThrow('relativeHumidityPct: got 101, expected 0 to 100.');
    expect(() => crack.radialGapMm(160, { radial: 0.003, tangential: 0.002 }, 4)).toThrow(
      /got 0\.002, expected more than the radial 0\.003/,
    );
    expect(() => erf(Number.NaN)).toThrow(RangeError);
  });
});
