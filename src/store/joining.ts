import { latestStamp, restored } from '../core/changes.ts';
import type { Stamp } from '../core/clock.ts';
import { mergeRecords } from '../core/merge.ts';
import type { AnyRecord } from '../core/records.ts';
import type { Take } from './edits.ts';
import { PART_OF } from './shelf.ts';

type Find = (id: string) => AnyRecord | undefined;

/** What records from elsewhere make of those here; one that adds nothing is left out. A record under a foreign id is not touched. */
export function joinedTakes(incoming: readonly AnyRecord[], find: Find): Take[] {
  const takes: Take[] = [];
  for (const record of incoming) {
    const before = find(record.id);
    if (before && before.type !== record.type) continue;
    const after = before ? mergeRecords(before, record) : record;
    if (after !== before) takes.push({ before, after });
  }
  return takes;
}

/** The newest stamp in any of the records; `''` for none. */
export function newestOf(records: readonly AnyRecord[]): Stamp {
  let newest: Stamp = '';
  for (const record of records) {
    const stamp = latestStamp(record);
    if (stamp > newest) newest = stamp;
  }
  return newest;
}

function ownersOf(record: AnyRecord): string[] {
  const fields = record as { readonly [field in (typeof PART_OF)[number]]?: string | null };
  return PART_OF.flatMap((field) => fields[field] ?? []);
}

/**
 * What was removed on one phone while a part of it was worked on at another comes back, with all that went in the same
 * stroke: nobody who works on a finding means its block to be gone. A part that a removal knew of went with it, so any
 * part still there was written since or unknown to whoever removed. Signed as an edit of this device, so that all phones
 * come to agree.
 * @param takes what is being joined; only what they touch is looked at
 */
export function broughtBack(takes: readonly Take[], everything: Iterable<AnyRecord>, stamp: Stamp): Take[] {
  const world = new Map<string, AnyRecord>();
  for (const record of everything) world.set(record.id, record);
  const touched = new Set<string>();
  for (const { after } of takes) {
    world.set(after.id, after);
    for (const id of [after.id, ...ownersOf(after)]) touched.add(id);
  }
  const back = new Map<string, Take>();
  const bring = (record: AnyRecord): void => {
    const after = restored(record, stamp);
    world.set(record.id, after);
    back.set(record.id, { before: record, after });
  };
  for (let found = true; found; ) {
    found = false;
    for (const part of [...world.values()]) {
      if (part.deleted !== null) continue;
      for (const id of ownersOf(part)) {
        const owner = world.get(id);
        if (!owner || owner.deleted === null || !touched.has(id)) continue;
        found = true;
        bring(owner);
        for (const other of [...world.values()]) {
          if (other.deleted === owner.deleted && ownersOf(other).includes(id)) bring(other);
        }
      }
    }
  }
  return [...back.values()];
}

/** Two rounds of takes as one: each record from before the first to after the last. */
export function inOne(first: readonly Take[], then: readonly Take[]): Take[] {
  const takes = new Map(first.map((take) => [take.after.id, take]));
  for (const take of then) {
    const earlier = takes.get(take.after.id);
    takes.set(take.after.id, earlier ? { before: earlier.before, after: take.after } : take);
  }
  return [...takes.values()];
}
