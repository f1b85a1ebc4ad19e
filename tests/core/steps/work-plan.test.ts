import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { catalogue } from '../../../src/catalogue/index.ts';
import { assess } from '../../../src/core/assess.ts';
import type { Finding, Mark, Stint, WorkStep } from '../../../src/core/records.ts';
import { type WorkItem, workPlan } from '../../../src/core/steps/work-plan.ts';
import { aBlock, aCase, aFinding, aMark, aStep, aStint, caseOfLot } from '../../make.ts';

const at = { at: '2026-11-10T20:00:00Z', offset: '+00:00' };
const skippedFor = (reason: string) => ({ at: at.at, reason });

/** A check deep and wide enough to be filled. Handbook §1.6 and T15: under grade 2 it is left. */
const aBadCheck = (number: number): Finding =>
  aFinding({ number, kind: 'check', zone: 'tip', answers: { widthMm: 2, depthMm: 12, lengthMm: 100 } });

/** A split that is glued shut; glue calls for a trial on scrap (T14, T28). */
const aSplit = aFinding({ kind: 'split', zone: 'sideBack', answers: { lengthMm: 110, widthMm: 2, stepMm: 0.3 } });

interface Given {
  readonly findings?: readonly Finding[];
  readonly marks?: readonly Mark[];
  readonly steps?: readonly WorkStep[];
  readonly stints?: readonly Stint[];
  readonly path?: 'restore' | 'copy';
}

function work({
  findings = [aBadCheck(1)],
  marks = [],
  steps = [],
  stints = [],
  path = 'restore',
}: Given): readonly WorkItem[] {
  const facts = aCase({ findings });
  return workPlan({ path, assessment: assess(facts, catalogue), marks, steps, stints }, catalogue);
}
const open = (items: readonly WorkItem[]) => items.filter(({ stand }) => stand === 'open');
const treatments = (items: readonly WorkItem[]) => open(items).map(({ treatment }) => treatment);
const item = (items: readonly WorkItem[], key: string): WorkItem => {
  const found = items.find((one) => one.key === key);
  if (!found) throw new Error(`No step ${key} among ${items.map((one) => one.key).join(', ')}.`);
  return found;
};

describe('the work on a block nobody has touched', () => {
  it('is its plan, step for step, with the same hours and order', () => {
    for (const lot of ['L01', 'L03', 'L05', 'L07']) {
      const facts = caseOfLot(lot);
      const assessment = assess(facts, catalogue);
      const items = workPlan({ path: 'restore', assessment, marks: [], steps: [], stints: [] }, catalogue);
      expect(items.map(({ treatment, hours }) => [treatment, hours])).toEqual(
        assessment.plan.steps.map(({ treatment, hours }) => [treatment, hours]),
      );
    }
  });

  it('is only the taking of a copy where that was chosen', () => {
    expect(treatments(work({ path: 'copy' }))).toEqual([...catalogue.model.copyPlan]);
  });

  it('photographs and covers marks worth keeping before the first brush', () => {
    // Trade handbook §1.4 and T24: marks are kept, never sanded. Common practice, no source.
    const items = work({ marks: [aMark({ number: 1 }), aMark({ number: 2 }), aMark({ number: 3, keep: false })] });
    expect(item(items, 'protectMarks').amount).toBe(2);
    const place = treatments(items).indexOf('protectMarks');
    for (const { treatment, after } of open(items)) {
      if (!catalogue.treatments[treatment ?? '']?.touchesMarks) continue;
      expect(treatments(items).indexOf(treatment), treatment ?? '').toBeGreaterThan(place);
      expect(after).toContain('protectMarks');
    }
    expect(treatments(work({}))).not.toContain('protectMarks');
  });
});

