import { describe, expect, it } from 'vitest';
import { MARKER, makeSegment, readSegments, rewriteJpeg } from '../../src/photos/segments.ts';
import { segment, withSegments } from '../support/exif.ts';
import { scene } from '../support/test-pictures.ts';

const ascii = (text: string): Uint8Array => new TextEncoder().encode(text);

/** Two scans with a table between them, restarts, a stuffed zero, fill bytes and strays: what T.81 allows and cameras do. */
const ODD = Uint8Array.from([
  ...[0xff, 0xd8],
  ...segment(0xe0, ascii('JFIF\0')),
  ...segment(0xc2, [8, 0, 16, 0, 16, 1, 1, 0x11, 0]),
  ...segment(0xda, [1, 1, 0, 0, 0, 0]),
  ...[1, 2, 0xff, 0x00, 3, 0xff, 0xd0, 4, 0xff, 0xd1, 5],
  ...[0xff, 0xff],
  ...segment(0xc4, [0, 1, 2]),
  ...[0, 0, 0],
  ...segment(0xda, [1, 1, 0, 1, 5, 0]),
  ...[9, 0xff, 0x00],
  ...[0xff, 0xd9],
]);

describe('the segments of a JPEG', () => {
  it('follow each other without a gap from start to end in a file of the browser', async () => {
    const bytes = await scene(300, 200, { noise: 50 });
    const { segments, end } = readSegments(bytes);
    expect(end).toBe(bytes.length);
    expect(segments[0]?.at).toBe(2);
    expect(segments.slice(1).map(({ at }) => at)).toEqual(segments.slice(0, -1).map(({ next }) => next));
    expect(segments.at(-1)?.next).toBe(bytes.length - 2);
    expect(segments.map(({ marker }) => marker)).toEqual(expect.arrayContaining([0xe0, 0xdb, 0xc0, 0xc4, 0xda]));
  });

  it('are told apart from coded data, restarts, fill bytes and strays', () => {
    const { segments, end } = readSegments(ODD);
    expect(segments.map(({ marker }) => marker)).toEqual([0xe0, 0xc2, 0xda, 0xc4, 0xda]);
    expect(end).toBe(ODD.length);
    const head = readSegments(ODD, { beforeScan: true });
    expect(head.segments).toEqual(segments.slice(0, 2));
  });

  it('have no end in any file that stops early', () => {
    for (let length = 0; length < ODD.length; length++)
      expect(readSegments(ODD.subarray(0, length)).end, `${length} bytes`).toBeNull();
  });

  it('come out as they went in when all are kept, without what hangs on behind', async () => {
    const bytes = await scene(300, 200);
    expect(rewriteJpeg(new Uint8Array([...bytes, ...ascii('a film')]), () => true)).toEqual(bytes);
  });

  it('are put in after JFIF, which must come first, and can be taken out again', async () => {
    const bytes = await scene(60, 40);
    const words = makeSegment(MARKER.app1, ascii('http://ns.adobe.com/xap/1.0/\0<x/>'));
    const written = rewriteJpeg(bytes, () => true, [words]);
    expect(
      readSegments(written)
        .segments.map(({ marker }) => marker)
        .slice(0, 2),
    ).toEqual([0xe0, 0xe1]);
    expect((await createImageBitmap(new Blob([written]))).width).toBe(60);
    expect(rewriteJpeg(written, ({ marker }) => marker !== MARKER.app1)).toEqual(bytes);
    expect(rewriteJpeg(withSegments(bytes, words), ({ marker }) => marker !== MARKER.app1)).toEqual(bytes);
  });

  it('hold at most 65,533 bytes each', () => {
    expect(makeSegment(MARKER.comment, new Uint8Array(65_533)).length).toBe(65_537);
    expect(() => makeSegment(MARKER.comment, new Uint8Array(65_534))).toThrow('65534');
    expect(() => rewriteJpeg(ODD.subarray(0, 40), () => true)).toThrow('cut off');
  });
});
