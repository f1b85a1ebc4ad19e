import { canonical } from './canonical.ts';
import { isMapField, stampAt } from './changes.ts';
import type { Stamp } from './clock.ts';
import type { AnyRecord, Fields, OtherWords, RecordType } from './records.ts';

/**
 * Fields people write in their own words. Where two phones wrote in one without knowing of each other, the later words
 * stand and the others are kept beside them until someone puts them away.
 */
export const TEXT_FIELDS = {
  block: ['name', 'objectNumber', 'maker', 'note'],
  survey: ['reason', 'surveyor', 'note'],
  finding: ['gradeReason', 'note'],
  mark: ['text', 'note'],
  statement: ['party', 'place', 'note'],
  photo: ['caption'],
  photoMark: ['text'],
  sale: ['title', 'place', 'seller', 'diligence', 'note'],
  lot: ['title', 'objectNumber', 'note'],
  offer: ['note'],
  job: ['note'],
  step: ['words', 'note'],
  quarantine: ['why', 'where'],
  quarantineCheck: ['note'],
  coldStage: ['note'],
  reminder: ['words'],
  readyCheck: ['note'],
  expense: ['what'],
  settings: ['ownerName', 'photoRights'],
} as const satisfies { readonly [T in RecordType]?: readonly (keyof Fields<T>)[] };

/** Whether a path holds words, `note` or `diligence.seen`. */
export function isTextPath(type: RecordType, path: string): boolean {
  const texts: { readonly [T in RecordType]?: readonly string[] } = TEXT_FIELDS;
  const [field = ''] = isMapField(type, path.split('.')[0] ?? '') ? path.split('.') : [path];
  return texts[type]?.includes(field) ?? false;
}

/** Words that lost: when they were written, and whether someone put them away and when. */
type Lost = Omit<OtherWords, 'text'> & { readonly text: string };

/**
 * What is known of one path. Every text ever written there has its stamp as name; `read` says, by device, up to which
 * stamp they are known, so that a text that is known and no longer here was written over by someone who saw it.
 */
interface Known {
  readonly stands: Stamp;
  readonly lost: ReadonlyMap<Stamp, Lost>;
  readonly read: ReadonlyMap<string, Stamp>;
}

const later = (a: Stamp, b: Stamp): Stamp => (a < b ? b : a);
export const deviceOf = (stamp: Stamp): string => stamp.slice(-8);

function knownAt(record: AnyRecord, path: string): Known {
  const stands = stampAt(record, path);
  const lost = new Map<Stamp, Lost>();
  const read = new Map<string, Stamp>();
  const see = (at: Stamp): void => {
    if (at > (read.get(deviceOf(at)) ?? '')) read.set(deviceOf(at), at);
  };
  if (stands !== '') see(stands);
  const entries = record.otherWords && Object.hasOwn(record.otherWords, path) ? record.otherWords[path] : undefined;
  for (const entry of entries ?? []) {
    // No app writes one as late as what stands; from a damaged file it must not count as read.
    if (entry.at >= stands) continue;
    see(entry.at);
    if (entry.text !== null) lost.set(entry.at, { ...entry, text: entry.text });
  }
  return { stands, lost, read };
}

/** The entries to be stored, earliest first: lost words, and of each device the last stamp read if nothing else shows it. */
function entriesOf({ stands, lost, read }: Known): OtherWords[] {
  const entries: OtherWords[] = [...lost.values()].filter(({ text }) => text !== '');
  for (const [device, at] of read) {
    const shown = at === stands || entries.some((entry) => entry.at === at);
    const isPast = deviceOf(stands) === device && stands > at;
    if (!shown && !isPast) entries.push({ at, text: null });
  }
  return entries.sort((a, b) => (a.at < b.at ? -1 : 1));
}

/** Equal stamps (one device in two windows) by the words, so that every phone agrees. */
function joinedLost(a: Lost, b: Lost): Lost {
  const text = canonical(a.text) >= canonical(b.text) ? a.text : b.text;
  const [first, second] = [a.putAway, b.putAway];
  if (!first || !second) return { ...a, ...((first ?? second) && { putAway: first ?? second }), text };
  const later = first.at === second.at ? { at: first.at, yes: first.yes || second.yes } : null;
  return { ...a, text, putAway: later ?? (first.at > second.at ? first : second) };
}

