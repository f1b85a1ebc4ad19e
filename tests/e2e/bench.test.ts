import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { freshDevice, openBrowser, PHONE } from '../support/phone.ts';
import { storedRecords } from '../support/stored.ts';
import { handsOn, term } from './hands.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

/** The evening before the night on which London's clocks go back: last Sunday of October, 25 October 2026. */
const EVENING = '2026-10-24T18:00:00Z';

describe('evenings at the bench', () => {
  it('are planned, timed, waited for and learnt from, over a reload and the night the clocks go back', async () => {
    const { page, seen, close } = await freshDevice(browser, PHONE);
    const { shelf, menu, bench, tap, saved, settings } = handsOn(page);
    await page.clock.install({ time: new Date(EVENING) });
    await shelf.open(inject('url'));
    await tap(menu('Bench'));
    await bench.empty.waitFor();
    await tap(menu('Shelf'));
    await tap(shelf.openTheExample);
    for (const name of ['Dipped platter brim with a split', 'Cartwheel brim board']) {
      await tap(shelf.block(name).first());
      await tap(bench.putOnTheList);
      await saved();
      await tap(menu('Shelf'));
    }

    // Two blocks, one pair of hands: starting the second step pauses the first.
    await tap(menu('Bench'));
    await bench.lastDay.waitFor();
    const record = term('treatments', 'recordAsFound');
    await tap(bench.start(record).first());
    await bench.timer.waitFor();
    await page.clock.fastForward('00:20:00');
    await expect.poll(() => bench.timer.getAttribute('aria-label'), { timeout: 10_000 }).toBe('Running for 20 min');
    await saved();
    await page.reload();
    await expect.poll(() => bench.timer.getAttribute('aria-label'), { timeout: 10_000 }).toBe('Running for 20 min');
    await page.clock.fastForward('00:40:00');
    await tap(bench.done(record).first());
    await saved();
    const [job] = await storedRecords(page, 'job');
    // Twice the catalogue's half hour (T01).
    expect(job).toMatchObject({ treatment: 'recordAsFound', estimateHours: 0.5 });
    expect(Number(job?.actualHours)).toBeCloseTo(1, 1);

    // A wait of 24 hours over the night that has 25.
    const [block] = (await storedRecords(page, 'block')).filter(
      ({ name }) => name === 'Dipped platter brim with a split',
    );
    await page.goto(`${inject('url')}#/block/${block?.id}`);
    const split = term('treatments', 'closeSplit');
    await tap(bench.step(split));
    await tap(bench.done(split));
    await saved();
    await tap(menu('Bench'));
    await bench.waiting.getByText(/Waits until tomorrow at 19:0\d \(GMT\), 24 h to go/).waitFor();
    await page.clock.fastForward('23:50:00');
    await bench.waiting.getByText(/(9|10) min to go/).waitFor();
    await page.clock.fastForward('00:15:00');
    await bench.readyToGoOn.getByText(`“${split}” has waited long enough since today at 19:0`).waitFor();

    // What the first evening taught: ln 2 over a prior worth four jobs, handbook §3.5.
    await tap(menu('Settings'));
    await settings.pace
      .getByText(`${(2 ** (1 / 5)).toFixed(2)} × the estimate`)
      .first()
      .waitFor();
    expect(seen.faults).toEqual([]);
    await close();
  }, 60_000);
});
