import { mergeConfig, type Plugin } from 'vite';
import config from '../../src/vite.config.ts';

/** Most bytes of a volume in this build: three photographs of 400 kB, not four. */
const MOST = '1_500_000';
const LIMIT = /(?<=MOST_VOLUME_BYTES = )150_000_000(?=;)/;

/** The app as it ships but for this one number, so that a few photographs make an archive in several volumes. */
const smallVolumes: Plugin = {
  name: 'blockworth-small-volumes',
  // The source as it is written, before anything rewrites its numbers.
  enforce: 'pre',
  transform(code, id) {
    if (!id.endsWith('/src/core/archive-layout.ts')) return null;
    if (!LIMIT.test(code)) throw new Error('The size of a volume is not where it was.');
    return { code: code.replace(LIMIT, MOST), map: null };
  },
};

export default mergeConfig(config, { plugins: [smallVolumes], worker: { plugins: () => [smallVolumes] } });
