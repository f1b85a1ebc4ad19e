import type { TagElement } from 'pdfkit';
import type { ReportPart } from '../../core/report.ts';
import type { Laid } from './laid.ts';
import type { Paper } from './paper.ts';
import { addLines, drawLines, INK, LOOKS, type Look, type SetText, type Type } from './type.ts';
import { hairline } from './words.ts';

/** Between columns, and above and below the lines of a cell. */
const GAP = 11;
const PAD = 3;

type Table = ReportPart & { kind: 'table' };
type Row = readonly SetText[];

const heightOf = (row: Row): number => Math.max(...row.map(({ height }) => height), LOOKS.cell.leading) + 2 * PAD;

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

/**
 * Widths of the columns: what each asks for where there is room. Else the modest ones, which ask for no more than their
 * even share, still get all of it; the others share the rest by what they ask for, none below its longest word.
 */
export function columnWidths(
  reaches: readonly { readonly least: number; readonly whole: number }[],
  room: number,
): readonly number[] {
  const free = room - GAP * (reaches.length - 1);
  const least = sum(reaches.map((reach) => reach.least));
  if (least >= free) return reaches.map((reach) => (reach.least / least) * free);
  const widths = reaches.map(() => 0);
  let open = reaches.map((_, at) => at);
  let left = free;
  for (let settled = true; settled && open.length > 0; ) {
    const others = (at: number): number => sum(open.filter((one) => one !== at).map((one) => reaches[one]?.least ?? 0));
    const modest = open.find((at) => {
      const whole = reaches[at]?.whole ?? 0;
      return whole <= left / open.length && left - whole >= others(at);
    });
    settled = modest !== undefined;
    if (modest === undefined) break;
    widths[modest] = reaches[modest]?.whole ?? 0;
    left -= widths[modest] ?? 0;
    open = open.filter((at) => at !== modest);
  }
  if (open.length === 0) {
    // What is left over goes to the column that says most, so that the last one ends at the margin.
    const widest = widths.indexOf(Math.max(...widths));
    return widths.map((width, at) => (at === widest ? width + left : width));
  }
  const leasts = sum(open.map((at) => reaches[at]?.least ?? 0));
  // Square roots: a column of prose asks for yards and would starve the one of half a line.
  const wish = (at: number): number => Math.sqrt(reaches[at]?.whole ?? 0);
  const wishes = sum(open.map(wish));
  for (const at of open) widths[at] = (reaches[at]?.least ?? 0) + ((left - leasts) * wish(at)) / wishes;
  return widths;
}

/** A table on paper: rows are not torn apart, and the head stands again on every page. */
export function layTable(paper: Paper, type: Type, table: Table): Laid {
  const { caption, head, rows, foot = [], numeric } = table;
  // In a table of two columns the left one is only the name of the right.
  const lookAt = (column: number): Look => (column === 0 && head.length > 2 ? LOOKS.cellStrong : LOOKS.cell);
  const reaches = head.map((title, column) => {
    const reach = [
      type.reach(title, LOOKS.cellHead),
      ...rows.map((row) => type.reach(row[column] ?? '', lookAt(column))),
      ...foot.map((row) => type.reach(row[column] ?? '', LOOKS.cellStrong)),
    ];
    return {
      least: Math.max(...reach.map(({ least }) => least)),
      whole: Math.max(...reach.map(({ whole }) => whole)) + 0.5,
    };
  });
  const widths = columnWidths(reaches, paper.width);
  const lefts = widths.map((_, at) => paper.left + widths.slice(0, at).reduce((sum, width) => sum + width + GAP, 0));
  const setRow = (row: readonly string[], lookOf: (column: number) => Look): Row =>
    head.map((_, column) => type.set(row[column] ?? '', lookOf(column), widths[column] ?? 0));
  const headRow = setRow(head, () => LOOKS.cellHead);
  const bodyRows = rows.map((row) => setRow(row, lookAt));
  const footRows = foot.map((row) => setRow(row, () => LOOKS.cellStrong));
  const title = type.set(caption, LOOKS.caption, paper.width);
  const placeOf = (column: number, y: number) => ({
    ...{ x: lefts[column] ?? paper.left, y, width: widths[column] ?? 0 },
    side: numeric.includes(column) ? ('right' as const) : ('left' as const),
  });

  function headAgain(): void {
    paper.artifact(() => {
      for (const [column, cell] of headRow.entries())
        drawLines(paper, cell.lines, cell.look, placeOf(column, paper.y + PAD));
    });
    paper.y += heightOf(headRow);
    hairline(paper, paper.y, INK.rule);
  }

  /** A row as cells of the tag tree; of one taller than a page as much as fits, then the rest. */
  function drawRow(row: Row, parent: TagElement, headed: boolean): void {
    if (heightOf(row) > paper.room() && !paper.isFresh()) {
      paper.newPage();
      headAgain();
    }
    const line = paper.tag('TR', {}, parent);
    const cells = row.map((_, column) =>
      headed
        ? paper.tag('TH', { scope: 'Column' }, line)
        : column === 0
          ? paper.tag('TH', { scope: 'Row' }, line)
          : paper.tag('TD', {}, line),
    );
    const most = Math.max(...row.map(({ lines }) => lines.length));
    for (let at = 0; at < most; ) {
      const fits = Math.max(1, Math.floor((paper.room() - 2 * PAD) / LOOKS.cell.leading));
      const slice = row.map((cell) => ({ ...cell, lines: cell.lines.slice(at, at + fits) }));
      for (const [column, cell] of slice.entries()) {
        const element = cells[column];
        if (element && cell.lines.length > 0) addLines(paper, element, cell, placeOf(column, paper.y + PAD));
      }
      at += fits;
      paper.y += Math.max(...slice.map(({ lines }) => lines.length)) * LOOKS.cell.leading + 2 * PAD;
      if (at < most) {
        paper.newPage();
        headAgain();
      }
    }
    hairline(paper, paper.y, headed ? INK.rule : INK.hair);
  }

  const top = title.height + 1 + heightOf(headRow);
  const firstRows = bodyRows.slice(0, 2).map(heightOf);
  const page = paper.bottom - paper.top;
  const all = top + [...bodyRows, ...footRows].map(heightOf).reduce((sum, height) => sum + height, 0);
  const lastBody = heightOf(bodyRows.at(-1) ?? headRow);
  return {
    before: 9,
    // A short table is kept whole.
    first: all < page / 4 ? all : Math.min(top + firstRows.reduce((sum, height) => sum + height, 0), page),
    draw() {
      const element = paper.tag('Table');
      addLines(paper, paper.tag('Caption', {}, element), title, { x: paper.left, y: paper.y, width: paper.width });
      paper.y += title.height + 1;
      drawRow(headRow, paper.tag('THead', {}, element), true);
      const body = paper.tag('TBody', {}, element);
      for (const [index, row] of bodyRows.entries()) {
        // The sum does not stand alone on the next page.
        const isLast = index === bodyRows.length - 1 && footRows.length > 0;
        if (isLast && lastBody + footRows.map(heightOf).reduce((a, b) => a + b, 0) > paper.room() && !paper.isFresh()) {
          paper.newPage();
          headAgain();
        }
        drawRow(row, body, false);
      }
      if (footRows.length > 0) {
        const sum = paper.tag('TFoot', {}, element);
        for (const row of footRows) drawRow(row, sum, false);
      }
      paper.y += 3;
    },
  };
}
