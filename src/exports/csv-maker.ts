import { type Catalogue, entry } from '../core/catalogue.ts';
import type { AnyRecord, HatBlock, RecordOf, RecordType } from '../core/records.ts';
import { minorDigits } from '../text/format.ts';
import { type Cell, csv } from './csv.ts';

/** One table: its file name without ending, what it holds in a few words, and its text. */
export interface CsvTable {
  readonly name: string;
  readonly about: string;
  readonly text: string;
}

export type Column<T> = readonly [head: string, cell: (record: T) => Cell];

/** Minor units as the amount people write: 1250 pence is 12.5. */
export const amount = (minor: number | null | undefined, currency: string): number | null =>
  minor == null ? null : minor / 10 ** minorDigits(currency);

/** A share as per cent without the dust of binary fractions: 0.07 is 7. */
export const perCent = (share: number): number => Number((share * 100).toFixed(6));

export const pairs = (map: Readonly<Record<string, unknown>>): string =>
  Object.entries(map)
    .map(([key, value]) => `${key} ${value}`)
    .join('; ');

export const term = (
  table: Readonly<Record<string, { readonly term: string }>>,
  id: string | null | undefined,
): string => entry(table, id)?.term ?? id ?? '';

/** Records by type without the removed ones, and how a table of them is made. */
export function tableMaker(records: readonly AnyRecord[], catalogue: Catalogue) {
  const of = <T extends RecordType>(type: T): RecordOf<T>[] =>
    records.filter((record): record is RecordOf<T> => record.type === type && record.deleted === null);
  const byId = <T extends RecordType>(type: T) => new Map<string, RecordOf<T>>(of(type).map((one) => [one.id, one]));
  const blocks = byId('block');
  const lots = byId('lot');
  const named = (block: HatBlock | undefined): string =>
    block ? block.name || (entry(catalogue.types, block.blockType)?.term ?? '') : '';
  const ofBlock: Column<{ readonly blockId: string }>[] = [
    ['block id', ({ blockId }) => blockId],
    // An offer may be for a job lot instead.
    ['block', ({ blockId }) => named(blocks.get(blockId)) || (lots.get(blockId)?.title ?? '')],
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
  return { ...{ of, blocks, lots, named, ofBlock, table, catalogue }, findings: byId('finding'), sales: byId('sale') };
}
export type TableMaker = ReturnType<typeof tableMaker>;
