import { afterEach, describe, expect, it } from 'vitest';
import type { Fields } from '../../src/core/records.ts';
import { actionsOn } from '../../src/parts/actions.ts';
import { FindingSheet } from '../../src/parts/finding-sheet.tsx';
import { PlanList } from '../../src/parts/plan-list.tsx';
import { useCase } from '../../src/parts/use-case.ts';
import type { Store } from '../../src/store/store.ts';
import { act, type Drawn, drawn, NOW, openedStore } from '../support/dom.tsx';

let page: Drawn;
afterEach(() => page.clear());

function Sheet({ blockId, findingId }: { readonly blockId: string; readonly findingId: string }) {
  const of = useCase(blockId);
  return of ? <FindingSheet of={of} findingId={findingId} onClose={() => undefined} /> : null;
}

function Plan({ blockId }: { readonly blockId: string }) {
  const of = useCase(blockId);
  return of ? <PlanList of={of} /> : null;
}

/** A crown of limewood 160 mm across, with findings as told. */
async function told(...findings: readonly { readonly kind: string; readonly answers: Fields<'finding'>['answers'] }[]) {
  const store = await openedStore();
  const actions = actionsOn(store, () => NOW);
  const blockId = actions.startBlock({ blockType: 'domeCrown', materials: ['lime'] });
  const survey = (): NonNullable<ReturnType<Store['surveyOf']>> => {
    const found = store.surveyOf(blockId);
    if (!found) throw new Error('no survey');
    return found;
  };
  actions.setMeasure(survey(), 'circRopeMm', 160 * Math.PI);
  const ids = findings.map(({ kind, answers }) => {
    const block = store.get('block', blockId);
    if (!block) throw new Error('no block');
    const id = actions.addFinding(block, survey(), kind, 'sideLeft');
    for (const [ask, value] of Object.entries(answers)) {
      const finding = store.get('finding', id);
      if (finding) actions.answer(finding, ask, value);
    }
    return id;
  });
  return { store, blockId, ids, actions };
}

const card = (title: string | RegExp): HTMLElement => {
  const all = [...page.root.querySelectorAll<HTMLElement>('section[aria-label]')];
  const found = all.find((section) => new RegExp(title).test(section.getAttribute('aria-label') ?? ''));
  if (!found)
    throw new Error(`No advice called ${title}; there is ${all.map((one) => one.getAttribute('aria-label'))}.`);
  return found;
};
const fact = (section: HTMLElement, term: string): string => {
  const row = [...section.querySelectorAll('dt')].find((dt) => dt.textContent === term);
  if (!row) throw new Error(`No row ${term} in ${section.textContent}`);
  return row.nextElementSibling?.textContent ?? '';
};
/** Whether one thing is read before another. */
const isReadBefore = (first: Element | null, second: Element | null): boolean =>
  !!first && !!second && (first.compareDocumentPosition(second) & Node.DOCUMENT_POSITION_FOLLOWING) !== 0;

