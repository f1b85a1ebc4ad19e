import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { describe, expect, inject, it } from 'vitest';
import {
  DESK,
  type Device,
  FAKE_CAMERA,
  freshDevice,
  leaving,
  openBrowser,
  PHONE,
  type Seen,
} from '../support/phone.ts';
import { photograph } from '../support/photograph.ts';
import { type Hands, handsOn } from './hands.ts';
import { addresses, arrive } from './screens.ts';
import { overflowing, smallTargets } from './sizes.ts';

/** WCAG 2.2, levels A and AA. */
const LEVELS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];
/** Narrowest width a page must flow in without scrolling sideways (WCAG 1.4.10). */
const NARROW = { width: 320, height: 640 };

/** Body text is held to 7 : 1 as well (WCAG 1.4.6), large text to 4.5 : 1. */
const ENHANCED = 'color-contrast-enhanced';
const COLOURS = ['color-contrast', ENHANCED];

type Results = Awaited<ReturnType<AxeBuilder['analyze']>>;
type Options = NonNullable<Parameters<AxeBuilder['options']>[0]>;

/** Violations on the page, as sentences by rule. The builder puts axe into the page once; a new address keeps it there. */
async function violations(page: Page, options: Options): Promise<readonly { rule: string; fault: string }[]> {
  if (!(await page.evaluate(() => 'axe' in window))) {
    await new AxeBuilder({ page }).setLegacyMode().withRules(['document-title']).analyze();
  }
  const found = await page.evaluate(
    (wanted) => (window as unknown as { axe: { run(options: Options): Promise<Results> } }).axe.run(wanted),
    { ...options, resultTypes: ['violations'] } satisfies Options,
  );
  return found.violations.flatMap(({ id, nodes }) =>
    nodes.flatMap(({ target, any }) => {
      const why = any.map(({ message }) => message).join(' ');
      // What the foot of a sheet half covers where it happens to be scrolled to is no smaller for it.
      return id === 'target-size' && why.includes('partially obscured')
        ? []
        : [{ rule: id, fault: `${id}: ${target.join(' ')} ${why}` }];
    }),
  );
}
const everyRule: Options = {
  runOnly: LEVELS,
  rules: { 'target-size': { enabled: true }, [ENHANCED]: { enabled: true } },
};

/** Faults by claim, each with the screen it is on. */
const faults: Record<'light' | 'dark' | 'contrast' | 'desk' | 'targets' | 'narrow', string[]> = {
  light: [],
  dark: [],
  contrast: [],
  desk: [],
  targets: [],
  narrow: [],
};
const seen: Seen[] = [];
const visited = { phone: [] as string[], desk: [] as string[] };
let rounds = 0;
const note = (claim: keyof typeof faults, screen: string, found: readonly string[]): void => {
  faults[claim].push(...found.map((fault) => `${screen} – ${fault}`));
};

async function look(page: Page, screen: string, claim: 'light' | 'dark' | 'desk', options: Options): Promise<void> {
  for (const { rule, fault } of await violations(page, options)) {
    note(rule === ENHANCED ? 'contrast' : claim, `${screen}, ${claim}`, [fault]);
  }
}

async function lookOnPhone(page: Page, screen: string): Promise<void> {
  visited.phone.push(screen);
  await look(page, screen, 'light', everyRule);
  note('targets', screen, await smallTargets(page));
  // In the dark only the colours are others.
  await page.emulateMedia({ colorScheme: 'dark' });
  await look(page, screen, 'dark', { runOnly: { type: 'rule', values: COLOURS } });
  await page.emulateMedia({ colorScheme: 'light' });
  await page.setViewportSize(NARROW);
  note('narrow', screen, await overflowing(page));
  await page.setViewportSize(PHONE.viewport);
}

async function lookAtDesk(page: Page, screen: string): Promise<void> {
  visited.desk.push(screen);
  await look(page, screen, 'desk', everyRule);
}

/** Opens the example sale, photographs one of its blocks, and goes round every screen and what opens on them. */
async function goRound(device: Device, lookAt: (page: Page, screen: string) => Promise<void>): Promise<void> {
  const browser = await openBrowser(FAKE_CAMERA);
  const { page, seen: seenHere } = await freshDevice(browser, device);
  seen.push(seenHere);
  const hands = handsOn(page);
  const press = device.hasTouch ? hands.tap : (target: Parameters<Hands['tap']>[0]) => target.click();
  await hands.shelf.open(inject('url'));
  await hands.shelf.isEmpty.waitFor();
  await lookAt(page, 'the empty shelf');
  await press(hands.shelf.openTheExample);
  await hands.shelf.blocks.first().waitFor();

  const block = (await addresses(page, { photo: false })).find(({ name }) => name === '/block/:id')?.hash ?? '';
  await arrive(page, block);
  const buffer = await photograph(page, { width: 600, height: 800 });
  await hands.choose([{ name: 'front.jpg', mimeType: 'image/jpeg', buffer }]);
  await hands.block.photograph.first().waitFor();
  await hands.saved();
  // So that the bench has something to show.
  await press(hands.bench.putOnTheList);
  await hands.saved();

  for (const { name, hash } of await addresses(page)) {
    await arrive(page, hash);
    await lookAt(page, name);
  }
  await arrive(page, `${block}/report`);
  await hands.report.file('Its photographs alone').check();
  await lookAt(page, 'a report’s photographs alone');
  await arrive(page, `${block}/quarantine`);
  await press(hands.quarantine.keepApart);
  await hands.quarantine.writeLook.waitFor();
  await lookAt(page, 'a quarantine that runs');
  await arrive(page, `${block}/walk/torch`);
  await press(hands.walk.foundAny.first());
  await hands.finding.sheet.waitFor();
  await lookAt(page, 'a finding’s sheet');
  await press(hands.finding.done);
  await press(hands.answer.dock);
  await hands.finding.sheet.waitFor();
  await lookAt(page, 'the answer with its working');
  await arrive(page, '/block/00000000-0000-7000-8000-00000000dead');
  await lookAt(page, 'a block that is not there');
  await browser.close();
  rounds += 1;
}

/** What was found under a claim; a round that broke off has found nothing out. */
function found(claim: keyof typeof faults): string[] {
  expect(rounds).toBe(2);
  return faults[claim];
}

describe('every screen', () => {
  it('is visited on a small phone', async () => {
    await goRound(PHONE, lookOnPhone);
    expect(visited.phone.length).toBeGreaterThan(20);
  }, 420_000);
  it('is visited at a desk', async () => {
    await goRound(DESK, lookAtDesk);
    expect(visited.desk).toEqual(visited.phone);
  }, 420_000);
  it('breaks no WCAG 2.2 A or AA rule of axe in the light', () => expect(found('light')).toEqual([]));
  it('breaks none in the dark', () => expect(found('dark')).toEqual([]));
  it('breaks none at a desk', () => expect(found('desk')).toEqual([]));
  it('has text at 7 : 1 and more, large text at 4.5 : 1', () => expect(found('contrast')).toEqual([]));
  it('has no target lower than a thumb', () => expect(found('targets')).toEqual([]));
  it('does not scroll sideways at 320 px', () => expect(found('narrow')).toEqual([]));
  it('complains of nothing and asks nobody outside', () => {
    expect(seen.flatMap((one) => [...one.faults, ...leaving(one, inject('url'))])).toEqual([]);
  });
});
