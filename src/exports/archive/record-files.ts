import {
  ARCHIVE_VERSION,
  MOST_RECORD_FILE_BYTES,
  MOST_RECORDS_IN_FILE,
  RECORDS_FORMAT,
  recordsPath,
  UNREADABLE_FORMAT,
  unreadablePath,
} from '../../core/archive-layout.ts';
import { canonical } from '../../core/canonical.ts';
import type { Contents, UnreadRecord } from './contents.ts';

export interface TextFile {
  readonly path: string;
  readonly text: string;
}

/** Storage can hold what JSON cannot say: large integers go out as text, bytes by their number. */
function asJson(_: string, value: unknown): unknown {
  if (typeof value === 'bigint') return `${value}n`;
  return value instanceof ArrayBuffer ? `${value.byteLength} bytes` : value;
}

/** Lines of a file until it is full; the next begins another. */
function inFiles(lines: readonly string[]): string[][] {
  const files: string[][] = [];
  let bytes = 0;
  for (const line of lines) {
    const file = files.at(-1);
    // A sign is at most three bytes long; counted high, so that no text has to be encoded twice.
    if (!file || file.length >= MOST_RECORDS_IN_FILE || bytes + line.length * 3 > MOST_RECORD_FILE_BYTES) {
      files.push([line]);
      bytes = line.length * 3;
    } else {
      file.push(line);
      bytes += line.length * 3;
    }
  }
  return files;
}

const text = (head: object, lines: readonly string[]): string =>
  `${JSON.stringify(head).slice(0, -1)},"records":[\n${lines.join(',\n')}\n]}\n`;

/** All records as files by type, one record a line with its keys sorted: equal records give equal bytes. */
export function recordFiles({ records, unreadable }: Pick<Contents, 'records' | 'unreadable'>): TextFile[] {
  const byType = new Map<string, string[]>();
  for (const record of records) {
    const lines = byType.get(record.type);
    if (lines) lines.push(canonical(record));
    else byType.set(record.type, [canonical(record)]);
  }
  const known = [...byType].sort(([a], [b]) => (a < b ? -1 : 1));
  return [
    ...known.flatMap(([type, lines]) =>
      inFiles(lines).map((file, i) => ({
        path: recordsPath(type, i + 1),
        text: text({ format: RECORDS_FORMAT, version: ARCHIVE_VERSION, type }, file),
      })),
    ),
    ...unreadFiles(unreadable),
  ];
}

const unreadFiles = (unreadable: readonly UnreadRecord[]): TextFile[] =>
  inFiles(
    unreadable.map(({ id, state, why, raw }) => JSON.stringify({ id, state, why, raw: raw ?? null }, asJson)),
  ).map((file, i) => ({
    path: unreadablePath(i + 1),
    text: text({ format: UNREADABLE_FORMAT, version: ARCHIVE_VERSION }, file),
  }));
