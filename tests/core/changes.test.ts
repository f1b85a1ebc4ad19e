import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import {
  changedPaths,
  created,
  isEnvelope,
  latestStamp,
  removed,
  restored,
  stampAt,
  takenBack,
  withFields,
} from '../../src/core/changes.ts';
import { mergeRecords } from '../../src/core/merge.ts';
import { RECORDS, type RecordType, type Settings } from '../../src/core/records.ts';
import { aBlock, aFinding, aSurvey, at, DEVICE, id, make } from '../store/make.ts';

describe('a new record', () => {
  it.each(Object.keys(RECORDS) as RecordType[])('of type %s is readable by its schema', (type) => {
    const frozen = readFileSync(new URL(`../fixtures/records/v1/${type}.json`, import.meta.url), 'utf8');
    const fields = Object.entries(JSON.parse(frozen)).filter(([field]) => field !== 'type' && !isEnvelope(field));
    const origin = { id: id(1), stamp: at(0), device: DEVICE };
    const record = created(type, Object.fromEntries(fields) as never, origin);
    expect(RECORDS[type].safeParse(record)).toMatchObject({ success: true });
  });

  it('stamps what was chosen and leaves untouched defaults unstamped, so that they never win over a choice', () => {
    const finding = aFinding({ answers: { lengthMm: 64 } });
    expect(stampAt(finding, 'kind')).toBe(at(0));
    expect(stampAt(finding, 'answers.lengthMm')).toBe(at(0));
    expect(stampAt(finding, 'note')).toBe('');
  });
});

describe('an edit', () => {
  it('stamps the one key of a map that was changed', () => {
    const survey = aSurvey({ measures: { heightMm: 140, circumferenceMm: 571 } });
    const next = withFields(survey, { measures: { heightMm: 142.5 } }, at(10));
    expect(next.measures).toEqual({ heightMm: 142.5, circumferenceMm: 571 });
    expect(changedPaths(survey, next)).toEqual(['measures.heightMm']);
    expect(survey.measures.heightMm).toBe(140);
  });

  it('leaves a stamp where a key was taken away', () => {
    const survey = aSurvey({ noneSeen: { mould: true, check: true } });
    const next = withFields(survey, { noneSeen: { mould: null } }, at(10));
    expect(next.noneSeen).toEqual({ check: true });
    expect(stampAt(next, 'noneSeen.mould')).toBe(at(10));
  });

  it('that says what is there already changes nothing, not even the object', () => {
    const block = aBlock({ materials: ['lime'], made: { words: 'about 1930', edtf: '1930~' } });
    expect(
      withFields(
        block,
        { name: 'Tall crown', materials: ['lime'], made: { edtf: '1930~', words: 'about 1930' } },
        at(10),
      ),
    ).toBe(block);
    expect(withFields(aSurvey(), { noneSeen: { mould: null } }, at(10)).stamps).toEqual(aSurvey().stamps);
  });

  it('takes keys named like the parts every object has', () => {
    const next = withFields(aFinding(), { answers: { constructor: 3, toString: true } }, at(10));
    expect(Object.entries(next.answers)).toEqual([
      ['constructor', 3],
      ['toString', true],
    ]);
    expect(changedPaths(aFinding(), next)).toEqual(['answers.constructor', 'answers.toString']);
  });

  it('keeps fields a newer app added', () => {
    const block = { ...aBlock(), tint: { walnut: 2 } };
    expect(withFields(block, { name: 'Low crown' }, at(10)).tint).toEqual({ walnut: 2 });
  });

  it('with a stamp older than the field is refused: a clock must never go back', () => {
    expect(() => withFields(aBlock({ stamp: at(10) }), { name: 'Low crown' }, at(9))).toThrow(/older/);
  });

  it('cannot touch who and when', () => {
    expect(() => withFields(aBlock(), { stamps: {} } as never, at(10))).toThrow(/stamps/);
  });

  it('brings a removed record back', () => {
    const gone = removed(aBlock(), at(5));
    expect(gone.deleted).toBe(at(5));
    expect(withFields(gone, { name: 'Low crown' }, at(10)).deleted).toBeNull();
    expect(restored(gone, at(6))).toMatchObject({ deleted: null, stamps: { deleted: at(6) } });
    expect(latestStamp(gone)).toBe(at(5));
  });
});

describe('taking back', () => {
  it('sets a field to what it was, with a new stamp', () => {
    const before = aBlock();
    const after = withFields(before, { name: 'Low crown', priceAsked: 6500 }, at(10));
    const back = takenBack(before, after, after, at(20));
    expect(back).toMatchObject({ name: 'Tall crown', priceAsked: null });
    expect(stampAt(back, 'name')).toBe(at(20));
  });

  it('leaves alone what was written since', () => {
    const before = aBlock();
    const after = withFields(before, { name: 'Low crown', note: 'Dry.' }, at(10));
    const since = withFields(after, { name: 'Wide crown' }, at(15));
    expect(takenBack(before, after, since, at(20))).toMatchObject({ name: 'Wide crown', note: '' });
  });

  it('puts keys of a map back, and takes away those that were new', () => {
    const before = aSurvey({ measures: { heightMm: 140 } });
    const after = withFields(before, { measures: { heightMm: null, circumferenceMm: 571 } }, at(10));
    const back = takenBack(before, after, after, at(20));
    expect(back.measures).toEqual({ heightMm: 140 });
    expect(stampAt(back, 'measures.circumferenceMm')).toBe(at(20));
  });

  it('takes an optional field away again that an older record never had', () => {
    const { roomTemperatureC: _, ...older } = make('settings', {});
    const before: Settings = older;
    const after = withFields(before, { roomTemperatureC: 12 }, at(10));
    expect(after.roomTemperatureC).toBe(12);
    const back = takenBack(before, after, after, at(20));
    expect(Object.hasOwn(back, 'roomTemperatureC')).toBe(false);
    expect(mergeRecords(after, back)).toEqual(back);
  });

  it('removes what was created, restores what was removed, and leaves what another removed since', () => {
    const block = aBlock();
    expect(takenBack(undefined, block, block, at(20)).deleted).toBe(at(20));
    const gone = removed(block, at(10));
    expect(takenBack(block, gone, gone, at(20)).deleted).toBeNull();
    const renamed = withFields(block, { name: 'Low crown' }, at(10));
    const goneSince = removed(renamed, at(15));
    expect(takenBack(block, renamed, goneSince, at(20))).toBe(goneSince);
  });
});
