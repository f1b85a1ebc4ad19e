import { readdirSync, readFileSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { freshDevice, leaving, openBrowser, type Phone } from '../support/phone.ts';
import { photograph } from '../support/photograph.ts';
import { readPdf, withTools } from '../support/written-pdf.ts';
import { type Hands, handsOn } from './hands.ts';

const PDF = 'PDF, for sending and printing';

let browser: Browser;
let phone: Phone;
let hands: Hands;
let report: string;

beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

describe('a report as PDF, on the phone', () => {
  withTools(
    ['qpdf', 'pdftotext', 'pdffonts', 'pdfimages'],
    'is written by the worker under the content policy, with its faces and its photograph',
    async () => {
      phone = await freshDevice(browser);
      hands = handsOn(phone.page);
      await hands.shelf.open(inject('url'));
      await hands.glance({ shape: 'domeCrown', wood: 'lime', price: '45' });
      const block = phone.page.url().replace(/\/look$/, '');
      report = `${block}/report`;
      await phone.page.goto(block);
      const picture = await photograph(phone.page);
      await hands.choose([{ name: 'IMG_0412.jpg', mimeType: 'image/jpeg', buffer: picture }]);
      await hands.block.photograph.first().waitFor();
      await phone.page.goto(report);
      const { name, path } = await hands.takeReport(PDF);
      expect(name).toMatch(/as-found-\d{4}-\d\d-\d\d\.pdf$/);
      const bytes = await readFile(path);
      const read = readPdf(bytes);
      expect(read.check()).toContain('No syntax or stream encoding errors found');
      for (const line of read.fonts()) expect(line).toMatch(/ yes yes yes /);
      // What the file says is the photograph's hash is what an independent reader takes out of it.
      const [, stated] = /SHA-256 ([0-9a-f]{64})/.exec(read.text()) ?? [];
      expect(stated).toBeDefined();
      expect(read.pictures()).toContain(stated);
      expect(bytes.includes('Exif')).toBe(false);
      expect(phone.seen.faults).toEqual([]);
      expect(leaving(phone.seen, inject('url'))).toEqual([]);
    },
  );

  withTools(['pdfinfo'], 'is to be had of all three reports, each with a name of its own', async () => {
    for (const [kind, ending] of [
      ['Before and after', 'before-and-after'],
      ['Provenance', 'provenance'],
    ] as const) {
      await hands.report.kind(kind).check();
      const { name, path } = await hands.takeReport(PDF);
      expect(name).toContain(`-${ending}-`);
      expect(readPdf(await readFile(path)).info()).toMatch(/^Tagged:\s+yes$/m);
    }
    expect(phone.seen.faults).toEqual([]);
  });

  it('has its faces and its worker among the files kept for use without signal', () => {
    const dist = inject('dist');
    const kept = readFileSync(join(dist, 'sw.js'), 'utf8');
    const files = readdirSync(join(dist, 'assets'));
    for (const wanted of [
      /^DejaVuSansCondensed-[^B].*\.ttf$/,
      /^DejaVuSansCondensed-Bold-.*\.ttf$/,
      /^alegreya-latin-700.*\.woff$/,
      /^pdf\.worker-.*\.js$/,
    ]) {
      const file = files.find((name) => wanted.test(name));
      expect(file, String(wanted)).toBeDefined();
      expect(kept).toContain(`assets/${file}`);
    }
  });
});
