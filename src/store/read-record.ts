import * as z from 'zod/mini';
import { type AnyRecord, RECORDS, type RecordType, SCHEMA } from '../core/records.ts';

/** A record as it lies in storage or in a backup, before anyone has looked at it. */
export type Raw = Readonly<Record<string, unknown>>;

/** One step of meaning: the record's JSON at `to - 1` turned into the same at `to`. Named by why it was needed. */
export interface Step {
  readonly to: number;
  readonly why: string;
  /** Must not change what it is given. */
  readonly up: (raw: Raw) => Raw;
}

export type Outcome =
  | { readonly state: 'current'; readonly record: AnyRecord }
  | { readonly state: 'migrated'; readonly from: number; readonly record: AnyRecord }
  | { readonly state: 'too-new'; readonly why: string }
  | { readonly state: 'unreadable'; readonly why: string };
export type ReadRecord = (raw: unknown) => Outcome;

const DEEPEST = 24;
const FIELD = /^[A-Za-z][A-Za-z0-9]{0,63}$/;

/** Where a value is not plain JSON, or null. An own `__proto__` key is refused: copying it would swap a prototype. */
function notPlain(value: unknown, at: string, depth = 0): string | null {
  if (value === null || typeof value === 'string' || typeof value === 'boolean') return null;
  if (typeof value === 'number') return Number.isFinite(value) ? null : `${at} is not a finite number`;
  if (typeof value !== 'object') return `${at} is a ${typeof value}`;
  if (depth > DEEPEST) return `${at} is nested too deep`;
  if (!Array.isArray(value) && Object.prototype.toString.call(value) !== '[object Object]')
    return `${at} is no plain data`;
  for (const [key, member] of Object.entries(value)) {
    if (key === '__proto__') return `${at} has a forbidden key`;
    const found = notPlain(member, `${at}.${key}`, depth + 1);
    if (found) return found;
  }
  return null;
}

const isRaw = (value: unknown): value is Raw => typeof value === 'object' && value !== null && !Array.isArray(value);
const isKnownType = (type: unknown): type is RecordType => typeof type === 'string' && Object.hasOwn(RECORDS, type);

/**
 * What is wrong with a record of today's schema, or null. The value is checked, not copied: fields and keys that a
 * newer app added, at any depth, stay in it.
 */
export function faultIn(raw: unknown): string | null {
  if (!isRaw(raw)) return 'not a record';
  if (!isKnownType(raw.type)) return `type ${String(raw.type)} is unknown`;
  const odd = Object.keys(raw).find((field) => !FIELD.test(field));
  if (odd !== undefined) return `field name ${odd} is not allowed`;
  const checked = z.safeParse(RECORDS[raw.type], raw);
  if (checked.success) return notPlain(raw, raw.type);
  const [issue] = checked.error.issues;
  return `${[raw.type, ...(issue?.path ?? [])].join('.')}: ${issue?.code ?? 'invalid'}`;
}

/**
 * A reader that brings a record of any past schema to today's. Never throws on what it reads and never changes it:
 * what is too new or unreadable comes back as such, for its keeper to leave alone and offer for export.
 * @param steps one for each schema from 2 to `schema`, in order
 * @throws Error (ours) if a step is missing, doubled or out of order
 */
export function recordReader(steps: readonly Step[], schema = SCHEMA): ReadRecord {
  const numbers = steps.map((step) => step.to);
  const expected = Array.from({ length: schema - 1 }, (_, i) => i + 2);
  if (numbers.join() !== expected.join()) {
    throw new Error(
      `Migrations must be numbered ${expected.join(', ') || '(none)'}, got ${numbers.join(', ') || '(none)'}.`,
    );
  }
  return (raw) => {
    if (!isRaw(raw)) return { state: 'unreadable', why: 'not a record' };
    const from = raw.schema;
    if (typeof from !== 'number' || !Number.isInteger(from) || from < 1)
      return { state: 'unreadable', why: 'no schema number' };
    if (from > schema) return { state: 'too-new', why: `schema ${from}, this app knows ${schema}` };
    let now = raw;
    for (const step of steps.slice(from - 1)) {
      try {
        now = { ...step.up(now), schema: step.to };
      } catch (error) {
        return { state: 'unreadable', why: `step to ${step.to} (${step.why}) failed: ${String(error)}` };
      }
    }
    if (typeof now.type === 'string' && !isKnownType(now.type))
      return { state: 'too-new', why: `type ${now.type} is unknown` };
    const why = faultIn(now);
    if (why) return { state: 'unreadable', why };
    const record = now as unknown as AnyRecord;
    return from === schema ? { state: 'current', record } : { state: 'migrated', from, record };
  };
}
