import {
  ARCHIVE_FORMAT,
  ARCHIVE_VERSION,
  type ArchiveIndex,
  type ArchiveScope,
  FOLDERS,
  type HeldBytes,
  INDEX_PATH,
  originalPath,
  PAYLOAD,
  photographPath,
  tablePath,
  volumeName,
} from '../../core/archive-layout.ts';
import type { Catalogue } from '../../core/catalogue.ts';
import { type HatBlock, type Photo, SCHEMA, type Settings } from '../../core/records.ts';
import type { ReportDocument } from '../../core/report.ts';
import { csvTables } from '../csv-tables.ts';
import { type BlockFileTools, type BlockRecords, blockFiles, byBlock } from './block-files.ts';
import { type Contents, ofType } from './contents.ts';
import type { ListedReport } from './contents-page.ts';
import type { TextFile } from './record-files.ts';
import { intoVolumes, type Sized } from './volumes.ts';

/** A file of the archive and how it comes by its contents. */
export type PlannedFile = Sized &
  (
    | { readonly from: 'text'; readonly text: string }
    | { readonly from: 'block'; readonly block: BlockRecords }
    | { readonly from: 'bytes'; readonly sha256: string }
  );

export interface ArchivePlan {
  readonly volumes: readonly (readonly PlannedFile[])[];
  /** The same for all volumes but for `volume` and `missing`. */
  readonly index: Omit<ArchiveIndex, 'volume' | 'missing'>;
  readonly tables: readonly { readonly name: string; readonly about: string }[];
  /** What a file of one block is made with, in the volume it lies in. */
  readonly toolsIn: (volume: number) => BlockFileTools;
  /** Reports of the archive as links from the folder of reports in one volume. */
  readonly reportsSeenFrom: (volume: number) => readonly ListedReport[];
  /** Photographs and camera files there are to write. */
  readonly pictures: number;
}

export interface PlanTools {
  readonly catalogue: Catalogue;
  readonly device: string;
  readonly group: string;
  /** RFC 3339, UTC. */
  readonly made: string;
  readonly units: Settings['units'];
  readonly report: (block: HatBlock) => ReportDocument | undefined;
  /** Bytes named by records that cannot be read, with what is known of them. */
  readonly strays: readonly Pick<HeldBytes, 'sha256' | 'bytes' | 'mime'>[];
  readonly most?: number;
  readonly signal: AbortSignal;
  /** Called between blocks; awaited, so that it can give the page a moment. */
  readonly onBlock: (done: number, of: number) => Promise<void>;
}

const encoder = new TextEncoder();
export const encoded = (text: string): Uint8Array<ArrayBuffer> => encoder.encode(text);

/** What a link to a picture in another volume is longer by than one to the same folder, at most; three to a picture. */
const LONGER_LINKS = 3 * 64;

/** What photo records name: the working copy, and the camera file where there is one. Each bytes once. */
function bytesOf(photos: readonly Photo[], seen: Set<string>): PlannedFile[] {
  const files: PlannedFile[] = [];
  const add = (sha256: string, bytes: number, path: string): void => {
    if (seen.has(path)) return;
    seen.add(path);
    files.push({ from: 'bytes', sha256, bytes, path });
  };
  for (const { sha256, bytes, mime, original } of photos) {
    add(sha256, bytes, photographPath(sha256, mime));
    if (original) add(original.sha256, original.bytes, originalPath(original.sha256, original.mime));
  }
  return files;
}

/**
 * Decides what goes into which volume. Files made from a block's records are made once here to know their size, and
 * again when they are written, so that they never all lie in memory.
 */
