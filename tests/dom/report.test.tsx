import { act as acted } from 'preact/test-utils';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { catalogue } from '../../src/catalogue/index.ts';
import { openExample } from '../../src/demo/open-example.ts';
import ReportScreen from '../../src/screens/report/screen.tsx';
import type { Store } from '../../src/store/store.ts';
import { prepared } from '../store/prepared.ts';
import { type Drawn, drawn, openedStore } from '../support/dom.tsx';

let store: Store;
let blockId: string;
let page: Drawn;

beforeEach(async () => {
  store = await openedStore();
  await openExample(store, catalogue);
  blockId = store.blocks.value.find(({ objectNumber }) => objectNumber === 'L04')?.id ?? '';
  page = await drawn(<ReportScreen params={{ id: blockId }} />, store);
});
afterEach(() => page.clear());

const preview = (): string => page.root.querySelector('article')?.textContent ?? '';
const ticks = (): (string | null | undefined)[] =>
  [...page.root.querySelectorAll('[type=checkbox]')].map(
    ({ id }) => page.root.querySelector(`label[for="${id}"]`)?.textContent,
  );

describe('the report screen', () => {
  it('lists three reports and three kinds of file, and begins with the condition as found in a PDF', () => {
    const radios = [...page.root.querySelectorAll<HTMLInputElement>('[type=radio]')];
    const chosen = radios.filter(({ checked }) => checked).map((radio) => radio.closest('label')?.textContent);
    expect(radios).toHaveLength(6);
    expect(chosen).toEqual(['Condition as found', 'PDF, for sending and printing']);
    expect(preview()).toContain('condition as found');
  });

  it('shows another report when it is chosen, and asks only what that one hears', () => {
    expect(ticks().join()).toContain('Recommended work');
    page.tick('Provenance');
    expect(preview()).toContain('Years not accounted for');
    expect(ticks().join()).not.toContain('Recommended work');
    expect(ticks().join()).toContain('The buyer’s card');
    page.tick('Before and after');
    expect(preview()).toContain('No repair was judged yet');
  });

  it('leaves out what is unticked, and puts private people and prices in only when ticked', () => {
    expect(preview()).toContain('What the material asks for');
    page.tick('What the material asks for');
    expect(preview()).not.toContain('What the material asks for');
    // The example’s seller is marked as private, its asking price is £35.
    expect(preview()).not.toMatch(/Ferncastle|£/);
    page.tick('Private people and places');
    expect(preview()).toContain('Odile Ferncastle');
    page.tick('Prices and costs');
    expect(preview()).toContain('£35');
  });

  it('asks and shows of photographs alone only what goes into them, and says where there are none', async () => {
    page.tick('Its photographs alone');
    expect(ticks()).toEqual(['Private people and places']);
    // Its own words for a block without photographs; nothing to prepare.
    expect(page.text()).toContain('This report has no photographs to hand on.');
    expect(page.text()).not.toContain('Prepare the report');
    await acted(() => store.addPhoto(prepared('the cloche from its good side'), { blockId }).then(() => undefined));
    const [photo] = store.photosOf(blockId);
    expect(preview()).toContain(photo?.sha256);
    expect(preview()).not.toContain('Recommended work');
    expect(page.text()).toContain('Prepare the report');
    page.tick('PDF, for sending and printing');
    expect(preview()).toContain('Recommended work');
  });

  it('says that the block is gone when it is', async () => {
    page.clear();
    page = await drawn(<ReportScreen params={{ id: 'nothing' }} />, store);
    expect(page.text()).toContain('This block is not on this phone.');
  });
});
