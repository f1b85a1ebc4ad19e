import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { catalogue } from '../../src/catalogue/index.ts';
import { closeCrack } from '../../src/core/advice/crack.ts';
import { fillHollow } from '../../src/core/advice/fill.ts';
import { quarantinedOn } from '../../src/core/advice/quarantine.ts';
import { adviceAt, adviceOn } from '../../src/core/advice.ts';
import { climateOf, USUAL_CLIMATE } from '../../src/core/climate.ts';
import { CAUTIONS } from '../../src/core/physics/cautions.ts';
import { WOODS, type WoodId } from '../../src/core/physics/woods.ts';
import rows from '../handbook/materials-checks.json' with { type: 'json' };
import { aBlock, at, id, make } from '../store/make.ts';
import { adviceFor, adviceOf, answerOf, caseOf } from '../support/advice-case.ts';

interface Row {
  readonly id: string;
  readonly inputs: Readonly<Record<string, number | string>>;
  readonly expected: unknown;
  readonly tolerance: number;
  readonly source: string;
  readonly confidence: string;
}
const rowsOf = (prefix: string): readonly Row[] => {
  const found = (rows as unknown as readonly Row[]).filter((row) => row.id.startsWith(prefix));
  if (found.length === 0) throw new Error(`No check row begins with ${prefix}.`);
  return found;
};
const row = (name: string): Row => {
  const [found] = rowsOf(name);
  if (!found) throw new Error(name);
  return found;
};

/** A block 160 mm across, as in the handbook's examples (§1.4), by its tape. */
const ACROSS_160 = { circRopeMm: 160 * Math.PI };

