import { afterEach, describe, expect, it, vi } from 'vitest';
import { climateOf } from '../../src/core/climate.ts';
import { Unreadable } from '../../src/screens/keeping/unreadable.tsx';
import { BenchFields } from '../../src/screens/settings/bench-fields.tsx';
import { ClimateFields } from '../../src/screens/settings/climate-fields.tsx';
import { MoneyFields } from '../../src/screens/settings/money-fields.tsx';
import { useApp } from '../../src/ui/app.ts';
import { type Drawn, drawn } from '../support/dom.tsx';

let page: Drawn;
afterEach(() => page.clear());

function Fields() {
  const settings = useApp().store.settings.value;
  return (
    <>
      <MoneyFields settings={settings} />
      <BenchFields settings={settings} />
      <ClimateFields settings={settings} />
    </>
  );
}
const settings = () => page.store.settings.value;

describe('the settings', () => {
  it('keep money in whole minor units and shares as shares', async () => {
    page = await drawn(<Fields />);
    page.type('An hour of your own work', '17.50');
    page.type('Gain you ask', '12.5');
    expect(settings()).toMatchObject({ hourlyRate: 1750, gain: 0.125 });
  });

  it('keep the last rate when the field is emptied on the way to a new one', async () => {
    page = await drawn(<Fields />);
    page.type('An hour of your own work', '');
    expect(settings().hourlyRate).toBe(1400);
  });

  it('offer the three usual currencies first, and any other by its code', async () => {
    page = await drawn(<Fields />);
    const options = [...page.field<HTMLSelectElement>('Currency').options].map(({ value }) => value);
    expect(options.slice(0, 3)).toEqual(['GBP', 'EUR', 'USD']);
    expect(options).toContain('JPY');
    expect(new Set(options).size).toBe(options.length);
    page.choose('Currency', 'SEK');
    expect(settings().currency).toBe('SEK');
  });

  it('never lose the last evening, without which no plan has an end', async () => {
    page = await drawn(<Fields />);
    for (const day of ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday']) page.press(day);
    expect(page.button('Sunday').disabled).toBe(true);
    page.press('Sunday');
    expect(settings().evenings).toEqual([false, false, false, false, false, false, true]);
  });

  it('keep the room’s air within what the sums hold for, and know that it was chosen', async () => {
    page = await drawn(<Fields />);
    page.type('Temperature of the room', '16');
    page.type('Humidity of the room', '200');
    expect(settings()).toMatchObject({ roomTemperatureC: 16, roomHumidityPct: 45, hemisphere: 'north' });
    expect(climateOf(settings()).assumed).toEqual(['hemisphere']);
  });
});

describe('records that cannot be read', () => {
  it('are listed with what to do, whatever is wrong with them', async () => {
    page = await drawn(
      <Unreadable
        records={[
          { id: 'a1', state: 'too-new', why: 'schema 9', raw: { type: 'block', huge: 1n } },
          { id: '', state: 'unreadable', why: 'not a record', raw: null },
        ]}
      />,
    );
    expect(page.text()).toContain('Written by a newer Blockworth');
    expect(page.text()).toContain('unknown type without an id');
    // The stand-in DOM would go to the address instead of saving what lies there.
    const saved = vi.spyOn(URL, 'createObjectURL').mockReturnValue('#kept');
    page.press('Save them to a file');
    const file = saved.mock.calls[0]?.[0] as Blob;
    saved.mockRestore();
    expect(JSON.parse(await file.text())[0].raw).toEqual({ type: 'block', huge: '1n' });
  });
});