describe('a step that was done', () => {
  const filled = aStep({ treatment: 'fillCheck', serves: [aBadCheck(1).id], done: at });

  it('is no longer open, and still brings what must follow it', () => {
    const items = work({ steps: [filled] });
    expect(treatments(items)).not.toContain('fillCheck');
    expect(treatments(items)).toEqual(expect.arrayContaining(['scrapeAndTrue', 'seal']));
    expect(item(items, filled.id)).toMatchObject({ stand: 'done', treatment: 'fillCheck' });
  });

  it('is wanted again for a finding made later, for that one’s amount alone', () => {
    const items = work({ findings: [aBadCheck(1), aBadCheck(2)], steps: [filled] });
    expect(item(items, 'fillCheck')).toMatchObject({ serves: [aBadCheck(2).id], amount: 100, stand: 'open' });
    expect(item(items, filled.id).stand).toBe('done');
    expect(item(work({ findings: [aBadCheck(1), aBadCheck(2)] }), 'fillCheck').amount).toBe(200);
  });

  it('brings its followers again after new work, and what must only be so before, not', () => {
    const serves = [aBadCheck(1).id];
    const steps = (['scrapeAndTrue', 'seal'] as const).map((treatment, number) =>
      aStep({ number: number + 2, treatment, serves, done: at }),
    );
    expect(treatments(work({ steps: [filled, ...steps] }))).not.toContain('seal');
    const again = work({ findings: [aBadCheck(1), aBadCheck(2)], steps: [filled, ...steps] });
    expect(treatments(again)).toEqual(expect.arrayContaining(['fillCheck', 'scrapeAndTrue', 'seal']));
    // Taken apart for one joint, a puzzle is apart for the next.
    const joint = (number: number) =>
      aFinding({
        number,
        kind: 'openGlueLine',
        zone: 'glueLine',
        answers: { lengthMm: 170, pctOfLine: 40, gapMm: 0.8 },
      });
    const facts = aCase({
      block: aBlock({ blockType: 'beret', partsFound: 5, partsExpected: 5 }),
      findings: [joint(1), joint(2)],
    });
    const apart = aStep({ number: 9, treatment: 'takeApart', serves: [joint(1).id], done: at });
    const assessment = assess(facts, catalogue);
    expect(assessment.plan.steps.map(({ treatment }) => treatment)).toContain('takeApart');
    const items = workPlan({ path: 'restore', assessment, marks: [], steps: [apart], stints: [] }, catalogue);
    expect(treatments(items)).not.toContain('takeApart');
  });

  it('stays in sight when its finding is taken out', () => {
    expect(item(work({ findings: [], steps: [filled] }), filled.id).stand).toBe('done');
  });
});

describe('a step that was left out', () => {
  it('stays in its place with the reason, and brings nothing', () => {
    const left = aStep({
      treatment: 'fillCheck',
      serves: [aBadCheck(1).id],
      skipped: skippedFor('closes in damp air'),
    });
    const items = work({ steps: [left] });
    expect(treatments(items)).not.toContain('fillCheck');
    expect(treatments(items)).not.toContain('scrapeAndTrue');
    expect(item(items, left.id)).toMatchObject({ stand: 'skipped' });
  });

  it('that every plan has, or that is brought, can be left out too', () => {
    const left = [
      aStep({ number: 1, treatment: 'store', skipped: skippedFor('goes straight to work') }),
      aStep({ number: 2, treatment: 'testBlock', serves: [aSplit.id], skipped: skippedFor('display piece') }),
    ];
    const findings = [aSplit];
    expect(treatments(work({ findings }))).toEqual(
      expect.arrayContaining(['closeSplit', 'testBlock', 'seal', 'store']),
    );
    const items = work({ findings, steps: left });
    expect(treatments(items)).not.toContain('store');
    expect(treatments(items)).not.toContain('testBlock');
    expect(treatments(items)).toEqual(expect.arrayContaining(['closeSplit', 'seal']));
  });

  it('is asked about again when a new finding wants it', () => {
    const left = aStep({ treatment: 'fillCheck', serves: [aBadCheck(1).id], skipped: skippedFor('moves') });
    expect(item(work({ findings: [aBadCheck(1), aBadCheck(2)], steps: [left] }), 'fillCheck').amount).toBe(100);
  });
});

