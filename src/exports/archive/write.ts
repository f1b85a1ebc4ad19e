import { type ArchiveIndex, CONTENTS_PATH, INDEX_PATH, TAG_FILES, volumeName } from '../../core/archive-layout.ts';
import { AppError } from '../../core/errors.ts';
import type { VolumeFile, VolumeHeading } from '../../workers/archive-messages.ts';
import { blockFiles } from './block-files.ts';
import { contentsPage } from './contents-page.ts';
import { type ArchivePlan, encoded } from './plan.ts';
import { readme } from './readme.ts';

/** Bytes kept under a hash; undefined if they never came here. @throws AppError photo-damaged */
export type PictureBytes = (sha256: string) => Promise<{ readonly bytes: ArrayBuffer } | undefined>;
export type Missing = ArchiveIndex['missing'][number];

/** What a volume says of itself, for its tag files. @param name of its file, with ending */
export function headingOf(plan: ArchivePlan, volume: number, ending: string, owner: string): VolumeHeading {
  const { index } = plan;
  const folder = volumeName(index.made, volume, index.volumes);
  const blocks = index.counts.block ?? 0;
  return {
    name: folder + ending,
    folder,
    made: index.made,
    info: [
      ['Source-Organization', owner],
      [
        'External-Description',
        `Records and photographs of ${blocks} hat ${blocks === 1 ? 'block' : 'blocks'}; see ${TAG_FILES.readme}.`,
      ],
      ['External-Identifier', `${index.group}#${volume}`],
      ['Bagging-Date', index.made.slice(0, 10)],
      ['Bag-Group-Identifier', index.group],
      ['Bag-Count', `${volume} of ${index.volumes}`],
      ['Bag-Software-Agent', `Blockworth, archive layout ${index.version}, records schema ${index.schema}`],
    ],
    readme: readme({ ...index, volume, missing: [] }, plan.tables),
  };
}

/**
 * The payload of one volume, made file by file as it is pulled; the index last, because only then is it known what was
 * missing. A photograph that is not here or no longer itself is left out and said to be; it stops nothing.
 */
export async function* payloadOf(
  plan: ArchivePlan,
  volume: number,
  pictureBytes: PictureBytes,
  onPicture: () => void,
  missing: Missing[],
): AsyncGenerator<VolumeFile> {
  const tools = plan.toolsIn(volume);
  // The files of a block come one after the other and are made together.
  let made: { readonly id: string; readonly texts: ReadonlyMap<string, string> } | undefined;
  const lost: Missing[] = [];
  for (const file of plan.volumes[volume - 1] ?? []) {
    tools.signal.throwIfAborted();
    const { path } = file;
    if (file.from === 'text') yield { path, bytes: encoded(file.text) };
    else if (file.from === 'block') {
      const { id } = file.block.block;
      if (made?.id !== id) {
        const files = await blockFiles(file.block, tools);
        made = { id, texts: new Map(files.map((one) => [one.path, one.text])) };
      }
      const text = made.texts.get(path);
      if (text !== undefined) yield { path, bytes: encoded(text) };
    } else {
      const { sha256 } = file;
      try {
        const stored = await pictureBytes(sha256);
        if (stored) yield { path, bytes: new Uint8Array(stored.bytes) };
        else lost.push({ sha256, why: 'absent' });
      } catch (error) {
        if (!(error instanceof AppError) || error.code !== 'photo-damaged') throw error;
        lost.push({ sha256, why: 'damaged' });
      }
      onPicture();
    }
  }
  missing.push(...lost);
  const contents = contentsPage(plan.reportsSeenFrom(volume), plan.index.made, tools.catalogue);
  yield { path: CONTENTS_PATH, bytes: encoded(contents) };
  const index: ArchiveIndex = { ...plan.index, volume, missing: lost };
  yield { path: INDEX_PATH, bytes: encoded(`${JSON.stringify(index, null, 1)}\n`) };
}
