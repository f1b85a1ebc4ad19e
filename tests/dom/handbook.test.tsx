import { afterEach, describe, expect, it } from 'vitest';
import { catalogue } from '../../src/catalogue/index.ts';
import { entry } from '../../src/core/catalogue.ts';
import EntryScreen from '../../src/screens/handbook/entry-screen.tsx';
import SectionScreen from '../../src/screens/handbook/section-screen.tsx';
import { glossaryOf } from '../../src/text/glossary.ts';
import { to } from '../../src/ui/route.ts';
import { act, type Drawn, drawn } from '../support/dom.tsx';

let page: Drawn;
afterEach(() => page.clear());

describe('the handbook', () => {
  it('has a page for every entry of the catalogue, and every link on it leads to one', async () => {
    const addresses = new Set(
      glossaryOf(catalogue).flatMap(({ id, entries }) =>
        entries.map((each) => to('/handbook/:section/:entry', { section: id, entry: each.id })),
      ),
    );
    page = await drawn(null);
    for (const { id: section, entries } of glossaryOf(catalogue)) {
      for (const { id, term } of entries) {
        page.draw(<EntryScreen params={{ section, entry: id }} />);
        expect(page.root.querySelector('h1')?.textContent).toBe(term);
        const links = [...page.root.querySelectorAll<HTMLAnchorElement>('main a')].map((a) => a.getAttribute('href'));
        const lost = links.filter((href) => href && !addresses.has(href) && !href.includes('/calculators/'));
        expect([term, lost]).toEqual([term, []]);
      }
    }
  }, 60_000);

  it('puts the cautions of a treatment before how it is done', async () => {
    page = await drawn(<EntryScreen params={{ section: 'treatments', entry: 'freeze' }} />);
    const freeze = entry(catalogue.treatments, 'freeze');
    const [caution = ''] = freeze?.cautions ?? [];
    expect(caution).not.toBe('');
    expect(page.text().indexOf(caution)).toBeGreaterThan(0);
    expect(page.text().indexOf(caution)).toBeLessThan(page.text().indexOf(freeze?.how ?? ''));
  });

  it('names the origin of every damage kind’s figures', async () => {
    page = await drawn(null);
    for (const [id, kind] of Object.entries(catalogue.damage)) {
      page.draw(<EntryScreen params={{ section: 'damage', entry: id }} />);
      expect(page.text()).toContain(kind.source.text);
    }
  }, 60_000);

  it('says above the law that it is not legal advice', async () => {
    page = await drawn(<SectionScreen params={{ section: 'law' }} />);
    expect(page.text()).toContain('Not legal advice');
    expect(page.root.querySelectorAll('h2')).toHaveLength(catalogue.law.length);
  });

  it('says so where an address leads nowhere, and does not break on an id from a file', async () => {
    page = await drawn(<EntryScreen params={{ section: 'damage', entry: '__proto__' }} />);
    expect(page.text()).toContain('Not in this handbook');
    act(() => page.draw(<SectionScreen params={{ section: 'constructor' }} />));
    expect(page.text()).toContain('Not in this handbook');
  });
});
