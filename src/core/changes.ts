import { blank } from './blank.ts';
import { sameValue } from './canonical.ts';
import type { Stamp } from './clock.ts';
import { wordsPutAway, wordsWrittenOver } from './merge-words.ts';
import { type AnyRecord, type Fields, type RecordOf, type RecordType, SCHEMA } from './records.ts';

/**
 * Fields that are maps, stamped key by key, so that two phones can each add a measure. Anything else is one value.
 * A new map field needs a schema step: an app that does not know it would merge it whole.
 */
export const MAP_FIELDS = {
  survey: ['measures', 'noneSeen', 'stationsDone'],
  finding: ['answers'],
  sale: ['diligence'],
} as const satisfies { readonly [T in RecordType]?: readonly (keyof Fields<T>)[] };
type MapField<T> = T extends keyof typeof MAP_FIELDS ? (typeof MAP_FIELDS)[T][number] : never;

/** New values by field; in a map field by key, null taking the key away. Keys not named stay as they are. */
export type Patch<T extends RecordType> = {
  readonly [F in keyof Fields<T>]?: F extends MapField<T>
    ? { readonly [key: string]: Fields<T>[F][keyof Fields<T>[F]] | null }
    : Fields<T>[F];
};

type Values = Readonly<Record<string, unknown>>;
const ENVELOPE: readonly string[] = ['id', 'type', 'schema', 'device', 'stamps', 'deleted', 'otherWords'];

export const isEnvelope = (field: string): boolean => ENVELOPE.includes(field);

export function isMapField(type: RecordType, field: string): boolean {
  const maps: { readonly [T in RecordType]?: readonly string[] } = MAP_FIELDS;
  return maps[type]?.includes(field) ?? false;
}

/** When a path was last written; `''`, older than every stamp, where nobody has. */
export function stampAt(record: AnyRecord, path: string): Stamp {
  return Object.hasOwn(record.stamps, path) ? (record.stamps[path] ?? '') : '';
}

/** The newest stamp anywhere in a record, its removal and its lost words included. */
export function latestStamp(record: AnyRecord): Stamp {
  let latest = record.deleted ?? '';
  for (const path in record.stamps) {
    const stamp = stampAt(record, path);
    if (stamp > latest) latest = stamp;
  }
  for (const { at, putAway } of Object.values(record.otherWords ?? {}).flat()) {
    for (const stamp of [at, putAway?.at ?? '']) if (stamp > latest) latest = stamp;
  }
  return latest;
}

/** Every value of a record by its path, `name` or `measures.lengthMm`; the envelope left out. */
export function valuesByPath(record: AnyRecord): Map<string, unknown> {
  const values = new Map<string, unknown>();
  for (const [field, value] of Object.entries(record)) {
    if (isEnvelope(field)) continue;
    if (!isMapField(record.type, field)) values.set(field, value);
    else for (const [key, item] of Object.entries(value as Values)) values.set(`${field}.${key}`, item);
  }
  return values;
}

export interface Origin {
  readonly id: string;
  readonly stamp: Stamp;
  readonly device: string;
}

/**
 * A new record. Fields still as blank carry no stamp: nobody chose them, so a second phone's defaults never win over a
 * choice made on the first (the settings record has one id on every phone).
 */
export function created<T extends RecordType>(type: T, fields: Fields<T>, { id, stamp, device }: Origin): RecordOf<T> {
  const record = { ...fields, type, id, schema: SCHEMA, device, stamps: {}, deleted: null } as unknown as RecordOf<T>;
  const unchosen: Values = blank[type];
  const stamps: Record<string, Stamp> = {};
  for (const [path, value] of valuesByPath(record)) if (!sameValue(value, unchosen[path])) stamps[path] = stamp;
  return { ...record, stamps };
}

/**
 * The record with a patch applied and every path that really changed stamped; the same object if none did. Taking a
 * key of a map away, or an optional field by `undefined`, leaves its stamp, so that the removal outlives a merge. An
 * edit brings a removed record back.
 * @throws Error (ours) for a stamp older than the path's own, or a patch of the envelope
 */
