import type { BlockType } from '../../core/catalogue.ts';
import type { DrawingId } from '../ids.ts';
import type { MeasureId } from '../measures.ts';
import { fromMemory, published } from '../source.ts';
import type { ZoneId } from '../zones.ts';
import { ofSmall as smallMeasures } from './measure-sets.ts';
import { ofNew, pounds } from './prices.ts';
import { sides } from './zone-sets.ts';

export const small = {
  fascinator: {
    term: 'Fascinator or cocktail block',
    aliases: ['headpiece block', 'saucer', 'teardrop shape', 'percher'],
    group: 'small',
    purpose: 'Small shapes worn on a comb, band or elastic.',
    parts: { usual: 1, words: '1', several: false },
    undercut: false,
    mustHave: ['smooth face', 'pinnable back or edge'],
    criticalZones: ['work', 'line'],
    zones: ['tip', ...sides, 'ridge', 'lowerEdge', 'base', 'stemHole', 'glueLine', 'whole'],
    measures: smallMeasures,
    drawing: 'fascinator',
    newPrice: pounds(45, 160),
    usedShare: ofNew(0.3, 0.7),
    notes: 'Small blocks wear out faster because every pin lands in the same narrow strip.',
    source: published('S41 for the shorter life of small blocks; rest from memory.'),
  },
  button: {
    term: 'Button or pillbox block',
    aliases: ['pillbox'],
    group: 'small',
    purpose: 'Low drum or dome shape.',
    parts: { usual: 1, words: '1', several: false },
    undercut: false,
    mustHave: ['even side', 'crisp edge'],
    criticalZones: ['work', 'line'],
    zones: ['tip', ...sides, 'ropeLine', 'lowerEdge', 'base', 'stemHole', 'glueLine', 'whole'],
    measures: smallMeasures,
    drawing: 'button',
    newPrice: pounds(45, 130),
    usedShare: ofNew(0.3, 0.7),
    notes: '',
    source: fromMemory,
  },
  headband: {
    term: 'Headband or Alice-band block',
    aliases: ['halo block', 'bandeau block'],
    group: 'small',
    purpose: 'Curved strip shapes.',
    parts: { usual: 1, words: '1', several: false },
    undercut: false,
    mustHave: ['smooth outer curve'],
    criticalZones: ['work'],
    zones: ['tip', ...sides, 'lowerEdge', 'base', 'interior', 'stemHole', 'glueLine', 'whole'],
    measures: ['overallLengthMm', 'overallWidthMm', 'heightMm', 'weightG'],
    drawing: 'headband',
    newPrice: pounds(50, 140),
    usedShare: ofNew(0.3, 0.6),
    notes: '',
    source: fromMemory,
  },
  pressingPiece: {
    term: 'Pressing piece (counter-block)',
    aliases: ['presser', 'dent piece', 'counter'],
    group: 'small',
    purpose: 'Negative that pushes material into a dent or groove.',
    parts: { usual: 1, words: '1', several: false },
    undercut: false,
    mustHave: ['fits its parent block with one felt thickness of play'],
    criticalZones: ['work'],
    zones: ['tip', 'ridge', 'valley', 'lowerEdge', 'base', 'dowel', 'whole'],
    measures: ['overallLengthMm', 'overallWidthMm', 'weightG'],
    drawing: 'pressingPiece',
    newPrice: pounds(25, 80),
    usedShare: ofNew(0.2, 0.6),
    notes: 'Worth little alone, much with its parent.',
    source: fromMemory,
  },
} as const satisfies Record<string, BlockType<MeasureId, ZoneId, DrawingId>>;
