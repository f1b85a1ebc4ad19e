// Installs the packages of the lock file when they are not there or not the ones it names.
import { spawnSync } from 'node:child_process';
import { existsSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = fileURLToPath(new URL('../..', import.meta.url));

/** Runs a program in the project and ends this one with its code if it fails. */
export function run(program, args, env = {}) {
  const { status, error } = spawnSync(program, args, {
    cwd: root,
    stdio: 'inherit',
    env: { ...process.env, ...env },
    shell: process.platform === 'win32',
  });
  if (error) console.error(error.message);
  if (status !== 0) process.exit(status ?? 1);
}

/** npm writes its own lock beside the packages it installed: older than ours means ours has changed since. */
export function install() {
  const inside = join(root, 'node_modules/.package-lock.json');
  const ours = join(root, 'package-lock.json');
  if (existsSync(inside) && statSync(inside).mtimeMs >= statSync(ours).mtimeMs) return;
  run('npm', ['ci', '--no-audit', '--no-fund']);
}
