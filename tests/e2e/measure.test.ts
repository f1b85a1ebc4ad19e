import { readFile } from 'node:fs/promises';
import jpeg from 'jpeg-js';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { colourDifference, labOf } from '../../src/core/physics/colour.ts';
import type { Img } from '../../src/pixels/types.ts';
import { byteOf } from '../pixels/drawn.ts';
import { measuredScene, SECOND, secondScene, TRUTH } from '../support/measured-scene.ts';
import { freshDevice, leaving, openBrowser, PHONE, readyWithoutSignal } from '../support/phone.ts';
import { storedRecords } from '../support/stored.ts';
import { benchHands, figureOf, watchLongTasks } from './bench-hands.ts';
import { handsOn } from './hands.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

/** Drawn once for all tests: each takes seconds. */
const files = new Map<() => Img, Buffer>();
function asJpeg(scene: () => Img): Buffer {
  const ready = files.get(scene);
  if (ready) return ready;
  const { data, width, height } = scene();
  const file = Buffer.from(jpeg.encode({ data: Buffer.from(data.buffer), width, height }, 92).data);
  files.set(scene, file);
  return file;
}

/** A phone with the drawn photograph on its bench. */
async function bench({ keepsFiles = false, scene = measuredScene } = {}) {
  const phone = await freshDevice(browser, PHONE, { keepsFiles });
  const longTasks = await watchLongTasks(phone.page);
  const hands = handsOn(phone.page);
  const tools = benchHands(hands, TRUTH.size);
  await hands.shelf.open(inject('url'));
  await hands.tap(hands.shelf.lookAtABlock);
  await hands.choose([{ name: 'face.jpg', mimeType: 'image/jpeg', buffer: asJpeg(scene) }]);
  await hands.tap(hands.look.shape('domeCrown'));
  await hands.tap(hands.look.wood('lime'));
  const id = /block\/([0-9a-f-]+)/.exec(phone.page.url())?.[1];
  const address = `${inject('url')}#/block/${id}`;
  await phone.page.goto(address);
  await hands.tap(hands.block.photograph.first());
  await hands.tap(tools.open);
  await tools.picture.locator('image').waitFor();
  return { phone, hands, tools, address, longTasks };
}

