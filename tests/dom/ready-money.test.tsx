import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { actionsOn } from '../../src/parts/actions.ts';
import { CopyPlan, PathChoice } from '../../src/parts/copy-path.tsx';
import { MoneySpent } from '../../src/parts/money-spent.tsx';
import { ReadyChecks } from '../../src/parts/ready-checks.tsx';
import { useCase } from '../../src/parts/use-case.ts';
import type { Store } from '../../src/store/store.ts';
import { act, type Drawn, drawn, NOW, openedStore } from '../support/dom.tsx';

let store: Store;
let page: Drawn;
let blockId: string;

const block = () => {
  const found = store.get('block', blockId);
  if (!found) throw new Error('The block went missing.');
  return found;
};
const actions = () => actionsOn(store, () => NOW);
const logged = (treatment: string, actualHours: number): void =>
  act(() =>
    actions().logJob(block(), {
      ...{ treatment, reference: 'record', estimateHours: 1, lowHours: 0.5, highHours: 2, actualHours },
    }),
  );

function Parts({ id }: { readonly id: string }) {
  const of = useCase(id);
  return of ? (
    <>
      <ReadyChecks of={of} />
      <MoneySpent of={of} />
      <PathChoice of={of} />
      <CopyPlan of={of} />
    </>
  ) : null;
}

beforeEach(async () => {
  store = await openedStore();
  blockId = actions().startBlock({
    blockType: 'domeCrown',
    materials: ['lime'],
    newPrice: 15_000,
    equalUsedPrice: 9500,
  });
  page = await drawn(<Parts id={blockId} />, store);
});
afterEach(() => page.clear());

/** The choice within one check: others offer the same words. */
function answer(term: string, word: string): void {
  const row = [...page.root.querySelectorAll('li')].find((item) =>
    item.querySelector('summary')?.textContent?.startsWith(term),
  );
  const label = [...(row?.querySelectorAll('label') ?? [])].find((one) => one.textContent === word);
  if (!label) throw new Error(`No “${word}” under “${term}”.`);
  act(() => label.querySelector('input')?.click());
}

describe('the checks before first use', () => {
  it('stand open until each is answered', () => {
    expect(page.text()).toContain(
      '0 of 8 passed. It becomes ready once a hat was tried on it, or when you say why not.',
    );
    answer('First hat on scrap', 'Passed');
    expect(page.text()).toContain('1 of 8 passed. Nothing stands in the way of its being ready.');
    expect(store.readyChecksOf(blockId)).toMatchObject([{ check: 'scrapHat', outcome: 'passed', on: '2026-10-17' }]);
  });
  it('take a test that was left out only with a reason', () => {
    answer('First hat on scrap', 'Left out');
    expect(page.text()).toContain('Without a reason it still counts as open.');
    page.type('Why left out', 'used as a display piece');
    expect(page.text()).toContain('Nothing stands in the way');
  });
  it('are taken back by the same tap', () => {
    answer('Stocking test', 'Failed');
    expect(page.text()).toContain('failed, 17 October 2026');
    answer('Stocking test', 'Failed');
    expect(store.readyChecksOf(blockId)).toEqual([]);
  });
  it('see the hours logged on the test block', () => {
    logged('testBlock', 1.25);
    expect(page.text()).toContain('passed, 17 October 2026: 1¼ h logged on it');
  });
});

describe('the money spent', () => {
  it('is price, hours and consumables, against a new one', () => {
    expect(page.text()).toContain('Nothing yet');
    act(() => actions().addOffer(block(), 'paid', 5200));
    logged('consolidate', 1);
    expect(page.text()).toContain('Price paid£52');
    expect(page.text()).toContain(
      'Consumables: Consolidate weak woodtrade estimate; write down what it cost to replace it£12',
    );
    expect(page.text()).toContain('Your 1 h at your rate£14');
    expect(page.text()).toContain('In all£78');
    expect(page.text()).toContain('£78 of £150');
  });
  it('takes what was really spent for the estimate', () => {
    logged('consolidate', 1);
    page.type('What for', 'resin');
    page.type('How much', '9.50');
    page.choose('For which step', 'consolidate');
    page.press('Write the money down');
    expect(page.text()).toContain('resin (Consolidate weak wood)£9.50');
    expect(page.text()).not.toContain('Consumables: Consolidate');
    page.press('Take out: resin £9.50');
    expect(page.text()).toContain('Consumables: Consolidate');
  });
  it('keeps currencies apart and says so', () => {
    act(() => actions().addOffer(block(), 'paid', 5200));
    act(() => actions().setSettings({ currency: 'EUR' }));
    logged('dryClean', 1);
    expect(page.text()).toContain('Spent, in GBP');
    expect(page.text()).toContain('Spent, in EUR');
    expect(page.text()).toContain('Sums in different currencies are not added up');
  });
  it('says what to insure it at and where the figure comes from', () => {
    expect(page.text()).toContain('£150New for old: made to order, your own figure. Delivery comes on top.');
    expect(page.text()).toContain('£95What an equal used one costs, your own figure.');
    act(() => actions().setBlock(block(), { newPrice: null }, 'the new price'));
    expect(page.text()).toContain('made to order, trade estimate');
  });
});

describe('the way of the copy', () => {
  it('is chosen by hand and given back to the verdict', () => {
    expect(page.text()).toContain('By the verdict, until you choose.');
    page.tick('Copy the shape only');
    expect(block().path).toBe('copy');
    act(() => page.field<HTMLInputElement>('Copy the shape only').click());
    expect(block().path).toBeNull();
  });
  it('says whose shape it may be, what can go wrong, and the hours its price rests on', () => {
    page.tick('Copy the shape only');
    expect(page.text()).toContain('Whose shape is it? Design rights when copying');
    expect(page.text()).toContain('Plaster sets hot');
    expect(page.text()).toContain('Take a copy of the shape');
    expect(page.text()).toContain('2–6 h, then wait 4 days');
  });
  it('does not offer a wet forming on what water undoes', () => {
    expect(page.text()).toContain('One careful forming');
    act(() => actions().setBlock(block(), { materials: ['papierMache'] }, 'the wood'));
    expect(page.text()).not.toContain('One careful forming');
  });
});
