import type { BlockType } from '../../core/catalogue.ts';
import type { DrawingId } from '../ids.ts';
import type { MeasureId } from '../measures.ts';
import { fromMemory } from '../source.ts';
import type { ZoneId } from '../zones.ts';
import { ofBrim as brimMeasures } from './measure-sets.ts';
import { ofNew, pounds } from './prices.ts';
import { ofBrim as brimZones } from './zone-sets.ts';

export const brims = {
  flatBrim: {
    term: 'Flat or gently curved brim block',
    aliases: ['plain brim', 'sailor brim'],
    group: 'brim',
    purpose: 'Shapes the part outside the head line.',
    parts: { usual: 1, words: '1', several: false },
    undercut: false,
    mustHave: [
      'continuous edge groove or a pinnable outer edge',
      'clean head-opening groove or collar',
      'flat, non-rocking board',
    ],
    criticalZones: ['line', 'opening', 'whole'],
    zones: brimZones,
    measures: brimMeasures,
    drawing: 'flatBrim',
    newPrice: pounds(130, 260),
    usedShare: ofNew(0.25, 0.6),
    notes: 'Without its edge groove a brim block cannot hold the material under tension.',
    source: fromMemory,
  },
  sculptedBrim: {
    term: 'Sculpted brim block',
    aliases: ['upturn', 'downturn', 'swept brim', 'wave brim'],
    group: 'brim',
    purpose: 'Brim with rise, dip or asymmetric sweep.',
    parts: { usual: 1, words: '1–3', several: false },
    undercut: true,
    mustHave: ['edge groove', 'smooth transition at the head line'],
    criticalZones: ['line', 'work', 'opening'],
    zones: [...brimZones, 'ridge', 'valley', 'base', 'jointFace', 'dowel'],
    measures: [...brimMeasures, 'collarHeightMm'],
    drawing: 'sculptedBrim',
    newPrice: pounds(200, 450),
    usedShare: ofNew(0.3, 0.9),
    notes: 'Asymmetric shapes are the ones worth crossing the country for.',
    source: fromMemory,
  },
  cartwheelBrim: {
    term: 'Cartwheel brim block',
    aliases: ['large brim', 'picture-hat brim'],
    group: 'brim',
    purpose: 'Very wide brim, overall length above about 420 mm.',
    parts: { usual: 1, words: '1–2', several: false },
    undercut: false,
    mustHave: ['flatness within 1.5 mm', 'edge groove'],
    criticalZones: ['whole', 'line'],
    zones: [...brimZones, 'jointFace', 'dowel'],
    measures: brimMeasures,
    drawing: 'cartwheelBrim',
    newPrice: pounds(220, 460),
    usedShare: ofNew(0.25, 0.6),
    notes: 'Width makes warp and open glue lines likely; hard to post and store.',
    source: fromMemory,
  },
  flange: {
    term: 'Hatter’s flange',
    aliases: ['brim flange', 'flange board'],
    group: 'brim',
    purpose: 'Ring with a shaped upper face for setting a felt brim with iron or sandbag.',
    parts: { usual: 1, words: '1', several: false },
    undercut: false,
    mustHave: ['smooth curve', 'true opening oval'],
    criticalZones: ['work', 'opening'],
    zones: brimZones,
    measures: brimMeasures,
    drawing: 'flange',
    newPrice: pounds(120, 300),
    usedShare: ofNew(0.25, 0.6),
    notes: 'No edge groove is normal here: do not mark its absence as a fault.',
    source: fromMemory,
  },
} as const satisfies Record<string, BlockType<MeasureId, ZoneId, DrawingId>>;
