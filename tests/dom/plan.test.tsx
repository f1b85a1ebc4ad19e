import { act as acted } from 'preact/test-utils';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { actionsOn } from '../../src/parts/actions.ts';
import { PlanList } from '../../src/parts/plan-list.tsx';
import { useCase } from '../../src/parts/use-case.ts';
import type { Store } from '../../src/store/store.ts';
import { prepared } from '../store/prepared.ts';
import { act, type Drawn, drawn, NOW, openedStore } from '../support/dom.tsx';

let store: Store;
let page: Drawn;
let blockId: string;
let now: number;

function Plan({ id }: { readonly id: string }) {
  const of = useCase(id);
  return of ? <PlanList of={of} /> : null;
}

const MINUTE = 60_000;
const actions = () => actionsOn(store, () => now);
/** Time passes; the page is looked at again. */
const later = (minutes: number): void => {
  now += minutes * MINUTE;
  act(() => void document.dispatchEvent(new Event('visibilitychange')));
};
const steps = (): string[] =>
  [...page.root.querySelectorAll('ol > li > details > summary > span')].map(
    (span) => span.firstChild?.textContent ?? '',
  );
const row = (name: string): HTMLElement => {
  const found = [...page.root.querySelectorAll<HTMLElement>('ol > li')].find(
    (li) => li.querySelector('summary > span')?.firstChild?.textContent === name,
  );
  if (!found) throw new Error(`No step “${name}” among ${steps().join(', ')}.`);
  return found;
};
const block = () => {
  const found = store.get('block', blockId);
  if (!found) throw new Error('The block went missing.');
  return found;
};

beforeEach(async () => {
  now = NOW;
  store = await openedStore();
  blockId = actions().startBlock({ blockType: 'domeCrown', materials: ['lime'], place: 'toDo' });
  const survey = store.surveyOf(blockId);
  if (!survey) throw new Error('The block came without a survey.');
  const split = actions().addFinding(block(), survey, 'split', 'sideBack');
  const found = store.get('finding', split);
  if (!found) throw new Error('The finding went missing.');
  actions().setFinding(found, { answers: { lengthMm: 110, widthMm: 2, stepMm: 0.3 } });
  page = await drawn(<Plan id={blockId} />, store, () => now);
});
afterEach(() => page.clear());

describe('the plan of a block', () => {
  it('stands in working order, each step with what can hurt before how it is done', () => {
    expect(steps().indexOf('Close a split')).toBeLessThan(steps().indexOf('Scrape, sand, true'));
    const text = row('Close a split').textContent ?? '';
    expect(text).toMatch(/For (1 )?Split/);
    expect(text.indexOf('Do not force a gap that has set')).toBeLessThan(text.indexOf('Open, clean, glue'));
    expect(text).toContain('Done when: The two sides cannot be shifted');
  });

  it('protects a mark before the first brush', () => {
    act(() => void actions().addMark(block(), { kind: 'sizeInch', text: '22½' }));
    expect(steps().indexOf('Photograph and protect marks')).toBeLessThan(
      steps().findIndex((name) => /Dry clean/.test(name)),
    );
    expect(row('Photograph and protect marks').textContent).toContain('Size in inches “22½”');
  });

  it('moves a step where the trade allows it, and says why where not', () => {
    const before = steps();
    page.press('Earlier: Seal or re-finish');
    expect(steps()).toEqual(before);
    expect(page.root.querySelector('[role="status"]')?.textContent).toBe(
      '“Scrape, sand, true” must be done before “Seal or re-finish”, so they stay in this order.',
    );
    page.press('Put a step in');
    page.type('What', 'Make a lid');
    page.type('Likely time', '45');
    page.press('Put it in');
    const at = steps().indexOf('Make a lid');
    page.press('Earlier: Make a lid');
    expect(steps().indexOf('Make a lid')).toBe(at - 1);
    act(() => void store.undo());
    expect(steps().indexOf('Make a lid')).toBe(at);
    const summary = row('Make a lid').querySelector('summary');
    act(
      () => void summary?.dispatchEvent(new KeyboardEvent('keydown', { key: 'ArrowUp', altKey: true, bubbles: true })),
    );
    expect(steps().indexOf('Make a lid')).toBe(at - 1);
    page.press('Take it out: Make a lid');
    expect(steps()).not.toContain('Make a lid');
  });

  it('leaves a step out with the reason, and takes it up again', () => {
    page.press('Leave it out: Test block');
    page.press('Leave it out now');
    expect(row('Test block').textContent).toContain('Left out: Fascinators and display pieces.');
    page.press('Take it up again: Test block');
    expect(row('Test block').textContent).not.toContain('Left out');
  });
});

