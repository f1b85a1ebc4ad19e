import type { Browser, Locator } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, it } from 'vitest';
import { freshDevice, leaving, openBrowser, type Phone } from '../support/phone.ts';
import { storedRecords } from '../support/stored.ts';
import { type Hands, handsOn } from './hands.ts';

let browser: Browser;
let phone: Phone;
let hands: Hands;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

const SOON = { timeout: 15_000 };
const words = async (of: Locator): Promise<string> => (await of.textContent()) ?? '';

it('goes round the example sale: looks, haggles, buys three and goes home', async () => {
  phone = await freshDevice(browser);
  hands = handsOn(phone.page);
  const { sale, haggle, home, shelf, look, walk } = hands;
  await shelf.open(inject('url'));
  await hands.tap(shelf.openTheExample);
  await shelf.blocks.first().waitFor();
  await hands.tap(hands.menu('Sales'));
  await hands.tap(sale.open('Lanthorn'));

  // The expert's set (trade handbook §8), once every forecast is in.
  await expect.poll(() => words(sale.advice), SOON).toMatch(/Take 5: £328 in all/);
  await expect.poll(() => sale.lots.count()).toBe(10);

  // A lot nobody has seen yet, at a glance: within 8 taps it stands in the table.
  const before = hands.taps();
  await hands.tap(sale.lookHere);
  await hands.tap(look.shape('domeCrown'));
  await hands.tap(look.wood('lime'));
  await hands.type(look.price, '20');
  expect(hands.taps() - before).toBeLessThanOrEqual(8);
  const table = phone.page.url().replace(/#.*/, `#/sale/${(await storedRecords(phone.page, 'sale'))[0]?.id}`);
  await hands.saved();
  await phone.page.goto(table);
  const fresh = sale.lot('Dome crown block');
  await expect.poll(() => words(fresh), SOON).toMatch(/Not looked at yet\. .+: worth £\d/);
  const first = await words(fresh);

  // Looking on changes its line.
  await hands.tap(fresh.getByRole('link').filter({ hasText: 'Dome crown block' }));
  await hands.tap(hands.block.walk);
  for (let station = 0; station < 4; station += 1) {
    const heading = phone.page.getByRole('heading', { level: 1 });
    const here = await words(heading);
    await hands.tap(walk.onward);
    await expect.poll(() => words(heading), SOON).not.toBe(here);
  }
  await hands.saved();
  await phone.page.goto(table);
  await expect.poll(() => words(fresh), SOON).toContain('Partly looked at');
  await expect.poll(() => words(fresh), SOON).not.toBe(first);

  // An offer, covered from the other side of the table, and agreed.
  await hands.tap(sale.haggle('L02'));
  await hands.tap(haggle.say('£70 next'));
  await hands.tap(haggle.say('I offer £70'));
  await hands.tap(haggle.cover);
  expect(await words(haggle.figures)).not.toContain('£');
  await hands.type(haggle.amount, '100');
  await hands.tap(haggle.say('Agreed £100'));
  await expect.poll(() => words(haggle.said), SOON).toMatch(/You offered £70.*Agreed £100/);
  await hands.tap(sale.theLots);
  await expect.poll(() => words(sale.lot('L02')), SOON).toContain('Agreed');

  for (const [lot, price] of [
    ['L01', '50'],
    ['L04', '20'],
  ] as const) {
    await hands.tap(sale.haggle(lot));
    await hands.type(haggle.amount, price);
    await hands.tap(haggle.say(`Paid £${price}`));
    await expect.poll(() => words(haggle.said), SOON).toContain(`Paid £${price}`);
    await hands.tap(sale.theLots);
  }

  await hands.tap(sale.goHome);
  await home.go.waitFor();
  await expect.poll(() => words(home.go)).toBe('Go home with 3');
  await hands.tap(home.go);
  await shelf.blocks.first().waitFor();
  const section = (name: string): Locator =>
    phone.page.locator('section').filter({ has: phone.page.getByRole('heading', { level: 2, name, exact: true }) });
  await expect.poll(() => words(section('To do')), SOON).toMatch(/L01.*L02|L02.*L01/);
  await expect.poll(() => words(section('In quarantine'))).toContain('L04');
  await hands.saved();

  const blocks = await storedRecords(phone.page, 'block');
  const byNumber = (number: string) => blocks.find(({ objectNumber }) => objectNumber === number);
  expect(byNumber('L03')).toMatchObject({ place: 'letGo', notBought: 'tooDear' });
  const statements = await storedRecords(phone.page, 'statement');
  expect(
    statements.filter(({ blockId, transfer }) => blockId === byNumber('L01')?.id && transfer === 'boughtFrom'),
  ).toHaveLength(1);
  expect(leaving(phone.seen, inject('url'))).toEqual([]);
  expect(phone.seen.faults).toEqual([]);
  await phone.close();
});