export async function planArchive(
  contents: Contents,
  records: readonly TextFile[],
  scope: ArchiveScope,
  isWhole: boolean,
  tools: PlanTools,
): Promise<ArchivePlan> {
  const { catalogue, signal } = tools;
  const tables = csvTables(contents.records, catalogue);
  const shared: PlannedFile[] = [...records, ...tables.map(({ name, text }) => ({ path: tablePath(name), text }))].map(
    ({ path, text }) => ({ from: 'text', path, text, bytes: encoded(text).length }),
  );

  const live = ofType(contents.records, 'photo').filter(({ deleted }) => deleted === null);
  const seen = new Set<string>();
  const mimes = new Map<string, string>(tools.strays.map(({ sha256, mime }) => [sha256, mime]));
  for (const { sha256, mime, original } of live) {
    mimes.set(sha256, mime);
    if (original) mimes.set(original.sha256, original.mime);
  }

  const blocks = byBlock(contents.records, contents.blocks);
  const fromBlock = {
    catalogue,
    isWhole,
    units: tools.units,
    report: tools.report,
    signal,
  };
  const here: BlockFileTools = { ...fromBlock, linkTo: (sha256) => `../photographs/${sha256}.jpg` };
  const groups: PlannedFile[][] = [];
  let done = 0;
  for (const block of blocks.values()) {
    signal.throwIfAborted();
    const photos = block.of('photo');
    const made = await blockFiles(block, here);
    groups.push([
      ...made.map(
        ({ path, text }): PlannedFile => ({
          from: 'block',
          path,
          block,
          bytes: encoded(text).length + photos.length * LONGER_LINKS,
        }),
      ),
      ...bytesOf(photos, seen),
    ]);
    done += 1;
    await tools.onBlock(done, blocks.size);
  }
  // Of blocks that were removed, and of records nobody here can read.
  const strays = tools.strays.map(
    ({ sha256, bytes, mime }): PlannedFile => ({
      from: 'bytes',
      sha256,
      bytes,
      path: photographPath(sha256, mime),
    }),
  );
  groups.push([...bytesOf(live, seen), ...strays.filter(({ path }) => !seen.has(path))]);

  const counts: Record<string, number> = {};
  for (const { type } of contents.records) counts[type] = (counts[type] ?? 0) + 1;
  if (contents.unreadable.length > 0) counts.unreadable = contents.unreadable.length;
  const pictures = groups.flat().filter(({ from }) => from === 'bytes').length;
  // Of the index and the page of contents, both written last.
  const indexBytes: PlannedFile = {
    from: 'text',
    path: INDEX_PATH,
    text: '',
    bytes: 8000 + pictures * 320 + blocks.size * 900,
  };
  const { volumes } = intoVolumes([...shared, indexBytes], groups, tools.most);
  const withoutIndex = volumes.map((files) => files.filter(({ path }) => path !== INDEX_PATH));

  const held = (folder: string): HeldBytes[] =>
    withoutIndex.flatMap((files, i) =>
      files.flatMap((file): HeldBytes[] =>
        file.from === 'bytes' && file.path.startsWith(folder)
          ? [
              {
                sha256: file.sha256,
                bytes: file.bytes,
                mime: mimes.get(file.sha256) ?? '',
                path: file.path,
                volume: i + 1,
              },
            ]
          : [],
      ),
    );
  const photographs = held(FOLDERS.photographs);
  const lies = new Map(photographs.map(({ sha256, path, volume }) => [sha256, { path, volume }]));
  const index = {
    format: ARCHIVE_FORMAT,
    version: ARCHIVE_VERSION,
    schema: SCHEMA,
    group: tools.group,
    made: tools.made,
    device: tools.device,
    catalogue: catalogue.version,
    scope,
    isWhole,
    volumes: volumes.length,
    counts,
    photographs,
    originals: held(FOLDERS.originals),
  } as const;
  const reports = withoutIndex.flatMap((files, i) =>
    files.flatMap((file) =>
      file.from === 'block' && file.path.startsWith(FOLDERS.reports)
        ? [{ block: file.block.block, path: file.path, volume: i + 1 }]
        : [],
    ),
  );
  /** From a folder of the payload of one volume to a file of the payload of another or the same. */
  const linked = (path: string, from: number, volume: number): string =>
    volume === from
      ? `../${path.slice(PAYLOAD.length)}`
      : `../../../${volumeName(tools.made, volume, volumes.length)}/${path}`;
  return {
    reportsSeenFrom: (from) =>
      reports.map(({ block, path, volume }) => ({ block, volume, link: linked(path, from, volume) })),
    volumes: withoutIndex,
    index,
    tables,
    pictures,
    toolsIn: (volume) => ({
      ...fromBlock,
      linkTo(sha256) {
        const at = lies.get(sha256);
        return at && linked(at.path, volume, at.volume);
      },
    }),
  };
}
