import type { MeasureKind } from '../core/catalogue.ts';
import { estimate } from './source.ts';

const repeatable = estimate('Repeatable to, with the usual tool in a steady hand; from memory.');

const mm = (term: string, short: string, precision: number, max: number): MeasureKind => ({
  term,
  short,
  unit: 'mm',
  precision,
  step: precision < 1 ? 0.1 : 1,
  max,
  source: repeatable,
});

/** What is measured on the block itself; what is measured on a damage stands with the damage. */
export const measures = {
  circRopeMm: mm('Circumference at the rope line, steel or fibreglass tape', 'Circumference', 1, 2000),
  lengthMm: mm('Front to back at the rope line, outside calliper', 'Length', 1, 800),
  widthMm: mm('Side to side at the rope line, outside calliper', 'Width', 1, 800),
  depthFrontMm: mm('Rope line to tip, vertical, at the front', 'Depth, front', 2, 500),
  depthBackMm: mm('Rope line to tip, vertical, at the back', 'Depth, back', 2, 500),
  overTipFbMm: mm('Tape over the tip, rope line front to rope line back', 'Over the tip, front to back', 3, 1200),
  overTipSsMm: mm('Tape over the tip, side to side', 'Over the tip, side to side', 3, 1200),
  overallLengthMm: mm('Greatest length', 'Greatest length', 1, 1200),
  overallWidthMm: mm('Greatest width', 'Greatest width', 1, 1200),
  heightMm: mm('Total height', 'Height', 1, 800),
  openingCircMm: mm('Circumference of the head opening', 'Opening, round', 1, 1200),
  openingLengthMm: mm('Head opening front to back, inside calliper', 'Opening, length', 1, 500),
  openingWidthMm: mm('Head opening side to side, inside calliper', 'Opening, width', 1, 500),
  brimFrontMm: mm('Brim at the front, head line to edge along the surface', 'Brim, front', 2, 500),
  brimSideMm: mm('Brim at the side, head line to edge along the surface', 'Brim, side', 2, 500),
  brimBackMm: mm('Brim at the back, head line to edge along the surface', 'Brim, back', 2, 500),
  collarHeightMm: mm('Height of the collar', 'Collar', 1, 200),
  grooveWidthMm: mm('Width of the rope groove', 'Groove, width', 0.5, 20),
  grooveDepthMm: mm('Depth of the rope groove', 'Groove, depth', 0.5, 20),
  flatDevMm: mm('Largest gap under the base on a flat plate', 'Gap on the plate', 0.3, 50),
  weightG: { term: 'Weight', short: 'Weight', unit: 'g', precision: 5, step: 5, max: 60_000, source: repeatable },
  stemHoleDiaMm: mm('Diameter of the stem hole', 'Stem hole', 0.3, 80),
  stemHoleDepthMm: mm('Depth of the stem hole', 'Stem hole, depth', 1, 300),
  dowelDiaMm: mm('Diameter of the dowel', 'Dowel', 0.3, 80),
  partsFound: {
    term: 'Parts present',
    short: 'Parts found',
    unit: 'count',
    precision: 0,
    step: 1,
    max: 20,
    source: repeatable,
  },
  partsExpected: {
    term: 'Parts the numbering implies',
    short: 'Parts expected',
    unit: 'count',
    precision: 0,
    step: 1,
    max: 20,
    source: repeatable,
  },
  jointGapMaxMm: mm('Widest joint gap when assembled', 'Joint gap', 0.1, 20),
  moisturePct: {
    term: 'Moisture by pin meter',
    short: 'Moisture',
    unit: 'pct',
    precision: 1,
    step: 1,
    max: 100,
    source: repeatable,
  },
} as const satisfies Record<string, MeasureKind>;
export type MeasureId = keyof typeof measures;
