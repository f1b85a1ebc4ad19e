import { writeFileSync } from 'node:fs';
import { generateIdentity, identityToRecipient } from 'age-encryption';
import { describe, expect, it } from 'vitest';
import { unlocked } from '../../src/imports/unlock.ts';
import { encrypted, SCRYPT_LOG_N } from '../../src/workers/archive-volume.ts';
import { hasAge, openWithAge } from '../support/age.ts';
import { archiveOf } from '../support/archive-fixture.ts';
import { bagFaults } from '../support/bag-faults.ts';
import { bagIn, inFolder, putFile, run, unzipped } from '../support/read-zip.ts';
import { toolsRequired } from '../support/tools.mjs';

const PASSPHRASE = 'lanthorn felt brim Übergröße';
const [locked] = await archiveOf(undefined, { passphrase: PASSPHRASE });
const [open] = await archiveOf();
if (!locked || !open) throw new Error('No volume was made.');
/** The same lock with a key that is worked out at once, for what does not hang on how hard that is. */
const light = new File(
  [
    await new Response(
      (await encrypted(open.stream(), PASSPHRASE, 10)) as ReadableStream<Uint8Array<ArrayBuffer>>,
    ).blob(),
  ],
  `${open.name}.age`,
);

// Source: C2SP age specification, version 1.
describe('an encrypted volume', () => {
  it('is an age file locked with a passphrase alone, and tells nothing of what is in it', async () => {
    expect(locked.name).toMatch(/\.zip\.age$/);
    const text = new TextDecoder('latin1').decode(await locked.arrayBuffer());
    expect(text).toMatch(new RegExp(`^age-encryption\\.org/v1\\n-> scrypt [A-Za-z0-9+/]{22} ${SCRYPT_LOG_N}\\n`));
    expect(text.match(/\n-> /g)).toHaveLength(1);
    expect(text).not.toMatch(/bagit|Cloche|records|\.jpg/);
  });

  it('opens again with its passphrase to a valid bag, also typed on another keyboard', async () => {
    const opened = await unlocked(locked, `  ${PASSPHRASE.normalize('NFD')} `);
    expect(bagFaults((await bagIn(opened)).files)).toEqual([]);
  });

  it('stays shut to a wrong one', async () => {
    await expect(unlocked(light, `${PASSPHRASE}!`)).rejects.toMatchObject({ code: 'archive-passphrase' });
  });

  it('shows when it was cut or changed', async () => {
    const bytes = new Uint8Array(await light.arrayBuffer());
    await expect(unlocked(new Blob([bytes.subarray(0, bytes.length - 1)]), PASSPHRASE)).rejects.toMatchObject({
      code: 'archive-cut-off',
    });
    bytes[bytes.length >> 1] = (bytes[bytes.length >> 1] ?? 0) ^ 1;
    await expect(unlocked(new Blob([bytes]), PASSPHRASE)).rejects.toMatchObject({ code: 'archive-cut-off' });
  });

  it('tells a right passphrase from a wrong one by its first thousand bytes, whatever comes after', async () => {
    const head = light.slice(0, 1000);
    await expect(unlocked(head, PASSPHRASE)).rejects.toMatchObject({ code: 'archive-cut-off' });
    await expect(unlocked(head, `${PASSPHRASE}!`)).rejects.toMatchObject({ code: 'archive-passphrase' });
  });

  it.skipIf(!toolsRequired && !hasAge)('is opened by the age program with the passphrase, and refused without', () =>
    inFolder(async (place) => {
      const path = await putFile(place, light);
      openWithAge(place, path, `${place}/a.zip`, PASSPHRASE);
      expect(run('unzip', ['-tq', `${place}/a.zip`])).toContain('No errors');
      expect(() => openWithAge(place, path, `${place}/b.zip`, 'something else')).toThrow(/incorrect passphrase/);
    }),
  );

  it.skipIf(!toolsRequired && !hasAge)('is written as the age program reads it, whatever its size (64 kB pieces)', () =>
    inFolder(async (place) => {
      const { Encrypter } = await import('age-encryption');
      const identity = await generateIdentity();
      writeFileSync(`${place}/key.txt`, `${identity}\n`);
      for (const size of [1, 65_535, 65_536, 65_537, 200_000]) {
        const plain = new Uint8Array(size).map((_, i) => i * 7);
        const encrypter = new Encrypter();
        encrypter.addRecipient(await identityToRecipient(identity));
        const stream = await encrypter.encrypt(new Blob([plain]).stream() as ReadableStream<Uint8Array>);
        const sealed = await new Response(stream as ReadableStream<Uint8Array<ArrayBuffer>>).arrayBuffer();
        writeFileSync(`${place}/a.age`, new Uint8Array(sealed));
        writeFileSync(`${place}/a`, plain);
        run('age', ['-d', '-i', `${place}/key.txt`, '-o', `${place}/b`, `${place}/a.age`]);
        run('cmp', [`${place}/a`, `${place}/b`]);
      }
    }),
  );

  it('is made piece by piece: the first bytes come before the last are asked for', async () => {
    let pulled = 0;
    const source = new ReadableStream<Uint8Array>({
      pull(controller) {
        pulled += 1;
        if (pulled > 400) controller.close();
        else controller.enqueue(new Uint8Array(10_000));
      },
    });
    const reader = (await encrypted(source, PASSPHRASE, 10)).getReader();
    await reader.read();
    await reader.read();
    expect(pulled).toBeLessThan(60);
    await reader.cancel();
  });
});

it('a volume that is not encrypted is an ordinary ZIP', async () => {
  expect((await unzipped(open)).size).toBeGreaterThan(10);
});
