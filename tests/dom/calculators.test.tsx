import { afterEach, describe, expect, it } from 'vitest';
import { calculators } from '../../src/screens/handbook/all-calculators.ts';
import { checksOf } from '../handbook/checks.ts';
import sizes from '../handbook/hat-size-table.json' with { type: 'json' };
import { act, type Drawn, drawn } from '../support/dom.tsx';

let page: Drawn;
afterEach(() => page.clear());

async function open(id: string): Promise<void> {
  const calculator = calculators.find((each) => each.id === id);
  if (!calculator) throw new Error(`Calculator came as ${id}, expected one of ${calculators.map((each) => each.id)}.`);
  page = await drawn(<calculator.Panel />);
}

/** The value beside a term of the results. */
function result(term: string): string {
  const label = [...page.root.querySelectorAll('dt')].find((each) => each.textContent === term);
  return label?.nextElementSibling?.textContent ?? `no ${term}`;
}
const check = (group: string, id: string): number => {
  const row = checksOf(group).find((each) => each.id === id);
  if (typeof row?.expected !== 'number') throw new Error(`Check came as ${id}, expected one with a number.`);
  return row.expected;
};

describe('the calculators', () => {
  it('each have their own address and say where their formula comes from', async () => {
    expect(new Set(calculators.map(({ id }) => id)).size).toBe(calculators.length);
    for (const { id } of calculators) {
      await open(id);
      expect(page.root.querySelectorAll('[role="status"] + p').length).toBeGreaterThan(0);
      page.clear();
    }
  });

  it('give every row of the handbook’s size table from its centimetres, and the centimetres back from its US size', async () => {
    await open('sizes');
    for (const { cm, us, uk } of sizes) {
      page.type('Size', String(cm));
      const shown = (size: number | null) => (size === null ? 'not on charts' : size);
      expect([cm, asNumber(result('US'))]).toEqual([cm, shown(us)]);
      expect([cm, asNumber(result('UK'))]).toEqual([cm, shown(uk)]);
    }
    act(() => page.field<HTMLInputElement>('US').click());
    page.type('Size', '7.125');
    // A US ⅛ is 9.975 mm wide, so its middle lies within half of that of 57 cm.
    expect(Math.abs(Number.parseFloat(result('Centimetres, also EU')) - 57)).toBeLessThan(0.5);
  });

  it('turn a head into its block and the block into its head', async () => {
    await open('headAllowance');
    page.type('Head, by the tape', '570');
    expect(Number.parseFloat(result('Block to use'))).toBeCloseTo(check('allowance', 'allow.block_for_head'), 0);
    act(() => page.field<HTMLInputElement>('Blockwhich head it serves').click());
    page.type('Block, at the rope line', '580');
    expect(Number.parseFloat(result('Head it serves'))).toBeCloseTo(check('allowance', 'allow.head_from_block'), 0);
  });

  it('take the hammer price to the bill and a limit to the highest bid, at terms typed in', async () => {
    await open('fees');
    page.type('Hammer or ticket price', '100');
    expect(result('In all')).toBe(`£${check('fees', 'fee.margin_100').toFixed(2)}`);
    page.type('Online platform’s charge', '4.95');
    page.press('Add a cost');
    page.type('Cost 1, each block', '14');
    page.type('Most to pay in all', '120');
    expect(page.text()).toContain(`For £120 in all, bid up to £${check('fees', 'fee.inverse_120')}.`);
    page.type('Hammer or ticket price', '80');
    expect(result('In all')).toBe(`£${check('fees', 'fee.online_80').toFixed(2)}`);
  });

  it('say so when no oval has that circumference and oval number', async () => {
    await open('oval');
    page.type('Circumference', '300');
    page.type('Oval number', '190');
    expect(page.text()).toContain('There is no such oval');
  });

  it('name every meaning of an ambiguous stamp until the tape decides', async () => {
    await open('stamp');
    page.type('Stamp, as you read it', '7');
    expect(page.root.querySelectorAll('dt')).toHaveLength(3);
    page.type('Tape at the rope line', '571');
    const [first] = page.root.querySelectorAll('dt');
    expect(first?.textContent).toContain('UK 7');
    expect(first?.nextElementSibling?.textContent).toBe('nearest');
  });
});

/** “7⅛” → 7.125. */
function asNumber(size: string): number | string {
  const eighth = '⅛¼⅜½⅝¾⅞'.indexOf(size.at(-1) ?? '');
  if (!/^\d/.test(size)) return size;
  return eighth < 0 ? Number(size) : Number(size.slice(0, -1)) + (eighth + 1) / 8;
}
