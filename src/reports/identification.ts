import { type Catalogue, entry } from '../core/catalogue.ts';
import type { ReportPart } from '../core/report.ts';
import { dayWords } from '../text/days.ts';
import { list, measured } from '../text/format.ts';
import type { ReportCase } from './case.ts';
import type { ReportWishes } from './wishes.ts';

/** Which block it is, who looked at it and when, and its measures. */
export function identification(
  { block, survey, settings, sale }: ReportCase,
  wishes: ReportWishes,
  catalogue: Catalogue,
): ReportPart[] {
  const type = entry(catalogue.types, block.blockType);
  const measures = Object.entries(survey.measures).map(([id, value]): [string, string] => {
    const kind = entry(catalogue.measures, id);
    return [kind?.term ?? id, measured(value, kind?.unit ?? 'mm', settings.units)];
  });
  const seller = sale && (wishes.privateNames || !sale.sellerIsPrivate) ? sale.seller : sale ? 'private seller' : '';
  const rows: (readonly [string, string])[] = [
    ['Number', block.objectNumber],
    ['Type', type ? `${type.term} (${type.group})` : 'not said'],
    ['Material', list(block.materials.map((id) => entry(catalogue.materials, id)?.term ?? id)) || 'not said'],
    [
      'Parts',
      block.partsFound === null
        ? 'not counted'
        : `${block.partsFound} here, ${block.partsExpected ?? 'unknown how many'} expected`,
    ],
    ['Made', block.made.words],
    ['Maker', block.maker],
    [
      'Seen at',
      sale
        ? [sale.title, wishes.privateNames || !sale.sellerIsPrivate ? sale.place : '', sale.when.words]
            .filter(Boolean)
            .join(', ')
        : '',
    ],
    ['Seller', seller],
    ['Looked at', dayWords(survey.begun.slice(0, 10))],
    ['By', survey.surveyor],
    ['Reason', survey.reason],
  ];
  return [
    { kind: 'heading', level: 2, text: 'The block' },
    { kind: 'facts', rows: rows.filter(([, value]) => value !== '') },
    ...(measures.length > 0
      ? [
          {
            kind: 'table' as const,
            caption: 'Measures',
            head: ['Measure', 'Value'],
            rows: measures,
            numeric: [1],
          },
        ]
      : []),
    ...(block.note ? [{ kind: 'paragraph' as const, text: block.note }] : []),
  ];
}
