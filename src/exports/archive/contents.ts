import type { ArchiveScope } from '../../core/archive-layout.ts';
import type { Catalogue } from '../../core/catalogue.ts';
import type { AnyRecord, HatBlock, RecordOf, RecordType } from '../../core/records.ts';
import { forOthers, privateNames } from './withheld.ts';

/** A record the app could not read, as storage hands it over. */
export interface UnreadRecord {
  readonly id: string;
  readonly state: 'too-new' | 'unreadable';
  readonly why: string;
  readonly raw: unknown;
}

/** What there is to choose from: everything in storage, removed records included. */
export interface Stored {
  readonly records: readonly AnyRecord[];
  readonly unreadable: readonly UnreadRecord[];
}

/** What goes into an archive, records as they go out. */
export interface Contents extends Stored {
  /** Those not removed, oldest first. */
  readonly blocks: readonly HatBlock[];
}

export const ofType = <T extends RecordType>(records: readonly AnyRecord[], type: T): RecordOf<T>[] =>
  records.filter((record): record is RecordOf<T> => record.type === type);

const idsIn = (scope: ArchiveScope, blocks: readonly HatBlock[]): ReadonlySet<string> => {
  if (scope.kind === 'blocks') return new Set(scope.ids);
  const chosen = scope.kind === 'shelf' ? blocks : blocks.filter(({ saleId }) => saleId === scope.id);
  return new Set(chosen.map(({ id }) => id));
};

/**
 * @param isWhole false leaves out what is private, see `withheld.ts`. Records nobody can read, and those that belong to
 *                no block, only go into a whole archive of the whole shelf
 */
export function contentsOf(stored: Stored, scope: ArchiveScope, isWhole: boolean, catalogue: Catalogue): Contents {
  const all = ofType(stored.records, 'block');
  const ids = idsIn(scope, all);
  const saleIds = new Set<string | null>(all.filter(({ id }) => ids.has(id)).map(({ saleId }) => saleId));
  if (scope.kind === 'sale') saleIds.add(scope.id);
  const belongs = (record: AnyRecord): boolean => {
    if (scope.kind === 'shelf') return true;
    if (record.type === 'block') return ids.has(record.id);
    if (record.type === 'sale') return saleIds.has(record.id);
    return 'blockId' in record && typeof record.blockId === 'string' && ids.has(record.blockId);
  };
  const chosen = stored.records.filter(belongs);
  const names = isWhole ? null : privateNames(stored.records, catalogue);
  const records = isWhole ? chosen : chosen.flatMap((record) => forOthers(record, names, catalogue) ?? []);
  records.sort((a, b) => (a.id < b.id ? -1 : 1));
  return {
    records,
    unreadable: isWhole && scope.kind === 'shelf' ? stored.unreadable : [],
    blocks: ofType(records, 'block').filter(({ deleted }) => deleted === null),
  };
}