export function withFields<R extends AnyRecord>(record: R, patch: Patch<R['type']>, stamp: Stamp): R {
  const next = new Map<string, unknown>(Object.entries(record));
  const stamps: Record<string, Stamp> = {};
  const write = (path: string) => {
    const last = stampAt(record, path);
    if (stamp < last) throw new Error(`${path} was written at ${last}, came with the older ${stamp}.`);
    stamps[path] = stamp;
  };
  for (const [field, value] of Object.entries(patch as Values)) {
    if (isEnvelope(field)) throw new Error(`${field} is not a field to edit.`);
    if (isMapField(record.type, field)) {
      const map = new Map(Object.entries(next.get(field) as Values));
      for (const [key, item] of Object.entries(value as Values)) {
        if (changeIn(map, key, item ?? undefined)) write(`${field}.${key}`);
      }
      next.set(field, Object.fromEntries(map));
    } else if (changeIn(next, field, value)) write(field);
  }
  if (Object.keys(stamps).length === 0) return record;
  if (record.deleted !== null) {
    next.set('deleted', null);
    write('deleted');
  }
  const otherWords = wordsWrittenOver(record, Object.keys(stamps), stamp);
  if (otherWords) next.set('otherWords', otherWords);
  else next.delete('otherWords');
  return Object.fromEntries(next.set('stamps', { ...record.stamps, ...stamps })) as unknown as R;
}

/** Sets a value, or takes it away for undefined; false if that is how it was. */
function changeIn(values: Map<string, unknown>, key: string, value: unknown): boolean {
  if (value === undefined) return values.delete(key);
  if (values.has(key) && sameValue(values.get(key), value)) return false;
  values.set(key, value);
  return true;
}

const withTombstone = <R extends AnyRecord>(record: R, deleted: Stamp | null, stamp: Stamp): R => ({
  ...record,
  deleted,
  stamps: { ...record.stamps, deleted: stamp },
});

/** The record marked as gone. Nothing of it is erased: another phone may still edit it, and undo brings it back. */
export const removed = <R extends AnyRecord>(record: R, stamp: Stamp): R => withTombstone(record, stamp, stamp);

export const restored = <R extends AnyRecord>(record: R, stamp: Stamp): R => withTombstone(record, null, stamp);

/** The paths written between two versions of a record, or up to its first. */
export function changedPaths(before: AnyRecord | undefined, after: AnyRecord): string[] {
  const paths = Object.keys(after.stamps).filter((path) => !before || stampAt(before, path) !== stampAt(after, path));
  return sameValue(before?.otherWords, after.otherWords) ? paths : [...paths, 'otherWords'];
}

/**
 * The record with one change taken back by a new edit: where it still says what the change made of it, it says again
 * what it said before. What was written since stays. Taking back a creation removes, taking back a removal restores.
 */
export function takenBack<R extends AnyRecord>(before: R | undefined, after: R, current: R, stamp: Stamp): R {
  if (!before) return current.deleted === null ? removed(current, stamp) : current;
  const removedSince = after.deleted === null && current.deleted !== null;
  if (removedSince) return current;
  const was = valuesByPath(before);
  const became = valuesByPath(after);
  const is = valuesByPath(current);
  const patch: Record<string, unknown> = {};
  for (const path of new Set([...was.keys(), ...became.keys()])) {
    const old = was.get(path);
    if (sameValue(old, became.get(path)) || !sameValue(is.get(path), became.get(path))) continue;
    const [field = '', key] = isMapField(before.type, path.split('.')[0] ?? '') ? path.split('.') : [path];
    if (key === undefined) patch[field] = old;
    else patch[field] = { ...(patch[field] as Values), [key]: was.has(path) ? old : null };
  }
  const edited = wordsTakenBack(before, after, withFields(current, patch as Patch<R['type']>, stamp), stamp);
  if (before.deleted === null && after.deleted !== null) {
    return edited.deleted === null ? edited : restored(edited, stamp);
  }
  return before.deleted !== null && after.deleted === null ? removed(edited, stamp) : edited;
}

/** Lost words as they lay before: taken out if the change put them away, put away if it brought them. */
function wordsTakenBack<R extends AnyRecord>(before: R, after: R, current: R, stamp: Stamp): R {
  let edited = current;
  for (const [path, entries] of Object.entries(after.otherWords ?? {})) {
    for (const { at, putAway } of entries) {
      const old = before.otherWords?.[path]?.find((entry) => entry.at === at);
      const now = edited.otherWords?.[path]?.find((entry) => entry.at === at);
      if (!now || (now.putAway?.yes ?? false) !== (putAway?.yes ?? false)) continue;
      edited = wordsPutAway(edited, path, at, old ? (old.putAway?.yes ?? false) : true, stamp);
    }
  }
  return edited;
}
