import fc from 'fast-check';
import { describe, expect, it, vi } from 'vitest';
import { catalogue } from '../../src/catalogue/index.ts';
import { type Assessment, assess, type Case } from '../../src/core/assess.ts';
import { entry } from '../../src/core/catalogue.ts';
import { pertMean } from '../../src/core/estimate.ts';
import { allIn, highestHammer } from '../../src/core/fees.ts';
import type { Finding, SaleTerms } from '../../src/core/records.ts';
import { type MinorUnits, minor } from '../../src/core/units.ts';
import { allInAt, highestPriceFor } from '../../src/core/worth.ts';
import { anyCase, deepFreeze, findingFrom, onePace, rawFinding, worse } from '../any-case.ts';

// What must hold of every assessment, whatever block, survey and findings: assessment notes §9. Each property runs on 500
// random cases made from the whole catalogue; a failure is shrunk to a small case and printed with its seed.

// Machines are shared: time is for the bench, not for these.
vi.setConfig({ testTimeout: 120_000 });

const RUNS = { numRuns: 500 };
/** Sums of a few dozen products of two-digit figures; far under a minute, a penny or a hundredth of a point. */
const NOISE = 1e-9;

const by = (facts: Case): Assessment => assess(facts, catalogue);

/** A price one cannot pay at all lies below every price. */
const asPrice = (price: MinorUnits | null): number => price ?? -1;

function expectNoBetter(before: Assessment, after: Assessment): void {
  expect(after.found).toBeLessThanOrEqual(before.found + NOISE);
  expect(after.after).toBeLessThanOrEqual(before.after + NOISE);
  expect(after.odds).toBeLessThanOrEqual(before.odds + NOISE);
  expect(after.worth.ceiling).toBeLessThanOrEqual(before.worth.ceiling);
  expect(after.worth.walkAway).toBeLessThanOrEqual(before.worth.walkAway);
  expect(asPrice(after.worth.highestPrice)).toBeLessThanOrEqual(asPrice(before.worth.highestPrice));
  expect(after.worstGrade).toBeGreaterThanOrEqual(before.worstGrade);
  expectNoLessWork(before, after);
}

function expectNoLessWork({ plan: before }: Assessment, { plan: after }: Assessment): void {
  for (const point of ['o', 'm', 'p'] as const)
    expect(after.hours[point]).toBeGreaterThanOrEqual(before.hours[point] - NOISE);
  expect(after.meanHours).toBeGreaterThanOrEqual(before.meanHours - NOISE);
  expect(after.consumables).toBeGreaterThanOrEqual(before.consumables);
}

/** The same case with one finding more. */
const withMore = (facts: Case, raw: Parameters<typeof findingFrom>[0]): Case => ({
  ...facts,
  findings: [...facts.findings, findingFrom(raw, facts.block, facts.findings.length + 1)],
});

describe('more damage, by the book', () => {
  it('a finding more never raises found, after, odds, ceiling or limit, nor lowers hours', () => {
    fc.assert(
      fc.property(anyCase(), rawFinding, (facts, raw) => {
        expectNoBetter(by(facts), by(withMore(facts, raw)));
      }),
      RUNS,
    );
  });

  // At one pace for all kinds of work. A graver case may be worked another way (a large loss is filled, a larger one
  // patched), and whoever patches faster than he fills may then be quicker: that is so, and no fault of the rules.
  it('a measure raised, a bigger count, a grade raised by hand does not either', () => {
    let raised = 0;
    fc.assert(
      fc.property(anyCase({ pace: onePace }), fc.nat({ max: 99 }), fc.nat({ max: 99 }), (facts, which, much) => {
        const before = by(facts);
        for (const finding of facts.findings) {
          const one = worse(finding, which, much);
          if (!one) continue;
          raised += 1;
          const findings = facts.findings.map((other) => (other === finding ? one : other));
          expectNoBetter(before, by({ ...facts, findings }));
        }
      }),
      RUNS,
    );
    expect(raised).toBeGreaterThan(RUNS.numRuns);
  });
});