describe('a crack', () => {
  it.each([
    ['basswood1', 1, 'humidifyFirst'],
    ['basswood2', 2, 'insertSliver'],
    ['basswood3', 3, 'insertSliver'],
  ] as const)('of the handbook’s %s: %d mm on 160 mm of limewood or basswood → %s', (name, gapMm, action) => {
    const { expected, tolerance } = row(`crack.rh_to_close.${name}`);
    const { MC_percent, RH_percent } = expected as { MC_percent: number; RH_percent: number };
    const answer = answerOf('closeCrack', {
      kind: 'split',
      answers: { widthMm: gapMm, lengthMm: 100 },
      measures: ACROSS_160,
    });
    expect(answer.wood).toBe('americanBasswood');
    expect(Math.abs((answer.closing?.moisturePct ?? 0) - MC_percent)).toBeLessThan(tolerance);
    const humidity = answer.closing?.humidity;
    expect(humidity?.kind).toBe('found');
    if (humidity?.kind === 'found') expect(Math.abs(humidity.relativeHumidityPct - RH_percent)).toBeLessThan(tolerance);
    const strain = row(`crack.closing_strain.${name}`);
    expect(Math.abs(answer.strainPct - Number(strain.expected))).toBeLessThan(strain.tolerance);
    expect(answer.action).toBe(action);
  });

  it('that would need 67 % is not forced, and says why', () => {
    const { reasons, humidifying, clamps } = answerOf('closeCrack', {
      kind: 'split',
      answers: { widthMm: 2, lengthMm: 100 },
      measures: ACROSS_160,
    });
    expect(reasons.map(({ code }) => code)).toContain('humidity-too-high');
    expect(humidifying).toBeNull();
    expect(clamps).toBeNull();
  });

  it.each(rowsOf('crack.rh_to_close.beech'))('$id: closes where the handbook says, and is never forced', (check) => {
    const { gap_mm, D_mm, T_C, RH_now } = check.inputs;
    const { RH_percent } = check.expected as { RH_percent: number };
    const answer = closeCrack({
      across: 'round',
      gapMm: Number(gap_mm),
      spanMm: Number(D_mm),
      woods: ['americanBeech'],
      room: { temperatureC: Number(T_C), relativeHumidityPct: Number(RH_now) },
      moisturePct: null,
      lengthMm: null,
      depthMm: null,
      holdsPith: true,
      closesByHand: false,
    });
    const humidity = answer.closing?.humidity;
    if (humidity?.kind !== 'found') throw new Error('no humidity');
    expect(Math.abs(humidity.relativeHumidityPct - RH_percent)).toBeLessThan(check.tolerance);
    expect(answer.action).toBe('insertSliver');
  });

  it('reckons with the room that is set: a damper one closes the same gap with less', () => {
    const split = { kind: 'split', answers: { widthMm: 1, lengthMm: 80 }, measures: ACROSS_160 };
    const dry = answerOf('closeCrack', { ...split, settings: { roomHumidityPct: 35 } });
    const damp = answerOf('closeCrack', { ...split, settings: { roomHumidityPct: 55 } });
    expect(dry.moistureNowPct).toBeLessThan(damp.moistureNowPct);
    // One millimetre on 160 mm is two points of moisture whatever the room: from 35 % that stays under the ceiling, from 55 % it does not.
    expect(dry.action).toBe('humidifyFirst');
    expect(damp.action).toBe('insertSliver');
  });

  it('takes the meter’s moisture before the room’s, and the meter is then no assumption', () => {
    const told = { kind: 'split', answers: { widthMm: 1, lengthMm: 80 } };
    const guessed = adviceOf('closeCrack', { ...told, measures: ACROSS_160 });
    const metered = adviceOf('closeCrack', { ...told, measures: { ...ACROSS_160, moisturePct: 12 } });
    expect(guessed.assumed.map(({ code }) => code)).toEqual(expect.arrayContaining(['moisture', 'room']));
    expect(metered.assumed.map(({ code }) => code)).not.toContain('moisture');
    expect(metered.answer?.moistureNowPct).toBe(12);
  });

  it('damps by five points a week at most and stops where it closes, below 65 %', () => {
    const { humidifying, closing } = answerOf('closeCrack', {
      kind: 'split',
      answers: { widthMm: 1, lengthMm: 80 },
      measures: ACROSS_160,
    });
    if (humidifying?.kind !== 'steps' || closing?.humidity.kind !== 'found') throw new Error('no steps');
    const { pointsPerWeek, ceiling } = { pointsPerWeek: 5, ceiling: 65 };
    const target = closing.humidity.relativeHumidityPct;
    const climb = [45, ...humidifying.steps.map(({ relativeHumidityPct }) => relativeHumidityPct)];
    for (const [index, humidity] of climb.entries()) {
      if (index > 0) expect(humidity - (climb[index - 1] ?? 0)).toBeLessThanOrEqual(pointsPerWeek + 1e-9);
    }
    expect(climb.at(-1)).toBeCloseTo(target, 9);
    expect(target).toBeLessThan(ceiling);
  });

  it('of a few tenths is glued, with clamps for an old crack’s faces', () => {
    const advice = adviceOf('closeCrack', {
      kind: 'check',
      answers: { widthMm: 0.5, depthMm: 60, lengthMm: 100 },
      measures: { circRopeMm: 570 },
    });
    // 0.3 and 0.7 MPa over 100 × 60 mm are 1800 and 4200 N: two to five clamps of 1000 N (0.7 MPa with 2000 N: the handbook's three).
    expect(advice.answer?.action).toBe('glueAndClamp');
    expect(advice.answer?.clamps).toMatchObject({ low: 2, high: 5, newton: 1000, faceDepthMm: 60 });
    expect(advice.assumed.map(({ code }) => code)).toContain('clamp');
  });

  it('that closes under the hand is glued even where the sum would not', () => {
    const told = { kind: 'split', answers: { widthMm: 2, lengthMm: 100 }, measures: ACROSS_160 };
    const byHand = answerOf('closeCrack', { ...told, answers: { ...told.answers, closesByHand: true } });
    expect(answerOf('closeCrack', told).action).toBe('insertSliver');
    expect(byHand.action).toBe('glueAndClamp');
    expect(byHand.reasons.map(({ code }) => code)).toContain('closes-by-hand');
  });

  it('says when the wood was not named, and takes the usual one', () => {
    const advice = adviceOf('closeCrack', {
      kind: 'split',
      answers: { widthMm: 1, lengthMm: 80 },
      measures: ACROSS_160,
      block: { materials: [] },
    });
    expect(advice.assumed).toContainEqual({ code: 'wood', woods: ['lime', 'americanBasswood'] });
    expect(advice.answer?.wood).toBe('americanBasswood');
  });

  it('says when the block was not measured, and takes a usual head of 570 mm', () => {
    const advice = adviceOf('closeCrack', { kind: 'split', answers: { widthMm: 1, lengthMm: 80 } });
    const diameter = advice.assumed.find(({ code }) => code === 'diameter');
    expect(diameter).toMatchObject({ mm: expect.closeTo(570 / Math.PI, 6) });
    expect(advice.answer?.question.spanMm).toBeCloseTo(181.437, 3);
  });

  it('of a wood without figures is decided by its strain alone, on the careful side', () => {
    const told = { kind: 'split', measures: ACROSS_160, block: { materials: ['sapele'] } };
    const narrow = answerOf('closeCrack', { ...told, answers: { widthMm: 0.5, lengthMm: 80 } });
    const wide = answerOf('closeCrack', { ...told, answers: { widthMm: 1, lengthMm: 80 } });
    expect(narrow).toMatchObject({ action: 'glueAndClamp', wood: null, closing: null });
    // 1 mm on 160 mm would be damped first if anybody knew at which humidity; nobody does.
    expect(wide.action).toBe('insertSliver');
    expect(wide.reasons.map(({ code }) => code)).toContain('wood-without-figures');
  });

  it('between boards closes by the swelling of the boards', () => {
    const { closing, wood, strainPct, action, reasons } = answerOf('closeCrack', {
      kind: 'openGlueLine',
      answers: { gapMm: 0.8, lengthMm: 170, pctOfLine: 40 },
      zone: 'glueLine',
      block: { blockType: 'cartwheelBrim', materials: ['poplar'] },
      measures: { overallWidthMm: 455 },
    });
    // Wood Handbook eq. 13-2 by hand: 455 mm × C_T × ΔM = 0.8 mm, from 8.485 % (20 °C, 45 %: handbook §1.1).
    if (!wood) throw new Error('no wood');
    const points = (closing?.moisturePct ?? 0) - 8.485;
    expect(455 * WOODS[wood].perPoint.tangential * points).toBeCloseTo(0.8, 2);
    expect(strainPct).toBeCloseTo((100 * 0.8) / 455, 6);
    expect(action).toBe('humidifyFirst');
    expect(reasons.map(({ code }) => code)).toEqual(['strain-bearable', 'humidity-reachable', 'wood-varies']);
  });

  it('has nothing to say while nobody has measured the gap, and asks for it', () => {
    const advice = adviceOf('closeCrack', { kind: 'split', gradeByHand: 3 });
    expect(advice).toMatchObject({ answer: null, needs: [{ ask: 'widthMm' }] });
  });

  it('warns of damp in tight clamps exactly when it is damped', () => {
    for (const [widthMm, action] of [
      [0.3, 'glueAndClamp'],
      [1, 'humidifyFirst'],
      [4, 'insertSliver'],
    ] as const) {
      const { answer, cautions } = adviceOf('closeCrack', {
        kind: 'split',
        answers: { widthMm, lengthMm: 80 },
        measures: ACROSS_160,
      });
      expect(answer?.action).toBe(action);
      expect(cautions.includes('looseWhileDamp')).toBe(action === 'humidifyFirst');
      expect(cautions.includes('doNotForce')).toBe(action === 'insertSliver');
    }
  });

  it('wider never gets the bolder advice, in any wood', () => {
    const care = ['glueAndClamp', 'humidifyFirst', 'insertSliver'];
    fc.assert(
      fc.property(
        fc.constantFrom(...(Object.keys(WOODS) as WoodId[])),
        fc.double({ min: 0, max: 10, noNaN: true }),
        fc.double({ min: 0, max: 5, noNaN: true }),
        fc.constantFrom('round' as const, 'board' as const),
        (wood, gapMm, more, across) => {
          const at = (gap: number): number =>
            care.indexOf(
              closeCrack({
                across,
                gapMm: gap,
                spanMm: 180,
                woods: [wood],
                room: USUAL_CLIMATE.room,
                moisturePct: null,
                lengthMm: 80,
                depthMm: null,
                holdsPith: true,
                closesByHand: false,
              }).action,
            );
          expect(at(gapMm + more)).toBeGreaterThanOrEqual(at(gapMm));
        },
      ),
      { numRuns: 200 },
    );
  });
});

