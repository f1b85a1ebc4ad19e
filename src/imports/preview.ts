import { latestStamp } from '../core/changes.ts';
import { type LostWords, otherWordsIn } from '../core/merge-words.ts';
import type { AnyRecord, HatBlock } from '../core/records.ts';
import type { Take } from '../store/edits.ts';
import { broughtBack, inOne, joinedTakes } from '../store/joining.ts';

/** What would become of a block. */
export type Fate = 'new' | 'changed' | 'removed' | 'back' | 'same';

export interface BlockPreview {
  readonly id: string;
  /** As it would stand. */
  readonly block: HatBlock;
  readonly fate: Fate;
  /** Records of it that would be written, the block itself included. */
  readonly changes: number;
  /** Words kept twice by this. */
  readonly conflicts: readonly (LostWords & { readonly recordId: string })[];
  /** Photographs of it that would come. */
  readonly pictures: readonly string[];
}

export interface Preview {
  /** Those that change first, then by name; blocks removed on both sides left out. */
  readonly blocks: readonly BlockPreview[];
  /** Records that would change and belong to no block: sales, settings, others. */
  readonly others: { readonly sales: number; readonly settings: boolean; readonly rest: number };
  /** Records in the archive that say nothing new. */
  readonly same: number;
}

const blockOf = (record: AnyRecord): string | null =>
  record.type === 'block' ? record.id : 'blockId' in record ? (record.blockId ?? null) : null;

/** Hashes a photo record names that an archive can hold. */
export function hashesOf(record: AnyRecord): string[] {
  if (record.type !== 'photo' || record.deleted !== null) return [];
  return [record.sha256, ...(record.original ? [record.original.sha256] : [])];
}

function fateOf({ before, after }: Take): Fate {
  if (!before) return after.deleted === null ? 'new' : 'same';
  if (before.deleted === null) return after.deleted === null ? 'changed' : 'removed';
  return after.deleted === null ? 'back' : 'same';
}

const FATES: readonly Fate[] = ['removed', 'back', 'changed', 'new', 'same'];

/**
 * What joining records would change, before anything is written.
 * @param here hashes of the bytes on this device
 * @param offered whether the files at hand hold a photograph
 */
export function previewOf(
  incoming: readonly AnyRecord[],
  mine: { find(id: string): AnyRecord | undefined; everything(): Iterable<AnyRecord> },
  here: ReadonlySet<string>,
  offered: (hash: string) => boolean = () => true,
): Preview {
  const first = joinedTakes(incoming, mine.find);
  const newest = first.reduce((last, { after }) => [last, latestStamp(after)].sort()[1] ?? last, '');
  const takes = new Map(
    inOne(first, broughtBack(first, mine.everything(), newest)).map((take) => [take.after.id, take]),
  );
  const after = (id: string): AnyRecord | undefined => takes.get(id)?.after ?? mine.find(id);
  const groups = new Map<string, AnyRecord[]>();
  const loose: AnyRecord[] = [];
  for (const record of [...incoming, ...[...takes.values()].map((take) => take.after)]) {
    const id = blockOf(record);
    if (id === null) loose.push(record);
    else groups.set(id, [...(groups.get(id) ?? []), record]);
  }
  const blocks: BlockPreview[] = [];
  for (const [id, records] of groups) {
    const block = after(id);
    if (block?.type !== 'block') continue;
    const changed = [...new Set(records.map((record) => record.id))].flatMap((one) => takes.get(one) ?? []);
    const own = takes.get(id);
    const fate = own ? fateOf(own) : changed.length > 0 && block.deleted === null ? 'changed' : 'same';
    if (block.deleted !== null && fate === 'same') continue;
    blocks.push({
      ...{ id, block, fate },
      changes: changed.length,
      conflicts: changed.flatMap(({ before, after: now }) => {
        const known = new Set(before ? otherWordsIn(before).map(({ path, at }) => `${path} ${at}`) : []);
        return otherWordsIn(now)
          .filter(({ path, at }) => !known.has(`${path} ${at}`))
          .map((words) => ({ ...words, recordId: now.id }));
      }),
      pictures: [...new Set(records.flatMap(hashesOf))].filter((hash) => !here.has(hash) && offered(hash)),
    });
  }
  const order = (one: BlockPreview): number => FATES.indexOf(one.fate);
  blocks.sort((a, b) => order(a) - order(b) || a.block.name.localeCompare(b.block.name, 'en', { numeric: true }));
  const others = [...new Set(loose.map(({ id }) => id))].flatMap((id) => takes.get(id) ?? []);
  const count = (type: string): number => others.filter(({ after: now }) => now.type === type).length;
  return {
    blocks,
    others: {
      sales: count('sale'),
      settings: count('settings') > 0,
      rest: others.length - count('sale') - count('settings'),
    },
    same: incoming.filter(({ id }) => !takes.has(id)).length,
  };
}

/**
 * Those of the records that go with the chosen blocks: all of the block, and the sale it came from. With `null`
 * everything, settings included.
 */
export function chosenFrom(incoming: readonly AnyRecord[], blocks: ReadonlySet<string> | null): readonly AnyRecord[] {
  if (blocks === null) return incoming;
  const sales = new Set<string>();
  for (const record of incoming) {
    if (record.type === 'block' && blocks.has(record.id) && record.saleId) sales.add(record.saleId);
  }
  return incoming.filter((record) => {
    const block = blockOf(record);
    return (block !== null && blocks.has(block)) || sales.has(record.id);
  });
}
