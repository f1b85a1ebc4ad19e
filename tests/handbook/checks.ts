import rows from './trade-checks.json' with { type: 'json' };

/** A row of the trade handbook's check table, copied once with its source and how sure it is. */
export interface CheckRow {
  readonly id: string;
  readonly group: string;
  readonly quantity: string;
  readonly inputs: Readonly<Record<string, unknown>>;
  readonly expected: unknown;
  readonly tolerance: number;
  readonly unit: string;
  readonly source: string;
  readonly confidence: string;
}

export const checkRows = rows as unknown as readonly CheckRow[];

/** All rows of one group. Fails loudly on a misspelt group, which would otherwise test nothing. */
export function checksOf(group: string): readonly CheckRow[] {
  const found = checkRows.filter((row) => row.group === group);
  if (found.length === 0) throw new Error(`Check group came as ${group}, expected one that the table has.`);
  return found;
}

/** A test title that names what is claimed and who says so. */
export const titleOf = ({ id, quantity, unit, source, confidence }: CheckRow): string =>
  `${id}: ${quantity}${unit ? ` [${unit}]` : ''} — ${source} (${confidence})`;

/** A number among a row's inputs. */
export function input(row: CheckRow, name: string): number {
  const value = row.inputs[name];
  if (typeof value !== 'number')
    throw new Error(`${row.id}: input ${name} came as ${String(value)}, expected a number.`);
  return value;
}

/** How far an answer lies from a row's expected number, as a share of what the row allows; 1 or less holds. */
export function strayOf(row: CheckRow, answer: number): number {
  if (typeof row.expected !== 'number')
    throw new Error(`${row.id}: expected came as ${String(row.expected)}, not a number.`);
  const miss = Math.abs(answer - row.expected);
  // Rows with no tolerance are exact: sizes in eighths and whole steps, which binary numbers hold.
  return miss === 0 ? 0 : miss / row.tolerance;
}
