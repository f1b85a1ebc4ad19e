import { writeFileSync } from 'node:fs';
import jpeg from 'jpeg-js';
import { describe, expect, it } from 'vitest';
import { imageCopy } from '../../src/exports/images/image-copy.ts';
import { type PictureWords, xmpPacket } from '../../src/exports/images/xmp.ts';
import { picture } from '../support/archive-fixture.ts';
import { segment, withExif, withSegments } from '../support/exif.ts';
import { inFolder, run } from '../support/read-zip.ts';
import { hasTool, toolsRequired } from '../support/tools.mjs';

const words: PictureWords = {
  creator: 'Lanthorn Playhouse wardrobe',
  taken: { local: '2026-10-17T11:42:09', offset: '+01:00' },
  title: 'Cloche “Ünder-Ø” 帽 & <co>',
  description: 'Three-quarter, before the work.',
  altText: 'A lime-wood cloche with a check across the tip',
  longDescription: 'The block stands on its base. A check runs from the tip.',
  objectNumber: 'LP-014',
  rights: '© 2026 Lanthorn Playhouse, CC-BY-4.0',
  identifier: 'urn:uuid:019b76da-a800-7000-8000-000000000032',
};

const plain = new Uint8Array(picture(1).bytes);
const text = (of: string): Uint8Array => new TextEncoder().encode(of);
/** As a phone writes it: EXIF with place and device, XMP, IPTC, a comment, a maker's segment, and a film behind the picture. */
const fromCamera = new Uint8Array([
  ...withSegments(
    withExif(plain, {
      orientation: 1,
      dateTimeOriginal: '2026:10:17 11:42:09',
      gps: { latitude: 51.17725, longitude: -2.98764 },
    }),
    segment(0xe1, text('http://ns.adobe.com/xap/1.0/\0<x:xmpmeta>SECRET-XMP</x:xmpmeta>')),
    segment(0xed, text('Photoshop 3.0\0SECRET-IPTC')),
    segment(0xe7, text('SECRET-MAKER')),
    segment(0xfe, text('SECRET-COMMENT')),
  ),
  ...text('SECRET-FILM'),
]);

const hasExiftool = hasTool('exiftool');

/** What exiftool, which shares nothing with our code, reads from a file: every tag by group and name. */
function readBack(bytes: Uint8Array): Promise<Record<string, unknown>> {
  return inFolder((place) => {
    writeFileSync(`${place}/a.jpg`, bytes);
    const [read] = JSON.parse(run('exiftool', ['-json', '-G1', '-struct', '-charset', 'utf8', `${place}/a.jpg`]));
    return read;
  });
}

describe('a copy of a photograph to be handed on', () => {
  it('keeps the picture and says nothing the camera said', () => {
    const copy = imageCopy(fromCamera, words);
    expect(jpeg.decode(copy, { useTArray: true }).data).toEqual(jpeg.decode(plain, { useTArray: true }).data);
    expect(new TextDecoder('latin1').decode(copy)).not.toMatch(/SECRET|Exif/);
  });

  it.skipIf(!toolsRequired && !hasExiftool)(
    'is read by exiftool with the words the owner gave it, and without place or device',
    async () => {
      const read = await readBack(imageCopy(fromCamera, words));
      expect(read).toMatchObject({
        'XMP-dc:Creator': [words.creator],
        'XMP-dc:Title': words.title,
        'XMP-dc:Description': words.description,
        'XMP-dc:Rights': words.rights,
        'XMP-dc:Identifier': 'LP-014',
        'XMP-photoshop:DateCreated': '2026:10:17 11:42:09+01:00',
        'XMP-exif:DateTimeOriginal': '2026:10:17 11:42:09+01:00',
        'XMP-xmpMM:DocumentID': words.identifier,
        'XMP-iptcCore:AltTextAccessibility': words.altText,
        'XMP-iptcCore:ExtDescrAccessibility': words.longDescription,
        'XMP-iptcExt:DigitalSourceType': 'http://cv.iptc.org/newscodes/digitalsourcetype/digitalCapture',
        'XMP-iptcExt:ArtworkOrObject': [{ AOSourceInvNo: 'LP-014', AOTitle: words.title }],
      });
      const groups = new Set(Object.keys(read).map((key) => key.split(':')[0]));
      for (const gone of ['GPS', 'IFD0', 'ExifIFD', 'IPTC', 'Photoshop', 'MakerNotes'])
        expect(groups).not.toContain(gone);
      expect(JSON.stringify(read)).not.toContain('SECRET');
      expect(Object.keys(read).filter((key) => /Warning|Error/.test(key))).toEqual([]);
    },
  );

  it.skipIf(!toolsRequired && !hasExiftool)('says no more than is known: no date, no rights, no number', async () => {
    const read = await readBack(
      imageCopy(plain, { ...words, creator: '', taken: null, rights: '', objectNumber: '', altText: '' }),
    );
    for (const key of Object.keys(read))
      expect(key).not.toMatch(/Date(Created|TimeOriginal)|Rights|Creator$|Identifier|ArtworkOrObject|AltText/);
    const local = await readBack(imageCopy(plain, { ...words, taken: { local: '2026-10-17T11:42:09', offset: null } }));
    expect(local['XMP-photoshop:DateCreated']).toBe('2026:10:17 11:42:09');
  });

  it.skipIf(!toolsRequired && !hasExiftool)(
    'stays readable with very long words and signs XML cannot say',
    async () => {
      const odd = 'a\u0000b\ud800c\u0007';
      const read = await readBack(
        imageCopy(plain, { ...words, title: odd, description: 'ü'.repeat(60_000), altText: 'long '.repeat(200) }),
      );
      expect(read['XMP-dc:Title']).toBe('abc');
      expect(String(read['XMP-dc:Description'])).toMatch(/^ü{1000,}…$/);
      expect(String(read['XMP-iptcCore:AltTextAccessibility']).length).toBeLessThanOrEqual(250);
    },
  );

  it('keeps the orientation of pixels that do not lie upright', () => {
    expect(new TextDecoder('latin1').decode(imageCopy(plain, words, 6))).toContain('Exif\0\0MM');
  });

  it('is refused for what is no whole JPEG', () => {
    for (const bytes of [text('not a picture'), plain.subarray(0, plain.length - 40)])
      expect(() => imageCopy(new Uint8Array(bytes), words)).toThrow('photo-not-an-image');
  });
});

describe('the words of a picture', () => {
  it('make a packet that begins and ends as XMP packets do', () => {
    // XMP specification part 1, 7.3.2.
    expect(xmpPacket(words)).toMatch(
      /^<\?xpacket begin="\ufeff" id="W5M0MpCehiHzreSzNTczkc9d"\?>.*<\?xpacket end="r"\?>$/s,
    );
  });
});
