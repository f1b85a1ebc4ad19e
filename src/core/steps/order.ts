import type { WorkItem } from './work-plan.ts';

type Placed = Pick<WorkItem, 'key' | 'position' | 'after'>;

const first = (a: Placed, b: Placed): number => a.position - b.position || (a.key < b.key ? -1 : 1);

/**
 * Steps by their places, but none before one it must follow: among what could be next, the one with the lowest place.
 * @throws Error (ours) when steps wait for each other in a circle
 */
export function inWorkingOrder<T extends Placed>(items: readonly T[]): readonly T[] {
  const waiting = [...items].sort(first);
  const keys = new Set(items.map(({ key }) => key));
  const placed = new Set<string>();
  const order: T[] = [];
  while (waiting.length > 0) {
    const next = waiting.findIndex(({ after }) => after.every((key) => placed.has(key) || !keys.has(key)));
    if (next < 0)
      throw new Error(`Steps wait for each other in a circle: ${waiting.map(({ key }) => key).join(', ')}.`);
    for (const item of waiting.splice(next, 1)) {
      placed.add(item.key);
      order.push(item);
    }
  }
  return order;
}

/** New places for the steps that need one; or why the step stays: there is nowhere to go, or one of the two must be first. */
export type Move =
  | { readonly ok: true; readonly places: readonly { readonly key: string; readonly position: number }[] }
  | { readonly ok: false; readonly why: 'atTheEnd' }
  | { readonly ok: false; readonly why: 'mustFollow'; readonly earlier: string; readonly later: string };

/**
 * Moves an open step past the next open one, earlier (−1) or later (+1).
 * @param items in working order; done and left-out steps are passed over
 */
export function movedStep<T extends Placed & Pick<WorkItem, 'stand'>>(
  items: readonly T[],
  key: string,
  by: -1 | 1,
): Move {
  const open = items.filter(({ stand }) => stand === 'open');
  const from = open.findIndex((item) => item.key === key);
  const step = open[from];
  const neighbour = open[from + by];
  if (!step || !neighbour) return { ok: false, why: 'atTheEnd' };
  const [earlier, later] = by < 0 ? [neighbour, step] : [step, neighbour];
  if (later.after.includes(earlier.key))
    return { ok: false, why: 'mustFollow', earlier: earlier.key, later: later.key };
  const wished = [...open];
  wished.splice(from, 1);
  wished.splice(from + by, 0, step);
  const left = wished[from + by - 1]?.position ?? (wished[from + by + 1]?.position ?? 0) - 2;
  const right = wished[from + by + 1]?.position ?? left + 2;
  const between = { key, position: (left + right) / 2 };
  if (left < right && stands(wished, [between])) return { ok: true, places: [between] };
  return { ok: true, places: respaced(wished) };
}

/** Whether steps come out in the order they stand in, once some have new places. */
function stands(wished: readonly Placed[], places: readonly { key: string; position: number }[]): boolean {
  const moved = wished.map((item) => ({ ...item, ...places.find(({ key }) => key === item.key) }));
  return inWorkingOrder(moved).every(({ key }, index) => key === wished[index]?.key);
}

/** The fewest new places that keep the order: each step where it was, or a hair behind the one before it. */
function respaced(wished: readonly Placed[]): { key: string; position: number }[] {
  let last = Number.NEGATIVE_INFINITY;
  const places: { key: string; position: number }[] = [];
  for (const { key, position } of wished) {
    const place = position > last ? position : last + 1 / 1024;
    if (place !== position) places.push({ key, position: place });
    last = place;
  }
  return places;
}
