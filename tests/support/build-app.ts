import { spawnSync } from 'node:child_process';

/**
 * Builds the app as it ships into a folder of the tests' own, so that a run disturbs no `dist/` somebody serves.
 * In its own process: inside vitest NODE_ENV is "test", and a test build registers no service worker.
 * @throws Error with what the build said
 */
export function buildApp(outDir: string, config = 'src/vite.config.ts'): void {
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    ['node_modules/vite/bin/vite.js', 'build', '--config', config, 'src', '--outDir', outDir, '--logLevel', 'warn'],
    { env: { ...process.env, NODE_ENV: 'production' }, encoding: 'utf8' },
  );
  if (status !== 0) throw new Error(`The build failed:\n${stdout}\n${stderr}`);
}