describe('a filling', () => {
  it('counts layers and drying for each filler: the handbook’s 7 mm in three layers of 3 mm', () => {
    const { depth_mm } = row('geom.layers').inputs;
    const { fillers } = fillHollow({
      size: { hollow: 'bowl', areaCm2: 4, depthMm: Number(depth_mm) },
      onPinnedLine: false,
      moving: false,
    });
    const water = fillers.find(({ filler }) => filler === 'waterBased');
    expect(water?.plan.layers).toBe(row('geom.layers').expected);
    // Handbook §4.4: 1, 4 and 24 hours a layer.
    expect(water?.plan.waitHours).toEqual({ best: 3, likely: 12, worst: 72 });
  });

  it('takes a crack as a wedge between a sixth and a half of length, mouth and depth', () => {
    // Handbook §5: 100 × 2 × 40 mm → 4000, 2000, 1333 mm³.
    const { volumeMm3 } = answerOf('fill', {
      kind: 'check',
      answers: { widthMm: 2, depthMm: 40, lengthMm: 100 },
    });
    expect(volumeMm3.high).toBeCloseTo(4000, 6);
    expect(volumeMm3.likely).toBeCloseTo(2000, 6);
    expect(volumeMm3.low).toBeCloseTo(1333.33, 2);
  });

  it('takes a dent as the cap of a ball, times its number', () => {
    const cap = row('geom.cap.20x3');
    const { volumeMm3 } = answerOf('fill', { kind: 'dent', answers: { diaMm: 20, depthMm: 3, count: 2 } });
    expect(volumeMm3.likely).toBeCloseTo(2 * Number((cap.expected as { V_mm3: number }).V_mm3), 0);
  });

  it('takes a loss for more than a bowl and less than a box of its area and depth', () => {
    // 4 cm² × 3 mm is 1200 mm³ with upright walls; a paraboloid bowl holds half of its box.
    const { volumeMm3 } = answerOf('fill', { kind: 'loss', answers: { areaCm2: 4, depthMm: 3 } });
    expect(volumeMm3).toEqual({ low: 600, likely: 900, high: 1200 });
  });

  it('puts wood first where pins go in, and names what speaks against paste', () => {
    const told = { kind: 'check', answers: { widthMm: 2, depthMm: 12, lengthMm: 80 } };
    const { fillers } = answerOf('fill', { ...told, zone: 'ropeLine' });
    expect(fillers[0]?.filler).not.toBe('waterBased');
    expect(fillers.find(({ filler }) => filler === 'waterBased')?.objections).toContain('pins');
    expect(fillers.find(({ filler }) => filler === 'woodSliver')?.objections).not.toContain('pins');
    expect(fillers.find(({ filler }) => filler === 'waterBased')?.plan.rather).toBe('woodSliver');
  });

  it('is offered only where a filler would go in: not into sparterie, not into a trace', () => {
    const sums = (told: Parameters<typeof adviceFor>[0]) => adviceFor(told).map(({ does }) => does);
    expect(sums({ kind: 'dent', answers: { diaMm: 10, depthMm: 0.5 } })).not.toContain('fill');
    // Steam lifts a shallow dent before any filler.
    expect(sums({ kind: 'dent', answers: { diaMm: 10, depthMm: 1.5 } })).not.toContain('fill');
    expect(sums({ kind: 'dent', answers: { diaMm: 10, depthMm: 3 } })).toContain('fill');
    expect(
      sums({ kind: 'scorch', answers: { areaCm2: 9, depthMm: 3 }, block: { materials: ['sparterie'] } }),
    ).not.toContain('fill');
  });

  it('carries the cautions of every filler it names', () => {
    const { cautions } = adviceOf('fill', { kind: 'loss', answers: { areaCm2: 4, depthMm: 3 } });
    for (const id of ['epoxy', 'polyesterFiller', 'solvents', 'hardwoodDust']) expect(cautions).toContain(id);
  });
});

