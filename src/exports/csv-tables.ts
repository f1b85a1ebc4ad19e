import { type Catalogue, entry } from '../core/catalogue.ts';
import type { AnyRecord, HatBlock, RecordOf, RecordType } from '../core/records.ts';
import { list, minorDigits } from '../text/format.ts';
import { type Cell, csv } from './csv.ts';

/** One table: its file name without ending, what it holds in a few words, and its text. */
export interface CsvTable {
  readonly name: string;
  readonly about: string;
  readonly text: string;
}

type Column<T> = readonly [head: string, cell: (record: T) => Cell];

/** Minor units as the amount people write: 1250 pence is 12.5. */
const amount = (minor: number | null, currency: string): number | null =>
  minor === null ? null : minor / 10 ** minorDigits(currency);

const pairs = (map: Readonly<Record<string, unknown>>): string =>
  Object.entries(map)
    .map(([key, value]) => `${key} ${value}`)
    .join('; ');

/**
 * What was recorded, once more as tables for a spreadsheet: ids for joining them, words for reading them, measures and
 * money as plain numbers with their unit in the column's name. Removed records are not in them.
 */
export function csvTables(records: readonly AnyRecord[], catalogue: Catalogue): CsvTable[] {
  const of = <T extends RecordType>(type: T): RecordOf<T>[] =>
    records.filter((record): record is RecordOf<T> => record.type === type && record.deleted === null);
  const blocks = new Map(of('block').map((block) => [block.id, block]));
  const findings = new Map(of('finding').map((finding) => [finding.id, finding]));
  const sales = new Map(of('sale').map((sale) => [sale.id, sale]));
  const named = (block: HatBlock | undefined): string =>
    block ? block.name || (entry(catalogue.types, block.blockType)?.term ?? '') : '';
  const term = (table: Readonly<Record<string, { readonly term: string }>>, id: string | null): string =>
    entry(table, id)?.term ?? id ?? '';
  const ofBlock: Column<{ readonly blockId: string }>[] = [
    ['block id', ({ blockId }) => blockId],
    ['block', ({ blockId }) => named(blocks.get(blockId))],
  ];
  const table = <T extends RecordType>(
    type: T,
    name: string,
    about: string,
    columns: readonly Column<RecordOf<T>>[],
  ): CsvTable => ({
    name,
    about,
    text: csv(
      columns.map(([head]) => head),
      of(type).map((record) => columns.map(([, cell]) => cell(record))),
    ),
  });

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
      ['parts found', ({ partsFound }) => partsFound],
      ['parts expected', ({ partsExpected }) => partsExpected],
      ['made', ({ made }) => made.words],
      ['made (EDTF)', ({ made }) => made.edtf],
      ['maker', ({ maker }) => maker],
      ['shape', ({ shapeValue }) => (shapeValue ? catalogue.shapeValues[shapeValue].term : null)],
      ['may be copied', ({ copyable }) => copyable],
      ['currency', ({ currency }) => currency],
      ['asked', ({ priceAsked, currency }) => amount(priceAsked, currency)],
      ['new', ({ newPrice, currency }) => amount(newPrice, currency)],
      ['equal used', ({ equalUsedPrice, currency }) => amount(equalUsedPrice, currency)],
      ['if it fails', ({ fallbackPrice, currency }) => amount(fallbackPrice, currency)],
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
    measures(of('survey'), blocks, named, catalogue),
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
    table('sale', 'sales', 'sales and sellers', [
      ['id', ({ id }) => id],
      ['title', ({ title }) => title],
      ['place', ({ place }) => place],
      ['when', ({ when }) => when.words],
      ['when (EDTF)', ({ when }) => when.edtf],
      ['kind', ({ channel }) => term(catalogue.channels, channel)],
      ['seller', ({ seller }) => seller],
      ['currency', ({ currency }) => currency],
      ['budget', ({ budget, currency }) => amount(budget, currency)],
      ['note', ({ note }) => note],
    ]),
    table('offer', 'offers', 'what was asked, offered and paid', [
      ['id', ({ id }) => id],
      ...ofBlock,
      ['what', ({ what }) => what],
      ['amount', (offer) => amount(offer.amount, offer.currency)],
      ['currency', ({ currency }) => currency],
      ['at (UTC)', ({ at }) => at],
      ['note', ({ note }) => note],
    ]),
    table('job', 'work', 'work done and the hours it took', [
      ['id', ({ id }) => id],
      ...ofBlock,
      ['treatment', ({ treatment }) => term(catalogue.treatments, treatment)],
      ['estimated h', ({ estimateHours }) => estimateHours],
      ['took h', ({ actualHours }) => actualHours],
      ['at (UTC)', ({ at }) => at],
      ['note', ({ note }) => note],
    ]),
    table('step', 'steps', 'steps of the work that were touched: done, left out, put in', [
      ['id', ({ id }) => id],
      ...ofBlock,
      ['treatment', ({ treatment, words }) => (treatment ? term(catalogue.treatments, treatment) : words)],
      ['put in by hand', ({ added }) => added],
      ['done at (UTC)', ({ done }) => done?.at ?? null],
      ['left out because', ({ skipped }) => skipped?.reason ?? null],
      ['note', ({ note }) => note],
    ]),
    table('expense', 'expenses', 'money spent on the blocks besides their price', [
      ['id', ({ id }) => id],
      ...ofBlock,
      ['what', ({ what }) => what],
      ['amount', (expense) => amount(expense.amount, expense.currency)],
      ['currency', ({ currency }) => currency],
      ['on', ({ on }) => on],
    ]),
    table('repair', 'repairs', 'repairs and whether they held', [
      ['id', ({ id }) => id],
      ...ofBlock,
      ['of finding', ({ findingId }) => findings.get(findingId)?.number ?? null],
      ['damage', ({ kind }) => term(catalogue.damage, kind)],
      ['chance given', ({ chance }) => chance],
      ['held', ({ held }) => held],
      ['at (UTC)', ({ at }) => at],
    ]),
  ];
}

/** One line per measure, so that a spreadsheet can sort by it. */
function measures(
  surveys: readonly RecordOf<'survey'>[],
  blocks: ReadonlyMap<string, HatBlock>,
  named: (block: HatBlock | undefined) => string,
  catalogue: Catalogue,
): CsvTable {
  const rows = surveys.flatMap(({ id, blockId, stage, measures: taken }) =>
    Object.entries(taken).map(([key, value]): Cell[] => {
      const kind = entry(catalogue.measures, key);
      return [id, blockId, named(blocks.get(blockId)), stage, kind?.term ?? key, value, kind?.unit ?? ''];
    }),
  );
  const head = ['survey id', 'block id', 'block', 'stage', 'measure', 'value', 'unit'];
  return { name: 'measures', about: 'the measures taken', text: csv(head, rows) };
}
