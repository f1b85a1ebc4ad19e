import fc from 'fast-check';
import { describe, expect, it, vi } from 'vitest';
import { catalogue } from '../../src/catalogue/index.ts';
import { assess, type Case } from '../../src/core/assess.ts';
import { zoneClassOf, zonesFor } from '../../src/core/block.ts';
import { entry, type Grade, ORIGINS } from '../../src/core/catalogue.ts';
import { beliefIn } from '../../src/core/simulate/belief.ts';
import { looksWorth } from '../../src/core/simulate/looks.ts';
import { materialGroupOf, type Unlooked } from '../../src/core/simulate/situation.ts';
import { STRATEGIES } from '../../src/core/simulate/strategies.ts';
import { anyCase } from '../any-case.ts';
import { aFinding } from '../make.ts';
import { monteCarlo, under, widthOf } from '../over-draws.ts';

// What must hold of every look, whatever the block and whatever nobody has looked at: assessment notes §6 and §9.

// Machines are shared: time is for the bench, not for these.
vi.setConfig({ testTimeout: 120_000 });

const RUNS = { numRuns: 500 };
const NOISE = 1e-9;
/** Minor units: sums over draws of figures up to a million. */
const PENNY_NOISE = 1e-4;

/** Kinds nobody looked for that can lie in one class of zone only: there a look and a guess speak of the same loss. */
function doubtsOf(facts: Case): readonly { readonly kind: string; readonly zone: string }[] {
  const { kinds, setting } = assess(facts, catalogue);
  return kinds.flatMap(({ kind: id, state }) => {
    const kind = entry(catalogue.damage, id);
    if (state !== 'notLooked' || !kind) return [];
    const zones = zonesFor(kind, setting, catalogue);
    const [zone = 'whole'] = zones;
    return new Set(zones.map((each) => zoneClassOf(each, catalogue))).size <= 1 ? [{ kind: id, zone }] : [];
  });
}