describe('holes', () => {
  it('ask for the pinning line before anything else, and rank suspects all the same', () => {
    const advice = adviceOf('rankBorers', { kind: 'flightHoles', answers: { diaMm: 1.5 } });
    expect(advice.answer?.askPinningLineFirst).toBe(true);
    expect(advice.needs[0]).toEqual({ ask: 'pinningLine' });
    expect(advice.answer?.ranking.ranked.length).toBeGreaterThan(1);
  });

  it('in a row along it are rather pins; scattered with gritty dust rather furniture beetle', () => {
    const rowed = answerOf('rankBorers', { kind: 'flightHoles', answers: { diaMm: 1.2, pinningLine: 'yes' } });
    expect(rowed.looksLikePins).toBe(true);
    const scattered = answerOf('rankBorers', {
      kind: 'flightHoles',
      answers: { diaMm: 1.5, pinningLine: 'no', dust: 'gritty' },
    });
    expect(scattered.looksLikePins).toBe(false);
    expect(scattered.ranking.ranked[0]?.suspect).toBe('furnitureBeetle');
  });

  it('in pine may be longhorn, in lime not: the wood of the block is a clue', () => {
    const answers = { diaMm: 8, pinningLine: 'no' };
    const share = (material: string): number =>
      answerOf('rankBorers', { kind: 'flightHoles', answers, block: { materials: [material] } }).ranking.ranked.find(
        ({ suspect }) => suspect === 'houseLonghorn',
      )?.share ?? 0;
    expect(share('pine')).toBeGreaterThan(share('lime'));
    expect(answerOf('rankBorers', { kind: 'flightHoles', answers, block: { materials: [] } }).clues.wood).toBe(
      undefined,
    );
  });
});

