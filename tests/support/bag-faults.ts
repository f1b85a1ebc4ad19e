import { createHash } from 'node:crypto';

/*
 * What is wrong with a bag by RFC 8493, read from its text alone and written without looking at the writer. Numbers are
 * sections of the RFC; only what it requires ("MUST", "REQUIRED") is a fault.
 */

type Files = ReadonlyMap<string, Uint8Array>;

const decoded = (bytes: Uint8Array): string => new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
const hex = (algorithm: string, bytes: Uint8Array): string => createHash(algorithm).update(bytes).digest('hex');
/** 2.1.3: LF, CR and % of a path are written as %0A, %0D and %25, nothing else is. */
const pathOf = (written: string): string =>
  written.replace(/%(0A|0D|25)/gi, (sign) => ({ '%0A': '\n', '%0D': '\r', '%25': '%' })[sign.toUpperCase()] ?? sign);

function readManifest(name: string, bytes: Uint8Array, faults: string[]): Map<string, string> {
  const listed = new Map<string, string>();
  for (const line of decoded(bytes).split(/\r\n|\r|\n/)) {
    if (line === '') continue;
    // 2.1.3: checksum, one or more blanks or tabs, path.
    const match = /^([0-9A-Fa-f]+)[ \t]+(\S.*)$/.exec(line);
    if (!match) {
      faults.push(`2.1.3: ${name} has a line that is none: ${line}`);
      continue;
    }
    const path = pathOf(match[2] ?? '');
    if (/^\/|^~|(^|\/)\.\.(\/|$)|\\/.test(path)) faults.push(`5.1: ${name} leads out of the bag: ${path}`);
    if (listed.has(path)) faults.push(`2.1.3: ${name} lists ${path} twice`);
    listed.set(path, (match[1] ?? '').toLowerCase());
  }
  return listed;
}

function compare(name: string, listed: ReadonlyMap<string, string>, files: Files, faults: string[]): void {
  const algorithm = /-([a-z0-9]+)\.txt$/.exec(name)?.[1] ?? '';
  for (const [path, checksum] of listed) {
    const bytes = files.get(path);
    if (!bytes) faults.push(`3: ${path} of ${name} is not there`);
    else if (hex(algorithm, bytes) !== checksum) faults.push(`3: ${path} is not as ${name} says`);
  }
}

/** `bag-info.txt` as pairs in order; folded lines joined. (2.2.2) */
export function readBagInfo(bytes: Uint8Array, faults: string[] = []): [string, string][] {
  const elements: [string, string][] = [];
  for (const line of decoded(bytes).split(/\r\n|\r|\n/)) {
    if (line === '') continue;
    const last = elements.at(-1);
    if (/^[ \t]/.test(line) && last) last[1] += ` ${line.trim()}`;
    else {
      const match = /^([^:\s][^:]*):[ \t](.*)$/.exec(line);
      if (match) elements.push([match[1] ?? '', match[2] ?? '']);
      else faults.push(`2.2.2: bag-info.txt has a line that is no element: ${line}`);
    }
  }
  return elements;
}

/** Everything wrong with a bag; empty when it is complete and valid (3). @param files by path inside the bag */
export function bagFaults(files: Files): string[] {
  const faults: string[] = [];
  const declaration = files.get('bagit.txt');
  if (!declaration) return ['2.1.1: bagit.txt is not there'];
  if (!/^BagIt-Version: \d+\.\d+\r?\nTag-File-Character-Encoding: UTF-8\r?\n?$/.test(decoded(declaration)))
    faults.push('2.1.1: bagit.txt is not the two lines it must be');
  if (!decoded(declaration).startsWith('BagIt-Version: 1.0')) faults.push('2.1.1: not version 1.0');

  const payload = [...files.keys()].filter((path) => path.startsWith('data/'));
  const manifests = [...files.keys()].filter((path) => /^manifest-[a-z0-9]+\.txt$/.test(path));
  const tagManifests = [...files.keys()].filter((path) => /^tagmanifest-[a-z0-9]+\.txt$/.test(path));
  if (manifests.length === 0) faults.push('2.1.3: there is no payload manifest');
  for (const name of manifests) {
    const listed = readManifest(name, files.get(name) as Uint8Array, faults);
    compare(name, listed, files, faults);
    for (const path of listed.keys()) if (!path.startsWith('data/')) faults.push(`2.1.3: ${name} lists ${path}`);
    for (const path of payload) if (!listed.has(path)) faults.push(`3: ${path} is not in ${name}`);
  }
  for (const name of tagManifests) {
    const listed = readManifest(name, files.get(name) as Uint8Array, faults);
    compare(name, listed, files, faults);
    for (const manifest of manifests)
      if (!listed.has(manifest)) faults.push(`2.2.1: ${name} does not list ${manifest}`);
    for (const path of listed.keys())
      if (/^(data\/|tagmanifest-)/.test(path)) faults.push(`2.2.1: ${name} lists ${path}`);
  }
  const info = files.get('bag-info.txt');
  for (const [label, value] of info ? readBagInfo(info, faults) : []) {
    if (label !== 'Payload-Oxum') continue;
    const octets = payload.reduce((sum, path) => sum + (files.get(path)?.length ?? 0), 0);
    if (value !== `${octets}.${payload.length}`)
      faults.push(`2.2.2: Payload-Oxum ${value}, there is ${octets}.${payload.length}`);
  }
  return faults;
}
