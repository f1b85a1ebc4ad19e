import { describe, expect, it } from 'vitest';
import { catalogue } from '../../src/catalogue/index.ts';
import { ACTIVITIES } from '../../src/core/advice/borers.ts';
import type { Ask, Condition, Physics } from '../../src/core/catalogue.ts';
import { DUSTS, WOOD_KINDS } from '../../src/core/physics/insects.ts';
import { calculatorOf } from '../../src/text/advice.ts';

// The sums take their figures from asks named in the catalogue: what a name points at must be there, and be the right kind of thing.

const entries = Object.entries(catalogue.damage).flatMap(([id, kind]) =>
  (kind.physics ?? []).map((physics) => ({ id, kind, physics })),
);
const named = entries.map(({ id, kind, physics }) => [`${id} ${physics.does}`, kind, physics] as const);

const askOf = (asks: readonly Ask[], id: string): Ask => {
  const ask = asks.find((each) => each.id === id);
  if (!ask) throw new Error(`No ask ${id}.`);
  return ask;
};

/** What each figure must be: a unit, or the options it may be one of. */
const expected: Readonly<Record<string, string | readonly string[]>> = {
  gap: 'mm',
  length: 'mm',
  depth: 'mm',
  across: 'mm',
  mouth: 'mm',
  hole: 'mm',
  area: 'cm2',
  count: 'count',
  moisture: 'pct',
  closesByHand: 'yesNo',
  moving: 'yesNo',
  dust: DUSTS,
  pinningLine: ['yes', 'no'],
  activity: ACTIVITIES,
};
const expectedIn = (physics: Physics, role: string): string | readonly string[] | undefined =>
  physics.does === 'mouldRisk' && role === 'area' ? 'pct' : expected[role];

const parts = (condition: Condition): readonly Condition[] =>
  'all' in condition
    ? condition.all.flatMap(parts)
    : 'any' in condition
      ? condition.any.flatMap(parts)
      : 'not' in condition
        ? parts(condition.not)
        : [condition];

describe('physics of the damage kinds', () => {
  it('is there: cracks, fills, holes, mould and weight', () => {
    const sums = new Set(entries.map(({ physics }) => physics.does));
    expect([...sums].sort()).toEqual(Object.keys(calculatorOf).sort());
  });

  it.each(named)('%s takes its figures from asks of the right sort', (_, kind, physics) => {
    for (const [role, askId] of Object.entries({ ...physics.from } as Record<string, string>)) {
      const ask = askOf(kind.asks, askId);
      const wanted = expectedIn(physics, role);
      expect(wanted, `${role} is a figure this test knows`).toBeDefined();
      if (ask.type === 'measure') expect(ask.unit, role).toBe(wanted);
      else if (ask.type === 'yesNo') expect('yesNo', role).toBe(wanted);
      else expect(ask.options.map(({ id }) => id).sort(), role).toEqual([...(wanted ?? [])].sort());
    }
  });

  it.each(named)(
    '%s speaks of materials that exist, under conditions about block and grade alone',
    (_, __, physics) => {
      for (const condition of physics.when ? parts(physics.when) : []) {
        expect('ask' in condition).toBe(false);
        if ('material' in condition)
          for (const id of condition.material) expect(catalogue.materials).toHaveProperty(id);
      }
    },
  );

  it('is shown at a step that the finding itself can call for', () => {
    for (const { id, kind, physics } of entries) {
      const steps = kind.treatments.map(({ treatment }) => treatment);
      // What says how heavy a rotten or riddled block should be stands at the step that hardens it.
      expect(
        steps.some((step) => catalogue.treatments[step]?.advises?.includes(physics.does)),
        `${id} ${physics.does}`,
      ).toBe(true);
    }
  });

  it('is asked for by no treatment in vain', () => {
    for (const [id, { advises = [] }] of Object.entries(catalogue.treatments)) {
      for (const does of advises) {
        const callers = entries.filter(
          ({ kind, physics }) => physics.does === does && kind.treatments.some(({ treatment }) => treatment === id),
        );
        expect(callers.length, `${id} ${does}`).toBeGreaterThan(0);
      }
    }
  });
});

describe('materials', () => {
  it('tell borers and mould apart by words their tables know', () => {
    for (const [id, { woodKind, layers, group }] of Object.entries(catalogue.materials)) {
      if (woodKind) {
        expect(WOOD_KINDS, id).toContain(woodKind);
        expect(group, id).toBe('wood');
      }
      if (layers) expect(['laminated', 'papierMache', 'sparterie'], id).toContain(layers);
    }
  });
});
