import { makeZip } from 'client-zip';
import { PAYLOAD, TAG_FILES } from '../core/archive-layout.ts';
import { ALGORITHMS, BAG_DECLARATION, bagInfo, type Hashed, manifest, payloadOxum } from '../core/bagit.ts';
import { asPassphrase } from '../core/passphrase.ts';
import type { VolumeFile, VolumeHeading } from './archive-messages.ts';

const encoder = new TextEncoder();

const hex = (digest: ArrayBuffer): string =>
  Array.from(new Uint8Array(digest), (byte) => byte.toString(16).padStart(2, '0')).join('');

async function hashed(path: string, bytes: Uint8Array<ArrayBuffer>): Promise<Hashed> {
  const [sha256, sha512] = await Promise.all([
    crypto.subtle.digest('SHA-256', bytes),
    crypto.subtle.digest('SHA-512', bytes),
  ]);
  return { path, hashes: { sha256: hex(sha256), sha512: hex(sha512) } };
}

/** `146.2 MB`, as `Bag-Size` is meant: for people. */
const sizeInWords = (octets: number): string =>
  octets < 1_000_000 ? `${Math.max(1, Math.round(octets / 1000))} kB` : `${(octets / 1_000_000).toFixed(1)} MB`;

interface ZipEntry {
  readonly name: string;
  readonly input: Uint8Array<ArrayBuffer>;
  readonly lastModified: Date;
}

/** The files of a bag in the order they are written: the declaration first, what sums up the others last. */
async function* bagEntries(
  { folder, made, info, readme }: VolumeHeading,
  payload: AsyncIterable<VolumeFile>,
): AsyncGenerator<ZipEntry> {
  const lastModified = new Date(made);
  const entry = (path: string, input: Uint8Array<ArrayBuffer>): ZipEntry => ({
    name: `${folder}/${path}`,
    input,
    lastModified,
  });
  const tags: Hashed[] = [];
  const tag = async (path: string, text: string): Promise<ZipEntry> => {
    const bytes = encoder.encode(text);
    tags.push(await hashed(path, bytes));
    return entry(path, bytes);
  };

  yield await tag(TAG_FILES.bagit, BAG_DECLARATION);
  yield await tag(TAG_FILES.readme, readme);
  const files: Hashed[] = [];
  const seen = new Set<string>();
  let octets = 0;
  for await (const { path, bytes } of payload) {
    if (!path.startsWith(PAYLOAD) || seen.has(path)) throw new Error(`${path} cannot go into the payload.`);
    seen.add(path);
    files.push(await hashed(path, bytes));
    octets += bytes.length;
    yield entry(path, bytes);
  }
  const sums = [
    ['Bag-Size', sizeInWords(octets)],
    ['Payload-Oxum', payloadOxum(octets, files.length)],
  ] as const;
  yield await tag(TAG_FILES.info, bagInfo([...info, ...sums]));
  for (const algorithm of ALGORITHMS) yield await tag(TAG_FILES.manifests[algorithm], manifest(files, algorithm));
  // A tag manifest lists no tag manifest (RFC 8493, 2.2.1): their texts are made before either is written.
  for (const algorithm of ALGORITHMS) {
    const text = manifest(
      tags.filter(({ path }) => !path.startsWith('tagmanifest-')),
      algorithm,
    );
    yield await tag(TAG_FILES.tagManifests[algorithm], text);
  }
}

/**
 * A bag as the bytes of a ZIP file, made as they are asked for: one file of the payload is in memory at a time. Nothing
 * is deflated, since photographs are packed already; ZIP64 is used where sizes ask for it.
 * @throws what the payload throws, in the stream
 */
export const volumeStream = (heading: VolumeHeading, payload: AsyncIterable<VolumeFile>): ReadableStream<Uint8Array> =>
  makeZip(bagEntries(heading, payload));

/**
 * Encrypted with a passphrase in the age format, version 1. The work factor is the most a small phone bears: 2^17
 * rounds take 128 MB for a moment; the least the OWASP password storage notes allow for scrypt.
 */
export const SCRYPT_LOG_N = 17;

export async function encrypted(
  stream: ReadableStream<Uint8Array>,
  passphrase: string,
  logN = SCRYPT_LOG_N,
): Promise<ReadableStream<Uint8Array>> {
  const { Encrypter } = await import('age-encryption');
  const encrypter = new Encrypter();
  encrypter.setPassphrase(asPassphrase(passphrase));
  encrypter.setScryptWorkFactor(logN);
  return encrypter.encrypt(stream);
}
