import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { catalogue } from '../../src/catalogue/index.ts';
import { actionsOn } from '../../src/parts/actions.ts';
import { useCase } from '../../src/parts/use-case.ts';
import { asFoundReport } from '../../src/reports/as-found.ts';
import { usualWishes } from '../../src/reports/wishes.ts';
import { FEWEST_PAIRS, NO_PLACES, nextSide, pairsIn, withoutLast } from '../../src/screens/compare/place-pairs.tsx';
import CompareScreen from '../../src/screens/compare/screen.tsx';
import { create } from '../../src/store/edits.ts';
import type { Store } from '../../src/store/store.ts';
import { act, type Drawn, drawn, NOW, openedStore } from '../support/dom.tsx';

let store: Store;
let blockId: string;
let page: Drawn;
let hashes = 0;

function photograph(view: string, stage: 'before' | 'after'): string {
  const id = store.newId();
  const sha256 = (++hashes).toString(16).padStart(64, '0');
  const fields = { blockId, view, stage, sha256, thumbnail: sha256, width: 2048, height: 1536, bytes: 9 };
  act(() => void store.change('a photograph', [create('photo', id, fields)]));
  return id;
}
const actions = () => actionsOn(store, () => NOW);
const photo = (id: string) => store.get('photo', id) as NonNullable<ReturnType<typeof store.get<'photo'>>>;
/** As the worker would have found it: the after shows the face a tenth of its width further right. */
const lineUp = (before: string, after: string, found: { agreement: number | null; method: string }): void =>
  act(() =>
    actions().lineUp(
      photo(before),
      photo(after),
      { h: [1, 0, 0.1, 0, 1, 0, 0, 0, 1], taps: [], version: 1, ...found },
      undefined,
    ),
  );
const key = (name: RegExp, key: string, shiftKey = false): void =>
  act(() => {
    const place = [...page.root.querySelectorAll('button')].find((button) =>
      name.test(button.getAttribute('aria-label') ?? ''),
    );
    place?.dispatchEvent(new KeyboardEvent('keydown', { key, shiftKey, bubbles: true }));
  });

beforeEach(async () => {
  store = await openedStore();
  blockId = actions().startBlock();
});
afterEach(() => page?.clear());

describe('before beside after', () => {
  it('says what is missing as long as no view was taken twice', async () => {
    photograph('top', 'before');
    photograph('front', 'after');
    page = await drawn(<CompareScreen params={{ id: blockId }} />, store);
    expect(page.text()).toContain('Nothing to compare yet');
  });

  it('stands side by side until it is lined up, then is wiped by a slider that says how much of each is seen', async () => {
    const [before, after] = [photograph('top', 'before'), photograph('top', 'after')];
    page = await drawn(<CompareScreen params={{ id: blockId }} />, store);
    page.button('Line them up');
    expect(page.root.querySelector('[type=range]')).toBeNull();
    lineUp(before, after, { agreement: 0.64, method: 'features' });
    expect(page.text()).toContain('agreement 0.64 of 1');
    const slider = page.root.querySelector<HTMLInputElement>('[type=range]');
    expect(slider?.getAttribute('aria-valuetext')).toBe('50 % before');
    act(() => {
      if (!slider) return;
      slider.value = '20';
      slider.dispatchEvent(new Event('input', { bubbles: true }));
    });
    expect(slider?.getAttribute('aria-valuetext')).toBe('20 % before');
    expect(page.root.innerHTML).toContain('inset(0 0 0 20%)');
    page.tick('Side by side');
    expect(page.root.querySelector('[type=range]')).toBeNull();
    page.press('Not lined up');
    page.button('Line them up');
  });

  it('does not praise what lies roughly, nor what only taps vouch for', async () => {
    const [before, after] = [photograph('top', 'before'), photograph('top', 'after')];
    page = await drawn(<CompareScreen params={{ id: blockId }} />, store);
    lineUp(before, after, { agreement: 0.22, method: 'taps' });
    expect(page.text()).toContain('Only roughly lined up by the places tapped');
    act(() => void store.undo());
    lineUp(before, after, { agreement: null, method: 'tapsOnly' });
    expect(page.text()).toContain('the pictures were not asked');
  });

  it('lets one of several views be chosen', async () => {
    for (const view of ['top', 'front']) for (const stage of ['before', 'after'] as const) photograph(view, stage);
    page = await drawn(<CompareScreen params={{ id: blockId }} />, store);
    const [first, second] = [...page.field<HTMLSelectElement>('View').options];
    expect([first?.text, second?.text]).toEqual(['Top', 'Front']);
    page.choose('View', second?.value ?? '');
    expect(page.field<HTMLSelectElement>('View').value).toBe(second?.value);
  });
});

