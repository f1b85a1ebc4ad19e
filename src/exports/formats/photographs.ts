import { makeZip } from 'client-zip';
import { AppError } from '../../core/errors.ts';
import type { Photo } from '../../core/records.ts';
import type { ReportDocument, ReportPhoto } from '../../core/report.ts';
import { imageCopy } from '../images/image-copy.ts';
import { ascii } from '../images/names.ts';
import type { PictureWords } from '../images/xmp.ts';
import type { ReportFormat, WriteTools } from '../report-file.ts';

/** What of the report's records is said in a picture; the rest of them is of no concern here. */
interface Behind {
  readonly block?: { readonly objectNumber?: string };
  readonly photographs?: readonly Partial<Pick<Photo, 'id' | 'sha256' | 'taken'>>[];
}

const picturesOf = (report: ReportDocument): readonly ReportPhoto[] =>
  report.parts.flatMap((part) => (part.kind === 'photographs' ? part.items : []));

function wordsFor(photo: ReportPhoto, report: ReportDocument): PictureWords {
  const behind = report.data as Behind;
  const record = behind.photographs?.find(({ sha256 }) => sha256 === photo.sha256);
  return {
    creator: report.author,
    taken: record?.taken ?? null,
    title: report.object ?? report.title,
    description: photo.caption,
    altText: photo.alt,
    longDescription: [photo.caption, ...photo.notes].join(' '),
    objectNumber: behind.block?.objectNumber?.trim() ?? '',
    rights: report.rights ?? '',
    identifier: record?.id ? `urn:uuid:${record.id}` : '',
  };
}

/** The report's photographs as copies to hand on; one whose bytes are not here is left out, as it is in the report. */
async function* copies(report: ReportDocument, tools: WriteTools) {
  const pictures = picturesOf(report);
  const lastModified = new Date(report.made);
  for (const [i, photo] of pictures.entries()) {
    tools.signal.throwIfAborted();
    const stored = await tools.picture(photo.sha256);
    if (stored) {
      const number = String(i + 1).padStart(String(pictures.length).length, '0');
      const input = imageCopy(new Uint8Array(stored.bytes), wordsFor(photo, report));
      yield { name: `${[number, ascii(photo.alt)].filter(Boolean).join('-')}.jpg`, input, lastModified };
    }
    tools.onStep(i + 1, pictures.length);
  }
}

/** @throws AppError photo-not-an-image for a stored picture that is no whole JPEG */
async function writePhotographs(report: ReportDocument, tools: WriteTools): Promise<Blob> {
  if (picturesOf(report).length === 0) throw new AppError('export-failed', { facts: { photographs: 0 } });
  const zip = makeZip(copies(report, tools)) as ReadableStream<Uint8Array<ArrayBuffer>>;
  return new Blob([await new Response(zip).blob()], { type: 'application/zip' });
}

export default {
  label: 'Its photographs alone',
  about: 'One zip file with a copy of each: your words in it, and nothing of where it was taken and with what.',
  holds: ({ kind }) => kind === 'photographs',
  extension: 'photographs.zip',
  mimeType: 'application/zip',
  write: writePhotographs,
} satisfies ReportFormat;
