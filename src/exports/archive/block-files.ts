import { marksPath, objectPath, reportPath } from '../../core/archive-layout.ts';
import type { Catalogue } from '../../core/catalogue.ts';
import type { AnyRecord, HatBlock, RecordOf, RecordType, Settings } from '../../core/records.ts';
import type { ReportDocument } from '../../core/report.ts';
import { annotationPage } from '../annotations.ts';
import { writeHtml } from '../html.ts';
import { linkedArt } from '../linked-art.ts';
import type { TextFile } from './record-files.ts';

/** A block and everything that names it, by type. */
export interface BlockRecords {
  readonly block: HatBlock;
  of<T extends RecordType>(type: T): readonly RecordOf<T>[];
}

/** Records of each block that are not removed, gathered once. */
export function byBlock(records: readonly AnyRecord[], blocks: readonly HatBlock[]): Map<string, BlockRecords> {
  const lists = new Map<string, Map<RecordType, AnyRecord[]>>(blocks.map(({ id }) => [id, new Map()]));
  for (const record of records) {
    if (record.deleted !== null || !('blockId' in record)) continue;
    const lot = lists.get(String(record.blockId));
    const list = lot?.get(record.type);
    if (list) list.push(record);
    else lot?.set(record.type, [record]);
  }
  return new Map(
    blocks.map((block) => [
      block.id,
      {
        block,
        of: <T extends RecordType>(type: T) => (lists.get(block.id)?.get(type) ?? []) as unknown as RecordOf<T>[],
      },
    ]),
  );
}

export interface BlockFileTools {
  readonly catalogue: Catalogue;
  readonly units: Settings['units'];
  readonly isWhole: boolean;
  /** Undefined where none can be made, as before a first survey. */
  readonly report: (block: HatBlock) => ReportDocument | undefined;
  /** From a file of the payload to a photograph, `../photographs/<hash>.jpg`; undefined when it is in no volume. */
  readonly linkTo: (sha256: string) => string | undefined;
  readonly signal: AbortSignal;
}

const json = (value: unknown): string => `${JSON.stringify(value, null, 1)}\n`;

/** What is made from the records of one block: its object, the marks on its photographs, its report. */
export async function blockFiles({ block, of }: BlockRecords, tools: BlockFileTools): Promise<TextFile[]> {
  const { catalogue, isWhole, linkTo, signal } = tools;
  const photos = of('photo').flatMap((photo) => {
    const path = linkTo(photo.sha256);
    return path === undefined ? [] : [{ photo, path }];
  });
  const files: TextFile[] = [];
  for (const { photo, path } of photos) {
    const marks = of('photoMark').filter(({ photoId }) => photoId === photo.id);
    if (marks.length === 0) continue;
    const page = annotationPage({ photo, marks, findings: of('finding'), units: tools.units, source: path }, catalogue);
    files.push({ path: marksPath(photo.id), text: json(page) });
  }
  const object = linkedArt(
    {
      block,
      surveys: of('survey'),
      findings: of('finding'),
      marks: of('mark'),
      statements: of('statement'),
      jobs: of('job'),
      photos,
      showPrivate: isWhole,
    },
    catalogue,
  );
  files.push({ path: objectPath(block.id), text: json(object) });
  const report = tools.report(block);
  if (report) {
    const page = await writeHtml(report, {
      picture: async () => undefined,
      aligned: async () => undefined,
      linkTo: (sha256) => linkTo(sha256),
      signal,
      onStep: () => undefined,
    });
    files.push({ path: reportPath(block.id), text: await page.text() });
  }
  return files;
}