describe('a photograph as an instrument', () => {
  it('is given its scale by a card, its crack traced and taken into a finding, and all is there again without signal', async () => {
    const { phone, hands, tools, address, longTasks } = await bench({ keepsFiles: true });
    await longTasks();

    for (const [x, y] of TRUTH.cardTaps) await tools.tapAt([x + 6, y - 5]);
    await hands.tap(tools.useScale);
    await hands.tap(tools.tool('Crack'));
    for (const [x, y] of TRUTH.crackEnds) await tools.tapAt([x - 5, y + 5]);
    await tools.take.waitFor();
    const length = figureOf(await tools.figure('Length').textContent());
    expect(Math.abs(length.value - TRUTH.crackLengthMm)).toBeLessThanOrEqual(length.plusMinus);
    const width = figureOf(await tools.figure('Mean width').textContent());
    expect(Math.abs(width.value - TRUTH.crackWidthMm)).toBeLessThanOrEqual(width.plusMinus);
    // Nothing was accepted yet, so nothing was found.
    expect(await storedRecords(phone.page)).not.toContainEqual(expect.objectContaining({ type: 'finding' }));
    await tools.takeInto.selectOption({ label: 'New finding: Check' });
    await hands.tap(tools.take);
    await tools
      .said(/^Taken, measured: .*length/)
      .first()
      .waitFor();
    await expect.poll(() => tools.labels.allTextContents()).toEqual(['1']);
    expect(Math.max(0, ...(await longTasks()))).toBeLessThan(200);
    await hands.saved();

    await readyWithoutSignal(phone.page);
    await phone.context.setOffline(true);
    await phone.page.goto('about:blank');
    await phone.page.goto(address);
    await hands.block.findings.filter({ hasText: 'Check' }).getByRole('button').first().tap();
    const sheet = hands.finding.sheet;
    await expect.poll(() => hands.finding.number('Length').inputValue()).toBe(String(length.value));
    await sheet.getByText(`Measured in a photograph: ${length.value} ± ${length.plusMinus} mm.`).waitFor();
    await hands.tap(hands.finding.done);
    await hands.tap(hands.block.photograph.first());
    await hands.tap(tools.open);
    await expect.poll(() => tools.labels.allTextContents()).toEqual(['1']);

    const records = (await storedRecords(phone.page)) as Record<string, unknown>[];
    const mark = records.find(({ type }) => type === 'photoMark');
    expect(mark).toMatchObject({ shape: 'polyline', measured: { method: 'crackPath', version: 1 } });
    expect(phone.seen.faults).toEqual([]);
    expect(leaving(phone.seen, inject('url'))).toEqual([]);

    // The report draws the crack over the photograph, with the bar of the scale, and leaves the picture alone.
    await phone.page.goto(`${address}/report`);
    const { path } = await hands.takeReport();
    const html = await readFile(path, 'utf8');
    expect(html).toMatch(/<svg viewBox="0 0 1600 1200"[^>]*><path/);
    expect(html).toMatch(/>(50|100) mm<\/text>/);
    expect(html).toContain('measured in this photograph.');
    await phone.close();
  });

  it('counts holes, lets one be struck out, and hands the rest to a finding', async () => {
    const { phone, hands, tools } = await bench();
    await hands.tap(tools.findIt);
    await hands.tap(tools.useScale);
    await hands.tap(tools.tool('Holes'));
    for (const corner of TRUTH.holeBox) await tools.tapAt(corner);
    await hands.tap(tools.count);
    const counted = tools.figure('Counted');
    await expect.poll(() => counted.textContent()).toBe(`${TRUTH.holes.length} marks that look like holes`);
    await tools.tapAt(TRUTH.holes[4] as readonly [number, number]);
    await expect.poll(() => counted.textContent()).toBe(`${TRUTH.holes.length - 1} marks that look like holes`);
    await tools.takeInto.selectOption({ label: 'New finding: Flight holes' });
    await hands.tap(tools.take);
    await hands.saved();
    const records = (await storedRecords(phone.page)) as Record<string, unknown>[];
    expect(records.find(({ type }) => type === 'finding')).toMatchObject({
      kind: 'flightHoles',
      answers: { count: TRUTH.holes.length - 1 },
    });
    await phone.close();
  });

  it('offers the crack among lines that may be cracks, and follows the one tapped', async () => {
    const { phone, hands, tools } = await bench();
    await hands.tap(tools.findIt);
    await hands.tap(tools.useScale);
    await hands.tap(tools.tool('Crack'));
    await hands.tap(tools.suggest);
    await phone.page.getByText('Tap a line to follow and measure it').waitFor();
    expect(await tools.figure('Length').count()).toBe(0);
    await tools.tapAt(TRUTH.crackMiddle);
    await tools.figure('Length').waitFor();
    const length = figureOf(await tools.figure('Length').textContent());
    expect(Math.abs(length.value - TRUTH.crackLengthMm)).toBeLessThan(0.05 * TRUTH.crackLengthMm);
    expect(phone.seen.faults).toEqual([]);
    await phone.close();
  });

  it('is magnified under two fingers, by buttons and back again', async () => {
    const { phone, hands, tools } = await bench();
    const { page } = phone;
    const seenWidth = (): Promise<number> =>
      tools.picture.evaluate((svg) => (svg as SVGSVGElement).viewBox.baseVal.width);
    const box = await tools.picture.boundingBox();
    if (!box) throw new Error('The photograph is not on the screen.');
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    const whole = await seenWidth();
    const touch = await phone.context.newCDPSession(page);
    const fingers = (apart: number) => [
      { x: x - apart, y, id: 1 },
      { x: x + apart, y, id: 2 },
    ];
    await touch.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: fingers(30) });
    for (const apart of [45, 60, 75, 90])
      await touch.send('Input.dispatchTouchEvent', { type: 'touchMove', touchPoints: fingers(apart) });
    await touch.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
    // The fingers went three times as far apart.
    await expect.poll(seenWidth).toBeLessThan(whole / 2.5);
    await expect.poll(seenWidth).toBeGreaterThan(whole / 3.5);
    // Nothing was placed by the way.
    expect(await storedRecords(page)).not.toContainEqual(expect.objectContaining({ type: 'photoMark' }));
    await hands.tap(tools.fit);
    await expect.poll(seenWidth).toBeCloseTo(whole, 0);
    await hands.tap(tools.larger);
    await expect.poll(seenWidth).toBeLessThan(whole);
    expect(phone.seen.faults).toEqual([]);
    await phone.close();
  });

  it('refuses millimetres without a scale', async () => {
    const { phone, hands, tools } = await bench();
    await hands.tap(tools.tool('Crack'));
    for (const end of TRUTH.crackEnds) await tools.tapAt(end);
    await phone.page.getByText('No scale, so no millimetres').waitFor();
    expect(await tools.panel.textContent()).not.toMatch(/\d\smm/);
    await phone.close();
  });

  it('places, nudges, drags and takes back a mark, by finger and by keys alone', async () => {
    const { phone, hands, tools } = await bench();
    const { page } = phone;
    const marks = async () =>
      (
        (await storedRecords(page)) as unknown as { type: string; points: [number, number][]; deleted: string | null }[]
      ).filter(({ type, deleted }) => type === 'photoMark' && deleted === null);
    await hands.tap(tools.tool('Mark'));
    await hands.tap(tools.shape('Point'));
    await tools.tapAt([800, 640]);
    await expect.poll(async () => (await marks())[0]?.points[0]?.[0]).toBeCloseTo(0.5, 2);

    const before = (await marks())[0]?.points[0] ?? [0, 0];
    await hands.tap(tools.next);
    await hands.tap(tools.nudge('Right'));
    await expect.poll(async () => (await marks())[0]?.points[0]?.[0]).toBeGreaterThan(before[0]);
    await tools.drag([800, 640], [60, 0]);
    // 60 px of the screen are 60/360 of the width of the picture that fills it.
    await expect.poll(async () => (await marks())[0]?.points[0]?.[0]).toBeCloseTo(0.5 + 60 / 360, 1);
    for (let i = 0; i < 3; i++) await hands.tap(tools.undo);
    await expect.poll(marks).toEqual([]);

    await tools.picture.focus();
    await page.keyboard.press('Enter');
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('Enter');
    await expect.poll(async () => (await marks()).length).toBe(1);
    await page.keyboard.press('Control+z');
    await expect.poll(marks).toEqual([]);
    expect(phone.seen.faults).toEqual([]);
    await phone.close();
  });
});