/** What both versions know of a path together. Per text one of: not known, here, written over; the later of these wins. */
function joined(a: AnyRecord, b: AnyRecord, path: string): OtherWords[] {
  const [mine, theirs] = [knownAt(a, path), knownAt(b, path)];
  const here = (known: Known, record: AnyRecord) => {
    const all = new Map(known.lost);
    if (known.stands !== '') all.set(known.stands, { at: known.stands, text: wordsAt(record, path) });
    return all;
  };
  const [ours, others] = [here(mine, a), here(theirs, b)];
  const stands = later(mine.stands, theirs.stands);
  const lost = new Map<Stamp, Lost>();
  for (const at of new Set([...ours.keys(), ...others.keys()])) {
    const [one, other] = [ours.get(at), others.get(at)];
    if (at === stands) continue;
    if (one && other) lost.set(at, joinedLost(one, other));
    else {
      const unread = at > ((one ? theirs : mine).read.get(deviceOf(at)) ?? '');
      const words = one ?? other;
      if (unread && words) lost.set(at, words);
    }
  }
  const read = new Map(mine.read);
  for (const [device, at] of theirs.read) if (at > (read.get(device) ?? '')) read.set(device, at);
  return entriesOf({ stands, lost, read });
}

type AllOtherWords = NonNullable<AnyRecord['otherWords']>;
const present = (all: ReadonlyMap<string, OtherWords[]>): { otherWords?: AllOtherWords } => {
  const entries = [...all].filter(([, words]) => words.length > 0);
  return entries.length > 0 ? { otherWords: Object.fromEntries(entries) } : {};
};

/** The `otherWords` of a merged record, for all paths either version has; nothing if there are none. */
export function mergedWords(a: AnyRecord, b: AnyRecord, paths: Iterable<string>): { otherWords?: AllOtherWords } {
  const all = new Map<string, OtherWords[]>();
  for (const path of new Set([...paths, ...Object.keys(a.otherWords ?? {}), ...Object.keys(b.otherWords ?? {})])) {
    if (isTextPath(a.type, path)) all.set(path, joined(a, b, path));
  }
  return present(all);
}

/** The words that stand at a path; none where there are none. */
export function wordsAt(record: AnyRecord, path: string): string {
  const fields = record as unknown as Readonly<Record<string, unknown>>;
  const [field = '', key] = isMapField(record.type, path.split('.')[0] ?? '') ? path.split('.') : [path];
  const value = key === undefined ? fields[field] : (fields[field] as Record<string, unknown> | undefined)?.[key];
  return typeof value === 'string' ? value : '';
}

/** The `otherWords` of a record in which one device now writes over paths it has read; what lost before stays lost. */
export function wordsWrittenOver(record: AnyRecord, paths: readonly string[], stamp: Stamp): AllOtherWords | undefined {
  const all = new Map(Object.entries(record.otherWords ?? {}));
  for (const path of paths) {
    if (!isTextPath(record.type, path)) continue;
    const known = knownAt(record, path);
    const read = new Map(known.read);
    if (stamp > (read.get(deviceOf(stamp)) ?? '')) read.set(deviceOf(stamp), stamp);
    all.set(path, entriesOf({ stands: stamp, lost: known.lost, read }));
  }
  return present(all).otherWords;
}

/** The record with lost words put away, or taken out again. */
export function wordsPutAway<R extends AnyRecord>(record: R, path: string, at: Stamp, yes: boolean, stamp: Stamp): R {
  const words = record.otherWords?.[path];
  if (!words?.some((entry) => entry.at === at && entry.text !== null && (entry.putAway?.yes ?? false) !== yes)) {
    return record;
  }
  const next = words.map((entry) => (entry.at === at ? { ...entry, putAway: { at: stamp, yes } } : entry));
  return { ...record, otherWords: { ...record.otherWords, [path]: next } };
}

export interface LostWords {
  readonly path: string;
  readonly at: Stamp;
  readonly text: string;
}

/** Words beside those that stand, not put away and saying something else; latest first at each path. */
export function otherWordsIn(record: AnyRecord, path?: string): LostWords[] {
  const found: LostWords[] = [];
  for (const [where, entries] of Object.entries(record.otherWords ?? {})) {
    if (path !== undefined && where !== path) continue;
    const said = new Set([wordsAt(record, where).trim()]);
    for (const { at, text, putAway } of [...entries].reverse()) {
      if (text === null || putAway?.yes || said.has(text.trim())) continue;
      said.add(text.trim());
      found.push({ path: where, at, text });
    }
  }
  return found;
}
