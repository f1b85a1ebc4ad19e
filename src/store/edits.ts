import { blank } from '../core/blank.ts';
import { changedPaths, created, type Patch, removed, takenBack, withFields } from '../core/changes.ts';
import type { Stamp } from '../core/clock.ts';
import { wordsPutAway } from '../core/merge-words.ts';
import { type AnyRecord, type Fields, type RecordType, SETTINGS_ID } from '../core/records.ts';
import { faultIn } from './read-record.ts';
import type { ChangeRow } from './repository.ts';

/** One edit of one record; several under one label are one change, saved and undone together. */
export type Edit =
  | { readonly do: 'create'; readonly type: RecordType; readonly id: string; readonly fields: object }
  | { readonly do: 'set'; readonly type: RecordType; readonly id: string; readonly patch: object }
  | { readonly do: 'remove'; readonly id: string }
  | { readonly do: 'putAway'; readonly id: string; readonly path: string; readonly at: Stamp };

/** A new record under a new id; fields not given are as in `core/blank.ts`. */
export function create<T extends RecordType>(type: T, id: string, fields: Partial<Fields<T>>): Edit {
  return { do: 'create', type, id, fields: { ...blank[type], ...fields } };
}

/** New values for fields; in map fields (measures, answers…) by key, null taking the key away. */
export function set<T extends RecordType>(type: T, id: string, patch: Patch<T>): Edit {
  return { do: 'set', type, id, patch };
}

/**
 * Removes a record. A block goes with all that belongs to it, a survey with its findings, a photograph with the marks on
 * it and how it was lined up; the photographs of a finding stay with the block; the blocks of a sale stay, unless they came with the example.
 */
export const remove = (id: string): Edit => ({ do: 'remove', id });

/** Puts away words that lost in a merge; see `core/merge-words.ts`. */
export const putAway = (id: string, path: string, at: Stamp): Edit => ({ do: 'putAway', id, path, at });

/** The owner's settings; the record is made at the first change. */
export const setSettings = (patch: Patch<'settings'>): Edit => set('settings', SETTINGS_ID, patch);

/** A record before and after a change. */
export interface Take {
  readonly before: AnyRecord | undefined;
  readonly after: AnyRecord;
}

/** What an edit sees and signs with. */
export interface Desk {
  readonly find: (id: string) => AnyRecord | undefined;
  /** Live records that go with a record when it is removed. */
  readonly partsOf: (id: string) => readonly AnyRecord[];
  readonly stamp: Stamp;
  readonly device: string;
}

/**
 * What edits make of the records, without touching any.
 * @throws Error (ours) if a record is missing, made twice, or would not be readable afterwards
 */
export function edited(edits: readonly Edit[], desk: Desk): Take[] {
  const { find, stamp, device } = desk;
  const drafts = new Map<string, AnyRecord>();
  const current = (id: string) => drafts.get(id) ?? find(id);
  for (const edit of edits) {
    const record = current(edit.id);
    if (edit.do === 'create') {
      if (record) throw new Error(`${edit.type} ${edit.id} is there already.`);
      drafts.set(edit.id, created(edit.type, edit.fields as never, { id: edit.id, stamp, device }) as AnyRecord);
    } else if (edit.do === 'remove') {
      drop(edit.id, drafts, desk);
    } else if (edit.do === 'putAway') {
      if (record) drafts.set(edit.id, wordsPutAway(record, edit.path, edit.at, true, stamp));
    } else {
      const base = record ?? (edit.id === SETTINGS_ID ? firstSettings(device) : undefined);
      if (base?.type !== edit.type) throw new Error(`There is no ${edit.type} ${edit.id} to change.`);
      const stray = Object.keys(edit.patch).find((field) => !Object.hasOwn(blank[edit.type], field));
      if (stray) throw new Error(`A ${edit.type} has no field ${stray}.`);
      drafts.set(edit.id, withFields(base, edit.patch as never, stamp));
    }
  }
  return takesOf(drafts, find);
}

/** What taking changes back makes of the records, newest first; see `takenBack` for what later edits keep. */
export function undone(takes: readonly Take[], desk: Desk): Take[] {
  const drafts = new Map<string, AnyRecord>();
  for (const { before, after } of [...takes].reverse()) {
    const current = drafts.get(after.id) ?? desk.find(after.id);
    if (!current) continue;
    if (before) drafts.set(after.id, takenBack(before, after, current, desk.stamp));
    else drop(after.id, drafts, desk);
  }
  return takesOf(drafts, desk.find);
}

/** One row of history for each record. */
export const historyOf = (takes: readonly Take[], { stamp, device }: Desk): ChangeRow[] =>
  takes.map(({ before, after }) => ({ at: stamp, id: after.id, paths: changedPaths(before, after), device }));

/** The settings nobody has touched: the same on every phone, so its stamps are empty and any choice wins over it. */
export const firstSettings = (device: string) =>
  created('settings', blank.settings, { id: SETTINGS_ID, stamp: '', device });

function drop(id: string, drafts: Map<string, AnyRecord>, desk: Desk): void {
  const record = drafts.get(id) ?? desk.find(id);
  if (!record || record.deleted !== null) return;
  drafts.set(id, removed(record, desk.stamp));
  for (const part of desk.partsOf(id)) drop(part.id, drafts, desk);
}

function takesOf(drafts: ReadonlyMap<string, AnyRecord>, find: Desk['find']): Take[] {
  const takes: Take[] = [];
  for (const [id, after] of drafts) {
    const before = find(id);
    if (after === before) continue;
    const fault = faultIn(after);
    if (fault) throw new Error(`This change would make a record unreadable: ${fault}.`);
    takes.push({ before, after });
  }
  return takes;
}
