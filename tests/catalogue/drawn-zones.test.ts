import { describe, expect, it } from 'vitest';
import { DRAWING_IDS, type DrawingId } from '../../src/catalogue/ids.ts';
import { catalogue } from '../../src/catalogue/index.ts';
import { drawings } from '../../src/drawings/index.ts';

// Catalogue and drawings do not import one another; here they meet.

const zonesDrawnIn = (id: DrawingId): readonly string[] => [
  ...new Set(drawings[id].views.flatMap(({ zones }) => zones.map(({ zone }) => zone))),
];

describe('drawings and types', () => {
  it('have the same ids', () => {
    expect(Object.keys(drawings).sort()).toEqual([...DRAWING_IDS].sort());
  });

  it.each(Object.entries(catalogue.types))(
    'every place that can be tapped on a %s is one of its zones',
    (_, { drawing, zones }) => {
      const drawn = zonesDrawnIn(drawing as DrawingId);
      expect(drawn.filter((zone) => !zones.includes(zone))).toEqual([]);
    },
    20_000,
  );

  it('most places of a type can be tapped, and the rest are small or hidden', () => {
    for (const [id, { drawing, zones }] of Object.entries(catalogue.types)) {
      const drawn = zonesDrawnIn(drawing as DrawingId);
      expect(zones.filter((zone) => drawn.includes(zone)).length / zones.length, id).toBeGreaterThan(0.5);
    }
  }, 20_000);

  it('a material’s own drawing shows zones of the types made in it', () => {
    for (const { drawing } of Object.values(catalogue.materials)) {
      if (!drawing) continue;
      for (const zone of zonesDrawnIn(drawing as DrawingId))
        expect(catalogue.types.turban?.zones, zone).toContain(zone);
    }
  }, 20_000);
});
