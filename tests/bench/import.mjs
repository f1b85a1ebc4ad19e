// npm run bench -- --import: two thousand records joined, and an archive of 2,000 photographs of 500 kB read in Node, then
// one volume taken into the built app in Chromium (`archive-browser.mjs`). Needs 1 GB of disk for a minute. Measured, never asserted.
import { openAsBlob } from 'node:fs';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { load } from './bundle.mjs';

const PHOTOS = 2_000;
const BYTES = 500_000;
const IN_VOLUME = 290;
const line = (what, ms, more = '') =>
  console.log(`${what.padEnd(66)}${ms.toFixed(0).padStart(8)} ms   ${more}load ${loadavg()[0].toFixed(1)}`);
const rate = (photos, ms) => `${((photos * BYTES) / 1000 / ms).toFixed(0)} MB/s, `;

const bench = await load('tests/bench/import-case.ts');
const timed = async (task) => {
  const begun = performance.now();
  const result = await task();
  return { ms: performance.now() - begun, result };
};

const shelves = await bench.twoShelves();
line('preview of 2,000 records, 1,000 of them changed', (await timed(() => bench.preview(shelves))).ms);
line('the same joined and kept in memory', (await timed(() => bench.join(shelves))).ms);
line('the same once more: nothing to do', (await timed(() => bench.join(shelves))).ms);

const folder = await mkdtemp(join(tmpdir(), 'blockworth-import-'));
try {
  const pictures = (from, count) => Array.from({ length: count }, (_, n) => bench.photographOf(from + n, BYTES));
  const volumes = Math.ceil(PHOTOS / IN_VOLUME);
  const records = [];
  for (let n = 0; n < PHOTOS; n += 100) records.push(...bench.photoRecords(pictures(n, 100), n));
  const files = [];
  for (let volume = 1; volume <= volumes; volume += 1) {
    const from = (volume - 1) * IN_VOLUME;
    const path = join(folder, `${volume}.zip`);
    await writeFile(path, bench.volumeOf(records, pictures(from, Math.min(IN_VOLUME, PHOTOS - from)), volume, volumes));
    files.push(await openAsBlob(path));
  }
  const { openMs, takeMs, pictures: count } = await bench.readVolumes(files);
  line(`opening ${volumes} volumes with ${PHOTOS} photographs, Node`, openMs);
  line(`reading and checking ${count} photographs, Node`, takeMs, rate(count, takeMs));
} finally {
  await rm(folder, { recursive: true, force: true });
}

if (!process.argv.includes('--no-browser')) await import('./archive-browser.mjs');
