import { createHash } from 'node:crypto';
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Window } from 'happy-dom';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { catalogue } from '../../src/catalogue/index.ts';
import { serve } from '../../src/serve/serve.mjs';
import { keptDevice, leaving, NO_SERVER, type Phone, readyWithoutSignal } from '../support/phone.ts';
import { CAMERA, photograph, seenPicture } from '../support/photograph.ts';
import { storedBytes, storedRecords } from '../support/stored.ts';
import { CORNERS, isNear } from '../support/test-pictures.ts';
import { type Hands, handsOn, term } from './hands.ts';

const SELLER = 'Tobias Larkmoor';
const NOTE = 'runs down from the pin holes, closes when squeezed';
const sha256 = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

let profile: string;
let phone: Phone & { kill(): Promise<void> };
let hands: Hands;
let address: string;
let blockAddress: string;

beforeAll(async () => {
  profile = await mkdtemp(join(tmpdir(), 'blockworth-phone-'));
});
afterAll(async () => {
  await phone?.close().catch(() => undefined);
  await rm(profile, { recursive: true, force: true });
});

/** What the block's page says, once the ranges are reckoned. */
async function whatItSays(): Promise<Record<string, string | null>> {
  await phone.page.goto(blockAddress);
  await hands.block.answer.waitFor();
  await expect.poll(() => hands.block.answer.textContent()).not.toContain('Reckoning');
  return {
    answer: await hands.block.answer.textContent(),
    plan: await hands.block.plan.textContent(),
    findings: (await hands.block.findings.allTextContents()).join(),
  };
}

