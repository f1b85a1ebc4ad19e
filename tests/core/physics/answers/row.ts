import type { Confidence } from '../../../../src/core/physics/sourced.ts';

/** One check of the materials handbook, as printed. */
export interface Row {
  readonly id: string;
  readonly quantity: string;
  readonly inputs: Readonly<Record<string, unknown>>;
  readonly expected: unknown;
  readonly tolerance: number | null;
  readonly unit: string;
  readonly source: string;
  readonly confidence: 'looked-up' | 'memory';
}

/** How the code answers the checks whose ids begin with one prefix. */
export interface Answer {
  readonly answer: (row: Row) => unknown;
  /** Keys of an expected object that are prose, which a number cannot meet. */
  readonly prose?: readonly string[];
  /** The confidence our own row claims, to be held against the handbook's. */
  readonly confidence?: (row: Row) => Confidence;
  /** False where our row is itself computed, so that the printed figure is only near it. Other rows with a confidence must be the printed figure. */
  readonly exact?: false;
}
export type Answers = Readonly<Record<string, Answer>>;

export function number(row: Row, key: string): number {
  const value = row.inputs[key];
  if (typeof value === 'number') return value;
  throw new Error(`${row.id}: input ${key} is ${String(value)}, not a number`);
}

export function text(row: Row, key: string): string {
  const value = row.inputs[key];
  if (typeof value === 'string') return value;
  throw new Error(`${row.id}: input ${key} is ${String(value)}, not text`);
}

export function numbers(row: Row, key: string): readonly number[] {
  const value = row.inputs[key];
  if (Array.isArray(value) && value.every((one) => typeof one === 'number')) return value;
  throw new Error(`${row.id}: input ${key} is not a list of numbers`);
}

export const triple = (row: Row, key: string): readonly [number, number, number] => {
  const [a, b, c] = numbers(row, key);
  if (a === undefined || b === undefined || c === undefined) throw new Error(`${row.id}: ${key} is no triple`);
  return [a, b, c];
};

/** Last part of the id: `coef.alder_red` → `alder_red`. */
export const lastPart = (row: Row): string => row.id.slice(row.id.lastIndexOf('.') + 1);

/** Looks a handbook name up in a table of ours. */
export function named<T>(table: Readonly<Record<string, T>>, name: string): T {
  const found = table[name];
  if (found === undefined) throw new Error(`no entry for ${name}`);
  return found;
}
