import { type Catalogue, entry } from '../core/catalogue.ts';
import type { AnyRecord } from '../core/records.ts';
import { list } from '../text/format.ts';
import { type Cell, csv } from './csv.ts';
import { amount, type CsvTable, pairs, type TableMaker, tableMaker, term } from './csv-maker.ts';
import { lotFigures, saleTables } from './csv-sale-tables.ts';
import { workTables } from './csv-work-tables.ts';

/**
 * What was recorded, once more as tables for a spreadsheet: ids for joining them, words for reading them, measures and
 * money as plain numbers with their unit in the column's name. Removed records are not in them. What is in no table, and
 * why, the readme of an archive says.
 */
export function csvTables(records: readonly AnyRecord[], catalogue: Catalogue): CsvTable[] {
  const maker = tableMaker(records, catalogue);
  return [...blockTables(maker), ...saleTables(maker), ...workTables(maker)];
}

function blockTables(maker: TableMaker): CsvTable[] {
  const { table, ofBlock, sales, lots, findings, catalogue } = maker;
  return [
    table('block', 'blocks', 'the hat blocks', [
      ['id', ({ id }) => id],
      ['number', ({ objectNumber }) => objectNumber],
      ['name', ({ name }) => name],
      ['type', ({ blockType }) => term(catalogue.types, blockType)],
      ['materials', ({ materials }) => list(materials.map((id) => term(catalogue.materials, id)))],
      ['place', ({ place }) => place],
      ['sale id', ({ saleId }) => saleId],
      ['sale', ({ saleId }) => sales.get(saleId ?? '')?.title ?? ''],
      ['lot id', ({ lotId }) => lotId ?? null],
      ['lot', ({ lotId }) => lots.get(lotId ?? '')?.title ?? ''],
      ...lotFigures,
      ['parts found', ({ partsFound }) => partsFound],
      ['parts expected', ({ partsExpected }) => partsExpected],
      ['made', ({ made }) => made.words],
      ['made (EDTF)', ({ made }) => made.edtf],
      ['maker', ({ maker }) => maker],
      ['shape', ({ shapeValue }) => (shapeValue ? catalogue.shapeValues[shapeValue].term : null)],
      ['may be copied', ({ copyable }) => copyable],
      ['to be', ({ path }) => path ?? null],
      ['currency', ({ currency }) => currency],
      ['asked', ({ priceAsked, currency }) => amount(priceAsked, currency)],
      ['new', ({ newPrice, currency }) => amount(newPrice, currency)],
      ['equal used', ({ equalUsedPrice, currency }) => amount(equalUsedPrice, currency)],
      ['if it fails', ({ fallbackPrice, currency }) => amount(fallbackPrice, currency)],
      ['hats a year', ({ hatsPerYear }) => hatsPerYear],
      ['margin a hat', ({ marginPerHat, currency }) => amount(marginPerHat, currency)],
      ['note', ({ note }) => note],
    ]),
    table('survey', 'surveys', 'who looked when, and what was not seen', [
      ['id', ({ id }) => id],
      ...ofBlock,
      ['stage', ({ stage }) => stage],
      ['begun (UTC)', ({ begun }) => begun],
      ['by', ({ surveyor }) => surveyor],
      ['reason', ({ reason }) => reason],
      [
        'looked for, not seen',
        ({ noneSeen }) =>
          Object.keys(noneSeen)
            .map((id) => term(catalogue.damage, id))
            .join('; '),
      ],
      ['note', ({ note }) => note],
    ]),
    measures(maker),
    table('finding', 'findings', 'the damage found', [
      ['id', ({ id }) => id],
      ...ofBlock,
      ['survey id', ({ surveyId }) => surveyId],
      ['number', ({ number }) => number],
      ['damage', ({ kind }) => term(catalogue.damage, kind)],
      ['where', ({ zone }) => term(catalogue.zones, zone)],
      ['part', ({ part }) => part],
      ['answers', ({ answers }) => pairs(answers)],
      ['grade by hand', ({ gradeByHand }) => gradeByHand],
      ['reason for the grade', ({ gradeReason }) => gradeReason],
      ['note', ({ note }) => note],
    ]),
    table('mark', 'marks', 'stamps and writing on the blocks', [
      ['id', ({ id }) => id],
      ...ofBlock,
      ['mark', ({ kind }) => term(catalogue.marks, kind)],
      ['text as seen', ({ text }) => text],
      ['where', ({ zone }) => term(catalogue.zones, zone)],
      ['keep', ({ keep }) => keep],
      ['note', ({ note }) => note],
    ]),
    table('statement', 'story', 'where the blocks have been, oldest first by position', [
      ['id', ({ id }) => id],
      ...ofBlock,
      ['position', ({ position }) => position],
      ['how', ({ transfer }) => term(catalogue.transfers, transfer)],
      ['party', ({ party }) => party],
      ['place', ({ place }) => place],
      ['when', ({ when }) => when.words],
      ['when (EDTF)', ({ when }) => when.edtf],
      ['how sure', ({ certainty }) => term(catalogue.certainties, certainty)],
      ['evidence', ({ evidence }) => evidence.map(({ kind, text }) => `${kind}: ${text}`).join('; ')],
      ['note', ({ note }) => note],
    ]),
    table('photo', 'photographs', 'the photographs; the file’s name is its SHA-256', [
      ['id', ({ id }) => id],
      ...ofBlock,
      ['sha256', ({ sha256 }) => sha256],
      ['view', ({ view }) => term(catalogue.views, view)],
      ['stage', ({ stage }) => stage],
      ['of finding', ({ findingId }) => findings.get(findingId ?? '')?.number ?? null],
      ['taken (local)', ({ taken }) => taken?.local ?? null],
      ['offset', ({ taken }) => taken?.offset ?? null],
      ['width px', ({ width }) => width],
      ['height px', ({ height }) => height],
      ['bytes', ({ bytes }) => bytes],
      ['caption', ({ caption }) => caption],
    ]),
    table('photoMark', 'photo-marks', 'what was drawn on the photographs, and measured there', [
      ['id', ({ id }) => id],
      ...ofBlock,
      ['photograph id', ({ photoId }) => photoId],
      ['of finding', ({ findingId }) => findings.get(findingId ?? '')?.number ?? null],
      ['shape', ({ shape }) => shape],
      ['text', ({ text }) => text],
      [
        'measured',
        ({ measured }) =>
          measured?.values.map(({ what, value, unit }) => `${what} ${value} ${unit}`).join('; ') ?? null,
      ],
    ]),
  ];
}

/** One line per measure, so that a spreadsheet can sort by it. */
function measures({ of, blocks, named, catalogue }: TableMaker): CsvTable {
  const rows = of('survey').flatMap(({ id, blockId, stage, measures: taken }) =>
    Object.entries(taken).map(([key, value]): Cell[] => {
      const kind = entry(catalogue.measures, key);
      return [id, blockId, named(blocks.get(blockId)), stage, kind?.term ?? key, value, kind?.unit ?? ''];
    }),
  );
  const head = ['survey id', 'block id', 'block', 'stage', 'measure', 'value', 'unit'];
  return { name: 'measures', about: 'the measures taken', text: csv(head, rows) };
}