describe('a survey at a stall', () => {
  it('is all there after the server is gone, the signal lost and the browser killed', async () => {
    const server = await serve(inject('dist'));
    address = server.url;
    phone = await keptDevice(profile);
    hands = handsOn(phone.page);
    const picture = await photograph(phone.page);
    expect(picture.length).toBeGreaterThan(2_000_000);
    expect(picture.length).toBeLessThan(40_000_000);

    await hands.shelf.open(address);
    await hands.shelf.isEmpty.waitFor();
    await hands.tap(hands.menu('Sales'));
    await hands.tap(hands.sale.start);
    await hands.type(hands.sale.title, 'Barn sale');
    await hands.type(hands.sale.seller, SELLER);

    await hands.tap(hands.menu('Shelf'));
    await hands.tap(hands.shelf.lookAtABlock);
    await hands.choose([{ name: 'IMG_0412.jpg', mimeType: 'image/jpeg', buffer: picture }]);
    await hands.tap(hands.look.shape('domeCrown'));
    await hands.tap(hands.look.wood('lime'));
    await hands.type(hands.look.price, '45');
    await hands.look.sale.selectOption({ label: 'Barn sale' });

    await hands.tap(hands.look.walk);
    for (const station of ['nose', 'heft'] as const) {
      await hands.walk.station(station).waitFor();
      await hands.tap(hands.walk.noneSeen);
    }
    await hands.walk.station('knock').waitFor();
    await hands.tap(hands.walk.found('split'));
    await hands.tap(hands.finding.zone('sideBack'));
    await hands.type(hands.finding.number('Gap at the widest'), '1');
    await hands.tap(hands.finding.chip('Length', 100, 'mm'));
    await hands.tap(hands.finding.yes('Closes under hand pressure?'));
    await hands.type(hands.finding.note, NOTE);
    await hands.tap(hands.finding.done);
    await hands.tap(hands.walk.noneSeen);
    await hands.walk.station('count').waitFor();
    await hands.tap(hands.walk.onward);
    await hands.walk.station('tape').waitFor();
    await hands.type(hands.walk.measure('circRopeMm'), '571');
    await hands.type(hands.walk.measure('lengthMm'), '198.5');
    await hands.type(hands.walk.measure('widthMm'), '164.5');
    await hands.saved();
    await hands.tap(hands.walk.theBlock);
    blockAddress = phone.page.url();
    const before = await whatItSays();
    expect(before.findings).toContain(term('damage', 'split'));
    expect(before.answer).toMatch(/(Pay|Bid) up to\s*£\d/);
    expect(before.plan).toMatch(/\d\sh/);

    await readyWithoutSignal(phone.page);
    expect(phone.seen.faults).toEqual([]);
    await server.close();
    await phone.context.setOffline(true);
    await phone.kill();
    expect(leaving(phone.seen, address)).toEqual([]);

    phone = await keptDevice(profile, { offline: true });
    hands = handsOn(phone.page);
    await hands.shelf.open(address);
    await expect.poll(() => hands.shelf.blocks.count()).toBe(1);
    expect(await whatItSays()).toEqual(before);

    await phone.page.goto(`${blockAddress}/walk/knock`);
    await hands.walk.another('split').waitFor();
    await phone.page.goto(`${blockAddress}/walk/tape`);
    await expect.poll(() => hands.walk.measure('circRopeMm').inputValue()).toBe('571');
    await expect.poll(() => hands.walk.measure('lengthMm').inputValue()).toBe('198.5');

    const [finding] = await storedRecords(phone.page, 'finding');
    expect(finding).toMatchObject({ kind: 'split', zone: 'sideBack', note: NOTE });
    expect(finding?.answers).toEqual({ widthMm: 1, lengthMm: 100, closesByHand: true });
  });

  it('keeps the photograph upright, under the hash of its bytes, without the place', async () => {
    const [record, ...others] = await storedRecords(phone.page, 'photo');
    expect(others).toEqual([]);
    expect(record).toMatchObject({ width: 1536, height: 2048, position: null, original: null, focal35: 26 });
    expect(record?.taken).toEqual({ local: '2026-10-17T11:42:09', offset: '+01:00', from: 'camera' });
    for (const key of ['sha256', 'thumbnail'] as const) {
      const bytes = await storedBytes(phone.page, String(record?.[key]));
      expect(sha256(bytes)).toBe(record?.[key]);
      expect(bytes.includes('Exif')).toBe(false);
    }

    await phone.page.goto(blockAddress);
    await hands.tap(hands.block.photograph.first());
    const { width, height, ...corners } = await seenPicture(hands.photo.picture);
    expect([width, height]).toEqual([1536, 2048]);
    for (const [corner, colour] of Object.entries(CORNERS)) {
      expect(isNear(corners[corner as keyof typeof CORNERS], colour), corner).toBe(true);
    }
  });

  it('goes out as one report that stands alone, tells what was found, and keeps the seller’s name in', async () => {
    await phone.page.goto(`${blockAddress}/report`);
    const file = await hands.takeReport();
    expect(file.name).toMatch(/\.html$/);
    const html = await readFile(file.path, 'utf8');
    const { document } = new Window({ url: 'about:blank' });
    document.write(html);

    const rows = [...document.querySelectorAll('table')].flatMap((table) =>
      [...table.querySelectorAll('tbody tr')].map((row) => [...row.children].map((cell) => cell.textContent)),
    );
    const found = rows.find(([number]) => number === '1');
    expect(found?.slice(1, 3)).toEqual([term('damage', 'split'), term('zones', 'sideBack')]);
    expect(found?.[3]).toMatch(/gap at the widest 1\smm.*length 100\smm.*closes under hand pressure: yes.*/);
    expect(found?.[3]).toContain(NOTE);
    // A closed split is graded minor, 2 of 4: the handbook's table of grades.
    expect(found?.[4]).toMatch(/^2 /);
    expect(rows.find(([name]) => name === term('measures', 'circRopeMm'))?.[1]).toBe('571\u00a0mm');

    const steps = Object.values(catalogue.treatments).filter((one) => rows.some(([first]) => first === one.term));
    expect(steps.map((step) => step.term)).toContain(term('treatments', 'closeSplit'));
    const cautions = [...document.querySelectorAll('ul.caution li')].map((item) => item.textContent);
    for (const step of steps) {
      const own = cautions.find((item) => item.startsWith(`${step.term}: `)) ?? '';
      for (const caution of step.cautions) expect(own).toContain(caution);
    }
    expect(cautions.length).toBeGreaterThan(0);

    const [image, ...more] = [...document.querySelectorAll('img')];
    expect(more).toEqual([]);
    const [, picture = ''] = /^data:image\/jpeg;base64,(.+)$/.exec(image?.getAttribute('src') ?? '') ?? [];
    const stated = /SHA-256 ([0-9a-f]{64})/.exec(document.body.textContent)?.[1];
    expect(sha256(Buffer.from(picture, 'base64'))).toBe(stated);

    const scripts = [...document.querySelectorAll('script')];
    expect(scripts.map((script) => script.getAttribute('type'))).toEqual(['application/json']);
    const data = JSON.parse(scripts[0]?.textContent ?? '');
    expect(data.findings).toHaveLength(1);
    expect(data.photographs[0]).toMatchObject({ sha256: stated, position: null });
    const policy = document.querySelector('meta[http-equiv="Content-Security-Policy"]')?.getAttribute('content');
    expect(policy).toMatch(/default-src 'none'/);
    expect(policy).not.toMatch(/script-src|https?:/);

    const words = html.replaceAll(picture, '');
    for (const [attribute] of words.matchAll(/\bon[a-z]+\s*=\s*["']/gi)) expect(attribute).toBe('');
    expect(
      words.match(/https?:\/\/(?!www\.w3\.org\/2000\/svg)[^\s"'<]+|(?:href|src|action)=["']?\/\/|@import|url\(/g),
    ).toBeNull();
    const { latitude, longitude } = CAMERA.gps;
    for (const place of [latitude, longitude]) expect(words).not.toContain(String(Math.abs(place)).slice(0, 5));
    expect(words).not.toContain(SELLER);

    await hands.tap(hands.report.privateNames);
    const told = await hands.takeReport();
    expect(await readFile(told.path, 'utf8')).toContain(SELLER);
  });

  it('asks nothing of anybody and breaks no rule on the way', () => {
    expect(leaving(phone.seen, address)).toEqual([]);
    expect(phone.seen.faults.filter((fault) => !NO_SERVER.test(fault))).toEqual([]);
  });
});
