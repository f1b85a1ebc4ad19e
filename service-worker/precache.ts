import { createHash } from 'node:crypto';
import { readdir, readFile } from 'node:fs/promises';
import { join, relative, resolve } from 'node:path';
import { build, type Plugin, type ResolvedConfig } from 'vite';

/** What a page of ours may do: itself and nothing else. The host's header adds `frame-ancestors 'none'`. */
export const POLICY =
  "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' blob:; media-src 'self' blob:; " +
  "connect-src 'self'; worker-src 'self'; manifest-src 'self'; font-src 'self'; object-src 'none'; " +
  "base-uri 'none'; form-action 'none'";

/** Writes the policy into the built page, so that it holds on a host that sends no headers. */
export function contentPolicy(): Plugin {
  return {
    name: 'blockworth-content-policy',
    apply: 'build',
    transformIndexHtml: () => [
      { tag: 'meta', attrs: { 'http-equiv': 'Content-Security-Policy', content: POLICY }, injectTo: 'head-prepend' },
    ],
  };
}

/** Files the service worker does not fetch in advance: maps, itself, and the example sale until it is opened. */
const NOT_AHEAD = /\.map$|(^|\/)sw\.js$|^example\//;

/** After the app is built, lists its files and builds the service worker around that list. */
export function serviceWorker(entry: string): Plugin {
  let config: ResolvedConfig;
  let written = false;
  return {
    name: 'blockworth-service-worker',
    apply: 'build',
    enforce: 'post',
    configResolved(resolved) {
      config = resolved;
    },
    writeBundle() {
      written = true;
    },
    closeBundle: {
      sequential: true,
      async handler() {
        // Also called when the build failed; then its own error is the one to be read.
        if (!written) return;
        const out = resolve(config.root, config.build.outDir);
        const list: { url: string; size: number; revision: string | null }[] = [];
        for (const file of await readdir(out, { recursive: true, withFileTypes: true })) {
          if (!file.isFile()) continue;
          const path = join(file.parentPath, file.name);
          const url = relative(out, path).replaceAll('\\', '/');
          if (NOT_AHEAD.test(url)) continue;
          const bytes = await readFile(path);
          // A name with a content hash never changes its meaning; the others carry a revision.
          const revision = /^assets\/.*-[\w-]{8}\./.test(url)
            ? null
            : createHash('sha256').update(bytes).digest('hex').slice(0, 16);
          list.push({ url, size: bytes.length, revision });
        }
        list.sort((a, b) => (a.url < b.url ? -1 : 1));
        const version = createHash('sha256').update(JSON.stringify(list)).digest('hex').slice(0, 12);
        await build({
          configFile: false,
          root: config.root,
          publicDir: false,
          logLevel: 'warn',
          define: { __PRECACHE__: JSON.stringify(list), __VERSION__: JSON.stringify(version) },
          build: {
            outDir: out,
            emptyOutDir: false,
            target: 'baseline-widely-available',
            rolldownOptions: {
              input: resolve(config.root, '..', entry),
              output: { format: 'iife', entryFileNames: 'sw.js' },
            },
          },
        });
      },
    },
  };
}