describe('advice under a finding', () => {
  it('says of 2 mm on 160 mm of limewood not to force it, with the humidity it would take', async () => {
    const { store, blockId, ids } = await told({ kind: 'split', answers: { widthMm: 2, lengthMm: 100 } });
    page = await drawn(<Sheet blockId={blockId} findingId={ids[0] ?? ''} />, store);
    const advice = card('Do not force it');
    // Materials handbook §1.4: 12.46 % moisture, 67.2 % humidity.
    expect(fact(advice, 'Moisture that closes it')).toBe('12.5 %');
    expect(fact(advice, 'Humidity that closes it')).toMatch(/^67 %/);
    expect(advice.textContent).toContain('above 65 % mould begins');
  });

  it('puts cautions before what to do, and the grade before both', async () => {
    const { store, blockId, ids } = await told({ kind: 'split', answers: { widthMm: 1, lengthMm: 100 } });
    page = await drawn(<Sheet blockId={blockId} findingId={ids[0] ?? ''} />, store);
    const advice = card('Damp it first');
    const cautions = advice.querySelector('[aria-label="Cautions"]');
    expect(cautions?.textContent).toContain('Never damp a block inside tight clamps');
    expect(isReadBefore(cautions, advice.querySelector('dl'))).toBe(true);
    expect(isReadBefore(page.root.querySelector('[aria-live]'), advice)).toBe(true);
  });

  it('follows the answers as they are given', async () => {
    const { store, blockId, ids, actions } = await told({ kind: 'split', answers: { widthMm: 4, lengthMm: 100 } });
    page = await drawn(<Sheet blockId={blockId} findingId={ids[0] ?? ''} />, store);
    card('Do not force it');
    page.type('Gap at the widest', '0.5');
    const advice = card('Glue it and clamp it');
    expect(fact(advice, 'Clamps or bands')).toMatch(/^\d+–\d+, each pulling 1000 N$/);
    act(() => actions.setSettings({ roomHumidityPct: 60 }));
    expect(fact(card('Glue it'), 'Moisture now')).toBe('11 %');
  });

  it('names what was taken for granted, until it is set', async () => {
    const { store, blockId, ids, actions } = await told({ kind: 'flightHoles', answers: { diaMm: 1.5 } });
    page = await drawn(<Sheet blockId={blockId} findingId={ids[0] ?? ''} />, store);
    const first = card('First: do the holes follow the pinning line');
    const watch = card('apart until 17 October 2027');
    expect(isReadBefore(first, watch)).toBe(true);
    expect(watch.textContent).toContain('the northern half of the globe, until you set it');
    act(() => actions.setSettings({ hemisphere: 'south' }));
    // From 17 October the southern season is half begun: the next whole one ends on the last of March 2028.
    expect(card('apart until 31 March 2028').textContent).not.toContain('half of the globe, until');
  });

  it('never says that a block is free of worm', async () => {
    const { store, blockId, ids } = await told({
      kind: 'flightHoles',
      answers: { diaMm: 1.5, activity: 'inactive', pinningLine: 'no', dust: 'none' },
    });
    page = await drawn(<Sheet blockId={blockId} findingId={ids[0] ?? ''} />, store);
    const watch = card('apart until');
    expect(fact(watch, 'Chance that 3 larvae show nothing in one summer')).toMatch(/^30 % \(13–51 %\)$/);
    expect(watch.textContent).toContain('Nobody can say that it is free of worm');
  });

  it('leads to its sources and to the calculator', async () => {
    const { store, blockId, ids } = await told({ kind: 'mould', answers: { areaPct: 30 } });
    page = await drawn(<Sheet blockId={blockId} findingId={ids[0] ?? ''} />, store);
    const advice = card('Dry it, then clean it');
    expect(fact(advice, 'Mask')).toContain('FFP3');
    expect(advice.textContent).toContain('Hukka and Viitanen 1999');
    expect([...advice.querySelectorAll('a')].map(({ href }) => href.split('#')[1])).toContain(
      '/handbook/calculators/mould',
    );
  });

  it('is not there where nothing can be worked out', async () => {
    const { store, blockId, ids } = await told({ kind: 'dust', answers: { level: 2 } });
    page = await drawn(<Sheet blockId={blockId} findingId={ids[0] ?? ''} />, store);
    expect(page.root.querySelectorAll('section[aria-label]')).toHaveLength(0);
  });
});

describe('advice in the plan', () => {
  const stepCalled = (term: string): HTMLElement => {
    const found = [...page.root.querySelectorAll<HTMLElement>('ol > li')].find((li) =>
      li.querySelector('summary')?.textContent?.startsWith(term),
    );
    if (!found) throw new Error(`No step ${term}.`);
    return found;
  };

  it('stands at the step it belongs to, and says of which finding', async () => {
    const { store, blockId } = await told(
      { kind: 'split', answers: { widthMm: 2, lengthMm: 100 } },
      { kind: 'split', answers: { widthMm: 0.5, lengthMm: 60 } },
    );
    page = await drawn(<Plan blockId={blockId} />, store);
    const step = stepCalled('Close a split');
    const titles = [...step.querySelectorAll('section[aria-label] h3')].map((title) => title.textContent);
    expect(titles).toEqual(['Do not force it: fit a sliver', 'Glue it and clamp it']);
    expect(step.textContent).toContain('Split (no. 1)');
    expect(stepCalled('Store').querySelector('section')).toBeNull();
  });

  it('is said once where two findings share it', async () => {
    const { store, blockId } = await told(
      { kind: 'flightHoles', answers: { diaMm: 1.5 } },
      { kind: 'flightHoles', answers: { diaMm: 1.5 } },
    );
    page = await drawn(<Plan blockId={blockId} />, store);
    const cards = [...stepCalled('Quarantine').querySelectorAll('section[aria-label]')];
    expect(cards).toHaveLength(2);
    for (const one of cards) expect(one.textContent).toContain('Flight holes (no. 1) and Flight holes (no. 2)');
  });
});
