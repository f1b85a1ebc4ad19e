import type { Zone } from '../core/catalogue.ts';

/** Places on a block where a finding can lie. The class decides how much a fault there costs. Classes are the trade's own judgement. */
export const zones = {
  tip: { term: 'Tip (top of the crown)', zoneClass: 'work' },
  sideFront: { term: 'Side, front', zoneClass: 'work' },
  sideLeft: { term: 'Side, wearer’s left', zoneClass: 'work' },
  sideRight: { term: 'Side, wearer’s right', zoneClass: 'work' },
  sideBack: { term: 'Side, back', zoneClass: 'work' },
  ridge: { term: 'Ridge or fold crest', zoneClass: 'work' },
  valley: { term: 'Dent, groove or fold valley', zoneClass: 'work' },
  ropeLine: { term: 'Rope line (string groove) at the head line', zoneClass: 'line' },
  edgeGroove: { term: 'Edge groove at the brim edge', zoneClass: 'line' },
  lowerEdge: { term: 'Lower pinning edge', zoneClass: 'line' },
  collar: { term: 'Collar (upstand at the head line)', zoneClass: 'opening' },
  headOpening: { term: 'Head opening', zoneClass: 'opening' },
  brimTop: { term: 'Brim, working face', zoneClass: 'work' },
  brimFront: { term: 'Brim, front', zoneClass: 'work' },
  brimRight: { term: 'Brim, wearer’s right', zoneClass: 'work' },
  brimBack: { term: 'Brim, back', zoneClass: 'work' },
  brimLeft: { term: 'Brim, wearer’s left', zoneClass: 'work' },
  brimUnder: { term: 'Brim, underside', zoneClass: 'base' },
  base: { term: 'Base, underside', zoneClass: 'base' },
  stemHole: { term: 'Stem (stand) hole', zoneClass: 'base' },
  jointFace: { term: 'Joint face between parts', zoneClass: 'joint' },
  key: { term: 'Key (core) piece', zoneClass: 'joint' },
  dowel: { term: 'Locating dowel, pin or screw', zoneClass: 'joint' },
  glueLine: { term: 'Glue line between boards', zoneClass: 'joint' },
  interior: { term: 'Hollow inside', zoneClass: 'base' },
  wire: { term: 'Edge wire', zoneClass: 'line' },
  covering: { term: 'Cloth or skin covering', zoneClass: 'work' },
  whole: { term: 'Whole object', zoneClass: 'whole' },
} as const satisfies Record<string, Zone>;
export type ZoneId = keyof typeof zones;