describe('places tapped in both photographs', () => {
  it('go by turns, and the newest can be taken away again', () => {
    expect(nextSide(NO_PLACES)).toBe('before');
    const one = { before: [[0.2, 0.3]], after: [] } as const;
    expect(nextSide(one)).toBe('after');
    expect(pairsIn(one)).toEqual([]);
    expect(withoutLast(one)).toEqual(NO_PLACES);
    const pair = { before: one.before, after: [[0.3, 0.3]] } as const;
    expect(pairsIn(pair)).toEqual([
      [
        [0.2, 0.3],
        [0.3, 0.3],
      ],
    ]);
    expect(withoutLast(pair)).toEqual(one);
  });

  it('can all be put and moved by keys, and line up without a look at the pictures when told to', async () => {
    const [before, after] = [photograph('top', 'before'), photograph('top', 'after')];
    page = await drawn(<CompareScreen params={{ id: blockId }} />, store);
    page.press('Tap four places');
    expect(page.text()).toContain('Place 1. Tap a clear corner');
    for (let n = 1; n <= FEWEST_PAIRS; n++) {
      for (const side of ['before', 'after']) {
        page.press(`Put place ${n} in the middle of the ${side}`);
        for (let step = 0; step < 10; step++) {
          key(new RegExp(`^Place ${n} in the ${side}`), n === 2 || n === 3 ? 'ArrowRight' : 'ArrowLeft', true);
          key(new RegExp(`^Place ${n} in the ${side}`), n > 2 ? 'ArrowDown' : 'ArrowUp', true);
        }
        if (side === 'after') key(new RegExp(`^Place ${n} in the after`), 'ArrowRight', true);
      }
    }
    expect(page.text()).toContain('Line up by these');
    expect(
      page.root.querySelector('button[aria-label^="Place 1 in the before"]')?.getAttribute('aria-label'),
    ).toContain('30 % across, 30 % down');
    // These photographs have no bytes: the look at them fails and says so; what was tapped is still there.
    page.press('Line up by these');
    await new Promise((resolve) => setTimeout(resolve, 20));
    page.draw(<CompareScreen params={{ id: blockId }} />);
    expect(store.alignmentsOf(blockId)).toEqual([]);
    expect(page.root.querySelector('[role=alert]')?.textContent).toMatch(/no longer matches what was saved/);
    expect(page.root.querySelectorAll('button[aria-label^="Place "]')).toHaveLength(8);
    page.press('Take the places as they are');
    const [kept] = store.alignmentsOf(blockId);
    expect(kept).toMatchObject({ beforeId: before, afterId: after, method: 'tapsOnly', agreement: null });
    // Every place one long step further right: 10 × 0.002 of the width.
    for (const [i, value] of [1, 0, 0.02, 0, 1, 0, 0, 0, 1].entries()) expect(kept?.h[i]).toBeCloseTo(value, 9);
  });
});

describe('the report', () => {
  function Report({ id, into }: { readonly id: string; readonly into: { parts?: readonly { kind: string }[] } }) {
    const of = useCase(id);
    if (of) into.parts = asFoundReport(of, { ...usualWishes }, catalogue, 'domeCrown', '2026-10-17T10:30:00Z').parts;
    return null;
  }

  it('has each pair once, cut to what both show where they were lined up, whole where not', async () => {
    const [before, after] = [photograph('top', 'before'), photograph('top', 'after')];
    const found: { parts?: readonly { kind: string }[] } = {};
    page = await drawn(<Report id={blockId} into={found} />, store);
    const pairs = () => found.parts?.filter(({ kind }) => kind === 'pair');
    expect(pairs()).toMatchObject([{ h: null, crop: { x: 0, y: 0, width: 1, height: 1 } }]);
    lineUp(before, after, { agreement: 0.64, method: 'features' });
    // The after's right edge shows what lies at nine tenths of the before: 57 of 64 cells, never more.
    expect(pairs()).toMatchObject([
      { h: [1, 0, 0.1, 0, 1, 0, 0, 0, 1], crop: { x: 0, y: 0, width: 57 / 64, height: 1 } },
    ]);
    act(() => actions().removePhoto(photo(after)));
    expect(pairs()).toEqual([]);
  });
});
