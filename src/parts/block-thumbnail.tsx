import { marksOf } from '../core/report-marks.ts';
import { BlockFigure } from '../drawings/block-figure.tsx';
import { reportMarks } from '../drawings/report-marks.ts';
import { useApp } from '../ui/app.ts';
import css from './block-thumbnail.module.css';
import { drawingOf } from './drawing-of.ts';
import { StoredPicture } from './stored-picture.tsx';
import type { BlockCase } from './use-case.ts';

/** A block in small: its photograph, or its drawing with the findings on it. Decorative: its name stands beside it. */
export function BlockThumbnail({ of }: { readonly of: BlockCase }) {
  const { catalogue } = useApp();
  const cover = of.photos.find(({ id }) => id === of.block.coverPhotoId) ?? of.photos[0];
  if (cover) {
    return (
      <span class={css.thumb}>
        <StoredPicture sha256={cover.thumbnail} alt="" />
      </span>
    );
  }
  const drawing = drawingOf(of.block, catalogue);
  return (
    <span class={css.thumb} aria-hidden="true">
      <BlockFigure
        drawing={drawing}
        view={drawing.face}
        marks={reportMarks(marksOf(of.assessment, catalogue))}
        zoneName={(id) => id}
        thumbnail
      />
    </span>
  );
}
