import { describe, expect, it } from 'vitest';
import type { ColdStageFacts } from '../../src/core/cold.ts';
import { dueList, soonestOf } from '../../src/core/due.ts';
import type { QuarantineFacts } from '../../src/core/quarantine.ts';
import { type NamedDue, remindersFor } from '../../src/core/reminders.ts';
import { id } from '../store/make.ts';

const at = (day: string) => ({ today: day, ms: Date.parse(`${day}T12:00:00Z`) });
const watched = (fields: Partial<QuarantineFacts> = {}): QuarantineFacts => ({
  id: id(5),
  blockId: id(1),
  begunOn: '2026-10-17',
  reason: 'holes',
  left: null,
  checks: [],
  frozenOn: [],
  hemisphere: 'north',
  ...fields,
});
const frozen: ColdStageFacts = {
  ...{ id: id(7), blockId: id(1), regime: 'minus20Week', round: 1, step: 1, does: 'freeze' as const },
  ...{ begun: '2026-10-18T20:00:00Z', ended: null, freezerC: -21, radiusMm: 80 },
};
const glued = { id: id(8), blockId: id(2), treatment: 'reglue', words: '', until: '2026-10-19T07:00:00Z' };
const nothing = { quarantines: [], freezing: [], waits: [] };

describe('what falls due', () => {
  it('comes soonest first, whatever it is and wherever it was written', () => {
    const facts = { quarantines: [watched()], freezing: [frozen], waits: [glued] };
    const dues = dueList(facts, at('2026-10-18'));
    expect(dues.slice(0, 3).map(({ kind }) => kind)).toEqual(['waitEnds', 'freezeEnds', 'look']);
    expect(dues.at(-1)?.kind).toBe('lastLook');
  });
  it('names the same thing the same on every day', () => {
    const keys = (day: string) => dueList({ ...nothing, quarantines: [watched()] }, at(day)).map(({ key }) => key);
    expect(keys('2026-10-20')).toEqual(keys('2026-11-10'));
  });
  it('says what is late, and of several missed looks only the last', () => {
    const dues = dueList({ ...nothing, quarantines: [watched()] }, at('2027-02-01'));
    expect(dues.filter(({ late }) => late).map(({ at }) => at)).toEqual([{ day: '2027-01-15' }]);
    expect(dueList({ ...nothing, waits: [glued] }, at('2026-10-19'))[0]?.late).toBe(true);
  });
  it('can be told with one look a block', () => {
    const other = watched({ id: id(6), blockId: id(2), begunOn: '2026-10-20' });
    const dues = soonestOf(
      dueList({ quarantines: [watched(), other], freezing: [frozen], waits: [] }, at('2026-10-21')),
    );
    expect(dues.map(({ kind, blockId }) => [kind, blockId])).toEqual([
      ['freezeEnds', id(1)],
      ['look', id(1)],
      ['look', id(2)],
    ]);
  });
  it('is nothing for a block that has left or a stage that has ended', () => {
    const left = { on: '2026-10-20', early: true, reason: 'sold' };
    expect(
      dueList(
        { quarantines: [watched({ left })], freezing: [{ ...frozen, ended: '2026-10-28T20:00:00Z' }], waits: [] },
        at('2026-10-21'),
      ),
    ).toEqual([]);
  });
});

const named = (key: string, day: string, words = 'Look at it'): NamedDue => ({
  key,
  blockId: id(1),
  at: { day },
  words,
});
const kept = (planned: ReturnType<typeof remindersFor>) =>
  planned.map(({ changed: _, ...rest }, index) => ({ ...rest, id: id(50 + index) }));

describe('what a calendar file says', () => {
  const first = remindersFor([named('a', '2026-11-16'), named('b', '2026-12-16')], [], at('2026-10-17'));
  it('says again, unchanged, what an earlier file said', () => {
    const again = remindersFor([named('a', '2026-11-16'), named('b', '2026-12-16')], kept(first), at('2026-10-18'));
    expect(again.map(({ changed, sequence }) => ({ changed, sequence }))).toEqual(
      first.map(({ sequence }) => ({ changed: false, sequence })),
    );
  });
  it('raises the number of what has moved, and only of that', () => {
    const moved = remindersFor([named('a', '2026-11-16'), named('b', '2027-01-02')], kept(first), at('2026-10-18'));
    expect(moved[0]?.sequence).toBe(first[0]?.sequence);
    expect(moved[1]?.sequence).toBeGreaterThan(first[1]?.sequence ?? 0);
  });
  it('raises it also on a phone whose clock has gone back', () => {
    const moved = remindersFor([named('a', '2026-11-17')], kept(first), at('2026-01-01'));
    expect(moved[0]?.sequence).toBe((first[0]?.sequence ?? 0) + 1);
  });
  it('cancels what is gone, once with a higher number and then again with the same', () => {
    const gone = remindersFor([named('a', '2026-11-16')], kept(first), at('2026-10-18'));
    expect(gone[1]).toMatchObject({ key: 'b', cancelled: true, start: '2026-12-16' });
    expect(gone[1]?.sequence).toBeGreaterThan(first[1]?.sequence ?? 0);
    const still = remindersFor([named('a', '2026-11-16')], kept(gone), at('2026-10-19'));
    expect(still[1]).toMatchObject({ cancelled: true, changed: false, sequence: gone[1]?.sequence });
  });
  it('brings back what comes after all', () => {
    const gone = kept(remindersFor([], kept(first), at('2026-10-18')));
    const back = remindersFor([named('b', '2026-12-16')], gone, at('2026-10-19')).find(({ key }) => key === 'b');
    expect(back).toMatchObject({ cancelled: false, changed: true });
    expect(back?.sequence).toBeGreaterThan(gone.find(({ key }) => key === 'b')?.sequence ?? 0);
  });
  it('leaves the past alone', () => {
    expect(remindersFor([named('a', '2026-11-16')], kept(first), at('2027-06-01'))).toEqual([]);
  });
  it('of two records about one thing goes by the later', () => {
    const [a] = kept(first);
    if (!a) throw new Error('Nothing was planned.');
    const other = { ...a, id: id(99), start: '2026-11-20', sequence: a.sequence + 40 };
    const [planned] = remindersFor([named('a', '2026-11-20')], [other, a], at('2026-10-18'));
    expect(planned).toMatchObject({ id: id(99), changed: false });
  });
});
