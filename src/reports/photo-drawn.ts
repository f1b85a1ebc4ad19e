import { type Catalogue, entry } from '../core/catalogue.ts';
import type { Finding, Photo, PhotoMark, Settings } from '../core/records.ts';
import type { ReportPhoto } from '../core/report.ts';
import { scaleBarOf } from '../core/scale-bar.ts';
import { measuredWords } from '../text/measured.ts';

/** What is drawn over a photograph of the report and what was measured in it, numbered like the findings. */
export function photoDrawn(
  photo: Photo,
  photoMarks: readonly PhotoMark[],
  findings: readonly Finding[],
  units: Settings['units'],
  catalogue: Catalogue,
): Pick<ReportPhoto, 'marks' | 'scaleBar' | 'notes'> {
  const own = photoMarks.filter(({ photoId }) => photoId === photo.id);
  const numberOf = (findingId: string | null): string =>
    String(findings.find(({ id }) => id === findingId)?.number ?? '');
  const reference = photo.scale && (entry(catalogue.pocketReferences, photo.scale.reference)?.term ?? 'a typed length');
  const notes = own.flatMap(({ findingId, measured }) => {
    if (!measured) return [];
    const number = numberOf(findingId);
    return [`${number ? `${number}: ` : ''}${measuredWords(measured, units)}, measured in this photograph.`];
  });
  return {
    marks: own.map(({ shape, points, findingId, text }) => ({
      ...{ shape, points },
      label: [numberOf(findingId), text].filter(Boolean).join(' · '),
    })),
    scaleBar: photo.scale && scaleBarOf(photo.scale, photo),
    notes: reference ? [...notes, `Scale by ${reference}; the bar is true in its plane.`] : notes,
  };
}
