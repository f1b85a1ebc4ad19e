import { spawnSync } from 'node:child_process';
import type { TestProject } from 'vitest/node';
import { distFolder, serve } from '../../src/serve/serve.mjs';

declare module 'vitest' {
  interface ProvidedContext {
    readonly url: string;
  }
}

/** Builds the app as it ships and serves it for the end-to-end tests. */
export default async function buildAndServe(project: TestProject): Promise<() => Promise<void>> {
  // In its own process: inside vitest NODE_ENV is "test", and a test build registers no service worker.
  const { status, stderr } = spawnSync(
    process.execPath,
    ['node_modules/vite/bin/vite.js', 'build', '--config', 'src/vite.config.ts', 'src', '--logLevel', 'warn'],
    { env: { ...process.env, NODE_ENV: 'production' }, encoding: 'utf8' },
  );
  if (status !== 0) throw new Error(`The build failed:\n${stderr}`);
  const server = await serve(distFolder);
  project.provide('url', server.url);
  return () => server.close();
}
