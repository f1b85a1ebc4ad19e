import { Encrypter } from 'age-encryption';
import { describe, expect, it } from 'vitest';
import { readHere } from '../../src/imports/reader.ts';
import { aBlock, NEW_YEAR } from '../store/make.ts';
import { archiveOf } from './archives.ts';

const NOW = NEW_YEAR + 1000;

/** Encrypted by the age library itself, with little work so that tests are quick. */
async function lockedWith(passphrase: string, file: File): Promise<Uint8Array<ArrayBuffer>> {
  const encrypter = new Encrypter();
  encrypter.setPassphrase(passphrase);
  encrypter.setScryptWorkFactor(4);
  return new Uint8Array(await encrypter.encrypt(new Uint8Array(await file.arrayBuffer())));
}
const open = (bytes: Uint8Array<ArrayBuffer>, passphrase: string | null) =>
  readHere().open([new File([bytes], 'backup.zip.age')], passphrase, NOW);

describe('an encrypted archive', () => {
  const sound = archiveOf({ records: [aBlock()] });

  it('asks for its passphrase, and opens with it', async () => {
    const bytes = await lockedWith('calico straw', sound);
    expect(await open(bytes, null)).toBe('locked');
    expect(await open(bytes, 'calico straw')).toMatchObject({ records: [aBlock()], volumes: [1] });
  });

  it('says when the passphrase is wrong, and when the file is damaged or cut off', async () => {
    const bytes = await lockedWith('calico straw', sound);
    await expect(open(bytes, 'sinamay')).rejects.toMatchObject({ code: 'archive-passphrase' });
    const damaged = bytes.slice();
    damaged[damaged.length - 40] = (damaged.at(-40) ?? 0) ^ 1;
    await expect(open(damaged, 'calico straw')).rejects.toMatchObject({ code: 'archive-cut-off' });
    await expect(open(bytes.slice(0, -50), 'calico straw')).rejects.toMatchObject({ code: 'archive-cut-off' });
  });

  it('that asks for more memory than a phone has is refused before any work is done', async () => {
    const text = new TextDecoder('latin1').decode(await lockedWith('calico straw', sound));
    const greedy = text.replace(/(-> scrypt \S+) 4\n/, '$1 19\n');
    const bytes = Uint8Array.from(greedy, (letter) => letter.charCodeAt(0));
    await expect(open(bytes, 'calico straw')).rejects.toMatchObject({ code: 'archive-passphrase-work' });
  });
});