describe('quarantine', () => {
  it.each(rowsOf('quarantine.end.'))('$id ends on $expected', ({ inputs, expected }) => {
    const hemisphere = inputs.hemisphere === 'south' ? 'south' : 'north';
    const answer = answerOf('quarantine', {
      kind: 'flightHoles',
      today: String(inputs.arrival),
      settings: { hemisphere },
    });
    expect(answer.plan.endsOn).toBe(expected);
    expect(answer.checksAhead.at(-1)).toBe(expected);
  });

  it('is honest about one quiet summer: three larvae stay inside 3 times in 10, eight 1 in 25', () => {
    const { missed, borer } = answerOf('quarantine', { kind: 'flightHoles', answers: { diaMm: 1.5, dust: 'gritty' } });
    expect(borer).toBe('furnitureBeetle');
    for (const [index, name] of ['insect.miss.3y.3', 'insect.miss.3y.8'].entries()) {
      const { expected, tolerance, inputs } = row(name);
      expect(missed[index]?.larvae).toBe(inputs.larvae);
      expect(Math.abs((missed[index]?.likely ?? 0) - Number(expected))).toBeLessThan(tolerance);
    }
    for (const { low, likely, high } of missed) {
      expect(low).toBeLessThan(likely);
      expect(likely).toBeLessThan(high);
    }
  });

  it('runs from the day the block was put there, not from today', () => {
    const put = aBlock({ place: 'quarantine', stamp: at(0) });
    expect(quarantinedOn(put, '2026-10-17')).toBe('2026-01-01');
    expect(quarantinedOn(put, '2025-12-31')).toBe('2025-12-31');
    expect(quarantinedOn(aBlock({ place: 'onTheBench' }), '2026-10-17')).toBeNull();
    const told = { kind: 'flightHoles', block: { place: 'quarantine' as const } };
    const answer = answerOf('quarantine', told);
    expect(answer.plan.startedOn).toBe('2026-01-01');
    expect(answer.plan.endsOn).toBe('2027-01-01');
    expect(answer.checksAhead.every((date) => date >= '2026-10-17')).toBe(true);
    expect(adviceOf('quarantine', told).assumed.map(({ code }) => code)).not.toContain('arrival');
  });

  it('says which half of the globe it took for granted, until somebody has chosen one', () => {
    const codes = (settings: object) =>
      adviceOf('quarantine', { kind: 'flightHoles', settings }).assumed.map(({ code }) => code);
    expect(codes({})).toContain('hemisphere');
    expect(codes({ hemisphere: 'south' })).not.toContain('hemisphere');
  });
});

