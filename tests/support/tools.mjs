// The independent readers that check what we export: Debian's tools, installed where we may, required in CI.
import { spawnSync } from 'node:child_process';
import { pathToFileURL } from 'node:url';
import { aptInstall } from './browser.mjs';

/** Program → the Debian package that brings it. */
const TOOLS = {
  qpdf: 'qpdf',
  pdfinfo: 'poppler-utils',
  pdftotext: 'poppler-utils',
  pdffonts: 'poppler-utils',
  pdfdetach: 'poppler-utils',
  pdfimages: 'poppler-utils',
  exiftool: 'libimage-exiftool-perl',
  age: 'age',
  unzip: 'unzip',
  python3: 'python3',
};

/** @param {string} program */
export const hasTool = (program) => spawnSync('which', [program], { stdio: 'ignore' }).status === 0;

/** True in CI, where a missing tool fails a test instead of skipping it. */
export const toolsRequired = Boolean(process.env.CI);

const missing = () => Object.keys(TOOLS).filter((program) => !hasTool(program));

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  if (missing().length > 0) {
    try {
      aptInstall(...new Set(missing().map((program) => TOOLS[program])));
    } catch (error) {
      console.error(error instanceof Error ? error.message : error);
    }
  }
  const absent = missing();
  console.log(absent.length === 0 ? 'Readers for the exports: all there' : `Readers not found: ${absent.join(', ')}`);
  if (absent.length > 0 && toolsRequired) process.exit(1);
}
