// Bundles TypeScript for Node in memory (no type check) and hands back its exports.
import { fileURLToPath } from 'node:url';
import { build } from 'vite';

const root = fileURLToPath(new URL('../..', import.meta.url));

/**
 * @param {string} entry path from the project's root
 * @returns {Promise<any>} the exports of the module
 */
export async function load(entry) {
  const built = await build({
    configFile: false,
    root,
    logLevel: 'error',
    build: {
      lib: { entry: `${root}${entry}`, formats: ['es'], fileName: () => 'bundle.mjs' },
      write: false,
      minify: false,
      target: 'node20',
      rolldownOptions: { external: /^node:/ },
    },
  });
  const [{ output }] = [built].flat();
  const { code } = output.find(({ type }) => type === 'chunk');
  return import(`data:text/javascript;base64,${Buffer.from(code).toString('base64')}`);
}
