import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boundOf, energyBound } from '../../../src/core/schedule/bounds.ts';
import { networkOf } from '../../../src/core/schedule/network.ts';
import { type Activity, layOut, type Project } from '../../../src/core/schedule/project.ts';
import { listByRule, RULES } from '../../../src/core/schedule/rules.ts';
import { schedulerOf } from '../../../src/core/schedule/serial.ts';
import { solve } from '../../../src/core/schedule/solve.ts';
import { checksOf, titleOf } from '../../handbook/checks.ts';
import { anyProject, faultsOf, shortest } from './check-project.ts';

/** Quick by itself; on a machine with much else to do it is the machine that takes long. */
const PATIENT = { timeout: 60_000 };

// Projects under scarce resources: checked against every start tried (check-project.ts), and against published optima in
// psplib.test.ts.

const activity = (duration: number, demands: readonly number[], after: readonly number[] = []): Activity => ({
  duration,
  demands,
  after,
});

describe('a project without scarcity', () => {
  const row = checksOf('schedule').find(({ id }) => id === 'sched.critical');
  if (!row) throw new Error('No row sched.critical.');
  it(titleOf(row), () => {
    const { edges, days } = row.inputs as { edges: [string, string][]; days: Record<string, number> };
    const names = Object.keys(days);
    const activities = names.map((name) =>
      activity(
        days[name] ?? 0,
        [],
        edges.filter(([, to]) => to === name).map(([from]) => names.indexOf(from)),
      ),
    );
    const { length, bound } = solve({ activities, capacities: [] });
    expect([length, bound.criticalPath]).toEqual([row.expected, row.expected]);
  });

  it('of no activities takes no time', () => {
    expect(solve({ activities: [], capacities: [2] })).toMatchObject({ length: 0, starts: [], inOrder: 0 });
  });
});

describe('one resource', () => {
  const row = checksOf('schedule').find(({ id }) => id === 'sched.freezer_three');
  if (!row) throw new Error('No row sched.freezer_three.');
  it(titleOf(row), () => {
    const { loads, days, capacity } = row.inputs as { loads: number; days: number; capacity: number };
    const activities = Array.from({ length: loads }, () => activity(days, [1]));
    expect(solve({ activities, capacities: [capacity] }).length).toBe(row.expected);
  });

  it('is named as the busiest, with what must lie before and after its work', () => {
    // Two days each on one bench, a day's way there and three back: 1 + 3 × 2 + 3.
    const chain = (first: number): Activity[] => [
      activity(1, [0]),
      activity(2, [1], [first]),
      activity(3, [0], [first + 1]),
    ];
    const project = { activities: [...chain(0), ...chain(3), ...chain(6)], capacities: [1] };
    expect(boundOf(layOut(project))).toEqual({ length: 10, criticalPath: 6, busiest: { resource: 0, length: 10 } });
    expect(solve(project).length).toBe(10);
  });

  it('bounds by the best choice of what lies between a head and a tail', () => {
    // All four: 0 + 8/2 + 0; the late three: 3 + 6/2 + 0; the one with a long tail: 3 + 2/2 + 9. Without that: 3 + 4/2.
    const pieces = [
      { head: 0, work: 2, tail: 0 },
      { head: 3, work: 2, tail: 0 },
      { head: 3, work: 2, tail: 1 },
      { head: 3, work: 2, tail: 9 },
    ];
    expect(energyBound(pieces, 2)).toBe(13);
    expect(energyBound(pieces.slice(0, 3), 2)).toBe(5);
    expect(energyBound([], 2)).toBe(0);
  });
});

describe('what cannot be scheduled', () => {
  it.each([
    ['waits for itself by way of another', [activity(1, [], [1]), activity(1, [], [0])], /circle/],
    ['waits for what is not there', [activity(1, [], [7])], /comes after 7/],
    ['wants more than there is', [activity(1, [3])], /wants 3/],
    ['takes part of a unit of time', [activity(1.5, [1])], /1\.5/],
    ['takes less than no time', [activity(-1, [1])], /-1/],
    ['takes no number at all', [activity(Number.NaN, [1])], /NaN/],
  ] as const)('is refused in words: an activity that %s', (_, activities, words) => {
    expect(() => solve({ activities, capacities: [2] })).toThrow(words);
  });
});

