import { act as acted } from 'preact/test-utils';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { actionsOn } from '../../src/parts/actions.ts';
import { MarksEditor } from '../../src/parts/marks-editor.tsx';
import { useCase } from '../../src/parts/use-case.ts';
import { Chain } from '../../src/screens/story/chain.tsx';
import { Offers } from '../../src/screens/story/offers.tsx';
import { Steps } from '../../src/screens/story/steps.tsx';
import type { Store } from '../../src/store/store.ts';
import { inOrder } from '../../src/text/provenance.ts';
import { act, type Drawn, drawn, NOW, openedStore, plainly } from '../support/dom.tsx';

let store: Store;
let page: Drawn;
let blockId: string;

function Parts({ id }: { readonly id: string }) {
  const of = useCase(id);
  if (!of) return null;
  return (
    <>
      <Chain of={of} />
      <Steps of={of} />
      <MarksEditor of={of} />
      <Offers of={of} />
    </>
  );
}

const block = () => {
  const found = store.get('block', blockId);
  if (!found) throw new Error('The block went missing.');
  return found;
};
const actions = () => actionsOn(store, () => NOW);
const chain = () => inOrder(store.statementsOf(blockId));
const printed = (): string => page.root.querySelector('blockquote')?.textContent ?? '';

beforeEach(async () => {
  store = await openedStore();
  const saleId = actions().startSale({
    title: 'Lanthorn Playhouse',
    place: 'Averley-on-Mere',
    seller: 'Odile Ferncastle',
    when: { words: '17 October 2026', edtf: '2026-10-17' },
    diligence: { receipt: 'receipt 7' },
  });
  blockId = actions().startBlock({ saleId });
  page = await drawn(<Parts id={blockId} />, store);
});
afterEach(() => page.clear());

describe('the statement editor', () => {
  it('writes the chain as it is being entered', () => {
    page.press('Add a step');
    page.choose('How it passed', 'madeFor');
    page.type('Whom', '[model house]');
    page.type('When', 'before 1958');
    page.choose('Add evidence', 'stamp');
    page.type('Stamp', 'style number B 207');
    page.tick('Passed straight on to the next owner');
    expect(chain()[0]).toMatchObject({
      transfer: 'madeFor',
      party: '[model house]',
      evidence: [{ kind: 'stamp', text: 'style number B 207' }],
      direct: true,
      certainty: 'possible',
    });
    expect(printed()).toBe('Possibly made for [model house], before 1958 [style number B 207].');
  });

  it('understands the date and keeps the words beside what it understood', async () => {
    page.press('Add a step');
    await acted(async () => {
      await import('../../src/text/edtf-words.ts');
    });
    page.type('When', '1930s');
    expect(chain()[0]?.when).toEqual({ words: '1930s', edtf: '193X' });
    expect(page.text()).toContain('Understood as: some year in the 1930s.');
    page.type('When', 'when the roof leaked');
    expect(chain()[0]?.when).toEqual({ words: 'when the roof leaked', edtf: null });
    expect(page.text()).toContain('Kept as you typed it.');
  });

  it('says what each degree of certainty needs', () => {
    page.press('Add a step');
    expect(page.text()).toContain('A document naming this block, or two independent sources.');
  });
});

describe('the steps of a chain', () => {
  beforeEach(() => {
    act(() => {
      for (const party of ['first', 'second', 'third']) {
        actions().addStatement(block(), { party, position: chain().length });
      }
    });
  });

  it('shows a gap between two steps until one passed straight to the next', () => {
    const gaps = () => page.text().split('Gap: what came between is not known.').length - 1;
    expect(gaps()).toBe(2);
    act(() => actions().setStatement(chain()[0] as never, { direct: true }));
    expect(gaps()).toBe(1);
  });

  it('moves a step, one change to undo', () => {
    page.press('Earlier: Possibly third');
    expect(chain().map(({ party }) => party)).toEqual(['first', 'third', 'second']);
    page.press('Earlier: Possibly third');
    expect(chain().map(({ party }) => party)).toEqual(['third', 'first', 'second']);
    page.press('Later: Possibly first');
    expect(chain().map(({ party }) => party)).toEqual(['third', 'second', 'first']);
    act(() => void store.undo());
    expect(chain().map(({ party }) => party)).toEqual(['third', 'first', 'second']);
  });

  it('moves steps that two phones put at the same place', () => {
    act(() => {
      for (const step of chain()) actions().setStatement(step, { position: 0 });
    });
    const before = chain().map(({ party }) => party);
    page.press(`Later: Possibly ${before[0]}`);
    expect(chain().map(({ party }) => party)).toEqual([before[1], before[0], before[2]]);
  });
});

describe('a purchase', () => {
  it('is filled from the sale, with the price paid, and hides both from others', () => {
    page.press('Add your purchase');
    page.press('Done');
    act(() => page.field<HTMLInputElement>('Paid').click());
    page.type('Amount', '52');
    page.press('Write it down');
    expect(printed()).toBe('Bought from Odile Ferncastle, Averley-on-Mere, 17 October 2026, £52 [receipt 7].');
    page.tick('Show it as others would see it');
    expect(printed()).toBe('Bought from a private owner, Averley-on-Mere, 17 October 2026 [receipt 7].');
  });
});

describe('the marks editor', () => {
  it('reads a size stamp against the tape, the nearest meaning first', () => {
    const survey = store.surveyOf(blockId);
    if (!survey) throw new Error('The block came without a survey.');
    act(() => actions().setMeasure(survey, 'circRopeMm', 571));
    page.choose('Add a mark', 'sizeHat');
    page.type('Text, as seen', '7');
    // Handbook §8, lot L08: stamp 7 against a 571 mm tape points to the UK scale.
    const options = [...page.root.querySelectorAll('fieldset')]
      .find((set) => set.querySelector('legend')?.textContent === 'What the stamp can mean')
      ?.querySelectorAll('label');
    expect(plainly(options?.[0]?.textContent)).toContain('UK 7568.5 mm; the tape says 571 mm, 2.5 mm more');
    expect(options).toHaveLength(3);
  });

  it('stores the chosen meaning under a key a record may hold', () => {
    page.choose('Add a mark', 'sizePoint');
    page.type('Text, as seen', '3½');
    act(() => page.field<HTMLInputElement>('3½ French points540 mm round').click());
    expect(store.marksOf(blockId)[0]?.reading).toBe('frenchPoint');
  });

  it('says so when a text is no size on any scale', () => {
    page.choose('Add a mark', 'sizeInch');
    page.type('Text, as seen', 'B 207');
    expect(page.text()).toContain('No size on any scale');
  });
});