describe('steps put in by the person', () => {
  it('come from the catalogue at the owner’s pace, or in own words at the hours they say', () => {
    const steps = [
      aStep({ number: 1, treatment: 'airOut', added: true }),
      aStep({ number: 2, words: 'Make a lid', added: true, hours: { o: 1, m: 2, p: 4 }, waitHours: 12, position: 30 }),
    ];
    const items = workPlan(
      { path: 'restore', assessment: assess(aCase(), catalogue), marks: [], steps, stints: [] },
      catalogue,
      { pests: { median: 2, spread: { kind: 'logNormal', sigma: 0.2 } } },
    );
    const { setUpHours, reference } = catalogue.treatments.airOut ?? { setUpHours: null };
    expect(reference).toBe('pests');
    expect(item(items, steps[0]?.id ?? '').hours.m).toBeCloseTo(2 * (setUpHours?.m ?? 0));
    expect(item(items, steps[1]?.id ?? '')).toMatchObject({
      words: 'Make a lid',
      hours: { m: 2 },
      waitHours: { m: 12 },
    });
  });
});

describe('work on a step', () => {
  it('counts all its stints that were said, of every record two phones made of it', () => {
    const steps = [1, 2].map((number) => aStep({ number, treatment: 'fillCheck', serves: [aBadCheck(1).id] }));
    const stints = [
      aStint({ number: 1, stepId: steps[0]?.id ?? '', minutes: 20 }),
      aStint({ number: 2, stepId: steps[1]?.id ?? '', minutes: 15 }),
      aStint({ number: 3, stepId: steps[1]?.id ?? '', minutes: null }),
    ];
    expect(item(work({ steps, stints }), 'fillCheck')).toMatchObject({ minutes: 35, records: steps });
  });

  it('is kept in sight when no finding asks for the step any more; an untouched order is not', () => {
    const begun = aStep({ number: 1, treatment: 'fillCheck', serves: [aBadCheck(1).id] });
    const moved = aStep({ number: 2, treatment: 'fillLoss', position: 4 });
    const items = work({ findings: [], steps: [begun, moved], stints: [aStint({ stepId: begun.id })] });
    expect(item(items, begun.id)).toMatchObject({ calledFor: false, stand: 'open', minutes: 60 });
    expect(items.map(({ key }) => key)).not.toContain(moved.id);
  });
});

it('does not depend on the order of findings, marks, records or stints', () => {
  const findings = [
    aBadCheck(1),
    aBadCheck(2),
    aFinding({ number: 3, kind: 'dent', answers: { depthMm: 3, diaMm: 12, count: 4 } }),
  ];
  const marks = [aMark({ number: 1 }), aMark({ number: 2 })];
  const steps = [
    aStep({ number: 1, treatment: 'fillCheck', serves: [aBadCheck(1).id], done: at }),
    aStep({ number: 2, treatment: 'steamDents', serves: [aBadCheck(3).id], skipped: skippedFor('shallow') }),
    aStep({ number: 3, treatment: 'dryClean', position: 0.5 }),
  ];
  const stints = [aStint({ number: 1 }), aStint({ number: 2 })];
  const plain = work({ findings, marks, steps, stints });
  const mixed = <T>(list: readonly T[]) => fc.shuffledSubarray([...list], { minLength: list.length });
  fc.assert(
    fc.property(mixed(findings), mixed(marks), mixed(steps), mixed(stints), (f, m, s, t) => {
      const again = work({ findings: f, marks: m, steps: s, stints: t });
      expect(again.map(({ key, serves, amount, after }) => [key, serves, amount, [...after].sort()])).toEqual(
        plain.map(({ key, serves, amount, after }) => [key, serves, amount, [...after].sort()]),
      );
    }),
    { numRuns: 30 },
  );
});
