import { describe, expect, it } from 'vitest';
import { inWorkingOrder, movedStep } from '../../../src/core/steps/order.ts';

const step = (
  key: string,
  position: number,
  after: readonly string[] = [],
  stand: 'open' | 'done' | 'skipped' = 'open',
) => ({
  ...{ key, position, after, stand },
});
const keys = (items: readonly { key: string }[]): string => items.map(({ key }) => key).join(' ');

/** The list after a move, as the next drawing would show it. */
function moveIn(items: readonly ReturnType<typeof step>[], key: string, by: -1 | 1): string {
  const move = movedStep(inWorkingOrder(items), key, by);
  if (!move.ok) return move.why === 'atTheEnd' ? 'at the end' : `${move.earlier} before ${move.later}`;
  const placed = items.map((item) => ({ ...item, ...move.places.find((place) => place.key === item.key) }));
  return keys(inWorkingOrder(placed));
}

describe('the order of work', () => {
  it('is by place, and never puts a step before one it must follow', () => {
    expect(keys(inWorkingOrder([step('fill', 3), step('glue', 2), step('dust', 1)]))).toBe('dust glue fill');
    expect(keys(inWorkingOrder([step('fill', 1, ['glue']), step('glue', 2), step('dust', 3)]))).toBe('glue fill dust');
  });

  it('takes a step that must follow one no longer there', () => {
    expect(keys(inWorkingOrder([step('fill', 1, ['glue'])]))).toBe('fill');
  });

  it('says so when steps wait for each other', () => {
    expect(() => inWorkingOrder([step('a', 1, ['b']), step('b', 2, ['a'])])).toThrow(/in a circle: a, b/);
  });
});

describe('moving a step', () => {
  const plan = [step('dust', 1), step('glue', 2), step('fill', 3, ['glue']), step('groove', 4)];

  it('swaps it with its neighbour where neither must be first, changing its place alone', () => {
    expect(moveIn(plan, 'groove', -1)).toBe('dust glue groove fill');
    expect(moveIn(plan, 'dust', 1)).toBe('glue dust fill groove');
    expect(movedStep(plan, 'groove', -1)).toEqual({ ok: true, places: [{ key: 'groove', position: 2.5 }] });
  });

  it('refuses where one of the two must be first, and names both', () => {
    expect(moveIn(plan, 'fill', -1)).toBe('glue before fill');
    expect(moveIn(plan, 'glue', 1)).toBe('glue before fill');
  });

  it('goes nowhere at either end', () => {
    expect(moveIn(plan, 'dust', -1)).toBe('at the end');
    expect(moveIn(plan, 'groove', 1)).toBe('at the end');
  });

  it('passes over what is done or left out', () => {
    const items = [step('dust', 1), step('glue', 2, [], 'done'), step('nails', 3, [], 'skipped'), step('fill', 4)];
    expect(moveIn(items, 'fill', -1)).toBe('fill dust glue nails');
  });

  it('moves back and forth as often as one likes', () => {
    let items = [step('a', 1), step('b', 2), step('c', 3)];
    for (let round = 0; round < 200; round += 1) {
      for (const by of [1, -1] as const) {
        const move = movedStep(inWorkingOrder(items), 'b', by);
        if (!move.ok) throw new Error(move.why);
        items = items.map((item) => ({ ...item, ...move.places.find(({ key }) => key === item.key) }));
        expect(keys(inWorkingOrder(items))).toBe(by === 1 ? 'a c b' : 'a b c');
      }
    }
  });

  it('moves steps that stand at one place, and past one pushed back by what it must follow', () => {
    expect(moveIn([step('a', 1), step('b', 1), step('c', 1)], 'c', -1)).toBe('a c b');
    // b must follow c and stands behind it for that reason alone.
    expect(moveIn([step('b', 1, ['c']), step('c', 5), step('d', 9)], 'd', -1)).toBe('c d b');
  });
});