describe('what does not matter', () => {
  it('the order of findings', () => {
    fc.assert(
      fc.property(anyCase(), fc.nat(), (facts, n) => {
        const findings = [...facts.findings];
        for (let i = findings.length - 1; i > 0; i -= 1) {
          const j = (n >> i) % (i + 1);
          [findings[i], findings[j]] = [findings[j], findings[i]] as [Finding, Finding];
        }
        expect(by({ ...facts, findings })).toEqual(by(facts));
      }),
      RUNS,
    );
  });

  it('when it is asked: the same case gives the same answer to the bit', () => {
    fc.assert(
      fc.property(anyCase(), (facts) => {
        const first = JSON.stringify(by(facts));
        expect(JSON.stringify(by(structuredClone(facts)))).toBe(first);
      }),
      RUNS,
    );
  });
});

describe('working', () => {
  it('adds up: points to the score, steps to the plan, lines to the ceiling', () => {
    fc.assert(
      fc.property(anyCase(), (facts) => {
        const { graded, found, after, odds, plan, worth } = by(facts);
        const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
        expect(sum(graded.map(({ loss }) => loss.points))).toBeCloseTo(100 - found, 9);
        expect(sum(graded.map(({ loss }) => loss.pointsAfter))).toBeCloseTo(100 - after, 9);
        expect(graded.reduce((product, { loss }) => product * (loss.chance ?? 1), 1)).toBeCloseTo(odds, 12);
        for (const point of ['o', 'm', 'p'] as const)
          expect(sum(plan.steps.map(({ hours }) => hours[point]))).toBeCloseTo(plan.hours[point], 9);
        expect(sum(plan.steps.map(({ hours }) => pertMean(hours)))).toBeCloseTo(plan.meanHours, 9);
        expect(sum(plan.steps.map(({ consumables }) => consumables))).toBe(plan.consumables);
        expect(worth.weighed - worth.labour - worth.consumables).toBe(worth.ceiling);
      }),
      RUNS,
    );
  });

  it('keeps found and after between 0 and 100, after no less than found, odds above 0', () => {
    fc.assert(
      fc.property(anyCase({ maxFindings: 30 }), (facts) => {
        const { found, after, odds } = by(facts);
        expect(found).toBeGreaterThan(0);
        expect(after).toBeGreaterThanOrEqual(found - NOISE);
        expect(after).toBeLessThanOrEqual(100);
        expect(odds).toBeGreaterThan(0);
        expect(odds).toBeLessThanOrEqual(1);
      }),
      RUNS,
    );
  });

  it('plans every step after the steps it depends on', () => {
    fc.assert(
      fc.property(anyCase(), (facts) => {
        const { steps } = by(facts).plan;
        const done = new Set<string>();
        for (const { treatment, after } of steps) {
          for (const before of after) expect(done, `${before} before ${treatment}`).toContain(before);
          done.add(treatment);
        }
        expect(done.size).toBe(steps.length);
      }),
      RUNS,
    );
  });
});

