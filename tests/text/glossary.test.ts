import { describe, expect, it } from 'vitest';
import { catalogue } from '../../src/catalogue/index.ts';
import { entry } from '../../src/core/catalogue.ts';
import { findInGlossary, glossaryOf } from '../../src/text/glossary.ts';

const sections = glossaryOf(catalogue);
const terms = (query: string): string[] => findInGlossary(sections, query).map(({ term }) => term);

describe('the glossary', () => {
  it('has every damage kind, treatment, material, type and mark of the catalogue', () => {
    const count = (id: string) => sections.find((section) => section.id === id)?.entries.length;
    expect(count('damage')).toBe(Object.keys(catalogue.damage).length);
    expect(count('treatments')).toBe(Object.keys(catalogue.treatments).length);
    expect(count('materials')).toBe(Object.keys(catalogue.materials).length);
    expect(count('types')).toBe(Object.keys(catalogue.types).length);
    expect(count('marks')).toBe(Object.keys(catalogue.marks).length);
  });

  it('gives every entry an id of its own within its section, so that its address opens only it', () => {
    for (const { id, entries } of sections) {
      expect([id, new Set(entries.map((each) => each.id)).size]).toEqual([id, entries.length]);
    }
  });

  it('leaves a retired kind out of the list but still opens it', () => {
    const retired = {
      ...catalogue,
      damage: { ...catalogue.damage, split: { ...entry(catalogue.damage, 'split'), retired: true } },
    } as unknown as typeof catalogue;
    const ids = (options?: { retired: boolean }) =>
      glossaryOf(retired, options).flatMap((section) => section.entries.map(({ id }) => id));
    expect(ids()).not.toContain('split');
    expect(ids({ retired: true })).toContain('split');
  });
});

describe('looking up a word', () => {
  it('puts the term itself first', () => {
    expect(terms('split')[0]).toBe(entry(catalogue.damage, 'split')?.term);
    expect(terms('CHECK')[0]).toBe(entry(catalogue.damage, 'check')?.term);
  });

  it('finds a kind under another name for it', () => {
    expect(terms('linden')).toContain(entry(catalogue.materials, 'lime')?.term);
    const holes = entry(catalogue.damage, 'flightHoles');
    for (const alias of holes?.aliases ?? []) expect(terms(alias)[0]).toBe(holes?.term);
  });

  it('does not mind hyphens, accents or the order of words', () => {
    const shell = entry(catalogue.materials, 'papierMache')?.term;
    expect(terms('papier mache')).toContain(shell);
    expect(terms('mache papier')).toContain(shell);
  });

  it('finds nothing for nothing, and nothing for nonsense', () => {
    expect(terms('  ')).toEqual([]);
    expect(terms('zzyzx')).toEqual([]);
  });
});
