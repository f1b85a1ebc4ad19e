import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { TestProject } from 'vitest/node';
import { serve } from '../../src/serve/serve.mjs';
import { buildApp } from './build-app.ts';

declare module 'vitest' {
  interface ProvidedContext {
    /** Address of the built app. */
    readonly url: string;
    /** Folder of the built app, for servers of a test's own. */
    readonly dist: string;
  }
}

/** Builds the app as it ships and serves it for the end-to-end tests. */
export default async function buildAndServe(project: TestProject): Promise<() => Promise<void>> {
  const dist = await mkdtemp(join(tmpdir(), 'blockworth-built-'));
  buildApp(dist);
  const server = await serve(dist);
  project.provide('url', server.url);
  project.provide('dist', dist);
  return async () => {
    await server.close();
    await rm(dist, { recursive: true, force: true });
  };
}
