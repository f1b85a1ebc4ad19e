import { readFile } from 'node:fs/promises';
import ICAL from 'ical.js';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { freshDevice, leaving, openBrowser } from '../support/phone.ts';
import { storedRecords } from '../support/stored.ts';
import { type Hands, handsOn } from './hands.ts';

/** The day of the invented sale, in its opening hours. */
const BOUGHT = new Date('2026-10-17T11:00:00Z');
const LOOKED = new Date('2026-11-16T18:00:00Z');

interface Entry {
  readonly uid: string;
  readonly day: string;
  readonly sequence: number;
  readonly status: string;
}

/** What a calendar takes in from the file, read by a library that shares no code with ours. */
function entriesOf(text: string): readonly Entry[] {
  return new ICAL.Component(ICAL.parse(text)).getAllSubcomponents('vevent').map((component) => {
    const event = new ICAL.Event(component);
    return {
      uid: event.uid,
      day: event.startDate.toString(),
      sequence: event.sequence,
      status: String(component.getFirstPropertyValue('status')),
    };
  });
}

async function calendar({ page, tap, quarantine }: Hands): Promise<readonly Entry[]> {
  await tap(quarantine.prepareCalendar);
  const [download] = await Promise.all([page.waitForEvent('download'), tap(quarantine.saveCalendar)]);
  expect(download.suggestedFilename()).toMatch(/\.ics$/);
  return entriesOf(await readFile(await download.path(), 'utf8'));
}

describe('a lot with live worm', () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await openBrowser();
  });
  afterAll(() => browser.close());

  it('is bought, kept apart, looked at, starts again on fresh dust, and moves its reminders', async () => {
    const { page, seen } = await freshDevice(browser);
    await page.clock.install({ time: BOUGHT });
    const hands = handsOn(page);
    const { tap, type, shelf, quarantine } = hands;
    await shelf.open(inject('url'));
    await tap(shelf.openTheExample);
    await tap(shelf.block('One-piece cloche'));

    // Paid for, it is asked about at once; one tap keeps it apart.
    await tap(quarantine.story);
    await tap(quarantine.paid);
    await type(quarantine.amount, '20');
    await tap(quarantine.writeOffer);
    await tap(quarantine.into);
    await hands.saved();
    await tap(hands.walk.theBlock);
    await tap(quarantine.until('17 October 2027'));
    await quarantine.next('16 November 2026').waitFor();

    const first = await calendar(hands);
    expect(first.map(({ day }) => day).slice(0, 2)).toEqual(['2026-11-16', '2026-12-16']);
    expect(first.at(-1)?.day).toBe('2027-10-17');
    expect(new Set(first.map(({ uid }) => uid)).size).toBe(first.length);

    // A month later fresh dust lies on the paper.
    await page.clock.setFixedTime(LOOKED);
    await page.reload();
    await quarantine.today('16 November 2026').waitFor();
    await tap(quarantine.freshSigns);
    await type(quarantine.seen, 'pale grit under the third hole');
    await tap(quarantine.writeLook);
    await page.getByText('until 16 November 2027').waitFor();
    await quarantine.next('16 December 2026').waitFor();
    await hands.saved();
    expect(await storedRecords(page, 'quarantineCheck')).toMatchObject([{ on: '2026-11-16', freshSigns: true }]);

    // The same entries move: same names, higher numbers, and the end a month later.
    const second = await calendar(hands);
    const before = new Map(first.map((entry) => [entry.uid, entry]));
    for (const { uid, day, sequence } of second) {
      const old = before.get(uid);
      if (old && old.day !== day) expect(sequence).toBeGreaterThan(old.sequence);
    }
    expect(second.filter(({ uid }) => before.has(uid)).length).toBeGreaterThan(first.length - 3);
    expect(second.map(({ day }) => day)).toContain('2027-11-16');

    // Sold as firewood: what the calendar still has is taken out.
    await tap(quarantine.leaveEarly);
    await type(quarantine.whyEarly, 'sold as firewood, buyer told');
    await tap(quarantine.leave);
    await hands.saved();
    await tap(hands.menu('Shelf'));
    await page.evaluate(() => {
      location.hash = '/quarantine';
    });
    const third = await calendar(hands);
    expect(third.length).toBe(second.length);
    expect(new Set(third.map(({ status }) => status))).toEqual(new Set(['CANCELLED']));

    expect(seen.faults).toEqual([]);
    expect(leaving(seen, inject('url'))).toEqual([]);
  });
});
