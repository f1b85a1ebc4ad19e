import { h } from 'preact';
import type { ReportPhoto } from '../../core/report.ts';
import { photoOverlay } from '../../drawings/photo-overlay.ts';

/** Marks and scale bar over a photograph, as in the written report. */
export function PhotoOverlay({ photo }: { readonly photo: ReportPhoto }) {
  const shapes = photoOverlay(photo);
  if (shapes.length === 0) return null;
  return (
    <svg viewBox={`0 0 ${photo.width} ${photo.height}`} aria-hidden="true">
      {shapes.map(({ tag, attributes, text }, index) => h(tag, { ...attributes, key: index }, text))}
    </svg>
  );
}
