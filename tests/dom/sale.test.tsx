import { act as acted } from 'preact/test-utils';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { catalogue } from '../../src/catalogue/index.ts';
import { openExample } from '../../src/demo/open-example.ts';
import { actionsOn } from '../../src/parts/actions.ts';
import { PriceSuggestion } from '../../src/parts/price-suggestion.tsx';
import { saleActionsOn } from '../../src/parts/sale-actions.ts';
import { useCase } from '../../src/parts/use-case.ts';
import HaggleScreen from '../../src/screens/haggle/screen.tsx';
import GapsScreen from '../../src/screens/sales/gaps-screen.tsx';
import HomeScreen from '../../src/screens/sales/home-screen.tsx';
import LotScreen from '../../src/screens/sales/lot-screen.tsx';
import PricesScreen from '../../src/screens/sales/prices-screen.tsx';
import RecordScreen from '../../src/screens/sales/record-screen.tsx';
import SaleScreen from '../../src/screens/sales/screen.tsx';
import type { Store } from '../../src/store/store.ts';
import { act, type Drawn, drawn, NOW, openedStore } from '../support/dom.tsx';

let store: Store;
let page: Drawn;
let saleId: string;

const actions = () => actionsOn(store, () => NOW);
const saleActions = () => saleActionsOn(store, () => NOW);
const sale = () => {
  const found = store.get('sale', saleId);
  if (!found) throw new Error('The sale went missing.');
  return found;
};
const blockNamed = (number: string) => {
  const found = store.blocks.value.find(({ objectNumber }) => objectNumber === number);
  if (!found) throw new Error(`No block ${number}.`);
  return found;
};
const lot = () => {
  const [found] = store.lotsOf(saleId);
  if (!found) throw new Error('The job lot went missing.');
  return found;
};
const settle = () => acted(async () => void (await new Promise((resolve) => setTimeout(resolve, 30))));

beforeEach(async () => {
  store = await openedStore();
  await openExample(store, catalogue);
  saleId = store.all('sale').value[0]?.id ?? '';
});
afterEach(() => page.clear());

const open = async (Screen: typeof SaleScreen, id: string): Promise<void> => {
  page = await drawn(<Screen params={{ id }} />, store);
  await settle();
};
/** The stand-in DOM is 1024 px wide: a table. */
const rowNames = (): (string | null)[] => [...page.root.querySelectorAll('tbody th a')].map((a) => a.textContent);
const takeNames = (): string[] =>
  [...page.root.querySelectorAll('button')].flatMap((button) => {
    const label = button.getAttribute('aria-label') ?? '';
    return label.startsWith('Leave out: ') ? [label.slice('Leave out: '.length, 'Leave out: '.length + 3)] : [];
  });

describe('the table of a sale', () => {
  beforeEach(() => open(SaleScreen, saleId));

  it('ranks every lot, the box as one', () => {
    expect(rowNames()).toHaveLength(10);
    expect(rowNames()).toContain('L10 Box of nine small pieces');
    expect(page.text()).toContain('With £350');
  });

  it('takes what the expert takes, and something else once that is left out; undo brings it back', async () => {
    expect(takeNames().sort()).toEqual(['L01', 'L02', 'L05', 'L09', 'L10']);
    page.press('Leave out: L05 Sparterie toque form, studio made');
    await settle();
    expect(takeNames()).not.toContain('L05');
    expect(blockNamed('L05').pinned).toBe('out');
    page.press('Let it back in: L05 Sparterie toque form, studio made');
    await settle();
    expect(takeNames()).toContain('L05');
    act(() => void store.undo());
    expect(blockNamed('L05').pinned).toBe('out');
  });

  it('says by how much a pin goes over the purse', async () => {
    act(() => {
      actions().setSale(sale(), { budget: 5_000 });
      saleActions().setFigures(blockNamed('L02'), { pinned: 'in' }, 'the pin');
    });
    await settle();
    expect(page.text()).toContain('£70 too much');
  });

  it('sorts and filters', () => {
    const [header] = [...page.root.querySelectorAll('thead button')];
    act(() => (header as HTMLButtonElement).click());
    expect(rowNames()[0]).toBe('L01 Plain dome crown, stamped 22½');
    expect(header?.closest('th')?.getAttribute('aria-sort')).toBe('ascending');
    page.choose('Show', 'within');
    expect(rowNames()).toHaveLength(5);
  });
});