describe('a look', () => {
  it('is expected to change nothing: what it may show, weighed, is what was believed (law of total expectation)', () => {
    const count = 128;
    const strays: number[] = [];
    const facts = fc.tuple(anyCase({ maxFindings: 3 }), fc.nat(), fc.nat({ max: 49 }), fc.constantFrom(...ORIGINS));
    fc.assert(
      fc.property(facts, ([facts, n, seed, origin]) => {
        const doubts = doubtsOf(facts);
        const doubt = doubts[n % Math.max(1, doubts.length)];
        const kind = entry(catalogue.damage, doubt?.kind);
        if (!doubt || !kind) return;
        const chance = { count, seed, origin };
        const group = materialGroupOf(assess(facts, catalogue).setting, catalogue);
        const belief = beliefIn(kind, group, origin, undefined);
        const clear = { ...facts.survey, noneSeen: { ...facts.survey.noneSeen, [doubt.kind]: true as const } };
        const shown = [
          { share: 1 - belief.present, answer: under({ ...facts, survey: clear }, chance) },
          ...belief.grades.map((share, index) => {
            const finding = aFinding({ ...doubt, number: 99, answers: {}, gradeByHand: (index + 1) as Grade });
            const found = { ...facts, findings: [...facts.findings, finding] };
            return { share: belief.present * share, answer: under(found, chance) };
          }),
        ];
        const now = under(facts, chance);
        const width = widthOf(facts, now);
        for (const one of STRATEGIES) {
          const weighed = shown.reduce((sum, { share, answer }) => sum + share * answer.strategies[one].ceiling, 0);
          const stray = (weighed - now.strategies[one].ceiling) / Math.max(1, width);
          expect(Math.abs(stray)).toBeLessThanOrEqual(monteCarlo(1, count));
          if (one === 'restore') strays.push(stray);
        }
      }),
      RUNS,
    );
    // Chance strays to both sides: over all cases the mean must be nothing, to five standard errors.
    expect(strays.length).toBeGreaterThan(RUNS.numRuns / 2);
    const mean = strays.reduce((sum, stray) => sum + stray, 0) / strays.length;
    const sd = Math.sqrt(strays.reduce((sum, stray) => sum + (stray - mean) ** 2, 0) / strays.length);
    expect(Math.abs(mean)).toBeLessThanOrEqual((5 * sd) / Math.sqrt(strays.length));
    expect(sd).toBeLessThan(0.03);
  });

  it('is never worth less than nothing, is not offered twice, and shows only what nobody looked for', () => {
    let offered = 0;
    fc.assert(
      fc.property(anyCase({ maxFindings: 4 }), fc.constantFrom(...ORIGINS), (facts, origin) => {
        const { looks } = under(facts, { count: 128, origin });
        const { kinds } = assess(facts, catalogue);
        const doubts = new Set(kinds.filter(({ state }) => state === 'notLooked').map(({ kind }) => kind));
        for (const look of looks) {
          offered += 1;
          expect(look.worth).toBeGreaterThanOrEqual(0);
          expect(look.changes).toBeGreaterThanOrEqual(0);
          expect(look.changes).toBeLessThanOrEqual(1 + NOISE);
          expect(facts.survey.stationsDone).not.toHaveProperty(look.station);
          expect(look.kinds.length).toBeGreaterThan(0);
          for (const kind of look.kinds) {
            expect(doubts).toContain(kind);
            expect(catalogue.damage[kind]?.stations).toContain(look.station);
          }
          expect(look.kinds).toContain(look.mostTelling);
        }
        // A station whose kinds have all been looked for is worth nothing, so it is not there.
        for (const station of Object.keys(catalogue.stations)) {
          const shows = [...doubts].some((kind) => catalogue.damage[kind]?.stations.includes(station));
          const due = shows && !Object.hasOwn(facts.survey.stationsDone, station);
          expect(looks.some((look) => look.station === station)).toBe(due);
        }
        expect(looks.map(({ worthPerMinute }) => worthPerMinute)).toEqual(
          looks.map(({ worthPerMinute }) => worthPerMinute).sort((a, b) => b - a),
        );
      }),
      RUNS,
    );
    expect(offered).toBeGreaterThan(RUNS.numRuns);
  });

  it('is worth at most what knowing everything would be', () => {
    const draws = fc.array(
      fc.tuple(
        fc.integer({ min: -9_000, max: 40_000 }),
        fc.nat({ max: 12_000 }),
        fc.nat({ max: 4 }),
        fc.nat({ max: 4 }),
      ),
      { minLength: 120, maxLength: 120 },
    );
    fc.assert(
      fc.property(draws, fc.nat({ max: 20_000 }), (rows, price) => {
        const nets = {
          restore: Float64Array.from(rows, ([restore]) => restore),
          copy: new Float64Array(rows.length).fill(900),
          keep: Float64Array.from(rows, ([, keep]) => keep),
        };
        const loss = { loss: 0.1 };
        const hidden = ['check', 'mould'].map((kind, index) => ({
          unlooked: {
            kind,
            belief: { present: 0.5, grades: [0.4, 0.3, 0.2, 0.1], surveys: 0 },
            atGrade: [loss, loss, loss, loss],
          } as unknown as Unlooked,
          grades: Uint8Array.from(rows, (row) => row[2 + index] ?? 0),
        }));
        const looks = looksWorth({ nets, price, hidden, survey: { stationsDone: {} }, catalogue });
        const best = rows.map((_, i) =>
          Math.max(0, Math.max(nets.restore[i] ?? 0, nets.copy[i] ?? 0, nets.keep[i] ?? 0) - price),
        );
        const meanOf = (values: ArrayLike<number>): number =>
          Array.from(values).reduce((sum, value) => sum + value, 0) / values.length;
        const now = Math.max(0, Math.max(...STRATEGIES.map((one) => meanOf(nets[one]))) - price);
        for (const { worth } of looks) {
          expect(worth).toBeGreaterThanOrEqual(0);
          expect(worth).toBeLessThanOrEqual(meanOf(best) - now + PENNY_NOISE);
        }
      }),
      RUNS,
    );
  });
});
