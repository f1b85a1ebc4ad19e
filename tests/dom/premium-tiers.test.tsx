import { useState } from 'preact/hooks';
import { afterEach, describe, expect, it } from 'vitest';
import type { SaleTerms } from '../../src/core/records.ts';
import { PremiumTiers } from '../../src/parts/premium-tiers.tsx';
import { type Drawn, drawn } from '../support/dom.tsx';

type Tiers = SaleTerms['premium'];
let page: Drawn;
let stored: Tiers;
afterEach(() => page.clear());

/** As a sale keeps them: what the editor gives is what it is shown next. */
function Keeper({ start }: { readonly start: Tiers }) {
  const [tiers, setTiers] = useState(start);
  stored = tiers;
  return <PremiumTiers tiers={tiers} currency="GBP" onChange={setTiers} />;
}
const open = async (start: Tiers): Promise<void> => {
  page = await drawn(<Keeper start={start} />);
};

const twoSlices: Tiers = [
  { upTo: 50_000, rate: 0.26 },
  { upTo: null, rate: 0.2 },
];

describe('the premium editor', () => {
  it('starts from no premium and makes one on the whole hammer price', async () => {
    await open([]);
    expect(page.text()).toContain('No premium');
    page.press('Add a premium');
    page.type('Premium on the whole hammer price', '25');
    expect(stored).toEqual([{ upTo: null, rate: 0.25 }]);
  });

  it('keeps a rate with decimals as the share it is', async () => {
    await open([{ upTo: null, rate: 0.24 }]);
    page.type('Premium on the whole hammer price', '4.95');
    expect(stored).toEqual([{ upTo: null, rate: 0.0495 }]);
  });

  it('does not store a second slice until the first has an end, and says so', async () => {
    await open([{ upTo: null, rate: 0.26 }]);
    page.press('Add a slice above');
    expect(stored).toEqual([{ upTo: null, rate: 0.26 }]);
    expect(page.text()).toContain('Not stored yet');
    page.type('Slice 1 ends at', '500');
    expect(page.text()).not.toContain('Not stored yet');
    page.type('Premium above £500', '20');
    expect(stored).toEqual(twoSlices);
  });

  it('never stores slices that do not rise, even for the moment of typing', async () => {
    await open([{ upTo: 20_000, rate: 0.3 }, ...twoSlices]);
    page.type('Slice 2 ends at', '1');
    expect(stored[1]?.upTo).toBe(50_000);
    page.type('Slice 2 ends at', '1200');
    expect(stored[1]?.upTo).toBe(120_000);
    expect(page.text()).not.toContain('Not stored yet');
  });

  it('names each slice by its bounds, so that a label read aloud says which it is', async () => {
    await open([{ upTo: 20_000, rate: 0.3 }, ...twoSlices]);
    for (const label of ['Premium to £200', 'Premium £200 to £500', 'Premium above £500']) {
      expect(page.field(label)).toBeTruthy();
    }
  });

  it('removes the middle slice and joins its neighbours', async () => {
    await open([{ upTo: 20_000, rate: 0.3 }, ...twoSlices]);
    page.press('Remove the premium £200 to £500');
    expect(stored).toEqual([{ upTo: 20_000, rate: 0.3 }, twoSlices[1]]);
  });
});
