import { type Catalogue, entry } from '../core/catalogue.ts';
import type { Photo } from '../core/records.ts';
import type { ReportPart, ReportPhoto } from '../core/report.ts';
import type { ReportCase } from './case.ts';
import { chapter, paragraph } from './naming.ts';
import { photoDrawn } from './photo-drawn.ts';

type Facts = Pick<ReportCase, 'photoMarks' | 'findings' | 'settings'>;

function drawn(photo: Photo, { photoMarks, findings, settings }: Facts, catalogue: Catalogue): ReportPhoto {
  const view = entry(catalogue.views, photo.view)?.term ?? photo.view;
  const finding = findings.find(({ id }) => id === photo.findingId);
  const of = finding ? ` of finding ${finding.number}` : '';
  const taken = photo.taken ? `, ${photo.taken.local.replace('T', ' ')}${photo.taken.offset ?? ''}` : '';
  return {
    ...{ sha256: photo.sha256, bytes: photo.bytes, width: photo.width, height: photo.height },
    caption: `${view}${of}${taken}${photo.caption ? `: ${photo.caption}` : ''}`,
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
