import { describe, expect, it } from 'vitest';
import { catalogue } from '../../src/catalogue/index.ts';
import type { Statement } from '../../src/core/records.ts';
import { gapsIn, whenOf } from '../../src/reports/gaps.ts';
import { id, make } from '../store/make.ts';

const date = (words: string, edtf: string | null = words) => ({ words, edtf });
const never = date('', null);
let count = 0;
const step = (when: ReturnType<typeof date>, more: Partial<Statement> = {}): Statement => {
  count += 1;
  return { ...make('statement', { id: id(700 + count), position: count, when }), ...more };
};
const gaps = (made: ReturnType<typeof date>, steps: readonly Statement[]) => gapsIn({ made }, steps, catalogue);

// "Gaps are normal and must show": CDWA 23, trade handbook §4.1; dates by EDTF level 1, §4.3.
describe('the years of a block nobody can account for', () => {
  it('lie between two dates that did not pass straight on', () => {
    expect(gaps(never, [step(date('1958')), step(date('2026-10-17'))])).toEqual([
      'Before 1958 nothing is known.',
      'From 1958 to 2026-10-17: 68 years not accounted for.',
    ]);
  });

  it('are none where one owner handed it straight to the next', () => {
    expect(gaps(date('1958'), [step(date('1958'), { direct: true }), step(date('2026'))])).toEqual([]);
  });

  it('are as rough as the dates at their ends', () => {
    expect(gaps(never, [step(date('about 1931', '1931~')), step(date('1958'))])[1]).toBe(
      'From about 1931 to 1958: about 27 years not accounted for.',
    );
    // Some year of the 1930s to 1958: 19 to 28 years.
    expect(gaps(never, [step(date('1930s', '193X')), step(date('1958'))])[1]).toBe(
      'From 1930s to 1958: between 19 and 28 years not accounted for.',
    );
  });

  it('begin with its making, where that is known', () => {
    expect(gaps(date('1931'), [step(date('1958'))])).toEqual([
      'From its making, 1931, to 1958: 27 years not accounted for.',
    ]);
  });

  it('have no length where a date is missing, and say so', () => {
    const [first, second] = gaps(never, [step(never), step(date('1958'))]);
    expect(first).toBe('When the story begins is not known.');
    expect(second).toContain('a date is missing');
    expect(gaps(never, [step(date('some time ago', null)), step(date('1958'))])[1]).toContain('is not known');
  });

  it('are not reckoned backwards', () => {
    expect(gaps(never, [step(date('1958')), step(date('1931'))])[1]).toContain('run against the order');
  });

  it('count a statement since disproved for nothing', () => {
    const wrong = step(date('1940'), { certainty: 'disproved', direct: true });
    expect(gaps(date('1931'), [wrong, step(date('1958'))])).toEqual([
      'From its making, 1931, to 1958: 27 years not accounted for.',
    ]);
  });

  it('are all of its life where nothing was recorded', () => {
    expect(gaps(date('about 1931', '1931~'), [])).toEqual([
      'From its making, about 1931, until today nothing is known.',
    ]);
    expect(gaps(never, [])).toEqual(['Nothing is known of where it was before today.']);
  });

  it('keep the date as typed beside what it means', () => {
    expect(whenOf(date('c. 1940s', '1940~/1949~'))).toMatchObject({
      ...{ label: 'c. 1940s', edtf: '1940~/1949~', earliest: 1940, latest: 1949, isRough: true },
    });
    expect(whenOf(date('', '193X'))).toMatchObject({ label: '1930s', earliest: 1930, latest: 1939 });
    expect(whenOf(date('nonsense', 'nonsense'))).toMatchObject({ label: 'nonsense', edtf: '', earliest: null });
  });
});
