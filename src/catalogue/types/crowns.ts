import type { BlockType } from '../../core/catalogue.ts';
import type { DrawingId } from '../ids.ts';
import type { MeasureId } from '../measures.ts';
import { fromMemory } from '../source.ts';
import type { ZoneId } from '../zones.ts';
import { ofCrown as crownMeasures } from './measure-sets.ts';
import { ofNew, pounds } from './prices.ts';
import { ofCrown as crownZones, sides } from './zone-sets.ts';

export const crowns = {
  domeCrown: {
    term: 'Dome crown block',
    aliases: ['round crown', 'skull crown'],
    group: 'crown',
    purpose: 'Shapes the plain rounded top of a hat; the workhorse of a collection.',
    parts: { usual: 1, words: '1', several: false },
    undercut: false,
    mustHave: ['smooth tip and sides', 'pin-holding lower edge or a rope line', 'true oval at the head size'],
    criticalZones: ['work', 'line'],
    zones: crownZones,
    measures: crownMeasures,
    drawing: 'domeCrown',
    newPrice: pounds(110, 220),
    usedShare: ofNew(0.3, 0.7),
    notes: 'Most used, easiest to resell, so never overpay for a tired one.',
    source: fromMemory,
  },
  shapedCrown: {
    term: 'Shaped-tip crown block',
    aliases: ['fedora', 'trilby', 'pinch front', 'centre dent', 'teardrop'],
    group: 'crown',
    purpose: 'Gives a crown with creases, dents or a tipped top already carved in.',
    parts: { usual: 1, words: '1 (2 or more when undercut)', several: false },
    undercut: true,
    mustHave: ['crisp ridges and valleys', 'rope line', 'pressing piece for deep dents, if one belongs to it'],
    criticalZones: ['work', 'line'],
    zones: [...crownZones, 'ridge', 'valley', 'jointFace', 'key', 'dowel'],
    measures: crownMeasures,
    drawing: 'shapedCrown',
    newPrice: pounds(150, 320),
    usedShare: ofNew(0.3, 0.8),
    notes: 'Check the ridge of the pinch: the short grain there breaks first.',
    source: fromMemory,
  },
  flatCrown: {
    term: 'Flat-top crown block',
    aliases: ['boater crown', 'pillbox crown', 'square crown', 'tall topper'],
    group: 'crown',
    purpose: 'Straight sides and a flat top; the tip edge must be sharp and even.',
    parts: { usual: 1, words: '1 (tall bell shapes 3–5)', several: false },
    undercut: false,
    mustHave: ['even tip edge', 'flat tip', 'parallel sides'],
    criticalZones: ['work', 'line'],
    zones: [...crownZones, 'ridge', 'jointFace', 'key', 'dowel'],
    measures: crownMeasures,
    drawing: 'flatCrown',
    newPrice: pounds(110, 260),
    usedShare: ofNew(0.3, 0.7),
    notes: 'Tall bell-sided crowns are undercut and need sections.',
    source: fromMemory,
  },
  tipBlock: {
    term: 'Tip block',
    aliases: ['topper', 'tip piece', 'top block'],
    group: 'crown',
    purpose: 'Only the very top; used with a straight-sided ring, band block or a plain crown.',
    parts: { usual: 1, words: '1', several: false },
    undercut: false,
    mustHave: ['smooth face', 'defined edge'],
    criticalZones: ['work', 'line'],
    zones: ['tip', ...sides, 'ridge', 'lowerEdge', 'base', 'stemHole', 'glueLine', 'whole'],
    measures: crownMeasures,
    drawing: 'tip',
    newPrice: pounds(60, 160),
    usedShare: ofNew(0.25, 0.6),
    notes: 'Cheap way to own many crown shapes.',
    source: fromMemory,
  },
} as const satisfies Record<string, BlockType<MeasureId, ZoneId, DrawingId>>;
