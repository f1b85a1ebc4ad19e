import type { Page } from 'playwright-core';
import { catalogue } from '../../src/catalogue/index.ts';
import type { Route } from '../../src/ui/route.ts';
import { storedRecords } from '../support/stored.ts';

const modules = import.meta.glob<{ routes: readonly Route[] }>('../../src/screens/*/route.ts', { eager: true });

/** Every screen the app declares; a new one is visited by every test that goes round them. */
export const declaredPaths: readonly string[] = Object.values(modules).flatMap(({ routes }) =>
  routes.map(({ path }) => path),
);

const SECTIONS = ['damage', 'treatments', 'materials', 'types', 'marks'] as const;

/**
 * Addresses of all screens, filled with the ids of what lies on this device: a block with findings and a photograph, a sale.
 * @throws Error naming what is missing, or the parameter nobody has said how to fill
 */
export async function addresses(
  page: Page,
  { photo: photoWanted = true } = {},
): Promise<readonly { readonly name: string; readonly hash: string }[]> {
  const records = (await storedRecords(page)).filter(({ deleted }) => deleted === null);
  const first = (type: string, fits: (row: (typeof records)[number]) => boolean = () => true) => {
    const row = records.find((record) => record.type === type && fits(record));
    if (!row) throw new Error(`The screens want a ${type} on this device.`);
    return row;
  };
  const findings = records.filter(({ type }) => type === 'finding');
  const photo = photoWanted ? first('photo') : undefined;
  const several = ({ id }: { id: string }): boolean => findings.filter(({ blockId }) => blockId === id).length > 2;
  const block = String(photo?.blockId ?? first('block', several).id);
  const fill: Readonly<Record<string, string | undefined>> = {
    station: 'tape',
    photo: photo?.id ?? '-',
    calculator: 'fees',
    section: 'damage',
    entry: '*',
  };
  const idFor = (path: string): string =>
    path.startsWith('/sale') ? first('sale').id : path.startsWith('/lot') ? first('lot').id : block;
  return declaredPaths.flatMap((path) => {
    const hash = path.replace(/:(\w+)/g, (_, name: string) => {
      const value = name === 'id' ? idFor(path) : fill[name];
      if (!value) throw new Error(`Nobody said what to put for :${name} of the screen ${path}.`);
      return value;
    });
    if (!hash.includes('*')) return [{ name: path, hash }];
    // Each kind of entry has a page of its own.
    return SECTIONS.map((section) => ({
      name: `${path} of ${section}`,
      hash: `/handbook/${section}/${Object.keys(catalogue[section])[0]}`,
    }));
  });
}

/** Goes to a screen by its address and waits until it is drawn and what it loads is there. */
export async function arrive(page: Page, hash: string): Promise<void> {
  await page.evaluate((to) => {
    if (location.hash === `#${to}`) return;
    document.querySelector('h1')?.setAttribute('data-left', '');
    location.hash = to;
  }, hash);
  await page.locator('h1:not([data-left])').waitFor();
  // Pictures and reckoned ranges change what is on the page.
  await page
    .locator('main')
    .filter({ hasNotText: /Reckoning the ranges|Opening the shelf|Laying out the evenings/ })
    .waitFor();
}
