// Bundles src/pixels for Node (no type check) and hands back its exports.
import { mkdirSync } from 'node:fs';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'vite';

const root = fileURLToPath(new URL('../..', import.meta.url));

/** @returns the exports of src/pixels/index.ts */
export async function loadPixels() {
  const outDir = `${root}node_modules/.cache/bench/pixels-${process.pid}`;
  mkdirSync(outDir, { recursive: true });
  await build({
    configFile: false,
    root,
    logLevel: 'error',
    build: {
      lib: { entry: `${root}src/pixels/index.ts`, formats: ['es'], fileName: () => 'pixels.mjs' },
      outDir,
      emptyOutDir: true,
      minify: false,
      target: 'node20',
    },
  });
  return import(pathToFileURL(`${outDir}/pixels.mjs`).href);
}
