import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeAll, beforeEach, describe, expect, inject, it } from 'vitest';
import { archiveOf, jpegOf, photoFields } from '../imports/archives.ts';
import { aBlock, aFinding, aPhoto, at, id } from '../store/make.ts';
import { holdAt, type Moment } from '../support/moment.ts';
import { freshDevice, keptDevice, openBrowser } from '../support/phone.ts';
import { type Held, storedAll } from '../support/stored.ts';
import { type HandedFile, handsOn } from './hands.ts';
import { arrive } from './screens.ts';

const THERE = 'othrphon';
const PHOTOGRAPHS = 120;
const FINDINGS = 140;
// More photographs than go into one transaction (100), and more records (200).
const pictures = Array.from({ length: PHOTOGRAPHS }, (_, n) => jpegOf(`photograph ${n}`));
const records = [
  aBlock({ name: 'Tall crown', stamp: at(1, THERE) }),
  ...pictures.map((picture, n) => aPhoto({ ...photoFields(picture), id: id(1000 + n), stamp: at(2, THERE) })),
  ...Array.from({ length: FINDINGS }, (_, n) => aFinding({ id: id(2000 + n), number: n + 1, stamp: at(3, THERE) })),
];

let file: HandedFile;
/** What a device holds after an import that nobody disturbed. */
let whole: Held;
let profile: string;

beforeAll(async () => {
  const archive = archiveOf({ records, pictures });
  file = { name: 'backup.zip', mimeType: 'application/zip', buffer: Buffer.from(await archive.arrayBuffer()) };
});
beforeEach(async () => {
  profile = await mkdtemp(join(tmpdir(), 'blockworth-killed-'));
});
afterEach(() => rm(profile, { recursive: true, force: true }));

/** Photographs and records that lie there when the phone comes back, and whether it knows that something was cut off. */
interface Left {
  readonly pictures: number;
  readonly records: number;
  readonly isTold: boolean;
}

const moments: readonly (readonly [when: string, moment: Moment, left: Left])[] = [
  ['while the file is checked', { does: 'says', what: 'open', nth: 1 }, { pictures: 0, records: 0, isTold: false }],
  [
    'in the second write of photographs',
    { does: 'puts', into: 'bytes', nth: 110 },
    { pictures: 100, records: 0, isTold: true },
  ],
  [
    'in the first write of records',
    { does: 'puts', into: 'records', nth: 30 },
    { pictures: 120, records: 0, isTold: true },
  ],
  [
    'in the second write of records',
    { does: 'puts', into: 'records', nth: 230 },
    { pictures: 120, records: 200, isTold: true },
  ],
];

describe('an import on a phone that drops dead', () => {
  it('is measured against one that nobody disturbed', async () => {
    const browser = await openBrowser();
    const { page } = await freshDevice(browser);
    const hands = handsOn(page);
    await hands.shelf.open(inject('url'));
    await hands.shelf.isEmpty.waitFor();
    await arrive(page, '/keeping');
    await hands.keeping.chooseFiles([file]);
    await hands.tap(hands.keeping.takeItIn);
    await hands.keeping.takenIn.waitFor();
    whole = await storedAll(page);
    await browser.close();
    expect([whole.records.length, whole.bytes.length]).toEqual([records.length, PHOTOGRAPHS]);
    expect(whole.bytes.map(([key]) => key)).toEqual(whole.bytes.map(([, sha256]) => sha256));
  });

  it.each(moments)('%s, and is done again, ends as if nothing had been', async (_, moment, left) => {
    const first = await keptDevice(profile, { keepsFiles: false });
    const { reached } = await holdAt(first.page, moment);
    const before = handsOn(first.page);
    await before.shelf.open(inject('url'));
    await before.shelf.isEmpty.waitFor();
    await arrive(first.page, '/keeping');
    const chosen = before.keeping.chooseFiles([file]);
    // Held while it is chosen, the page never says that it was.
    chosen.catch(() => undefined);
    if (moment.does === 'puts') await before.keeping.takeItIn.tap({ noWaitAfter: true });
    await reached;
    await first.kill();

    const { page, close, seen } = await keptDevice(profile, { keepsFiles: false });
    const hands = handsOn(page);
    await hands.shelf.open(inject('url'));
    await hands.shelf.lookAtABlock.waitFor();
    const found = await storedAll(page);
    expect({ pictures: found.bytes.length, records: found.records.length }).toEqual({
      pictures: left.pictures,
      records: left.records,
    });
    // Whatever is named is there, whole.
    const kept = new Map(found.bytes);
    for (const { type, sha256 } of found.records) if (type === 'photo') expect(kept.get(String(sha256))).toBe(sha256);
    if (left.isTold) await hands.shelf.importCutOff.waitFor();
    await arrive(page, '/keeping');
    if (left.isTold) await hands.keeping.importCutOff.waitFor();
    await hands.keeping.chooseFiles([file]);
    await hands.tap(hands.keeping.takeItIn);
    await hands.keeping.takenIn.waitFor();
    expect(await storedAll(page)).toEqual(whole);
    await hands.keeping.importCutOff.waitFor({ state: 'detached' });
    expect(seen.faults).toEqual([]);
    await close();
  });
});
