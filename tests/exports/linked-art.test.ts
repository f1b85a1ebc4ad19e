import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { hashUri } from '../../src/exports/linked-art.ts';
import { id, make } from '../store/make.ts';
import { archiveOf, smallShelf } from '../support/archive-fixture.ts';
import { objectFaults } from '../support/linked-art-faults.ts';
import { bagIn, textOf } from '../support/read-zip.ts';

const [volume] = await archiveOf(smallShelf());
const { files } = await bagIn(volume as File);
const objectOf = (block: string) => JSON.parse(textOf(files.get(`data/objects/${block}.json`)));

describe('a hat block as Linked Art', () => {
  it('has all the API requires and nothing it does not know, full or hardly begun', () => {
    expect(objectFaults(objectOf(id(10)))).toEqual([]);
    expect(objectFaults(objectOf(id(11)))).toEqual([]);
  });

  it('is checked by something that sees what is missing, foreign or of the wrong kind', () => {
    const changed = (change: (object: Record<string, unknown>) => void): string[] => {
      const copy = objectOf(id(10));
      change(copy);
      return objectFaults(copy);
    };
    expect(changed((object) => Reflect.deleteProperty(object, '_label'))).not.toEqual([]);
    expect(changed((object) => Object.assign(object, { colour: 'brown' }))).not.toEqual([]);
    expect(
      changed((object) => Object.assign((object.dimension as object[])[0] as object, { value: '572' })),
    ).not.toEqual([]);
    expect(
      changed((object) =>
        Object.assign(object.produced_by as object, { timespan: { type: 'TimeSpan', begin_of_the_begin: '1940' } }),
      ),
    ).not.toEqual([]);
  });

  it('says an uncertain date in words and as first and last moment', () => {
    // EDTF 1940~/1949~ reaches from the first day of 1940 to the last of 1949.
    expect(objectOf(id(10)).produced_by.timespan).toMatchObject({
      identified_by: [{ type: 'Name', content: 'c. 1940s' }],
      begin_of_the_begin: '1940-01-01T00:00:00Z',
      end_of_the_end: '1949-12-31T23:59:59Z',
    });
  });

  it('gives a year nobody knows no bounds: nothing is as old as the year 0', async () => {
    const made = { words: 'unknown', edtf: 'XXXX' };
    const [file] = await archiveOf({ records: [make('block', { id: id(10), made })], photos: [] });
    const object = JSON.parse(textOf((await bagIn(file as File)).files.get(`data/objects/${id(10)}.json`)));
    expect(object.produced_by.timespan).toEqual({
      type: 'TimeSpan',
      identified_by: [{ type: 'Name', content: 'unknown' }],
    });
  });

  it('gives measures their unit, findings as assessments, work as modifications', () => {
    const object = objectOf(id(10));
    expect(
      object.dimension.map(({ value, unit }: { value: number; unit: { _label: string } }) => [value, unit._label]),
    ).toEqual([
      [572, 'millimeters'],
      [118.5, 'millimeters'],
    ]);
    const assigned = object.attributed_by.filter(({ assigned }: { assigned?: object }) => assigned);
    expect(assigned.map((one: { assigned: { id: string } }) => one.assigned.id)).toEqual([
      'urn:x-blockworth:damage:check',
      'urn:x-blockworth:damage:flightHoles',
    ]);
    expect(object.modified_by).toHaveLength(1);
    expect(object.identified_by[1].content).toBe('LP-014');
  });

  it('names a photograph by its hash as RFC 6920 writes it', () => {
    // RFC 6920, 8.1: the SHA-256 of "Hello World!".
    const hash = createHash('sha256').update('Hello World!').digest('hex');
    expect(hashUri(hash)).toBe('ni:///sha-256;f4OxZX_x_FO5LcGBSKHWXfwtSx-j1ncoSt3SABJtkGk');
  });
});
