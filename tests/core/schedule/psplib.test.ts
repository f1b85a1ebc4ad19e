import { describe, expect, it } from 'vitest';
import { solve } from '../../../src/core/schedule/solve.ts';
import { instances, readProject } from '../../psplib/read.ts';
import { faultsOf } from './check-project.ts';

// Against the published optima of research instances that are not part of this project; source in psplib/read.ts.

describe('the reader of research instances', () => {
  // Our own, in the library's format: two workers, job 3 after job 2, job 4 beside them.
  const text = `************************************************************************
jobs (incl. supersource/sink ):  5
PROJECT INFORMATION:
pronr.  #jobs rel.date duedate tardcost  MPM-Time
    1      3      0        7        0        5
************************************************************************
PRECEDENCE RELATIONS:
jobnr.    #modes  #successors   successors
   1        1          2           2   4
   2        1          1           3
   3        1          1           5
   4        1          1           5
   5        1          0
************************************************************************
REQUESTS/DURATIONS:
jobnr. mode duration  R 1
------------------------------------------------------------------------
  1      1     0       0
  2      1     2       1
  3      1     3       2
  4      1     2       2
  5      1     0       0
************************************************************************
RESOURCEAVAILABILITIES:
  R 1
    2
************************************************************************
`;

  it('reads durations, demands and what follows what', () => {
    const { project, longestChain } = readProject(text);
    expect(longestChain).toBe(5);
    expect(project.capacities).toEqual([2]);
    expect(project.activities).toEqual([
      { duration: 0, demands: [0], after: [] },
      { duration: 2, demands: [1], after: [0] },
      { duration: 3, demands: [2], after: [1] },
      { duration: 2, demands: [2], after: [0] },
      { duration: 0, demands: [0], after: [2, 3] },
    ]);
    expect(solve(project).length).toBe(7);
  });
});

const all = instances();

describe.skipIf(all.length === 0)(
  'PSPLIB instances (skipped where they are not beside the project; see psplib/read.ts)',
  // Quick by itself; on a machine with much else to do it is the machine that takes long.
  { timeout: 60_000 },
  () => {
    it('none is scheduled wrongly, shorter than its optimum, or with a bound above it', () => {
      for (const { name, project, optimum, longestChain } of all) {
        const { starts, length, bound } = solve(project, { budget: 100 });
        expect(faultsOf(project, starts), name).toEqual([]);
        expect(length, name).toBeGreaterThanOrEqual(optimum);
        expect(bound.length, name).toBeLessThanOrEqual(optimum);
        expect(bound.criticalPath, name).toBe(longestChain);
      }
    });

    it('are on average within 1 % of the published optimum', () => {
      const gaps = all.map(({ project, optimum }) => solve(project, { budget: 300 }).length / optimum - 1);
      expect(gaps.reduce((sum, gap) => sum + gap, 0) / gaps.length).toBeLessThan(0.01);
    });
  },
);
