import { describe, expect, it } from 'vitest';
import { bagInfo, manifest } from '../../src/core/bagit.ts';
import { archiveOf } from '../support/archive-fixture.ts';
import { bagFaults, readBagInfo } from '../support/bag-faults.ts';
import { bagIn, inFolder, putFile, run, textOf } from '../support/read-zip.ts';
import { hasTool, toolsRequired } from '../support/tools.mjs';

const [volume] = await archiveOf();
if (!volume) throw new Error('No volume was made.');
const { folder, files } = await bagIn(volume);

/** The bag with one thing changed. */
function broken(change: (files: Map<string, Uint8Array>) => void): string[] {
  const copy = new Map(files);
  change(copy);
  return bagFaults(copy);
}
const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);

// Source of every rule: RFC 8493, The BagIt File Packaging Format (V1.0).
describe('an archive volume', () => {
  it('is a bag, complete and valid by RFC 8493', () => {
    expect(bagFaults(files)).toEqual([]);
  });

  it('is checked by something that sees a changed byte, a lost, a foreign and an unlisted file, and a wrong sum', () => {
    const photo = [...files.keys()].find((path) => path.startsWith('data/photographs/')) ?? '';
    const flipped = (path: string) => (all: Map<string, Uint8Array>) => {
      const changed = new Uint8Array(all.get(path) as Uint8Array);
      changed[5] = (changed[5] ?? 0) ^ 1;
      all.set(path, changed);
    };
    expect(broken(flipped(photo)).join()).toMatch(/sha256.*sha512/s);
    expect(broken(flipped('bag-info.txt')).join()).toContain('bag-info.txt is not as tagmanifest');
    expect(broken((all) => all.delete(photo)).join()).toContain('not there');
    expect(broken((all) => all.set('data/stray.txt', bytes('x'))).join()).toContain('not in manifest-sha256');
    expect(broken((all) => all.set('bagit.txt', bytes('\ufeffBagIt-Version: 1.0\n')))).not.toEqual([]);
    expect(broken((all) => all.set('bag-info.txt', bytes('Payload-Oxum: 1.1\n'))).join()).toContain('Payload-Oxum');
  });

  it('lies in one folder named like the file (4.1)', () => {
    expect(volume.name).toBe(`${folder}.zip`);
    expect(volume.type).toBe('application/zip');
  });

  it('says what it is, when it was made, and which of how many (2.2.2)', () => {
    const info = new Map(readBagInfo(files.get('bag-info.txt') as Uint8Array));
    expect(info.get('Bagging-Date')).toMatch(/^\d{4}-\d\d-\d\d$/);
    expect(info.get('Bag-Count')).toBe('1 of 1');
    expect(info.get('Bag-Group-Identifier')).toMatch(/^urn:uuid:/);
    expect(info.get('Source-Organization')).toBe('Lanthorn Playhouse wardrobe');
    expect(info.get('Bag-Size')).toMatch(/^\d+(\.\d)? [kM]B$/);
    for (const line of textOf(files.get('bag-info.txt')).split('\n')) expect(line.length).toBeLessThanOrEqual(79);
  });

  it('uses only names that no file system folds, decodes or refuses', () => {
    for (const path of files.keys()) expect(path).toMatch(/^[a-z0-9][a-z0-9._/-]*$/);
  });

  it('tells a reader who knows nothing what everything is', () => {
    const readme = textOf(files.get('readme.txt'));
    for (const folder of ['records', 'photographs', 'tables', 'marks', 'objects', 'originals'])
      expect(readme).toContain(`data/${folder}/`);
    expect(readme).toContain('2 hat blocks');
    expect(readme).toContain('BagIt');
  });

  it.skipIf(!toolsRequired && !hasTool('unzip'))('is opened and found whole by three other programs', async () => {
    await inFolder(async (place) => {
      const path = await putFile(place, volume);
      expect(run('unzip', ['-tq', path])).toContain('No errors');
      expect(run('python3', ['-m', 'zipfile', '-t', path])).toContain('Done testing');
      run('unzip', ['-q', path], place);
      const bag = `${place}/${folder}`;
      for (const name of ['manifest-sha256.txt', 'tagmanifest-sha256.txt'])
        run('sha256sum', ['--check', '--strict', '--quiet', name], bag);
      for (const name of ['manifest-sha512.txt', 'tagmanifest-sha512.txt'])
        run('sha512sum', ['--check', '--strict', '--quiet', name], bag);
    });
  });
});

describe('the text of tag files', () => {
  it('encodes line ends and per cent in a path, and nothing else (2.1.3)', () => {
    const hashes = { sha256: 'ab', sha512: 'cd' };
    expect(manifest([{ path: 'data/50% of a\nb\rc ü', hashes }], 'sha512')).toBe('cd  data/50%25 of a%0Ab%0Dc ü\n');
  });

  it('folds a long element and gives it back whole (2.2.2)', () => {
    const long =
      'Records of a great many hat blocks, seen at one sale or another, and of what was done to them since then';
    const text = bagInfo([
      ['External-Description', long],
      ['Empty', ' '],
      ['Contact-Name', 'two\nlines'],
    ]);
    expect(readBagInfo(bytes(text))).toEqual([
      ['External-Description', long],
      ['Contact-Name', 'two lines'],
    ]);
    expect(() => bagInfo([['Not: a label', 'x']])).toThrow('no label');
  });
});
