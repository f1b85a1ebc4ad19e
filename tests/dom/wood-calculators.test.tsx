import { afterEach, describe, expect, it } from 'vitest';
import { calculators } from '../../src/screens/handbook/all-calculators.ts';
import { calculatorOf } from '../../src/text/advice.ts';
import rows from '../handbook/materials-checks.json' with { type: 'json' };
import { type Drawn, drawn } from '../support/dom.tsx';

interface Row {
  readonly id: string;
  readonly inputs: Readonly<Record<string, number | string>>;
  readonly expected: unknown;
}
const check = (id: string): Row => {
  const found = (rows as unknown as readonly Row[]).find((row) => row.id === id);
  if (!found) throw new Error(`No check ${id}.`);
  return found;
};

let page: Drawn;
afterEach(() => page?.clear());

async function open(id: string): Promise<void> {
  const calculator = calculators.find((each) => each.id === id);
  if (!calculator) throw new Error(`No calculator ${id}.`);
  page = await drawn(<calculator.Panel />);
}
const result = (term: string): string => {
  const row = [...page.root.querySelectorAll('dt')].find((dt) => dt.textContent === term);
  if (!row) throw new Error(`No row ${term}: ${page.text()}`);
  return row.nextElementSibling?.textContent ?? '';
};
const title = (): string | null | undefined => page.root.querySelector('section h3')?.textContent;

describe('calculators of wood and pests', () => {
  it('are there for every sum of the plan', () => {
    const ids = calculators.map(({ id }) => id);
    for (const id of Object.values(calculatorOf)) expect(ids).toContain(id);
  });

  it.each(calculators.map(({ id }) => [id]))('%s opens, and says where it comes from', async (id) => {
    await open(id);
    expect(page.text().length).toBeGreaterThan(80);
    expect(page.text()).toMatch(
      /estimate|handbook|geometry|formula|practice|charts|memory|terms|guidance|rule|Institute/i,
    );
  });

  it.each([
    ['basswood1', '1', /^Damp it first/],
    ['basswood2', '2', /^Do not force it/],
  ])('take a crack through the handbook’s %s', async (name, gap, advice) => {
    const { MC_percent, RH_percent } = check(`crack.rh_to_close.${name}`).expected as Record<string, number>;
    await open('crack');
    page.choose('Wood', 'americanBasswood');
    page.type('Gap at the widest', gap);
    page.type('Block, across', '160');
    expect(result('Moisture that closes it')).toBe(`${MC_percent?.toFixed(1)} %`);
    expect(result('Humidity that closes it')).toMatch(new RegExp(`^${Math.round(RH_percent ?? 0)} %`));
    expect(title()).toMatch(advice);
  });

  it('hold a crack’s cautions before its figures', async () => {
    await open('crack');
    page.type('Gap at the widest', '5');
    const cautions = page.root.querySelector('[aria-label="Cautions"]');
    expect(cautions?.textContent).toContain('Do not force it');
    const dl = page.root.querySelector('dl');
    expect(cautions && dl && cautions.compareDocumentPosition(dl) & Node.DOCUMENT_POSITION_FOLLOWING).toBeTruthy();
  });

  it('warm the handbook’s parked car: 50 % at 20 °C is 12 % at 45 °C, and wood then 2.6 %', async () => {
    await open('moisture');
    page.type('Humidity of the room', '50');
    page.type('The same air at', '45');
    // Materials handbook §1.1: 12.2 % RH, EMC 2.6 %.
    expect(result('Humidity then')).toBe('12 %');
    expect(result('Wood would finally hold')).toBe('2.6 %');
    expect(page.text()).toContain('crack in sun or a warm car');
  });

  it('say near saturation rather than a figure nobody knows', async () => {
    await open('moisture');
    page.type('Humidity of the room', '100');
    expect(result('Wood finally holds')).toBe('near saturation');
  });

  it('count the handbook’s clamps', async () => {
    const { inputs, expected } = check('clamp.count.0.7.100.60.2000');
    await open('clamps');
    page.type('Length of the line', String(inputs.length_mm));
    page.type('Depth of the faces', String(inputs.depth_mm));
    page.type('Force of one clamp', String(inputs.clamp_N));
    // An old crack wants 0.3 to 0.7 MPa: the upper end is the handbook's row.
    expect(result('Clamps')).toBe(`1–${expected}`);
  });

  it('end a quarantine on the handbook’s day, and start it again at fresh dust', async () => {
    const { inputs, expected } = check('quarantine.end.2025-06-15.north');
    expect(expected).toBe('2026-09-30');
    await open('quarantine');
    page.type('It came, or comes, on', String(inputs.arrival));
    expect(result('To')).toBe('30 September 2026');
    page.type('Fresh dust last seen on', '2025-11-20');
    expect(result('To')).toBe('20 November 2026');
    page.type('Fresh dust last seen on', '2025-01-02');
    expect(result('To')).toBe('30 September 2026');
  });

  it('are not upset by a year half typed', async () => {
    await open('quarantine');
    page.type('It came, or comes, on', '2025-06-15');
    page.type('It came, or comes, on', '0020-06-15');
    expect(result('To')).toBe('30 September 2026');
  });

  it('ask for the pinning line first, and turn to pins when it is a row', async () => {
    await open('borers');
    expect(title()).toMatch(/^First: do the holes/);
    page.type('Hole across', '1.2');
    page.press('Hole across: 1.5 mm');
    const row = [...page.root.querySelectorAll('label')].find((label) => label.textContent === 'In a row along it');
    row?.querySelector('input')?.click();
    await Promise.resolve();
    expect(page.root.querySelector('dt')?.textContent).toBe('Pin or tack holes');
  });

  it('call a crown of half its weight eaten', async () => {
    await open('weight');
    page.type('Weight', '500');
    expect(title()).toMatch(/^Far too light/);
  });

  it('count the layers of a deep dent: 7 mm is three of water-based filler', async () => {
    await open('filler');
    page.type('Depth', String(check('geom.layers').inputs.depth_mm));
    expect(result('Water-based wood filler')).toContain(`${check('geom.layers').expected} layers`);
  });

  it('size an outbreak: one block small, a shelf of fifty medium', async () => {
    await open('mould');
    page.type('Grown over', '20');
    expect(result('Outbreak')).toMatch(/^small/);
    page.type('Face of all blocks together', '50000');
    expect(result('Outbreak')).toMatch(/^medium/);
  });
});