describe('price', () => {
  it('an hour dearer, a gain greater never raises ceiling or limit', () => {
    const dearer = fc.tuple(anyCase(), fc.nat({ max: 2_000 }), fc.nat({ max: 100 }));
    fc.assert(
      fc.property(dearer, ([facts, rate, gain]) => {
        const before = by(facts);
        const { settings } = facts;
        for (const changed of [
          { hourlyRate: settings.hourlyRate + rate },
          { gain: settings.gain + ((1 - settings.gain) * gain) / 100 },
        ]) {
          const { worth } = by({ ...facts, settings: { ...settings, ...changed } });
          expect(worth.ceiling).toBeLessThanOrEqual(before.worth.ceiling);
          expect(worth.walkAway).toBeLessThanOrEqual(before.worth.walkAway);
        }
      }),
      RUNS,
    );
  });

  it('a fee raised never raises the highest price, and leaves the limit in all as it is', () => {
    const raised = (terms: SaleTerms, by: number): readonly SaleTerms[] => [
      { ...terms, premium: terms.premium.map((slice) => ({ ...slice, rate: slice.rate + by })) },
      { ...terms, minimumPremium: terms.minimumPremium + Math.round(by * 1000) },
      { ...terms, platformRate: terms.platformRate + by },
      { ...terms, vatRate: terms.vatRate + by },
      { ...terms, fixedCosts: [...terms.fixedCosts, { what: 'Packing', amount: Math.round(by * 1000) }] },
    ];
    fc.assert(
      fc.property(anyCase(), fc.nat({ max: 30 }), (facts, by100) => {
        const { worth } = by(facts);
        for (const terms of raised(facts.terms, by100 / 100)) {
          const dearer = by({ ...facts, terms }).worth;
          expect(dearer.walkAway).toBe(worth.walkAway);
          expect(asPrice(dearer.highestPrice)).toBeLessThanOrEqual(asPrice(worth.highestPrice));
        }
      }),
      RUNS,
    );
  });

  it('hammer to all-in and back is the hammer, or with bid steps the step at or below', () => {
    fc.assert(
      fc.property(anyCase({ maxFindings: 0 }), fc.nat({ max: 100_000 }), ({ terms }, amount) => {
        const hammer = minor(amount);
        const { total } = allIn(hammer, terms);
        expect(highestHammer(total, terms)).toBe(hammer);
        const bid = highestPriceFor(total, terms);
        expect(asPrice(bid)).toBeLessThanOrEqual(hammer);
        expect(hammer - asPrice(bid)).toBeLessThan(terms.bidSteps[0]?.step ?? 1);
      }),
      RUNS,
    );
  });

  it('the highest price at the terms stays within the limit, and the next bid does not', () => {
    fc.assert(
      fc.property(anyCase(), (facts) => {
        const { walkAway, highestPrice } = by(facts).worth;
        const step = facts.terms.bidSteps[0]?.step ?? 1;
        if (highestPrice === null) expect(allInAt(0, facts.terms)).toBeGreaterThan(walkAway);
        else {
          expect(allInAt(highestPrice, facts.terms)).toBeLessThanOrEqual(walkAway);
          expect(allInAt(highestPrice + step, facts.terms)).toBeGreaterThan(walkAway);
        }
      }),
      RUNS,
    );
  });

  it('is in whole minor units wherever money stands', () => {
    fc.assert(
      fc.property(anyCase(), (facts) => {
        const { worth, plan, decision } = by(facts);
        const { newPrice, equalUsed, fallback, setBy, ...amounts } = worth;
        const money = [newPrice.amount, equalUsed.amount, fallback.amount, ...Object.values(amounts)];
        for (const amount of money) expect(amount === null || Number.isSafeInteger(amount), String(amount)).toBe(true);
        for (const { consumables } of plan.steps) expect(Number.isSafeInteger(consumables)).toBe(true);
        if (decision.say !== 'noPrice') expect(Number.isSafeInteger(decision.allIn)).toBe(true);
        expect(worth.walkAway).toBeGreaterThanOrEqual(0);
        expect(setBy).toBeDefined();
      }),
      RUNS,
    );
  });
});

describe('what it does not know', () => {
  it('lists findings of kinds it does not have, takes a zone it does not have as the whole, and throws at neither', () => {
    fc.assert(
      fc.property(anyCase({ maxFindings: 30 }), (facts) => {
        const { unscored, graded } = by(facts);
        const unknown = facts.findings.filter(({ kind }) => !entry(catalogue.damage, kind));
        expect(unscored.map(({ id }) => id).sort()).toEqual(unknown.map(({ id }) => id).sort());
        expect(graded.length + unscored.length).toBe(facts.findings.length);
        for (const { finding, zoneClass } of graded)
          if (!entry(catalogue.zones, finding.zone)) expect(zoneClass).toBe('whole');
      }),
      RUNS,
    );
  });

  it('survives names that every object has', () => {
    const names = ['constructor', 'toString', 'hasOwnProperty', 'valueOf'];
    fc.assert(
      fc.property(anyCase(), fc.constantFrom(...names), fc.constantFrom(...names), (facts, kind, zone) => {
        const [first] = facts.findings;
        if (!first) return;
        const findings = [
          { ...first, kind, zone, answers: { toString: 3, constructor: true } },
          { ...first, zone },
        ];
        const block = { ...facts.block, blockType: kind, materials: [zone] };
        expect(by({ ...facts, block, findings }).unscored.map((one) => one.kind)).toContain(kind);
      }),
      RUNS,
    );
  });

  it('changes nothing it is given', () => {
    fc.assert(
      fc.property(anyCase(), (facts) => {
        const before = structuredClone(facts);
        by(deepFreeze(facts));
        expect(facts).toEqual(before);
      }),
      RUNS,
    );
  });
});