describe('other things of known size', () => {
  it('give the scale as well: a coin, a sheet, two points and a typed length', async () => {
    const { phone, hands, tools } = await bench({ scene: secondScene });
    const crack = async (ends: readonly (readonly [number, number])[]) => {
      await hands.tap(tools.tool('Crack'));
      for (const [x, y] of ends) await tools.tapAt([x - 4, y + 4]);
      await tools.figure('Length').waitFor();
      const length = figureOf(await tools.figure('Length').textContent());
      await hands.tap(tools.tool('Scale'));
      return length;
    };

    await tools.reference.selectOption({ label: 'Euro €1' });
    for (const [x, y] of SECOND.rimTaps) await tools.tapAt([x + 3, y - 2]);
    await hands.tap(tools.useScale);
    const byCoin = await crack(SECOND.nearCoinEnds);
    expect(Math.abs(byCoin.value - SECOND.nearCoinLengthMm)).toBeLessThanOrEqual(byCoin.plusMinus);
    // A coin tells the scale where it lies; two coins away it is a guess, and the bench says so instead.
    await hands.tap(tools.tool('Crack'));
    for (const end of TRUTH.crackEnds) await tools.tapAt(end);
    await phone.page.getByText('a guess, no measure').waitFor();
    expect(await tools.figure('Length').count()).toBe(0);
    await hands.tap(tools.tool('Scale'));

    await tools.reference.selectOption({ label: 'A6 sheet or postcard' });
    for (const [x, y] of SECOND.sheetTaps) await tools.tapAt([x + 5, y - 4]);
    await hands.tap(tools.useScale);
    const bySheet = await crack(TRUTH.crackEnds);
    expect(Math.abs(bySheet.value - TRUTH.crackLengthMm)).toBeLessThanOrEqual(bySheet.plusMinus);

    await tools.reference.selectOption({ label: 'Two points and a length' });
    for (const corner of SECOND.sheetTaps.slice(0, 2)) await tools.tapAt(corner);
    await hands.type(tools.lengthBetween, String(SECOND.sheetLongMm));
    await hands.tap(tools.useScale);
    const byPoints = await crack(TRUTH.crackEnds);
    expect(byPoints.value).toBeGreaterThan(0.9 * TRUTH.crackLengthMm);
    expect(byPoints.value).toBeLessThan(1.1 * TRUTH.crackLengthMm);
    await hands.saved();
    const photos = (await storedRecords(phone.page, 'photo')) as unknown as { scale: { kind: string } }[];
    expect(photos[0]?.scale.kind).toBe('twoPoints');
    expect(phone.seen.faults).toEqual([]);
    await phone.close();
  });
});

