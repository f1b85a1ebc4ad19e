import { canonical } from './canonical.ts';
import { isMapField, stampAt, valuesByPath } from './changes.ts';
import type { Stamp } from './clock.ts';
import { mergedWords } from './merge-words.ts';
import type { AnyRecord } from './records.ts';

/** What one version says at a path: a value, or that a key of a map is gone. */
interface Said {
  readonly stamp: Stamp;
  readonly value: unknown;
  readonly present: boolean;
}

const NOT_SAID: Said = { stamp: '', value: undefined, present: false };

function sayings(record: AnyRecord): Map<string, Said> {
  const said = new Map<string, Said>();
  for (const [path, value] of valuesByPath(record)) {
    said.set(path, { stamp: stampAt(record, path), value, present: true });
  }
  for (const path of Object.keys(record.stamps)) {
    if (path !== 'deleted' && !said.has(path)) said.set(path, { ...NOT_SAID, stamp: stampAt(record, path) });
  }
  return said;
}

/** A text that differs wherever what is said differs; a key that is gone has none. */
const words = (said: Said): string => (said.present ? canonical(said.value) : '');

/** Newest stamp first; equal stamps (one device in two windows) by the value itself, so that every phone agrees. */
function newer(a: Said, b: Said): Said {
  if (a.stamp !== b.stamp) return a.stamp > b.stamp ? a : b;
  return words(a) >= words(b) ? a : b;
}

function* paired(a: AnyRecord, b: AnyRecord): Generator<[path: string, a: Said, b: Said]> {
  const mine = sayings(a);
  const theirs = sayings(b);
  for (const path of new Set([...mine.keys(), ...theirs.keys()])) {
    yield [path, mine.get(path) ?? NOT_SAID, theirs.get(path) ?? NOT_SAID];
  }
}

function tombstone(a: AnyRecord, b: AnyRecord, latestEdit: Stamp): Said {
  const said = (record: AnyRecord): Said => {
    const stamp = stampAt(record, 'deleted') || (record.deleted ?? '');
    return { stamp, value: record.deleted, present: true };
  };
  const last = newer(said(a), said(b));
  return latestEdit > last.stamp ? { ...last, value: null } : last;
}

/**
 * Two versions of one record made into one: at every path, and at every key of a map, the newest stamp wins. Fields
 * this app does not know are merged whole. Words written on both sides unknown to each other are both kept, see
 * `merge-words.ts`.
 *
 * A removal is a value like any other, with one rule more: an edit later than the removal brings the record back,
 * because someone still worked on it; an earlier or simultaneous edit goes with it.
 *
 * Commutative, associative and idempotent, so phones may exchange in any order and as often as they like. If `b` adds
 * nothing, `a` itself is returned.
 * @throws Error (ours) if the versions are not of the same record
 */
export function mergeRecords<R extends AnyRecord>(a: R, b: R): R {
  if (a === b) return a;
  if (a.id !== b.id || a.type !== b.type) throw new Error(`Cannot merge ${a.type} ${a.id} with ${b.type} ${b.id}.`);
  const fields = new Map<string, unknown>();
  const maps = new Map<string, Map<string, unknown>>();
  const stamps: [string, Stamp][] = [];
  for (const record of [a, b]) {
    for (const field of Object.keys(record)) if (isMapField(a.type, field)) maps.set(field, new Map());
  }
  let latestEdit: Stamp = '';
  for (const [path, mine, theirs] of paired(a, b)) {
    const said = newer(mine, theirs);
    if (said.stamp !== '') stamps.push([path, said.stamp]);
    if (said.stamp > latestEdit) latestEdit = said.stamp;
    if (!said.present) continue;
    const dot = path.indexOf('.');
    const map = dot < 0 ? undefined : maps.get(path.slice(0, dot));
    if (map) map.set(path.slice(dot + 1), said.value);
    else fields.set(path, said.value);
  }
  const deleted = tombstone(a, b, latestEdit);
  if (deleted.stamp !== '') stamps.push(['deleted', deleted.stamp]);
  for (const [field, map] of maps) fields.set(field, Object.fromEntries(map));
  const merged = {
    ...Object.fromEntries(fields),
    id: a.id,
    type: a.type,
    schema: Math.max(a.schema, b.schema),
    device: [a.device, b.device].sort()[0],
    stamps: Object.fromEntries(stamps),
    deleted: deleted.value,
    ...mergedWords(
      a,
      b,
      stamps.map(([path]) => path),
    ),
  } as R;
  return canonical(merged) === canonical(a) ? a : merged;
}
