/** A cell: text is guarded, a number stays a number, null is empty. */
export type Cell = string | number | boolean | null;

/**
 * What a spreadsheet may run as a formula: the signs of the OWASP notes on CSV injection, their full-width forms, and
 * tab and line ends, which some strip before looking. Leading apostrophes are looked through, so that the guard can be
 * taken off again without doubt.
 */
const RUNS = /^'*[=+\-@＝＋－＠\t\r\n]/;
const IS_GUARDED = /^''*[=+\-@＝＋－＠\t\r\n]/;

/** Text that a spreadsheet shows and does not run: an apostrophe before what could be a formula. */
export const guarded = (text: string): string => (RUNS.test(text) ? `'${text}` : text);
/** The text behind `guarded`. */
export const unguarded = (text: string): string => (IS_GUARDED.test(text) ? text.slice(1) : text);

function written(cell: Cell): string {
  if (cell === null) return '';
  if (typeof cell === 'number') return Number.isFinite(cell) ? String(cell) : '';
  if (typeof cell === 'boolean') return cell ? 'yes' : 'no';
  const text = guarded(cell);
  // A guarded cell is quoted as well: some readers take an apostrophe only there.
  return text !== cell || /[",\r\n]/.test(text) || text.trim() !== text ? `"${text.replaceAll('"', '""')}"` : text;
}

const line = (cells: readonly Cell[]): string => `${cells.map(written).join(',')}\r\n`;

/** Tells spreadsheets that the text is UTF-8; without it they show £ and ½ as rubbish. */
const BYTE_ORDER_MARK = '\ufeff';

/**
 * A table as RFC 4180 has it: a header, CRLF after every line, equally many fields, quotes doubled.
 * @throws Error (ours) for a row that does not fit its header
 */
export function csv(head: readonly string[], rows: readonly (readonly Cell[])[]): string {
  const odd = rows.find((row) => row.length !== head.length);
  if (odd) throw new Error(`A row has ${odd.length} cells, its header ${head.length}.`);
  return BYTE_ORDER_MARK + [line(head), ...rows.map(line)].join('');
}
