import { describe, expect, it } from 'vitest';
import { catalogue } from '../../src/catalogue/index.ts';
import { type Assessment, assess, type Case } from '../../src/core/assess.ts';
import { aBlock, aCase, aFinding, aSurvey, caseOfLot, everythingLookedAt, someSettings, someTerms } from '../make.ts';

// What the assessment by the book claims, one at a time. Rules: trade handbook §1.6–1.8 and 3.1 (own model, from memory).

const by = (facts: Partial<Case> = {}): Assessment => assess(aCase(facts), catalogue);

/** A crown whose every kind was looked for, with these findings. */
function looked(findings: Case['findings'], block = aBlock(), more: Partial<Case> = {}): Assessment {
  return by({ block, findings, survey: everythingLookedAt(block, findings), ...more });
}

const stateOf = ({ kinds }: Assessment, id: string) => kinds.find(({ kind }) => kind === id)?.state;

describe('unknown is not none', () => {
  it('a kind is not looked for, looked for and not seen, or found', () => {
    const answer = by({ survey: aSurvey({ noneSeen: { mould: true } }), findings: [aFinding()] });
    expect(stateOf(answer, 'mould')).toBe('noneSeen');
    expect(stateOf(answer, 'check')).toBe('found');
    expect(stateOf(answer, 'flightHoles')).toBe('notLooked');
  });

  it('a finding counts even where the survey says none was seen', () => {
    const answer = by({ survey: aSurvey({ noneSeen: { check: true } }), findings: [aFinding()] });
    expect(stateOf(answer, 'check')).toBe('found');
  });

  it('speaks of no kind that the block cannot have', () => {
    const metal = by({ block: aBlock({ blockType: 'pressingPan', materials: ['aluminium'] }) });
    expect(stateOf(metal, 'flightHoles')).toBeUndefined();
    expect(stateOf(metal, 'corrosion')).toBe('notLooked');
    expect(stateOf(by(), 'keyTrouble')).toBeUndefined();
    const puzzle = aBlock({ blockType: 'puzzle', partsFound: 5, partsExpected: 5 });
    expect(stateOf(by({ block: puzzle }), 'keyTrouble')).toBe('notLooked');
  });

  it('two essentials not looked at make any block risky, one does not', () => {
    const done = everythingLookedAt(aBlock(), []);
    const { nose, under, ...stations } = done.stationsDone;
    const { flightHoles, stemHoleWorn, ...noneSeen } = done.noneSeen;
    expect([nose, under, flightHoles, stemHoleWorn]).not.toContain(undefined);
    const two = by({ survey: { ...done, stationsDone: stations, noneSeen } });
    expect(two.unknownEssentials).toEqual(['baseSeen', 'insectCheck']);
    expect(two.verdict).toBe('risky');
    const one = by({ survey: { ...done, stationsDone: { ...stations, under: true }, noneSeen } });
    expect(one.unknownEssentials).toEqual(['insectCheck']);
    expect(one.verdict).toBe('sound');
  });

  it('asks about insects only where there is food for them', () => {
    const pan = aBlock({ blockType: 'pressingPan', materials: ['aluminium'] });
    expect(by({ block: pan }).unknownEssentials).not.toContain('insectCheck');
    expect(by({ block: aBlock({ materials: [] }) }).unknownEssentials).toContain('insectCheck');
  });
});