describe('doing a step', () => {
  it('times it, brings the block onto the bench, and undo takes both back', () => {
    page.press('Start: Close a split');
    expect(block().place).toBe('onTheBench');
    later(40);
    expect(page.root.querySelector('[role="timer"]')?.getAttribute('aria-label')).toBe('Running for 40 min');
    act(() => void store.undo());
    expect(block().place).toBe('toDo');
    expect(store.stintsOf(blockId)).toEqual([]);
    expect(store.stepsOf(blockId)).toEqual([]);
  });

  it('pauses one step when another is started: there is one pair of hands', () => {
    page.press('Start: Close a split');
    later(25);
    page.press('Start: Test block');
    expect(row('Close a split').textContent).toContain('25 min so far');
    expect(store.stintsOf(blockId).filter(({ ended }) => ended === null)).toHaveLength(1);
    act(() => void store.undo());
    expect(store.stintsOf(blockId)).toHaveLength(1);
    expect(row('Close a split').querySelector('[role="timer"]')).not.toBeNull();
  });

  it('goes into the log with its estimate when it is done, and its wait begins', () => {
    page.press('Start: Close a split');
    later(90);
    page.press('Done: Close a split');
    const [job] = store.jobsOf(blockId);
    expect(job).toMatchObject({ treatment: 'closeSplit', reference: 'glueAndFill', actualHours: 1.5, pace: 1 });
    // T14 for 110 mm: 1 h and 0.35 h for each 100 mm.
    expect(job?.estimateHours).toBeCloseTo(1 + 0.35 * 1.1);
    // T14 waits 24 h in the cramps. The phone of the tests may keep any zone: an hour and a half on from 10:30 UTC.
    expect(row('Close a split').textContent).toMatch(/Waits until tomorrow at \d\d:00, 24 h to go/);
    expect(row('Scrape, sand, true').textContent).toContain('Still waiting after “Close a split”');
    page.press('Not done after all: Close a split');
    expect(store.jobsOf(blockId)).toEqual([]);
    expect(row('Close a split').textContent).toContain('1 h 30 min so far');
  });

  it('takes minutes as they are said, and corrects the log when they change afterwards', () => {
    page.press('Write minutes down: Close a split');
    page.type('It took me', '50');
    page.press('Write it down');
    page.press('Done: Close a split');
    expect(store.jobsOf(blockId)[0]?.actualHours).toBeCloseTo(50 / 60);
    page.press('Write minutes down: Close a split');
    page.type('It took me', '10');
    page.press('Write it down');
    expect(store.jobsOf(blockId).map(({ actualHours }) => actualHours)).toEqual([1]);
  });

  it('asks how long it was when the timer ran over night', () => {
    page.press('Start: Close a split');
    later(12 * 60);
    expect(row('Close a split').textContent).toContain('12 h by now. How long did you work?');
    page.press('Done: Close a split');
    expect(store.jobsOf(blockId)).toEqual([]);
    page.type('Minutes of work', '70');
    page.press('Count these');
    expect(store.jobsOf(blockId)[0]?.actualHours).toBeCloseTo(70 / 60);
    expect(row('Close a split').textContent).not.toContain('How long did you work?');
  });

  it('asks when the clock went back, and counts nothing by itself', () => {
    page.press('Start: Close a split');
    later(-60);
    expect(row('Close a split').textContent).toContain('The phone’s clock was set back');
    page.press('None of it');
    expect(store.stintsOf(blockId)).toEqual([]);
  });

  it('shows the photographs taken during it under it, and keeps them when the step is taken out', async () => {
    page.press('Put a step in');
    page.type('What', 'Make a lid');
    page.type('Likely time', '45');
    page.press('Put it in');
    const [step] = store.stepsOf(blockId);
    if (!step) throw new Error('The step went missing.');
    await acted(async () => {
      await store.addPhoto(prepared('the lid, half made'), { blockId, stepId: step.id, stage: 'during' });
    });
    expect(row('Make a lid').textContent).toContain('Photographs during this step (1)');
    expect(row('Close a split').textContent).not.toContain('(1)');
    page.press('Take it out: Make a lid');
    expect(store.photosOf(blockId)).toHaveLength(1);
  });

  it('asks whether the repair held once nothing is left to do for it', () => {
    for (const name of steps()) {
      if (name !== 'Test block') page.press(`Done: ${name}`);
    }
    expect(page.text()).not.toContain('Did the repairs hold?');
    page.press('Done: Test block');
    expect(page.text()).toContain('Did the repairs hold?');
    const held = [...page.root.querySelectorAll('label')].find((label) => label.textContent === 'It held');
    act(() => held?.querySelector('input')?.click());
    expect(store.repairsOf(blockId)).toMatchObject([{ kind: 'split', held: true }]);
    page.press('Put it with the ready ones');
    expect(block().place).toBe('ready');
  });
});
