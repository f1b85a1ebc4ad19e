import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { canonical } from '../../src/core/canonical.ts';
import { type Patch, removed, restored, stampAt, withFields } from '../../src/core/changes.ts';
import { mergeRecords } from '../../src/core/merge.ts';
import type { Survey } from '../../src/core/records.ts';
import { faultIn } from '../../src/store/read-record.ts';
import { aBlock, aSurvey, at } from '../store/make.ts';

type Version = Survey & { readonly tint?: number | null };
type Edit =
  | { readonly set: Patch<'survey'> }
  /** A field of a newer app; undefined where that app took it away. */
  | { readonly tint: number | null | undefined }
  | { readonly remove: true }
  | { readonly restore: true };

const key = fc.constantFrom('heightMm', 'lengthMm', 'constructor', 'a');
const edit: fc.Arbitrary<Edit> = fc.oneof(
  fc.record({ set: fc.record({ note: fc.constantFrom('', 'dry', 'damp') }) }),
  fc.record({ set: fc.record({ stage: fc.constantFrom('before', 'during', 'after') }) }),
  fc.record({
    set: fc.record({ measures: fc.dictionary(key, fc.option(fc.integer({ min: 0, max: 3 }), { nil: null })) }),
  }),
  fc.record({ set: fc.record({ noneSeen: fc.dictionary(key, fc.constantFrom(true as const, null)) }) }),
  fc.record({ tint: fc.constantFrom(0, 1, null, undefined) }),
  fc.constant({ remove: true as const }),
  fc.constant({ restore: true as const }),
) as fc.Arbitrary<Edit>;

function edited(version: Version, what: Edit, stamp: string): Version {
  if ('set' in what) return withFields(version, what.set, stamp);
  if ('remove' in what) return removed(version, stamp);
  if ('restore' in what) return restored(version, stamp);
  const { tint: _, ...others } = version;
  const stamps = { ...version.stamps, tint: stamp };
  return what.tint === undefined ? { ...others, stamps } : { ...others, tint: what.tint, stamps };
}

/**
 * A version some device arrived at: edits in time order on a common start. Few milliseconds and two devices, so that
 * versions meet with equal stamps and different values, as two windows of one phone can produce.
 */
const version: fc.Arbitrary<Version> = fc
  .tuple(
    fc.constantFrom('aaaaaaaa', 'bbbbbbbb'),
    fc.array(fc.tuple(fc.integer({ min: 1, max: 6 }), edit), { maxLength: 6 }),
  )
  .map(([device, edits]) =>
    edits
      .sort(([a], [b]) => a - b)
      .reduce<Version>(
        (state, [ms, what]) => edited(state, what, at(ms, device)),
        // As the settings are: the same record begun on each device.
        { ...aSurvey({ measures: { heightMm: 1 } }), device },
      ),
  );

const same = (a: unknown, b: unknown): void => {
  expect(canonical(a)).toBe(canonical(b));
};

describe('merging two versions of a record', () => {
  it('does not depend on which comes first', () => {
    fc.assert(
      fc.property(version, version, (a, b) => same(mergeRecords(a, b), mergeRecords(b, a))),
      { numRuns: 500 },
    );
  });

  it('does not depend on how three phones meet', () => {
    fc.assert(
      fc.property(version, version, version, (a, b, c) =>
        same(mergeRecords(mergeRecords(a, b), c), mergeRecords(a, mergeRecords(b, c))),
      ),
      { numRuns: 500 },
    );
  });

  it('done again changes nothing, and gives back the very object', () => {
    fc.assert(
      fc.property(version, version, (a, b) => {
        const merged = mergeRecords(a, b);
        expect(mergeRecords(merged, a)).toBe(merged);
        expect(mergeRecords(merged, b)).toBe(merged);
        expect(mergeRecords(merged, structuredClone(merged))).toBe(merged);
      }),
      { numRuns: 500 },
    );
  });

  it('gives a readable record with, at each path, the value whose stamp is newest', () => {
    fc.assert(
      fc.property(version, version, (a, b) => {
        const merged = mergeRecords(a, b);
        expect(faultIn(merged)).toBeNull();
        for (const field of ['note', 'stage', 'tint'] as const) {
          const [mine, theirs] = [stampAt(a, field), stampAt(b, field)];
          if (mine !== theirs) expect(merged[field]).toBe((mine > theirs ? a : b)[field]);
        }
        for (const measure of ['heightMm', 'lengthMm', 'constructor', 'a']) {
          const [mine, theirs] = [stampAt(a, `measures.${measure}`), stampAt(b, `measures.${measure}`)];
          const winner = mine > theirs ? a : b;
          if (mine !== theirs) {
            expect(Object.hasOwn(merged.measures, measure)).toBe(Object.hasOwn(winner.measures, measure));
          }
        }
      }),
      { numRuns: 500 },
    );
  });

  it('keeps a measure taken on one phone and another taken on the other', () => {
    const start = aSurvey();
    const a = withFields(start, { measures: { heightMm: 140 } }, at(10, 'aaaaaaaa'));
    const b = withFields(start, { measures: { circumferenceMm: 571 } }, at(11, 'bbbbbbbb'));
    expect(mergeRecords(a, b).measures).toEqual({ heightMm: 140, circumferenceMm: 571 });
  });

  it('lets “none seen” taken back on one phone stay taken back', () => {
    const start = aSurvey({ noneSeen: { mould: true } });
    const back = withFields(start, { noneSeen: { mould: null } }, at(10, 'aaaaaaaa'));
    const other = withFields(start, { note: 'Dry.' }, at(12, 'bbbbbbbb'));
    expect(mergeRecords(other, back)).toMatchObject({ noneSeen: {}, note: 'Dry.' });
  });

  it('removes when the removal is the last word, and brings back what was worked on after it', () => {
    const gone = removed(aBlock(), at(10, 'aaaaaaaa'));
    const earlier = withFields(aBlock(), { note: 'Dry.' }, at(9, 'bbbbbbbb'));
    const later = withFields(aBlock(), { note: 'Dry.' }, at(11, 'bbbbbbbb'));
    expect(mergeRecords(gone, earlier).deleted).toBe(at(10, 'aaaaaaaa'));
    expect(mergeRecords(gone, later)).toMatchObject({ deleted: null, note: 'Dry.' });
  });

  it('refuses two different records', () => {
    expect(() => mergeRecords(aBlock(), aBlock({ id: aSurvey().id }))).toThrow(/Cannot merge/);
  });
});