describe('grades', () => {
  it('set by hand stand, and the working keeps what the measures would have said', () => {
    const [graded] = looked([aFinding({ gradeByHand: 3 })]).graded;
    expect(graded).toMatchObject({ grade: 3, byHand: true, working: { grade: 2 } });
  });

  it('a finding nobody measured is a trace: somebody saw it', () => {
    const [graded] = looked([aFinding({ kind: 'loss', zone: 'tip', answers: {} })]).graded;
    expect(graded).toMatchObject({ grade: 1, working: { unmeasured: true } });
  });

  it('the worst single grade stands beside the score', () => {
    expect(looked([]).worstGrade).toBe(0);
    expect(looked([aFinding(), aFinding({ number: 2, gradeByHand: 4 })]).worstGrade).toBe(4);
  });

  it('a groove that was never made is recorded, and costs nothing', () => {
    const answers = { pctCirc: 80, depthLostMm: 2, notMade: true };
    const answer = looked([aFinding({ kind: 'wornGroove', zone: 'ropeLine', answers })]);
    expect(answer.graded[0]).toMatchObject({ grade: 0, loss: { points: 0 } });
    expect(answer.found).toBe(100);
    expect(answer.verdict).toBe('sound');
  });

  it('a label at risk costs no score, no odds, and no verdict', () => {
    const answer = looked([aFinding({ kind: 'markAtRisk', zone: 'base', answers: { risk: 4 } })]);
    expect(answer).toMatchObject({ found: 100, after: 100, odds: 1, verdict: 'sound' });
  });

  it('keeps a finding of a kind it does not know, in order, and scores the rest', () => {
    const strange = aFinding({ number: 2, kind: 'fromANewerApp', zone: 'onTheMoon' });
    const answer = looked([aFinding({ number: 3 }), strange, aFinding({ number: 1 })]);
    expect(answer.unscored).toEqual([strange]);
    expect(answer.graded.map(({ finding }) => finding.number)).toEqual([1, 3]);
  });
});

describe('gates', () => {
  const holes = (activity: string, grade = 2) =>
    aFinding({
      kind: 'flightHoles',
      zone: 'base',
      answers: { activity, densityPerDm2: grade === 1 ? 1 : 4, probeDepthMm: 0 },
    });

  it('live worm is bagged at the stall and never better than risky, however few the holes', () => {
    const answer = looked([holes('active', 1)]);
    expect(answer.gates[0]?.effects).toEqual(expect.arrayContaining(['quarantine', 'live']));
    expect(answer.graded[0]?.grade).toBe(3);
    expect(answer.verdict).toBe('risky');
    expect(answer.reasons).toContainEqual({ rule: 'live', findingId: answer.graded[0]?.finding.id });
  });

  it('old holes are kept apart, and frozen as soon as they are more than a few', () => {
    const answer = looked([holes('inactive')]);
    expect(answer.gates[0]?.effects).toEqual(['quarantine']);
    const steps = answer.plan.steps.map(({ treatment }) => treatment);
    expect(steps).toEqual(expect.arrayContaining(['quarantine', 'freeze', 'warmUp']));
    expect(steps.indexOf('freeze')).toBeLessThan(steps.indexOf('warmUp'));
  });

  it('a positive test for poison is refused: worth nothing at any price, whatever it would fetch', () => {
    const answer = looked([aFinding({ kind: 'poison', zone: 'whole', answers: { suspicion: 4 } })]);
    expect(answer.verdict).toBe('leave');
    expect(answer.worth).toMatchObject({ walkAway: 0, setBy: 'refused' });
  });

  it('a suspicion is risky until it is tested, and no longer when it was tested and clear', () => {
    const suspected = (tested: boolean) =>
      looked([aFinding({ kind: 'poison', zone: 'base', answers: { suspicion: 2, tested } })]);
    expect(suspected(false).verdict).toBe('risky');
    expect(suspected(false).plan.steps.map(({ treatment }) => treatment)).toContain('hazardTest');
    expect(suspected(true).verdict).toBe('repairable');
    expect(suspected(true).plan.steps.map(({ treatment }) => treatment)).not.toContain('hazardTest');
  });
});

