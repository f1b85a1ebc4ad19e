import { describe, expect, it } from 'vitest';
import { catalogue } from '../../src/catalogue/index.ts';
import { applicableKinds, settingOf } from '../../src/core/block.ts';
import { entry, type MaterialGroup, ORIGINS, type Origin } from '../../src/core/catalogue.ts';

// Priors are trade estimates with no published series behind them. What can be tested is whether they say sane things:
// facts of the trade in the order of their chances, marked common practice or from memory.

function chance(id: string, origin: Origin, group: MaterialGroup = 'wood'): number {
  const kind = entry(catalogue.damage, id);
  if (!kind) throw new Error(`No kind ${id}`);
  return (kind.prior.presentIn?.[group] ?? kind.prior.present)[origin];
}

const block = (blockType: string, material: string) =>
  settingOf({ blockType, materials: [material], partsFound: null, partsExpected: null, shapeValue: null }, catalogue);

/** Expected number of damages of at least a grade on a block nobody has looked at. */
function expected(blockType: string, material: string, origin: Origin, fromGrade: number): number {
  const group = entry(catalogue.materials, material)?.group ?? 'wood';
  return applicableKinds(block(blockType, material), catalogue).reduce((sum, id) => {
    const grades = entry(catalogue.damage, id)?.prior.grades ?? [];
    const share = grades.slice(fromGrade - 1).reduce((total, each) => total + each, 0);
    return sum + chance(id, origin, group) * share;
  }, 0);
}

describe('chances before anybody has looked', () => {
  it.each([
    'mould',
    'openGlueLine',
    'flightHoles',
    'tunnelled',
    'decay',
    'warp',
    'smell',
    'raisedGrain',
    'fittings',
    'markAtRisk',
  ])('are highest in a damp store for %s (common practice)', (id) => {
    for (const origin of ORIGINS)
      if (origin !== 'dampStore') expect(chance(id, 'dampStore')).toBeGreaterThan(chance(id, origin));
  });

  it.each(['pinHoles', 'stiffenerCrust', 'nailsLeft', 'scorch', 'gouge', 'dent'])(
    'are highest in a workshop in use for %s: it is what work leaves (common practice)',
    (id) => {
      for (const origin of ORIGINS) {
        if (origin !== 'workshopInUse') expect(chance(id, 'workshopInUse')).toBeGreaterThan(chance(id, origin));
      }
    },
  );

  it.each(['displayPiece', 'decoration', 'waxGrease'])(
    'are highest at a dealer’s for %s: it is made to look good (common practice)',
    (id) => {
      for (const origin of ORIGINS)
        if (origin !== 'dealer') expect(chance(id, 'dealer')).toBeGreaterThan(chance(id, origin));
    },
  );

  it('put an unknown origin between the best and the worst known one', () => {
    for (const [id, { prior }] of Object.entries(catalogue.damage)) {
      for (const chances of [prior.present, ...Object.values(prior.presentIn ?? {})]) {
        const { unknown, ...known } = chances;
        expect(unknown, id).toBeGreaterThanOrEqual(Math.min(...Object.values(known)));
        expect(unknown, id).toBeLessThanOrEqual(Math.max(...Object.values(known)));
      }
    }
  });

  it('make grade 1 the likeliest and grade 4 the rarest, where the kind has them', () => {
    for (const [id, { prior }] of Object.entries(catalogue.damage)) {
      const given = prior.grades.filter((share) => share > 0);
      // One missing part is major at once, so there the middle grade leads.
      if (id !== 'partsMissing') expect([...given], id).toEqual([...given].sort((a, b) => b - a));
      expect(Math.min(...given), id).toBe(prior.grades[3]);
    }
  });

  it('give sparterie more mould than wood, and metal less of everything that eats', () => {
    for (const origin of ORIGINS) {
      expect(chance('mould', origin, 'sparterie')).toBeGreaterThan(chance('mould', origin, 'wood'));
      expect(chance('mould', origin, 'metal')).toBeLessThan(chance('mould', origin, 'wood'));
    }
  });

  it('expect a used crown to have a handful of faults, few of them serious', () => {
    for (const origin of ORIGINS) {
      const all = expected('domeCrown', 'lime', origin, 1);
      const minor = expected('domeCrown', 'lime', origin, 2);
      const major = expected('domeCrown', 'lime', origin, 3);
      const critical = expected('domeCrown', 'lime', origin, 4);
      // The example sale's expert notes 3–6 findings a lot, of which most are traces or minor.
      expect(all, origin).toBeGreaterThan(4);
      expect(all, origin).toBeLessThan(8.5);
      expect(minor / all, origin).toBeLessThan(0.4);
      expect(major, origin).toBeLessThan(1);
      expect(critical, origin).toBeLessThan(0.25);
    }
  });
});
