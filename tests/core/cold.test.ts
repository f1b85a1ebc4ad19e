import { describe, expect, it } from 'vitest';
import { type ColdStageFacts, neededHours, roundsOf, stageEnds, stageStanding, stagesOf } from '../../src/core/cold.ts';
import { FREEZE_REGIME_IDS } from '../../src/core/physics/freezing.ts';
import { id } from '../store/make.ts';

const HOUR = 3_600_000;
const IN = Date.parse('2026-10-18T20:00:00Z');
const hoursIn = (hours: number): string => new Date(IN + hours * HOUR).toISOString();

/** A crown's thickness: 80 mm to its middle. */
const stage = (fields: Partial<ColdStageFacts> = {}): ColdStageFacts => ({
  id: id(7),
  blockId: id(1),
  regime: 'minus30Core',
  round: 1,
  step: 1,
  does: 'freeze',
  begun: hoursIn(0),
  ended: null,
  freezerC: -31,
  radiusMm: 80,
  ...fields,
});

describe('a stay in the freezer', () => {
  // Materials handbook §2.4: r = 80 mm, −30 °C, 7.1 h to the core; still air and wrapping double or triple that.
  it('counts from when the middle is cold', () => {
    const needed = neededHours(stage());
    expect(needed?.perhaps).toBeCloseTo(48 + 7.1, 0);
    expect(needed?.surely).toBeCloseTo(48 + 3 * 7.1, 0);
  });
  it('says when it has surely been long enough', () => {
    const ends = stageEnds(stage());
    expect(ends?.kind).toBe('freezeEnds');
    expect((Date.parse(ends?.at ?? '') - IN) / HOUR).toBeCloseTo(69.2, 0);
    expect(stageEnds(stage({ ended: hoursIn(70) }))).toBeNull();
  });
  it('does not count when it was cut short', () => {
    expect(stageStanding(stage({ ended: hoursIn(50) })).state).toBe('tooShort');
    expect(stageStanding(stage({ ended: hoursIn(60) })).state).toBe('perhaps');
    expect(stageStanding(stage({ ended: hoursIn(70) })).state).toBe('enough');
  });
  it('says by how many hours it was short', () => {
    const standing = stageStanding(stage({ ended: hoursIn(40) }));
    expect(standing.state === 'tooShort' && standing.shortHours).toBeCloseTo(29.2, 0);
  });
  it('does not count in a freezer that is not cold enough, from the moment that is read', () => {
    expect(stageStanding(stage({ freezerC: -18, ended: null }))).toEqual({ state: 'tooWarm', neededC: -30 });
  });
  it('does not count where nobody read a thermometer', () => {
    expect(stageStanding(stage({ freezerC: null, ended: hoursIn(100) })).state).toBe('notRead');
  });
  it('does not count when it ended before it began', () => {
    expect(stageStanding(stage({ ended: hoursIn(-5) })).state).toBe('tooShort');
  });
  it('of a regime this app does not know is not judged', () => {
    expect(stageStanding(stage({ regime: 'someNewer', ended: hoursIn(500) })).state).toBe('unknown');
    expect(stageEnds(stage({ regime: 'someNewer' }))).toBeNull();
  });
});

describe('a stage from a damaged backup', () => {
  it('is not judged, has no end, and breaks nothing', () => {
    const never = '2026-13-45T99:00:00Z';
    expect(stageStanding(stage({ begun: never, ended: hoursIn(90) })).state).toBe('unknown');
    expect(stageStanding(stage({ ended: never })).state).toBe('unknown');
    expect(stageEnds(stage({ begun: never }))).toBeNull();
  });
});

describe('a round of freezing', () => {
  it('begins in a sealed bag and ends with a day in it, whatever the regime', () => {
    // Materials handbook §2.4: leave sealed 24 h while it warms.
    for (const regime of FREEZE_REGIME_IDS) {
      expect(stagesOf(regime)[0]?.does).toBe('bag');
      expect(stagesOf(regime).at(-1)).toMatchObject({ does: 'warmInBag', leastHours: 24 });
      expect(stagesOf(regime).filter(({ does }) => does === 'warmInBag').length).toBeLessThanOrEqual(2);
    }
  });
  const whole = [
    stage({ id: id(10), step: 0, does: 'bag', ended: hoursIn(0) }),
    stage({ id: id(11), step: 1, ended: hoursIn(72) }),
    stage({ id: id(12), step: 2, does: 'warmInBag', begun: hoursIn(72), ended: hoursIn(97) }),
  ];
  it('counts when every stage was long and cold enough', () => {
    expect(roundsOf(whole)).toMatchObject([{ round: 1, state: 'done', endedAt: hoursIn(97) }]);
  });
  it('runs until the bag may be opened', () => {
    expect(roundsOf(whole.slice(0, 2))[0]).toMatchObject({ state: 'running', endedAt: null });
  });
  it('fails when the bag was opened too soon', () => {
    const opened = whole.map((one) => (one.step === 2 ? { ...one, ended: hoursIn(80) } : one));
    expect(roundsOf(opened)[0]?.state).toBe('failed');
  });
  it('stands apart from the next one', () => {
    const second = whole.map((one, index) => ({ ...one, id: id(20 + index), round: 2 }));
    expect(roundsOf([...second, ...whole]).map(({ round }) => round)).toEqual([1, 2]);
  });
});