describe('a shape worth more than its wood', () => {
  const ruin = [
    aFinding({ kind: 'tunnelled', zone: 'tip', answers: { softAreaPct: 60, probeDepthMm: 25 } }),
    aFinding({ number: 2, kind: 'decay', zone: 'tip', answers: { probeDepthMm: 25, areaCm2: 80 } }),
  ];

  it('is copied when it is rare, left when it is common, left when it may not be copied', () => {
    expect(looked(ruin, aBlock({ shapeValue: 'rare' })).verdict).toBe('copyOnly');
    expect(looked(ruin, aBlock({ shapeValue: 'common' })).verdict).toBe('leave');
    expect(looked(ruin, aBlock({ shapeValue: 'rare', copyable: false })).verdict).toBe('leave');
  });

  it('sets the limit by copying when that is worth more than restoring', () => {
    const block = aBlock({ shapeValue: 'unique', newPrice: 45_000, fallbackPrice: 2_000 });
    const { worth } = looked(ruin, block);
    expect(worth.copyCeiling).toBeGreaterThan(worth.ceiling);
    expect(worth).toMatchObject({ setBy: 'copying', walkAway: worth.copyCeiling });
  });
});

describe('worth', () => {
  it('takes the owner’s prices, and says where it had to estimate', () => {
    const own = looked([], aBlock({ newPrice: 15_000 })).worth;
    expect(own.newPrice).toEqual({ amount: 15_000, from: 'owner' });
    expect(own.fallback.from).toBe('estimate');
    const { newPrice } = catalogue.types.domeCrown ?? { newPrice: { low: 0, high: 0 } };
    expect(looked([]).worth.newPrice).toEqual({ amount: (newPrice.low + newPrice.high) / 2, from: 'estimate' });
  });

  it('is capped by what an equal used block costs', () => {
    const { worth } = looked([], aBlock({ newPrice: 30_000, equalUsedPrice: 4_000 }));
    expect(worth).toMatchObject({ walkAway: 4_000, setBy: 'equalUsed' });
  });

  it('is bound by value in use where the owner has said what the block would earn', () => {
    const block = aBlock({ newPrice: 30_000, hatsPerYear: 2, marginPerHat: 1_000, blockShare: 0.5 });
    // Two hats at £10, half of it due to the block: £10 a year, six years at 8 %, 1000 × 4.62288 (handbook §3.3).
    expect(looked([], block).worth.valueInUse).toBe(4_623);
    expect(looked([]).worth.valueInUse).toBeNull();
  });

  it('is nothing when the hours eat it, and says so', () => {
    const dear = looked([aFinding({ gradeByHand: 3 })], aBlock({ newPrice: 3_000, copyable: false }), {
      settings: someSettings({ hourlyRate: 4_000 }),
    });
    expect(dear.worth).toMatchObject({ walkAway: 0, setBy: 'nothing', highestPrice: 0 });
    expect(dear.worth.ceiling).toBeLessThan(0);
  });

  it('has no price at all when post alone costs more than it is worth', () => {
    const worthless = aBlock({ newPrice: 1_000, copyable: false });
    const terms = someTerms({ fixedCosts: [{ what: 'Post', amount: 1_400 }] });
    expect(looked([], worthless, { terms }).worth.highestPrice).toBeNull();
  });
});

describe('the price asked', () => {
  it('is judged apart from the block, all in', () => {
    const facts = caseOfLot('L01');
    expect(assess(facts, catalogue).decision).toEqual({ at: 5_200, allIn: 5_200, say: 'within' });
    const online = someTerms({
      way: 'auction',
      premium: [{ upTo: null, rate: 0.24 }],
      platformRate: 0.0495,
      vatRate: 0.2,
      vatOn: 'fees',
      fixedCosts: [{ what: 'Post', amount: 1_400 }],
    });
    // Handbook §8, online twin of L01: at these terms 84.84 all in is a hammer of 52.58; ours is worth a penny less.
    const twin = assess({ ...facts, terms: online }, catalogue);
    expect(twin.worth.highestPrice).toBe(5_257);
    const over = assess({ ...facts, terms: online, block: { ...facts.block, priceAsked: 5_300 } }, catalogue);
    expect(over.decision).toMatchObject({ at: 5_300, say: 'over' });
    expect(over.verdict).toBe('sound');
  });

  it('is not judged when there is none', () => {
    expect(by().decision).toEqual({ at: null, say: 'noPrice' });
  });
});