describe('mould', () => {
  it('grows on bare wood above 80 % at 20 °C, and not in the usual room', () => {
    const answer = answerOf('mouldRisk', { kind: 'mould', answers: { areaPct: 20 } });
    expect(answer.growsAbovePct).toBeCloseTo(80.04, 2);
    expect(answer.weather).toEqual({ kind: 'no-risk', because: 'dry' });
    const damp = answerOf('mouldRisk', { kind: 'mould', settings: { roomHumidityPct: 90 } });
    expect(damp.weather).toEqual({ kind: 'grows', weeksToFirstGrowth: expect.closeTo(4.202, 2) });
  });

  it('on one block is always a small outbreak, reckoned from its measures', () => {
    const advice = adviceOf('mouldRisk', {
      kind: 'mould',
      answers: { areaPct: 100 },
      measures: { lengthMm: 200, widthMm: 160, depthFrontMm: 130 },
    });
    expect(advice.answer?.outbreak?.size).toBe('small');
    // Half an ellipsoid 100, 80, 130 with its base 251 cm²: under a tenth of a square metre.
    expect(advice.answer?.outbreak?.visibleM2).toBeGreaterThan(0.08);
    expect(advice.answer?.outbreak?.visibleM2).toBeLessThan(0.1);
    expect(advice.assumed.map(({ code }) => code)).not.toContain('surface');
  });

  it('over more than half of something built of thin layers says to leave it; of solid wood not', () => {
    const told = { kind: 'mould', answers: { areaPct: 60 } };
    const codes = (material: string) =>
      answerOf('mouldRisk', { ...told, block: { materials: [material] } }).refuseBecause.map(({ code }) => code);
    expect(codes('plywood')).toContain('too-far-through-thin-layers');
    expect(codes('sparterie')).toContain('too-far-through-thin-layers');
    expect(codes('lime')).toEqual([]);
  });

  it('wants FFP2 at least, and FFP3 where growth is heavy', () => {
    const mask = (areaPct: number) => answerOf('mouldRisk', { kind: 'mould', answers: { areaPct } }).mask;
    expect([mask(5), mask(30)]).toEqual(['ffp2', 'ffp3']);
  });

  it('never ends the list of reasons nobody looked into by answering them itself', () => {
    const { refuseAlsoIf } = answerOf('mouldRisk', { kind: 'mould', answers: { areaPct: 5 } });
    expect(refuseAlsoIf).toEqual(['rot-not-mould', 'smell-stays', 'perhaps-pesticide', 'buyer-at-risk']);
  });

  it('reads wood at 18 % as damp as mould country', () => {
    const { asDampAs } = answerOf('mouldRisk', { kind: 'mould', answers: { areaPct: 5, moisturePct: 18 } });
    // Handbook §1.1, 20 °C: 16 % ↔ 79.9 %; the table's 80 % row holds 16.0 and its 90 % row 20.6.
    expect(asDampAs?.kind === 'found' && asDampAs.relativeHumidityPct).toBeGreaterThan(80);
    expect(asDampAs?.kind === 'found' && asDampAs.relativeHumidityPct).toBeLessThan(90);
  });
});

describe('the scale', () => {
  const measures = { lengthMm: 200, widthMm: 164, depthFrontMm: 130, depthBackMm: 130 };

  it('calls a crown of half its weight eaten, and one of its weight sound', () => {
    // ⅔·π·100·82·130 mm = 2233 cm³; lime of 415 to 560 kg/m³ weighs 927 to 1250 g.
    const at = (weightG: number) =>
      answerOf('weigh', { kind: 'tunnelled', measures: { ...measures, weightG }, gradeByHand: 2 }).reading;
    expect(at(500).verdict).toBe('eaten');
    expect(at(1090).verdict).toBe('as-expected');
    expect(at(1090).expectedG.low).toBeCloseTo(927, 0);
    expect(at(1090).expectedG.high).toBeCloseTo(1250, 0);
  });

  it('asks for what was not measured, and says nothing till then', () => {
    expect(adviceOf('weigh', { kind: 'flightHoles' })).toMatchObject({
      answer: null,
      needs: [{ measure: 'weightG' }, { measure: 'lengthMm' }, { measure: 'widthMm' }, { measure: 'depthFrontMm' }],
    });
  });

  it('is not put under a brim or a shell', () => {
    const sums = (block: object) => adviceFor({ kind: 'flightHoles', block }).map(({ does }) => does);
    expect(sums({})).toContain('weigh');
    expect(sums({ blockType: 'flatBrim' })).not.toContain('weigh');
    expect(sums({ materials: ['papierMache'] })).not.toContain('weigh');
  });
});

