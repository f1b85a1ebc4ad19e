import type { Statement } from '../core/records.ts';
import { inOrder } from '../text/provenance.ts';

export interface Placed {
  readonly id: string;
  readonly position: number;
}

/** Position after every other step. */
export const lastPosition = (statements: readonly Statement[]): number =>
  statements.reduce((last, { position }) => Math.max(last, position + 1), 0);

/**
 * Moves one step earlier (−1) or later (+1) in the chain: it goes half way between its new neighbours. Where two phones
 * gave steps the same position there is no half way; then all are counted anew.
 * @returns new positions for the steps that need one; empty where there is nowhere to go
 */
export function moved(statements: readonly Statement[], id: string, by: -1 | 1): readonly Placed[] {
  const chain = [...inOrder(statements)];
  const from = chain.findIndex((each) => each.id === id);
  const step = chain[from];
  const to = from + by;
  if (!step || to < 0 || to >= chain.length) return [];
  chain.splice(from, 1);
  chain.splice(to, 0, step);
  const before = chain[to - 1]?.position ?? (chain[to + 1]?.position ?? 0) - 2;
  const after = chain[to + 1]?.position ?? before + 2;
  const position = (before + after) / 2;
  if (before < position && position < after) return [{ id, position }];
  return chain.flatMap((each, index) => (each.position === index ? [] : [{ id: each.id, position: index }]));
}
