// `npm test`: installs what is missing, finds or installs a browser, checks types and style, runs every test once.
import { install, run } from '../../src/serve/install.mjs';

install();
run('node', ['tests/support/browser.mjs']);
run('node', ['tests/support/tools.mjs']);
run('npx', ['tsc', '-b']);
run('npx', ['biome', 'check', '--error-on-warnings', '.']);
run('npx', ['vitest', 'run', '--config', 'tests/vitest.config.ts', ...process.argv.slice(2)]);
