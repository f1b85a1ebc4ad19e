// npm run soak [-- RUNS]: the random tests over and over, each time with other examples. Says every seed that failed.
import { execFileSync, spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const runs = Number.parseInt(process.argv[2] ?? '10', 10);
const root = fileURLToPath(new URL('../..', import.meta.url));
const files = execFileSync('git', ['grep', '-l', "from 'fast-check'", '--', 'tests/**/*.test.ts'], {
  cwd: root,
  encoding: 'utf8',
});
const failed = [];
for (let run = 0; run < runs; run += 1) {
  const seed = String(Math.floor(Math.random() * 2 ** 31));
  const { status } = spawnSync(
    'npx',
    [
      'vitest',
      'run',
      '--config',
      'tests/vitest.config.ts',
      '--project',
      'unit',
      '--project',
      'store',
      ...files.trim().split('\n'),
    ],
    { cwd: root, stdio: 'inherit', env: { ...process.env, SEED: seed } },
  );
  if (status !== 0) failed.push(seed);
}
console.log(failed.length ? `Failed with SEED ${failed.join(', ')}` : `${runs} runs, none failed`);
process.exit(failed.length ? 1 : 0);
