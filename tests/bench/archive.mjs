// npm run bench -- --archive: an archive of 2,000 photographs of 500 kB, beside `zip -0` on the same files, then one
// volume in Chromium (`archive-browser.mjs`). Needs 3 GB of disk for a minute. Extra memory is what this process grew by
// while it ran. Measured, never asserted.
import { spawnSync } from 'node:child_process';
import { mkdir, mkdtemp, rm } from 'node:fs/promises';
import { loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { Encrypter } from 'age-encryption';
import { load } from './bundle.mjs';

const PHOTOS = 2_000;
const BYTES = 500_000;
const total = PHOTOS * BYTES;
const line = (what, ms, bytes, more = '') =>
  console.log(
    `${what.padEnd(44)}${(ms / 1000).toFixed(1).padStart(7)} s ${(bytes / 1000 / ms).toFixed(0).padStart(6)} MB/s   ${more}load ${loadavg()[0].toFixed(1)}`,
  );

const { archiveRun, makeShelf } = await load('tests/bench/archive-case.ts');
const folder = await mkdtemp(join(tmpdir(), 'blockworth-archive-'));
try {
  const [from, to] = [join(folder, 'photographs'), join(folder, 'archive')];
  await Promise.all([mkdir(from), mkdir(to)]);
  const records = await makeShelf(from, PHOTOS, BYTES);

  globalThis.gc?.();
  const before = process.memoryUsage().rss;
  let peak = before;
  const watch = setInterval(() => {
    peak = Math.max(peak, process.memoryUsage().rss);
  }, 20);
  const { ms, volumes, bytes, largest } = await archiveRun(records, from, to);
  clearInterval(watch);
  const mb = (of) => `${(of / 1e6).toFixed(0)} MB`;
  line(`archive, ${PHOTOS} photographs, ${volumes} volumes`, ms, total, `grew by ${mb(peak - before)}, `);
  console.log(`  ${mb(bytes)} written for ${mb(total)} of photographs, largest volume ${mb(largest)}`);

  const begun = performance.now();
  const zip = spawnSync('zip', ['-0', '-q', '-r', join(folder, 'plain.zip'), 'photographs'], { cwd: folder });
  if (zip.status === 0) line('zip -0 of the same files, no hashes', performance.now() - begun, total);
  else console.log('zip is not here to compare with.');

  const size = 200_000_000;
  let left = size;
  const source = new ReadableStream({
    pull(controller) {
      if (left <= 0) controller.close();
      else controller.enqueue(new Uint8Array(500_000));
      left -= 500_000;
    },
  });
  const encrypter = new Encrypter();
  encrypter.setPassphrase('a bench needs no secret');
  encrypter.setScryptWorkFactor(17);
  const key = performance.now();
  const reader = (await encrypter.encrypt(source)).getReader();
  const keyMs = performance.now() - key;
  const from0 = performance.now();
  while (!(await reader.read()).done);
  line('age on top, for an encrypted volume', performance.now() - from0, size, `key ${keyMs.toFixed(0)} ms, `);
} finally {
  await rm(folder, { recursive: true, force: true });
}

if (!process.argv.includes('--no-browser')) await import('./archive-browser.mjs');