describe('a job lot', () => {
  beforeEach(() => open(LotScreen, lot().id));

  it('says what is wanted of it and shares the price by worth', () => {
    expect(page.text()).toContain('L10a Button block 110 mm');
    const shares = [...page.text().matchAll(/£([\d.]+) of the price/g)].map(([, amount]) => Number(amount));
    expect(shares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(60, 2);
    expect(page.text()).toContain('not wanted');
  });

  it('lets a block go out of it and come back', () => {
    page.press('Take out: L10a Button block 110 mm');
    expect(blockNamed('L10a').lotId).toBeNull();
    page.press('Choose blocks');
    page.press('Put in: L10a Button block 110 mm');
    expect(blockNamed('L10a').lotId).toBe(lot().id);
  });

  it('can be split: its blocks stay, each a lot by itself, and undo joins them again', () => {
    const { id } = lot();
    page.press('Split it: each block a lot by itself');
    expect(store.get('lot', id)).toBeUndefined();
    expect(blockNamed('L10a').lotId).toBeNull();
    act(() => void store.undo());
    expect(store.blocksOfLot(id)).toHaveLength(9);
  });
});

describe('haggling', () => {
  beforeEach(() => open(HaggleScreen, blockNamed('L02').id));

  it('shows opening and stop, and takes them off the page when covered', () => {
    expect(page.text()).toMatch(/Open at£70Stop at£14\d/);
    page.press('Cover the figures');
    expect(page.text()).not.toContain('Open at');
    expect(page.text()).not.toContain('£70');
    expect(page.text()).not.toMatch(/£14\d/);
    page.press('Show the figures');
    expect(page.text()).toContain('Open at');
  });

  it('writes down what was said with its hour, and offers the next step', () => {
    page.press('£70 next');
    page.press('I offer £70');
    expect(store.offersOf(blockNamed('L02').id)).toMatchObject([
      { what: 'offered', amount: 7_000, saleId, at: '2026-10-17T10:30:00.000Z' },
    ]);
    // Half way from 70 to 120.
    page.press('£95 next');
    page.press('Refused £95');
    page.type('Amount', '110');
    page.press('They ask £110');
    expect(blockNamed('L02').priceAsked).toBe(11_000);
    expect(page.text()).toContain('Asked £110');
  });

  it('names the stop itself as the last bid where no steps are printed, without pence nobody calls', () => {
    act(() =>
      actions().setSale(sale(), {
        terms: { ...sale().terms, way: 'auction', bidSteps: [], premium: [{ upTo: null, rate: 0.24 }] },
      }),
    );
    const stop = /Stop bidding at(£\d+)They/.exec(page.text())?.[1];
    expect(stop).toBeDefined();
    page.press(`${stop} is bid`);
    expect(blockNamed('L02').bidNow).toBe(Number(stop?.slice(1)) * 100);
  });

  it('shows a ladder at an auction, and a tap is the bid now', () => {
    act(() =>
      actions().setSale(sale(), {
        terms: { ...sale().terms, way: 'auction', bidSteps: [{ from: 1_000, step: 1_000 }] },
      }),
    );
    page.type('Bid that stands', '130');
    expect(page.text()).toContain('£140 in all, your last bid');
    page.press('£140 is bid');
    expect(blockNamed('L02').bidNow).toBe(14_000);
    expect(page.text()).toContain('over your limit');
  });
});

describe('going home', () => {
  beforeEach(async () => {
    act(() => {
      actions().setSale(sale(), { diligence: { receipt: 'receipt 7' } });
      saleActions().offer(blockNamed('L01'), 'agreed', 5_000);
      saleActions().offer(blockNamed('L04'), 'paid', 2_000);
      saleActions().offer(lot(), 'agreed', 6_000);
    });
    await open(HomeScreen, saleId);
  });

  it('brings home what was agreed and lets the rest go with its reason, all in one step', () => {
    page.press('Go home with 3');
    expect(blockNamed('L01').place).toBe('toDo');
    expect(blockNamed('L04').place).toBe('quarantine');
    expect(store.quarantinesOf(blockNamed('L04').id)).toMatchObject([{ reason: 'alive', begunOn: '2026-10-17' }]);
    expect(blockNamed('L03')).toMatchObject({ place: 'letGo', notBought: 'tooDear' });
    // Nobody wants the ornament of the box.
    expect(blockNamed('L10e').place).toBe('letGo');
    expect(blockNamed('L10a').place).toBe('toDo');
    act(() => void store.undo());
    expect(blockNamed('L01').place).toBe('lookingAt');
    expect(store.statementsOf(blockNamed('L01').id)).toHaveLength(1);
  });

  it('writes the purchase into the history and the price into the offers, shared in the box', () => {
    page.press('Go home with 3');
    expect(store.statementsOf(blockNamed('L01').id).at(-1)).toMatchObject({
      transfer: 'boughtFrom',
      place: 'Averley-on-Mere',
      certainty: 'certain',
      evidence: [{ kind: 'receipt', text: 'receipt 7' }],
    });
    expect(store.offersOf(blockNamed('L01').id).at(-1)).toMatchObject({ what: 'paid', amount: 5_000, fees: 0 });
    const shares = store.blocksOfLot(lot().id).flatMap(({ id }) => store.offersOf(id));
    expect(shares.reduce((sum, { amount }) => sum + amount, 0)).toBe(6_000);
    // What nobody wants of it bears nothing, and teaches no price.
    expect(store.offersOf(blockNamed('L10e').id)).toEqual([]);
    expect(store.offersOf(blockNamed('L04').id).filter(({ what }) => what === 'paid')).toHaveLength(1);
  });

  it('lets a lot that was not bought come back to the table', async () => {
    page.press('Go home with 3');
    page.clear();
    await open(HaggleScreen, blockNamed('L03').id);
    expect(page.text()).toContain('Not bought: too dear.');
    page.press('Back on the table');
    expect(blockNamed('L03')).toMatchObject({ place: 'lookingAt', notBought: null });
  });

  it('wants a price for each that was bought, and takes one back to the table', () => {
    act(() => actions().setBlock(blockNamed('L06'), { priceAsked: null }, 'the price'));
    page.choose('L06 Sectional fedora, one piece short', 'bought');
    expect(page.button('Go home with 4').disabled).toBe(true);
    page.type('Paid, L06 Sectional fedora, one piece short', '40');
    expect(page.button('Go home with 4').disabled).toBe(false);
    page.choose('L06 Sectional fedora, one piece short', 'open');
    page.press('Go home with 3');
    expect(blockNamed('L06').place).toBe('lookingAt');
  });
});

describe('what a sale is written down with', () => {
  beforeEach(() => open(RecordScreen, saleId));

  it('takes over a border’s rules, dated, and warns where they count in another currency', () => {
    page.choose('Over a border', 'eu');
    expect(sale().terms.customs?.rules).toMatchObject({ code: 'eu', currency: 'EUR', asOf: '2026-07-01' });
    expect(page.text()).toContain('Rates as of 1 July 2026');
    expect(page.text()).toContain('Nothing is converted by itself.');
    page.type('Carriage to the border and over it', '15');
    expect(page.text()).toContain('costs £142.78 in all');
    page.choose('Over a border', 'none');
    expect(sale().terms.customs).toBeNull();
  });

  it('counts the evenings until it must be ready', () => {
    page.type('Ready by', '2026-10-18');
    expect(sale().neededBy).toBe('2026-10-18');
    expect(page.text()).toContain('Your evenings until then: 5 h');
  });
});

describe('what earlier sales teach', () => {
  function Suggestion({ id }: { readonly id: string }) {
    const of = useCase(id);
    return of ? <PriceSuggestion of={of} /> : null;
  }
  const dome = (priceAsked: number): string =>
    actions().startBlock({ blockType: 'domeCrown', materials: ['lime'], priceAsked, place: 'letGo' });

  it('is a suggestion with its count and range, taken over only by a tap', async () => {
    const [own = ''] = [dome(5_000), dome(6_000), dome(8_000)];
    page = await drawn(<Suggestion id={own} />, store);
    expect(page.text()).toContain('Your own list: 2 like it, of the same material, asked £60 to £80');
    expect(store.get('block', own)?.equalUsedPrice).toBeNull();
    page.press('Use £70 for an equal used block');
    expect(store.get('block', own)?.equalUsedPrice).toBe(7_000);
  });

  it('leaves the invented example out of the price list', async () => {
    await open(PricesScreen, '');
    expect(page.text()).toContain('Nothing yet.');
    act(() => void dome(6_000));
    expect(page.text()).toContain('Asked £60, once');
  });

  it('shows the gaps of the shelf in the sizes one works in', async () => {
    const id = actions().startBlock({ blockType: 'domeCrown', place: 'ready' });
    const survey = store.surveyOf(id);
    if (!survey) throw new Error('No survey.');
    actions().setMeasure(survey, 'circRopeMm', 571);
    await open(GapsScreen, '');
    page.press('56 cm');
    page.press('57 cm');
    expect(page.text()).toContain('lacks 56');
    expect(store.settings.value.usualSizes).toEqual([560, 570]);
  });
});
