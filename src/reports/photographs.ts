import { type Catalogue, entry } from '../core/catalogue.ts';
import type { Photo } from '../core/records.ts';
import type { ReportPart, ReportPhoto } from '../core/report.ts';
import { dayWords } from '../text/days.ts';
import type { ReportCase } from './case.ts';
import { chapter, paragraph } from './naming.ts';
import { photoDrawn } from './photo-drawn.ts';

type Facts = Pick<ReportCase, 'photoMarks' | 'findings' | 'settings'>;

/** `17 October 2026, 11:42 (+01:00)`: as the camera's clock showed it. */
function takenWords({ taken }: Photo): string {
  if (!taken) return '';
  const [day = '', time = ''] = taken.local.split('T');
  return `, ${dayWords(day)}, ${time.slice(0, 5)}${taken.offset ? ` (${taken.offset})` : ''}`;
}

function drawn(photo: Photo, { photoMarks, findings, settings }: Facts, catalogue: Catalogue): ReportPhoto {
  const view = entry(catalogue.views, photo.view)?.term ?? photo.view;
  const finding = findings.find(({ id }) => id === photo.findingId);
  const of = finding ? ` of finding ${finding.number}` : '';
  return {
    ...{ sha256: photo.sha256, bytes: photo.bytes, width: photo.width, height: photo.height },
    caption: `${view}${of}${takenWords(photo)}${photo.caption ? `: ${photo.caption}` : ''}`,
    alt: photo.caption || `${view}${of}`,
    ...photoDrawn(photo, photoMarks, findings, settings.units, catalogue),
  };
}

/** Photographs with what was drawn over them and their hashes. */
export function photographs(
  photos: readonly Photo[],
  facts: Facts,
  catalogue: Catalogue,
  { title = 'Photographs', none = 'No photographs were taken.' } = {},
): ReportPart[] {
  return [
    chapter(title),
    photos.length === 0
      ? paragraph(none)
      : { kind: 'photographs', items: photos.map((photo) => drawn(photo, facts, catalogue)) },
  ];
}
