import { defineConfig } from 'vite';
import { contentPolicy, serviceWorker } from '../service-worker/precache.ts';

/** `vite build --config src/vite.config.ts src` → dist/, then the service worker with its list of files. */
export default defineConfig({
  base: './',
  publicDir: '../public',
  worker: { format: 'es' },
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  build: {
    outDir: '../dist',
    emptyOutDir: true,
    target: 'baseline-widely-available',
    sourcemap: true,
    modulePreload: { polyfill: false },
  },
  plugins: [contentPolicy(), serviceWorker('service-worker/sw.ts')],
});
