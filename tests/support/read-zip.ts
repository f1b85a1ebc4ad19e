import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { BlobReader, Uint8ArrayWriter, ZipReader } from '@zip.js/zip.js';

/** Every file of a ZIP by its path, read by another library than the one that wrote it, checksums compared. */
export async function unzipped(file: Blob): Promise<Map<string, Uint8Array>> {
  const reader = new ZipReader(new BlobReader(file), { checkSignature: true, useWebWorkers: false });
  const files = new Map<string, Uint8Array>();
  for (const entry of await reader.getEntries()) {
    if (entry.directory) throw new Error(`A folder of its own: ${entry.filename}`);
    if (files.has(entry.filename)) throw new Error(`Twice: ${entry.filename}`);
    files.set(entry.filename, await entry.getData(new Uint8ArrayWriter()));
  }
  await reader.close();
  return files;
}

/** The one folder of a volume and the files in it, by their path in the bag. */
export async function bagIn(file: Blob): Promise<{ folder: string; files: Map<string, Uint8Array> }> {
  const all = await unzipped(file);
  const folders = new Set([...all.keys()].map((path) => path.split('/')[0] ?? ''));
  if (folders.size !== 1) throw new Error(`One folder was expected, got ${[...folders].join(', ')}.`);
  const [folder = ''] = folders;
  return { folder, files: new Map([...all].map(([path, bytes]) => [path.slice(folder.length + 1), bytes])) };
}

export const textOf = (bytes: Uint8Array | undefined): string => {
  if (!bytes) throw new Error('No such file in the bag.');
  return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
};

/** A folder for the time of one piece of work. */
export async function inFolder<T>(work: (folder: string) => Promise<T> | T): Promise<T> {
  const folder = mkdtempSync(join(tmpdir(), 'blockworth-'));
  try {
    return await work(folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

export async function putFile(folder: string, file: File): Promise<string> {
  const path = join(folder, file.name);
  writeFileSync(path, new Uint8Array(await file.arrayBuffer()));
  return path;
}

/** Runs a program; its output, or an error with what it said. */
export function run(program: string, args: readonly string[], folder?: string): string {
  const { status, stdout, stderr, error } = spawnSync(program, args, { encoding: 'utf8', cwd: folder });
  if (status !== 0) throw new Error(`${program} ${args.join(' ')}: ${error ?? ''}${stdout}${stderr}`);
  return stdout;
}
