import { act as acted } from 'preact/test-utils';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { catalogue } from '../../src/catalogue/index.ts';
import { actionsOn } from '../../src/parts/actions.ts';
import { keepBadge } from '../../src/parts/badge.ts';
import BenchScreen from '../../src/screens/bench/screen.tsx';
import type { Store } from '../../src/store/store.ts';
import { act, type Drawn, drawn, NOW, openedStore, plainly } from '../support/dom.tsx';

let store: Store;
let page: Drawn;
let now: number;

const MINUTE = 60_000;
const actions = () => actionsOn(store, () => now);
/** A crown with a split to close; a whole new one each time. */
function aBlock(name: string): string {
  const id = actions().startBlock({ name, blockType: 'domeCrown', materials: ['lime'], place: 'toDo' });
  const [block, survey] = [store.get('block', id), store.surveyOf(id)];
  if (!block || !survey) throw new Error('The block went missing.');
  const finding = store.get('finding', actions().addFinding(block, survey, 'split', 'sideBack'));
  if (finding) actions().setFinding(finding, { answers: { lengthMm: 110, widthMm: 2, stepMm: 0.3 } });
  return id;
}
/** Lets the schedule, which is made beside the page, arrive. */
const settled = (): Promise<void> => acted(async () => void (await new Promise((resolve) => setTimeout(resolve, 20))));
const later = async (minutes: number): Promise<void> => {
  now += minutes * MINUTE;
  act(() => void document.dispatchEvent(new Event('visibilitychange')));
  await settled();
};
const section = (title: string): string =>
  plainly(
    [...page.root.querySelectorAll('section')].find((one) => one.querySelector('h2')?.textContent === title)
      ?.textContent,
  );
const placeOf = (id: string) => store.get('block', id)?.place;

beforeEach(async () => {
  now = NOW;
  store = await openedStore();
});
afterEach(() => page.clear());

describe('the bench', () => {
  it('says what to do when nothing is on it', async () => {
    page = await drawn(<BenchScreen />, store, () => now);
    expect(page.text()).toContain('Nothing on the bench. Open a block');
    expect(page.text()).not.toContain('Tonight');
  });

  it('lays out tonight and the last day, with the reason it cannot be sooner', async () => {
    const [first, second] = [aBlock('First crown'), aBlock('Second crown')];
    page = await drawn(<BenchScreen />, store, () => now);
    await settled();
    expect(section('Tonight')).toContain('First crown');
    expect(section('All of it')).toMatch(/All of it can be ready on \d+ \w+ 2026, \d+ days counting today\./);
    expect(section('All of it')).toMatch(/No order of work (is sooner|takes less than \d+ days): .+/);
    expect([placeOf(first), placeOf(second)]).toEqual(['toDo', 'toDo']);
  });

  it('draws work and waits of every block, in words as well, and names what the owner has none of', async () => {
    aBlock('First crown');
    page = await drawn(<BenchScreen />, store, () => now);
    await settled();
    const chart = page.root.querySelector('figure');
    const words = chart?.querySelector('details')?.textContent ?? '';
    // Glue holds the clamps overnight: common practice, no source.
    expect(words).toContain('First crown');
    expect(words).toMatch(new RegExp(`${catalogue.treatments.closeSplit?.term}: [^.]*then waits until \\d+ \\w+ 2026`));
    expect(chart?.querySelectorAll('[aria-hidden="true"] [style]').length).toBeGreaterThan(3);
    expect(section('All of it')).not.toContain('you have none of');
    act(() => actions().setSettings({ capacities: { clamps: 0 } }));
    await settled();
    expect(section('All of it')).toContain(`you have none of: ${catalogue.resources.clamps?.term}`);
  });

  it('shows the running timer first, and moves the block onto the bench', async () => {
    const id = aBlock('First crown');
    page = await drawn(<BenchScreen />, store, () => now);
    await settled();
    page.press('Start: Record and photograph as found');
    await later(30);
    expect(section('In hand')).toContain('Record and photograph as found');
    expect(page.root.querySelector('[role="timer"]')?.getAttribute('aria-label')).toBe('Running for 30 min');
    expect(placeOf(id)).toBe('onTheBench');
    page.press('Done: Record and photograph as found');
    expect(store.jobsOf(id)[0]).toMatchObject({ treatment: 'recordAsFound', actualHours: 0.5 });
  });

  it('shows a wait while it runs, and the next step when it is over', async () => {
    const id = aBlock('First crown');
    page = await drawn(<BenchScreen />, store, () => now);
    await settled();
    for (const name of ['Record and photograph as found', 'Dry clean', 'Close a split']) {
      const button = [...page.root.querySelectorAll('button')].find((one) =>
        one.getAttribute('aria-label')?.startsWith(`Done: ${name}`),
      );
      if (!button) throw new Error(`Nothing to press for ${name}: ${section('Tonight')}`);
      act(() => button.click());
      await settled();
    }
    expect(section('Waiting')).toContain('First crown');
    expect(section('Waiting')).toContain('24 h to go');
    expect(section('Ready to go on')).toBe('');
    await later(24 * 60 + 1);
    expect(section('Waiting')).toBe('');
    expect(section('Ready to go on')).toContain('“Close a split” has waited long enough');
    expect(section('Ready to go on')).toMatch(/Next: (Fill|Scrape)/);
    expect(store.stepsOf(id)).toHaveLength(3);
  });
});

describe('the number on the app’s icon', () => {
  it('counts waits that are over, goes when they are followed up, and asks for nothing', async () => {
    const id = aBlock('First crown');
    page = await drawn(<BenchScreen />, store, () => now);
    await settled();
    const shown: (number | 'none')[] = [];
    const end = keepBadge({ store, catalogue, now: () => now }, {
      setAppBadge: async (count?: number) => void shown.push(count ?? 0),
      clearAppBadge: async () => void shown.push('none'),
    } as Navigator);
    const stepId = store.newId();
    const at = new Date(now).toISOString();
    const until = new Date(now + 60 * MINUTE).toISOString();
    await store.change('a step', [
      {
        ...{ do: 'create', type: 'step', id: stepId },
        fields: {
          ...{ blockId: id, treatment: 'reglue', words: '', added: false, serves: [], amount: null, hours: null },
          ...{ waitHours: null, position: null, skipped: null, note: '' },
          ...{ done: { at, offset: '+00:00' }, wait: { since: at, until, offset: '+00:00' } },
        },
      },
    ]);
    await later(59);
    expect(shown.filter((count) => count !== 'none')).toEqual([]);
    await later(2);
    expect(shown.at(-1)).toBe(1);
    page.press('Start: Record and photograph as found');
    expect(shown.at(-1)).toBe('none');
    end();
  });

  it('stays away where the platform has none', () => {
    expect(() => keepBadge({ store, catalogue, now: () => now }, {} as Navigator)()).not.toThrow();
  });
});
