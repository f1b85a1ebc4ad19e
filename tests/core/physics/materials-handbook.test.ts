import { describe, expect, it } from 'vitest';
import checks from '../../handbook/materials-checks.json';
import { MOISTURE } from './answers/moisture.ts';
import { MOULD } from './answers/mould.ts';
import { MOVEMENT } from './answers/movement.ts';
import { PESTS } from './answers/pests.ts';
import { REPAIRS } from './answers/repairs.ts';
import type { Answer, Answers, Row } from './answers/row.ts';
import { SHAPE_AND_COLOUR } from './answers/shape-and-colour.ts';

const rows = checks as unknown as readonly Row[];
const answers: Answers = { ...MOISTURE, ...MOVEMENT, ...PESTS, ...MOULD, ...REPAIRS, ...SHAPE_AND_COLOUR };

/** Checks no function can meet, by id, and why. */
const NOT_ANSWERED: Readonly<Record<string, string>> = {
  'emc.formula': 'the equation as text; emc.eq, emc.inverse and the whole printed table hold its numbers',
  'dimchange.formula': 'two equations as text; dimchange.worked and the wide-range test hold their numbers',
};

/** The longest prefix of the id that has an answer. */
function answerTo(id: string): Answer | undefined {
  for (let prefix = id; prefix !== ''; prefix = prefix.slice(0, Math.max(0, prefix.lastIndexOf('.'))))
    if (answers[prefix]) return answers[prefix];
  return undefined;
}

const prefixUsed = (id: string): string => {
  let prefix = id;
  while (prefix !== '' && !answers[prefix]) prefix = prefix.slice(0, Math.max(0, prefix.lastIndexOf('.')));
  return prefix;
};

/** Meets the expected value number by number; texts and truths must be the same. */
function meet(actual: unknown, expected: unknown, tolerance: number, where: string): void {
  if (typeof expected === 'number') {
    expect(actual, where).toBeTypeOf('number');
    // Printed figures sit on the edge of their own tolerance; a billionth more is arithmetic, not leniency.
    expect(
      Math.abs((actual as number) - expected),
      `${where}: ${String(actual)} against ${expected}`,
    ).toBeLessThanOrEqual(tolerance + 1e-9 * Math.max(1, Math.abs(expected)));
  } else if (Array.isArray(expected)) {
    expect(actual, where).toHaveLength(expected.length);
    expected.forEach((one, k) => {
      meet((actual as readonly unknown[])[k], one, tolerance, `${where}[${k}]`);
    });
  } else if (typeof expected === 'object' && expected !== null) {
    for (const [key, one] of Object.entries(expected))
      meet((actual as Record<string, unknown>)[key], one, tolerance, `${where}.${key}`);
  } else if (typeof expected === 'string' && Array.isArray(actual)) {
    meet(actual, expected.split(',').map(Number), tolerance, where);
  } else {
    expect(actual, where).toBe(expected);
  }
}

function without(value: unknown, keys: readonly string[] = []): unknown {
  if (keys.length === 0) return value;
  return Object.fromEntries(Object.entries(value as object).filter(([key]) => !keys.includes(key)));
}

const groups = [...new Set(rows.map(({ id }) => id.split('.')[0] ?? ''))];
describe.each(groups)('the materials handbook on %s', (group) => {
  const answered = rows.filter(({ id }) => id.split('.')[0] === group && !(id in NOT_ANSWERED));
  it.each(answered.map((row) => [row.id, row.quantity, row] as const))('%s: %s', (id, _quantity, row) => {
    const answer = answerTo(id);
    expect(answer, `no answer to ${id}`).toBeDefined();
    if (answer === undefined) return;
    const expected = without(row.expected, answer.prose);
    const actual = answer.answer(row);
    // A figure kept in a table must be the printed one; the tolerance is for what is computed.
    const copied = answer.confidence !== undefined && answer.exact !== false;
    meet(actual, expected, copied ? 0 : (row.tolerance ?? 0), id);
    if (typeof expected === 'object' && !Array.isArray(expected) && typeof actual === 'object')
      expect(Object.keys(actual ?? {}).sort(), `${id}: keys`).toEqual(Object.keys(expected ?? {}).sort());
    if (answer.confidence)
      expect(answer.confidence(row) === 'looked-up', `${id}: confidence`).toBe(row.confidence === 'looked-up');
  });
});

describe('coverage of the materials handbook', () => {
  it('holds the 501 checks as printed, each with its source and confidence', () => {
    expect(rows).toHaveLength(501);
    expect(new Set(rows.map(({ id }) => id)).size).toBe(501);
    for (const { id, source, confidence } of rows) {
      expect(source, id).not.toBe('');
      expect(['looked-up', 'memory'], id).toContain(confidence);
    }
  });

  it('answers every check but the two that are sentences', () => {
    const open = rows.map(({ id }) => id).filter((id) => answerTo(id) === undefined);
    expect(open.sort()).toEqual(Object.keys(NOT_ANSWERED).sort());
  });

  it('keeps no answer that no check asks for', () => {
    const used = new Set(rows.map(({ id }) => prefixUsed(id)));
    expect(Object.keys(answers).filter((prefix) => !used.has(prefix))).toEqual([]);
  });
});