describe('priority rules', () => {
  const network = networkOf([[], [], [0], [1], [3]], [3, 1, 2, 4, 1], [3, 1, 2, 4, 1]);
  it.each([
    ['latestFinish', [1, 0, 3, 2, 4]],
    ['latestStart', [1, 0, 3, 2, 4]],
    ['leastSlack', [1, 3, 4, 0, 2]],
    ['mostFollowers', [1, 0, 3, 2, 4]],
    ['greatestWeight', [0, 1, 3, 2, 4]],
    ['mostLoad', [1, 0, 3, 2, 4]],
    ['shortestFirst', [1, 0, 2, 3, 4]],
  ] as const)('%s puts a small project in the order worked out by hand', (name, order) => {
    // Chains 0(3) → 2(2) and 1(1) → 3(4) → 4(1).
    expect([...listByRule(network, RULES[name](network))]).toEqual(order);
  });
});

describe('for any project', PATIENT, () => {
  const projects = anyProject(12, 6);

  it('the schedule keeps every rule, is no shorter than its bound and no longer than in order', () => {
    fc.assert(
      fc.property(projects, fc.nat({ max: 9 }), (project, seed) => {
        const { starts, length, bound, inOrder } = solve(project, { budget: 60, seed });
        expect(faultsOf(project, starts)).toEqual([]);
        expect(length).toBe(Math.max(0, ...starts.map((start, at) => start + (project.activities[at]?.duration ?? 0))));
        expect(length).toBeGreaterThanOrEqual(bound.length);
        expect(length).toBeLessThanOrEqual(inOrder);
      }),
      { numRuns: 60 },
    );
  });

  it('justification keeps every rule and never lengthens', () => {
    fc.assert(
      fc.property(projects, (project) => {
        const laidOut = layOut(project);
        const { forward, justify } = schedulerOf(laidOut);
        const list = Int32Array.from(laidOut.network.order);
        const starts = new Int32Array(list.length);
        const before = forward(list, starts);
        const after = justify(list, starts);
        expect(after).toBeLessThanOrEqual(before);
        expect(faultsOf(project, [...starts])).toEqual([]);
        expect(forward(list, starts)).toBe(after);
      }),
      { numRuns: 60 },
    );
  });

  it('the same seed gives the same schedule', () => {
    fc.assert(
      fc.property(projects, fc.nat(), (project, seed) => {
        expect(solve(project, { budget: 80, seed })).toEqual(solve(project, { budget: 80, seed }));
      }),
      { numRuns: 20 },
    );
  });

  it('ended early it is still a schedule', () => {
    fc.assert(
      fc.property(projects, (project) => {
        const { starts, tried } = solve(project, { budget: 5_000, stop: () => true });
        expect(faultsOf(project, starts)).toEqual([]);
        expect(tried).toBeLessThanOrEqual(16);
      }),
      { numRuns: 20 },
    );
  });
});

describe('for small projects', PATIENT, () => {
  it('it is never shorter than the shortest of all, and nearly always as short', () => {
    let same = 0;
    let all = 0;
    fc.assert(
      fc.property(anyProject(6, 3), (project) => {
        const best = shortest(project);
        const { length, bound } = solve(project, { budget: 60 });
        expect(bound.length).toBeLessThanOrEqual(best);
        expect(length).toBeGreaterThanOrEqual(best);
        all += 1;
        if (length === best) same += 1;
      }),
      { numRuns: 80, seed: 7 },
    );
    expect(same / all).toBeGreaterThan(0.98);
  });

  it('one unit more of a resource makes none longer', () => {
    fc.assert(
      fc.property(anyProject(6, 3), fc.nat({ max: 2 }), (project, which) => {
        const more: Project = {
          ...project,
          capacities: project.capacities.map((units, at) => units + (at === which % project.capacities.length ? 1 : 0)),
        };
        expect(shortest(more)).toBeLessThanOrEqual(shortest(project));
        expect(solve(more, { budget: 60 }).length).toBeLessThanOrEqual(solve(project, { budget: 60 }).length);
      }),
      { numRuns: 60, seed: 7 },
    );
  });
});
