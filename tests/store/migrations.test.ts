import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { RECORDS, SCHEMA } from '../../src/core/records.ts';
import { migrations, readRecord } from '../../src/store/migrations.ts';
import { type Raw, recordReader, type Step } from '../../src/store/read-record.ts';
import { aBlock, aFinding, aSurvey } from './make.ts';

const FROZEN = new URL('../fixtures/records/', import.meta.url);
const frozen = readdirSync(FROZEN).flatMap((version) =>
  readdirSync(new URL(`${version}/`, FROZEN)).map((file) => ({
    name: `${version}/${file}`,
    schema: Number(version.slice(1)),
    raw: JSON.parse(readFileSync(new URL(`${version}/${file}`, FROZEN), 'utf8')) as Raw,
  })),
);

/** A past the app never had: two steps, the second touching blocks only. */
const invented: Step[] = [
  { to: 2, why: 'words became a note', up: ({ words, ...rest }) => ({ ...rest, note: words ?? '' }) },
  {
    to: 3,
    why: 'the price got its currency',
    up: (raw) => (raw.type === 'block' ? { ...raw, currency: 'GBP' } : raw),
  },
];

describe('reading stored records', () => {
  it('has one frozen record of every type at schema 1', () => {
    const types = frozen.filter(({ schema }) => schema === 1).map(({ raw }) => raw.type);
    expect(types.sort()).toEqual(Object.keys(RECORDS).sort());
  });

  it.each(frozen)('brings $name to the schema of today', ({ raw, schema }) => {
    const before = structuredClone(raw);
    const outcome = readRecord(raw);
    expect(outcome).toMatchObject(
      schema === SCHEMA ? { state: 'current' } : { state: 'migrated', from: schema, record: { schema: SCHEMA } },
    );
    if (schema === SCHEMA) expect(outcome).toMatchObject({ record: before });
    expect(raw).toEqual(before);
  });

  it('has run every step there is on some frozen record', () => {
    const ran = new Set<number>();
    const watched = migrations.map((step) => ({
      ...step,
      up: (raw: Raw) => {
        const next = step.up(raw);
        if (JSON.stringify(next) !== JSON.stringify(raw)) ran.add(step.to);
        return next;
      },
    }));
    const read = recordReader(watched);
    for (const { raw } of frozen) read(raw);
    expect([...ran].sort()).toEqual(migrations.map((step) => step.to));
    expect(migrations).toHaveLength(SCHEMA - 1);
  });

  it('refuses steps with a gap, doubled, out of order, or missing at either end', () => {
    const step = (to: number): Step => ({ to, why: 'a try', up: (raw) => raw });
    for (const numbers of [[2, 4], [2, 2, 3], [3, 2], [3], [2], [1, 2, 3], [2, 3, 4]]) {
      expect(() => recordReader(numbers.map(step), 3), numbers.join()).toThrow(/numbered 2, 3/);
    }
    expect(() => recordReader([2, 3].map(step), 3)).not.toThrow();
  });

  it('takes an old record through each step it has not had, once and in order', () => {
    const { note, currency, ...rest } = aBlock();
    const read = recordReader(invented, 3);
    expect(read({ ...rest, schema: 1, words: 'Dry.' })).toMatchObject({
      state: 'migrated',
      from: 1,
      record: { schema: 3, note: 'Dry.', currency: 'GBP' },
    });
    expect(read({ ...rest, schema: 2, note: 'Dry.' })).toMatchObject({ from: 2, record: { note: 'Dry.' } });
    expect(read({ ...aBlock(), schema: 3 })).toMatchObject({ state: 'current' });
  });

  it('tells a record from a newer app, and a type it has never heard of, as too new', () => {
    expect(readRecord({ ...aBlock(), schema: SCHEMA + 1 })).toMatchObject({ state: 'too-new' });
    expect(readRecord({ ...aBlock(), type: 'appointment' })).toMatchObject({ state: 'too-new' });
  });

  it('never throws: whatever it cannot read comes back with the reason', () => {
    const failing = recordReader(
      [
        {
          to: 2,
          why: 'a slip',
          up: ({ made }) => ({ words: (made as { words: { text: string } }).words.text.length }),
        },
      ],
      2,
    );
    expect(failing({ schema: 1, made: {} })).toMatchObject({
      state: 'unreadable',
      why: expect.stringContaining('a slip'),
    });
    for (const raw of [
      undefined,
      null,
      7,
      'block',
      [],
      {},
      { schema: 0 },
      { schema: 1.5 },
      { schema: '1' },
      { schema: 1 },
    ]) {
      expect(readRecord(raw), JSON.stringify(raw)).toMatchObject({ state: 'unreadable' });
    }
    expect(readRecord({ ...aBlock(), name: 42 })).toMatchObject({
      state: 'unreadable',
      why: 'block.name: invalid_type',
    });
    expect(readRecord({ ...aBlock(), later: new Date() })).toMatchObject({ state: 'unreadable' });
    expect(readRecord({ ...aBlock(), later: Number.NaN })).toMatchObject({ state: 'unreadable' });
    expect(readRecord({ ...aBlock(), 'a.b': 1 })).toMatchObject({ state: 'unreadable' });
  });

  it('keeps kinds and zones that no catalogue of ours has, and fields at any depth that no schema of ours has', () => {
    const finding = {
      ...aFinding({ kind: 'glueBloom', zone: 'innerLip' }),
      tint: 3,
      at: { view: 'front', x: 0, y: 1, z: 4 },
    };
    expect(readRecord(finding)).toEqual({ state: 'current', record: finding });
  });

  it('refuses a moment that no clock shows', () => {
    for (const begun of [
      '2026-13-01T10:00:00Z',
      '2026-10-40T10:00:00Z',
      '2026-10-17T25:00:00Z',
      '2026-10-17T10:61:00Z',
    ])
      expect(readRecord(aSurvey({ begun })), begun).toMatchObject({ state: 'unreadable' });
    expect(readRecord(aSurvey({ begun: '2026-10-17T10:00:00.5Z' }))).toMatchObject({ state: 'current' });
  });

  it('refuses a key that would swap an object’s prototype, wherever it hides', () => {
    const text = JSON.stringify(aFinding({ answers: { lengthMm: 64 } }));
    for (const evil of [
      text.replace('{', '{"__proto__":{"deleted":null},'),
      text.replace('"answers":{', '"answers":{"__proto__":{"x":1},'),
      text.replace('{', '{"tint":[{"__proto__":1}],'),
    ]) {
      expect(readRecord(JSON.parse(evil)), evil).toMatchObject({ state: 'unreadable' });
    }
    expect(readRecord(JSON.parse(text))).toMatchObject({ state: 'current' });
  });
});
