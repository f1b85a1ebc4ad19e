import { mergeConfig, type Plugin } from 'vite';
import config from '../../src/vite.config.ts';

/** What tells the next version from this one. */
const MARK = "\ndocument.documentElement.dataset.version = 'next';\n";

/** One line more in the entry: new hashes, a new page, a new list in the service worker, as any real change makes. */
const nextVersion: Plugin = {
  name: 'blockworth-next-version',
  transform: (code, id) => (id.endsWith('/src/main.tsx') ? { code: code + MARK, map: null } : null),
};

export default mergeConfig(config, { plugins: [nextVersion] });
