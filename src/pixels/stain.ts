import { labOfLinear } from './colour.ts';
import { LINEAR } from './linear-light.ts';
import { boxOf, isInPolygon } from './polygon.ts';
import { quantile } from './sample.ts';
import { LeastSquares } from './solve.ts';
import { type Failed, failed, type Img, type Px, type Running, stopped } from './types.ts';

export type StainShare = {
  readonly ok: true;
  /** Part of the outlined area that is nearer to the stained than to the clean tap, 0 to 1. */
  readonly share: number;
  /** The part when only clear staining counts, and when faint staining counts too. */
  readonly low: number;
  readonly high: number;
  /** Difference of the two taps in spreads of the clean wood; under 3 nothing is said. */
  readonly separation: number;
  readonly cells: StainCells;
};

/** The squares looked at, for a line drawn elsewhere than half-way. */
export interface StainCells {
  /** Side in pixels. */
  readonly side: number;
  /** Left and top of each in pixels, row by row. */
  readonly at: Uint16Array;
  /** How far each is on the way from the clean (0) to the stained tap (1), light falling off taken out. */
  readonly value: Float32Array;
}

/** Part of the cells beyond a value, 0 to 1: with 0.5 the `share` of the whole. */
export function shareBeyond({ value }: StainCells, limit: number): number {
  let count = 0;
  for (const v of value) if (v > limit) count++;
  return count / value.length;
}

/** The cells beyond a value as an SVG path in pixels, neighbours in a row joined. */
export function pathBeyond({ side, at, value }: StainCells, limit: number): string {
  let path = '';
  for (let i = 0; i < value.length; i++) {
    if (!((value[i] as number) > limit)) continue;
    const [x, y] = [at[2 * i] as number, at[2 * i + 1] as number];
    let run = 1;
    while (at[2 * (i + 1)] === x + run * side && at[2 * (i + 1) + 1] === y && (value[i + 1] as number) > limit) {
      run++;
      i++;
    }
    path += `M${x} ${y}h${run * side}v${side}h${-run * side}z`;
  }
  return path;
}

/** Side of the squares whose mean colour is looked at, in pixels: grain and noise even out. */
const CELL = 5;
/** Half the width of the patch taken at a tap. */
const TAP_PX = 12;
/** Least difference between the taps, in spreads. Trade estimate. */
const LEAST_SEPARATION = 3;

type Cell = { readonly x: number; readonly y: number; readonly lab: readonly [number, number, number] };

/**
 * How much of an outlined area looks like one tap rather than another.
 * @returns `too-weak` when the two taps hardly differ, `too-few-points` for a tiny outline
 * Method: CIELAB of 5 × 5 means, each direction weighed by the spread of the clean tap; uneven light is taken out by a
 * plane fitted to what looks clean.
 */
export function stainShare(
  img: Img,
  region: readonly Px[],
  cleanTap: Px,
  stainTap: Px,
  run?: Running,
): StainShare | Failed {
  if (stopped(run, 'stain colours', 0)) return failed('cancelled');
  const cells = cellsOf(img, region);
  if (cells.length < 40) return failed('too-few-points');
  const clean = around(img, cleanTap);
  const stained = around(img, stainTap);
  if (!clean || !stained) return failed('too-few-points');
  let separation = 0;
  const toward = [0, 1, 2].map((c) => {
    const spread = Math.max(clean.spread[c] as number, 0.6);
    const step = (stained.middle[c] as number) - (clean.middle[c] as number);
    separation += (step / spread) ** 2;
    return step / (spread * spread);
  });
  separation = Math.sqrt(separation);
  if (separation < LEAST_SEPARATION) return failed('too-weak');
  if (stopped(run, 'stain share', 0.6)) return failed('cancelled');
  let values = cells.map(({ lab }) => {
    let sum = 0;
    for (let c = 0; c < 3; c++) sum += ((lab[c] as number) - (clean.middle[c] as number)) * (toward[c] as number);
    return sum / separation ** 2;
  });
  for (let turn = 0; turn < 2; turn++) values = withoutTrend(cells, values);
  const map: StainCells = {
    side: CELL,
    at: Uint16Array.from(cells.flatMap(({ x, y }) => [x, y])),
    value: Float32Array.from(values),
  };
  return {
    ...{ ok: true, separation, cells: map },
    ...{ share: shareBeyond(map, 0.5), low: shareBeyond(map, 0.65), high: shareBeyond(map, 0.35) },
  };
}

/** Takes a plane, fitted to the cells that look clean, out of all. */
function withoutTrend(cells: readonly Cell[], values: readonly number[]): number[] {
  const system = new LeastSquares(3);
  const first = cells[0] as Cell;
  for (let i = 0; i < cells.length; i++) {
    const { x, y } = cells[i] as Cell;
    if (Math.abs(values[i] as number) < 0.4)
      system.add([1, (x - first.x) / 100, (y - first.y) / 100], values[i] as number);
  }
  const plane = system.solve();
  if (!plane) return [...values];
  return values.map((v, i) => {
    const { x, y } = cells[i] as Cell;
    return (
      v -
      (plane[0] as number) -
      ((plane[1] as number) * (x - first.x)) / 100 -
      ((plane[2] as number) * (y - first.y)) / 100
    );
  });
}

function cellsOf(img: Img, region: readonly Px[]): Cell[] {
  if (region.length < 3) return [];
  const box = boxOf(region, img.width, img.height);
  const cells: Cell[] = [];
  for (let y = box.top; y + CELL <= box.bottom; y += CELL)
    for (let x = box.left; x + CELL <= box.right; x += CELL)
      if (isInPolygon([x + CELL / 2, y + CELL / 2], region)) cells.push({ x, y, lab: meanLab(img, x, y) });
  return cells;
}

/** CIELAB of the mean linear light of a cell: means of light, not of bytes. */
function meanLab(img: Img, left: number, top: number): readonly [number, number, number] {
  const sum = [0, 0, 0];
  for (let y = top; y < top + CELL; y++)
    for (let x = left; x < left + CELL; x++)
      for (let c = 0; c < 3; c++)
        sum[c] = (sum[c] as number) + (LINEAR[img.data[(y * img.width + x) * 4 + c] as number] as number);
  const n = CELL * CELL;
  return labOfLinear((sum[0] as number) / n, (sum[1] as number) / n, (sum[2] as number) / n);
}

/** Median colour round a tap and its spread (1.48 × the median distance from it, per direction). */
function around(img: Img, [x, y]: Px): { middle: number[]; spread: number[] } | undefined {
  const outline: Px[] = [
    [x - TAP_PX, y - TAP_PX],
    [x + TAP_PX, y - TAP_PX],
    [x + TAP_PX, y + TAP_PX],
    [x - TAP_PX, y + TAP_PX],
  ];
  const cells = cellsOf(img, outline);
  if (cells.length < 4) return undefined;
  const middle = [0, 1, 2].map((c) =>
    quantile(
      cells.map((k) => k.lab[c] as number),
      0.5,
    ),
  );
  const spread = middle.map(
    (m, c) =>
      1.4826 *
      quantile(
        cells.map((k) => Math.abs((k.lab[c] as number) - m)),
        0.5,
      ),
  );
  return { middle, spread };
}
