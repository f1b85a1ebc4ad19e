import { fileURLToPath } from 'node:url';
import { playwright } from '@vitest/browser-playwright';
import { defineConfig } from 'vitest/config';
import { launchArgs, needBrowser } from './support/browser.mjs';

const root = fileURLToPath(new URL('..', import.meta.url));
const jsx = { jsx: { runtime: 'automatic', importSource: 'preact' } } as const;

/** How long a quick test may take, ms: a busy machine is slow, not wrong. */
const PATIENCE = 30_000;

/** How long a test asks again for what is still on its way in a browser, ms. */
const ASKING = { poll: { timeout: 15_000 } } as const;

/** Five kinds of test, one run, one count: rules in Node, records kept in Node, parts in a stand-in DOM, platform in Chromium, the whole built app. */
export default defineConfig({
  root,
  test: {
    reporters: ['default', './tests/support/plain-reporter.ts'],
    projects: [
      {
        root,
        test: {
          name: 'unit',
          environment: 'node',
          testTimeout: PATIENCE,
          setupFiles: ['tests/support/seed.ts'],
          // Nothing here leaves a trace in its process, so none needs one of its own.
          isolate: false,
          include: ['tests/{core,catalogue,pixels,exports,reports,text,house}/**/*.test.ts'],
        },
      },
      {
        root,
        test: {
          name: 'store',
          environment: 'node',
          testTimeout: PATIENCE,
          setupFiles: ['tests/support/seed.ts'],
          include: ['tests/{store,imports}/**/*.test.ts'],
        },
      },
      {
        root,
        oxc: jsx,
        test: {
          name: 'dom',
          environment: 'happy-dom',
          testTimeout: PATIENCE,
          // What a test draws and stubs it takes away again.
          isolate: false,
          expect: ASKING,
          include: ['tests/dom/**/*.test.tsx'],
        },
      },
      {
        root,
        oxc: jsx,
        // Found on the way, a dependency would be bundled anew and the page reloaded under a running test.
        optimizeDeps: {
          include: [
            'preact',
            'preact/hooks',
            'preact/jsx-runtime',
            'preact/jsx-dev-runtime',
            'preact/test-utils',
            '@preact/signals',
            '@zip.js/zip.js',
            'age-encryption',
            'browser-image-compression',
            'client-zip',
            'edtf',
            'exifr/dist/lite.esm.mjs',
            'idb',
            'uuid',
            'zod/mini',
          ],
        },
        test: {
          name: 'browser',
          sequence: { groupOrder: 1 },
          testTimeout: PATIENCE,
          expect: ASKING,
          include: ['tests/browser/**/*.test.{ts,tsx}'],
          browser: {
            enabled: true,
            headless: true,
            screenshotFailures: false,
            instances: [{ browser: 'chromium' }],
            provider: playwright({ launchOptions: { executablePath: needBrowser(), args: launchArgs } }),
          },
        },
      },
      {
        root,
        test: {
          name: 'e2e',
          include: ['tests/e2e/**/*.test.ts'],
          // Two phones at a time, after all else: more, and the machine is what is tested.
          maxWorkers: 2,
          sequence: { groupOrder: 2 },
          testTimeout: 90_000,
          // A tap on a page still scrolling is lost now and then on a busy machine. Whatever needed it is named at the end.
          retry: 1,
          expect: ASKING,
          hookTimeout: 60_000,
          globalSetup: 'tests/support/build-and-serve.ts',
        },
      },
    ],
  },
});
