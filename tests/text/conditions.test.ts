import { describe, expect, it } from 'vitest';
import { catalogue as real } from '../../src/catalogue/index.ts';
import type { Ask, Catalogue, Condition } from '../../src/core/catalogue.ts';
import { conditionWords, materialNames } from '../../src/text/conditions.ts';

const asks: readonly Ask[] = [
  { id: 'widthMm', type: 'measure', label: 'Gap at the widest', unit: 'mm', step: 1, max: 30, chips: [] },
  { id: 'closesByHand', type: 'yesNo', label: 'Closes under hand pressure?' },
  {
    id: 'how',
    type: 'choice',
    label: 'How it runs',
    options: [{ id: 'through', label: 'Right through' }],
  },
  {
    id: 'smell',
    type: 'measure',
    label: 'Strength',
    unit: 'level',
    step: 1,
    max: 4,
    chips: [],
    steps: ['Faint', 'Clear', 'Strong', 'Fills the room'],
  },
];
const catalogue = {
  materials: { lime: { term: 'Limewood or basswood' }, plaster: { term: 'Plaster' }, resin: { term: 'Resin' } },
  shapeValues: { common: { term: 'Common' }, rare: { term: 'Rare' }, unique: { term: 'Unique' } },
} as unknown as Catalogue;
const say = (condition: Condition): string => conditionWords(condition, asks, catalogue);

describe('a condition of the catalogue', () => {
  it.each<[Condition, string]>([
    [{ ask: 'widthMm', atLeast: 3 }, 'gap at the widest: at least 3 mm'],
    [{ ask: 'widthMm', below: 3 }, 'gap at the widest: under 3 mm'],
    [{ ask: 'closesByHand', is: false }, 'closes under hand pressure: no'],
    [{ ask: 'how', is: 'through' }, 'how it runs: “right through”'],
    [{ ask: 'smell', atLeast: 3 }, 'strength: at least strong'],
    [{ grade: { from: 2 } }, 'grade 2 or more'],
    [{ grade: { from: 2, to: 3 } }, 'grade 2 to 3'],
    [{ grade: { to: 1 } }, 'grade 1 or less'],
    [{ zoneClass: ['work', 'line'] }, 'on the working surface or the rope line or groove'],
    [{ group: ['crown', 'brim'] }, 'on crowns or brims'],
    [{ not: { material: ['plaster', 'resin'] } }, 'not of plaster or resin'],
    [{ not: { ask: 'widthMm', below: 3 } }, 'gap at the widest: at least 3 mm'],
    [{ not: { ask: 'closesByHand', is: true } }, 'closes under hand pressure: no'],
    [{ not: { ask: 'how', is: 'through' } }, 'how it runs: not “right through”'],
    [{ not: { any: [{ parts: 'one' }, { grade: { from: 4 } }] } }, 'not (in one part or grade 4 or more)'],
    [{ parts: 'several' }, 'in several parts'],
    [{ shapeValue: ['rare', 'unique'] }, 'the shape is rare or unique'],
    [{ all: [] }, ''],
    [
      { all: [{ ask: 'widthMm', atLeast: 3 }, { any: [{ parts: 'one' }, { grade: { from: 4 } }] }] },
      'gap at the widest: at least 3 mm and (in one part or grade 4 or more)',
    ],
  ])('%j reads “%s”', (condition, words) => expect(say(condition)).toBe(words));

  it('names an ask it does not know by its id rather than saying nothing', () => {
    expect(say({ ask: 'newMeasure', atLeast: 2 })).toBe('newMeasure: at least 2');
  });
});

describe('materials in words', () => {
  const woods = Object.keys(real.materials).filter((id) => real.materials[id]?.group === 'wood');

  it('are one word when every wood is meant, and name what is left out', () => {
    expect(materialNames(woods, real.materials)).toEqual(['any wood']);
    expect(materialNames([...woods.filter((id) => id !== 'plywood'), 'plaster'], real.materials)).toEqual([
      'any wood but plywood',
      'plaster',
    ]);
  });

  it('are named one by one when they are a choice among their group', () => {
    expect(materialNames(['lime', 'beech'], real.materials)).toEqual(['limewood or basswood', 'beech']);
  });
});