describe('advice', () => {
  it('stands at the step it belongs to, and nowhere else', () => {
    const { facts, plan } = caseOf({
      kind: 'check',
      answers: { widthMm: 2, depthMm: 12, lengthMm: 80 },
      measures: ACROSS_160,
    });
    const bySteps = new Map(
      plan.steps.map((step) => [step.treatment, adviceAt(step, facts, catalogue).map(({ does }) => does)]),
    );
    expect(bySteps.get('fillCheck')).toEqual(['closeCrack', 'fill']);
    expect([...bySteps].filter(([, sums]) => sums.length > 0).map(([treatment]) => treatment)).toEqual(['fillCheck']);
  });

  it('is there for flight holes at quarantine, ranking before waiting', () => {
    const { facts, plan } = caseOf({ kind: 'flightHoles', answers: { diaMm: 1.5 } });
    const step = plan.steps.find(({ treatment }) => treatment === 'quarantine');
    expect(step && adviceAt(step, facts, catalogue).map(({ does }) => does)).toEqual(['rankBorers', 'quarantine']);
  });

  it('is silent on a kind a newer catalogue brought', () => {
    const { facts } = caseOf({ kind: 'split' });
    expect(adviceOn(id(99), facts, catalogue)).toEqual([]);
  });

  it('never throws and never invents a number, whatever a backup brings', () => {
    const kinds = Object.keys(catalogue.damage).filter((kind) => catalogue.damage[kind]?.physics);
    const number = fc.oneof(fc.double({ min: -1e4, max: 1e4, noNaN: true }), fc.integer({ min: 0, max: 30 }));
    const wild = fc.oneof(
      number,
      fc.constantFrom<number | boolean | string>(-1, 0, true, false, 'yes', 'gritty', 'nonsense'),
    );
    const numbersIn = (value: unknown): readonly number[] =>
      typeof value === 'number'
        ? [value]
        : typeof value === 'object' && value !== null
          ? Object.values(value).flatMap(numbersIn)
          : [];
    fc.assert(
      fc.property(
        fc.constantFrom(...kinds),
        fc.array(wild, { minLength: 8, maxLength: 8 }),
        fc.array(number, { minLength: 8, maxLength: 8 }),
        fc.constantFrom(...Object.keys(catalogue.materials)),
        fc.constantFrom(...Object.keys(catalogue.types)),
        fc.constantFrom<0 | 1 | 2 | 3 | 4 | null>(null, 0, 1, 2, 3, 4),
        (kind, answers, measured, material, blockType, gradeByHand) => {
          const asks = catalogue.damage[kind]?.asks ?? [];
          const advice = adviceFor({
            kind,
            answers: Object.fromEntries(asks.map((ask, index) => [ask.id, answers[index % 8] ?? 0])),
            measures: Object.fromEntries(
              [
                'circRopeMm',
                'lengthMm',
                'widthMm',
                'depthFrontMm',
                'weightG',
                'moisturePct',
                'overallWidthMm',
                'overallLengthMm',
              ].map((measure, index) => [measure, measured[index] ?? 0]),
            ),
            block: { materials: [material], blockType },
            gradeByHand,
          });
          for (const each of advice) {
            for (const caution of each.cautions) expect(CAUTIONS).toHaveProperty(caution);
            if (each.answer) expect(each.sources.length).toBeGreaterThan(0);
            expect(numbersIn(each).filter((number) => !Number.isFinite(number))).toEqual([]);
          }
        },
      ),
      { numRuns: 300 },
    );
  });
});

describe('the climate', () => {
  it('of settings written before it could be set is the usual one, and says so', () => {
    const { roomTemperatureC, roomHumidityPct, hemisphere, ...old } = make('settings', {});
    expect([roomTemperatureC, roomHumidityPct, hemisphere]).toEqual([20, 45, 'north']);
    expect(climateOf(old)).toEqual({ ...USUAL_CLIMATE, assumed: ['room', 'hemisphere'] });
  });

  it('that was chosen is not assumed, even where it is the usual one', () => {
    const settings = make('settings', { hemisphere: 'south', roomHumidityPct: 55 });
    expect(climateOf(settings)).toMatchObject({
      room: { temperatureC: 20, relativeHumidityPct: 55 },
      hemisphere: 'south',
      assumed: [],
    });
  });
});