describe('colour in a photograph', () => {
  it('tells how much of a face is stained, with the line drawn where the person wants it', async () => {
    const { phone, hands, tools } = await bench();
    await hands.tap(tools.tool('Area'));
    for (const corner of TRUTH.face) await tools.tapAt(corner);
    await hands.tap(tools.spot('Clean spot'));
    await tools.tapAt(TRUTH.clean);
    await hands.tap(tools.spot('Stained spot'));
    await tools.tapAt(TRUTH.stained);
    const share = async (): Promise<number> =>
      Number(/about (\d+) %/.exec((await tools.figure('Stained').textContent()) ?? '')?.[1]);
    await tools.figure('Stained').waitFor();
    expect(Math.abs((await share()) - 100 * TRUTH.stainShare)).toBeLessThanOrEqual(2);
    await tools.limit.fill('0.8');
    const strict = await share();
    await tools.limit.fill('0.2');
    expect(await share()).toBeGreaterThanOrEqual(strict);
    await tools.limit.fill('0.5');
    await tools.takeInto.selectOption({ label: 'New finding: Stain' });
    await hands.tap(tools.take);
    await hands.saved();
    const [finding] = await storedRecords(phone.page, 'finding');
    expect(finding?.answers).toMatchObject({ areaPct: await share() });
    await phone.close();
  });

  it('is compared between two patches, freed of the evening light by a grey card', async () => {
    const { phone, hands, tools } = await bench({ scene: secondScene });
    await hands.tap(tools.tool('Colour'));
    await tools.tapAt(SECOND.dabs.wood);
    await tools.tapAt(SECOND.dabs.repair);
    await hands.tap(tools.spot('Grey card'));
    await tools.tapAt(SECOND.dabs.grey);
    const lab = (light: readonly number[]) => labOf(light.map(byteOf) as [number, number, number]);
    const { wood, repair } = SECOND.reflects;
    const difference = tools.figure('Difference wood – repair');
    await tools.figure('The wood’s colour').waitFor();
    const told = Number(/ΔE ([\d.]+)/.exec((await difference.textContent()) ?? '')?.[1]);
    expect(Math.abs(told - colourDifference(lab(wood), lab(repair)))).toBeLessThan(1);
    const words = (await tools.figure('The wood’s colour').textContent()) ?? '';
    const seen = [...words.matchAll(/-?\d+/g)].map(Number) as unknown as [number, number, number];
    expect(colourDifference(seen, lab(wood))).toBeLessThan(2);
    expect(phone.seen.faults).toEqual([]);
    await phone.close();
  });
});
