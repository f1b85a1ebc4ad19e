import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, it } from 'vitest';
import { freshDevice, KEYS, leaving, openBrowser } from '../support/phone.ts';
import { storedRecords } from '../support/stored.ts';
import { type Hands, handsOn, term } from './hands.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

const NOTE = 'starts at the pin line';

/**
 * Where the focus is: whether on the target, with the browser, and whether one sees it: an outline on what has it or on what
 * is drawn for it, or a zone's own line.
 */
const focusOn = (target: Locator) =>
  target.evaluate((wanted) => {
    const focused = document.activeElement;
    const drawn = focused ? [focused, focused.nextElementSibling, ...focused.querySelectorAll('path')] : [];
    const isSeen = drawn.some((element) => {
      if (!element) return false;
      const { outlineStyle, outlineWidth, stroke, strokeWidth } = getComputedStyle(element);
      const isOutlined = outlineStyle !== 'none' && Number.parseFloat(outlineWidth) >= 2;
      const isZone = element instanceof SVGPathElement && stroke !== 'none' && Number.parseFloat(strokeWidth) >= 3;
      return isOutlined || isZone;
    });
    return {
      isThere: focused === wanted,
      isAway: focused === null || focused === document.body,
      isSeen: isSeen && (focused?.matches(':focus-visible') ?? false),
      what: focused?.outerHTML.slice(0, 120) ?? '',
    };
  });

/** Presses a key until the focus is on the target; on every stop the focus is seen. */
async function reach(page: Page, target: Locator, key = 'Tab'): Promise<void> {
  await target.waitFor();
  for (let presses = 0; presses < 90; presses++) {
    await page.keyboard.press(key);
    const { isThere, isAway, isSeen, what } = await focusOn(target);
    // Past the last stop the focus is with the browser.
    if (!isAway) expect(isSeen, what).toBe(true);
    if (isThere) return;
  }
  throw new Error(`${key} never came to ${target}.`);
}

async function press(page: Page, target: Locator, key: 'Enter' | 'Space' = 'Enter'): Promise<void> {
  await reach(page, target);
  await page.keyboard.press(key);
}

/** The sheet keeps the focus: from where it is round to there again, twice, and never on the page under it. */
async function roundAndRound(page: Page, sheet: Locator): Promise<void> {
  const start = await page.evaluateHandle(() => document.activeElement);
  for (let rounds = 0, presses = 0; rounds < 2; presses++) {
    expect(presses, 'stops in the sheet').toBeLessThan(120);
    await page.keyboard.press('Tab');
    const at = await sheet.evaluate((element, from) => {
      const focused = document.activeElement;
      return { isInside: element.contains(focused) || focused === document.body, isRound: focused === from };
    }, start);
    expect(at.isInside).toBe(true);
    if (at.isRound) rounds++;
  }
}

/** After a new screen is drawn its heading has the focus, and is read out. */
const isAtTheTop = (page: Page): Promise<boolean> => page.evaluate(() => document.activeElement?.tagName === 'H1');

async function toTheKnock(hands: Hands): Promise<void> {
  const { page } = hands;
  await press(page, hands.shelf.lookAtABlock);
  await press(page, hands.look.skipThePhotograph);
  await press(page, hands.look.shape('domeCrown'), 'Space');
  await press(page, hands.look.wood('lime'), 'Space');
  await reach(page, hands.look.price);
  await page.keyboard.type('45');
  await press(page, hands.look.walk);
  for (const station of ['nose', 'heft']) {
    await hands.walk.station(station).waitFor();
    await expect.poll(() => isAtTheTop(page)).toBe(true);
    await press(page, hands.walk.noneSeen);
  }
  await hands.walk.station('knock').waitFor();
}

it('takes a finding from the shelf to the record by keyboard alone, seen at every step', async () => {
  const { page, seen, close } = await freshDevice(browser, KEYS);
  const hands = handsOn(page);
  await hands.shelf.open(inject('url'));
  await hands.shelf.isEmpty.waitFor();
  await toTheKnock(hands);

  await press(page, hands.walk.found('split'));
  await hands.finding.sheet.waitFor();
  // One stop for the whole drawing; the arrows go from zone to zone, Space chooses.
  await reach(page, hands.finding.zones.locator('[tabindex="0"]'));
  await reach(page, hands.finding.zone('sideBack'), 'ArrowRight');
  await page.keyboard.press('Space');
  await expect.poll(() => hands.finding.zone('sideBack').getAttribute('aria-checked')).toBe('true');
  await expect.poll(() => hands.finding.where.inputValue()).toBe('sideBack');
  await reach(page, hands.finding.number('Gap at the widest'));
  await page.keyboard.type('1');
  await press(page, hands.finding.yes('Closes under hand pressure?'), 'Space');
  await reach(page, hands.finding.note);
  await page.keyboard.type(NOTE);

  await roundAndRound(page, hands.finding.sheet);
  await page.keyboard.press('Escape');
  await hands.finding.sheet.waitFor({ state: 'detached' });
  expect((await focusOn(hands.walk.another('split'))).isThere).toBe(true);
  await hands.saved();
  expect(await storedRecords(page, 'finding')).toMatchObject([
    { kind: 'split', zone: 'sideBack', note: NOTE, answers: { widthMm: 1, closesByHand: true } },
  ]);

  await press(page, hands.walk.finding(term('zones', 'sideBack')));
  await expect.poll(() => hands.finding.note.inputValue()).toBe(NOTE);
  await page.keyboard.press('Escape');
  await hands.finding.sheet.waitFor({ state: 'detached' });
  await press(page, hands.undo);
  await hands.saved();
  expect(leaving(seen, inject('url'))).toEqual([]);
  expect(seen.faults).toEqual([]);
  await close();
});
