import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, it } from 'vitest';
import { freshDevice, openBrowser } from '../support/phone.ts';
import { handsOn } from './hands.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

it('gives a first answer within 8 taps, digits of the price among them', async () => {
  const { page, close } = await freshDevice(browser);
  const hands = handsOn(page);
  await hands.shelf.open(inject('url'));
  await hands.glance({ shape: 'domeCrown', wood: 'lime', price: '45' });
  const said = hands.answer.dock;
  await expect.poll(() => said.textContent()).toMatch(/Asked £45/);
  await expect.poll(() => said.textContent()).toMatch(/(Pay|Bid) up to\s*£\d/);
  expect(hands.taps()).toBeLessThanOrEqual(8);
  await close();
});

it('walks round a plain sound block within 25 taps, and ends with nothing left to look for', async () => {
  const { page, close } = await freshDevice(browser);
  const hands = handsOn(page);
  await hands.shelf.open(inject('url'));
  await hands.glance({ shape: 'domeCrown', wood: 'lime', price: '45' });
  await hands.tap(hands.look.walk);
  await hands.walk.station('nose').waitFor();
  const heading = page.getByRole('heading', { level: 1 });
  while (page.url().includes('/walk')) {
    const here = await heading.textContent();
    await hands.tap(hands.walk.onward);
    await expect.poll(() => heading.textContent()).not.toBe(here);
  }
  await hands.block.answer.waitFor();
  await expect.poll(() => page.getByRole('main').textContent()).toMatch(/, none left to look for\./);
  await expect.poll(() => hands.answer.verdict('sound').first().isVisible()).toBe(true);
  expect(hands.taps()).toBeLessThanOrEqual(25);
  await close();
});
