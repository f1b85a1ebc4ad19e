import type { ArchiveIndex } from '../core/archive-layout.ts';
import type { AnyRecord } from '../core/records.ts';
import { hashesOf } from './preview.ts';
import type { OpenedArchive } from './reader.ts';

/** What a cut-off import leaves behind, so that the owner is told and nothing it brought is swept away. */
export interface Journal {
  /** RFC 3339, UTC: when the archive was made. */
  readonly made: string;
  readonly volumes: readonly number[];
  readonly of: number;
  readonly pictures: number;
}

/** An archive taken in without all its volumes, as long as one of the others holds photographs that are not here. */
export interface StillOut extends Pick<ArchiveIndex, 'group' | 'made'> {
  /** Volumes there are. */
  readonly of: number;
  /** Those wanted yet. */
  readonly volumes: readonly number[];
  /** Photographs and camera files in them that records here name. */
  readonly pictures: number;
}

/** The note of all archives still out, the one taken in last at the end. */
export const STILL_OUT_NOTE = 'import-still-out';

function parsed<T>(text: string | null): T | null {
  try {
    return JSON.parse(text ?? 'null') as T | null;
  } catch {
    return null;
  }
}

export const journalFrom = (text: string | null): Journal | null => parsed<Journal>(text);

export function stillOutFrom(text: string | null): readonly StillOut[] {
  const list = parsed<StillOut[]>(text);
  return Array.isArray(list) ? list : [];
}

/** The note's text with one archive's part put in place of what it said before; null when nothing is left to say. */
export function stillOutText(text: string | null, now: StillOut): string | null {
  const others = stillOutFrom(text).filter(({ group }) => group !== now.group);
  const list = now.volumes.length > 0 ? [...others, now] : others;
  return list.length > 0 ? JSON.stringify(list) : null;
}

/**
 * What records still lack, by the list that every volume carries of all photographs.
 * @param here hashes of the bytes on this device, or of those that would be
 */
export function stillOutOf(
  index: OpenedArchive['index'],
  records: readonly AnyRecord[],
  here: ReadonlySet<string>,
): StillOut {
  const lies = new Map([...index.photographs, ...index.originals].map(({ sha256, volume }) => [sha256, volume]));
  const lacking = [...new Set(records.flatMap(hashesOf))].flatMap((hash) =>
    here.has(hash) ? [] : (lies.get(hash) ?? []),
  );
  return {
    ...{ group: index.group, made: index.made, of: index.volumes },
    volumes: [...new Set(lacking)].sort((a, b) => a - b),
    pictures: lacking.length,
  };
}
