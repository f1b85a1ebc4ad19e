import { mapped, type PlaneMap, planeMap } from './plane-map.ts';
import type { Alignment, Photo, Stage } from './records.ts';

/** A before and an after photograph of one view. */
export interface BeforeAfter {
  readonly view: string;
  readonly findingId: string | null;
  readonly before: Photo;
  readonly after: Photo;
  /** How the after lies over the before, if that was found. */
  readonly alignment: Alignment | undefined;
}

/** The newest of some photographs, given oldest first, of a stage, a view and a finding (null: of the whole block). */
export const newestOf = (
  photos: readonly Photo[],
  stage: Stage,
  view: string,
  findingId: string | null,
): Photo | undefined =>
  photos.filter((photo) => photo.stage === stage && photo.view === view && photo.findingId === findingId).at(-1);

/**
 * The pairs a block's photographs make: of every view that was taken before and after, the newest of each; close views of
 * a finding only with others of the same finding.
 * @param photos oldest first @param alignments oldest first
 * @param views ids of the views in the order they are taken; unknown ones come last
 */
export function pairsOf(
  photos: readonly Photo[],
  alignments: readonly Alignment[],
  views: readonly string[],
): readonly BeforeAfter[] {
  const place = (view: string): number => (views.includes(view) ? views.indexOf(view) : views.length);
  const seen = new Set<string>();
  const pairs: BeforeAfter[] = [];
  for (const { view, findingId } of photos) {
    const kind = `${view} ${findingId}`;
    if (seen.has(kind)) continue;
    seen.add(kind);
    const before = newestOf(photos, 'before', view, findingId);
    const after = newestOf(photos, 'after', view, findingId);
    if (!before || !after) continue;
    const alignment = alignments.filter((one) => one.beforeId === before.id && one.afterId === after.id).at(-1);
    pairs.push({ view, findingId, before, after, alignment });
  }
  return pairs.sort((a, b) => place(a.view) - place(b.view));
}

/** A part of a picture in shares of its width and height. */
export interface Crop {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export const WHOLE: Crop = { x: 0, y: 0, width: 1, height: 1 };

/** Cells across and down in which the shared part is sought: fine enough that no eye misses the rest. */
const CELLS = 64;
/** Less than this share of the before photograph is not worth cutting out: it is shown whole. */
const LEAST = 0.1;

/**
 * The largest upright part of the before photograph that the after one shows as well; the whole of it when there is no
 * such part or no map. Exact to 1/64 of the picture, inside and never beyond.
 */
export function sharedCrop(numbers: readonly number[] | null): Crop {
  const map = numbers && planeMap(numbers);
  if (!map) return WHOLE;
  const best = largestBlock(shownCells(map));
  return best.width * best.height < LEAST ? WHOLE : best;
}

/** Whether the after photograph shows each cell of the before one: it does if it shows its four corners. */
function shownCells(map: PlaneMap): boolean[][] {
  const shown = (column: number, row: number): boolean => {
    const at = mapped(map, [column / CELLS, row / CELLS]);
    return at?.every((share) => share >= -1e-9 && share <= 1 + 1e-9) ?? false;
  };
  const corners = Array.from({ length: CELLS + 1 }, (_, row) =>
    Array.from({ length: CELLS + 1 }, (_, column) => shown(column, row)),
  );
  return Array.from({ length: CELLS }, (_, row) =>
    Array.from({ length: CELLS }, (_, column) =>
      [0, 1].every((down) => corners[row + down]?.[column] && corners[row + down]?.[column + 1]),
    ),
  );
}

/** Largest rectangle of true cells, as shares: for each row the heights that end there, widened while they allow. */
function largestBlock(cells: readonly (readonly boolean[])[]): Crop {
  const heights = new Uint8Array(CELLS);
  let [best, most] = [{ x: 0, y: 0, width: 0, height: 0 }, 0];
  for (const [row, line] of cells.entries()) {
    for (let column = 0; column < CELLS; column++) heights[column] = line[column] ? (heights[column] as number) + 1 : 0;
    for (let left = 0; left < CELLS; left++) {
      let height = heights[left] as number;
      // Not even as wide as the picture goes would it be larger.
      for (let right = left; right < CELLS && height * (CELLS - left) > most; right++) {
        height = Math.min(height, heights[right] as number);
        const width = right - left + 1;
        if (width * height <= most) continue;
        most = width * height;
        best = { x: left / CELLS, y: (row + 1 - height) / CELLS, width: width / CELLS, height: height / CELLS };
      }
    }
  }
  return best;
}
