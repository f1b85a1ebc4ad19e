import { LIMITS } from './limits.ts';
import { refusal } from './refuse.ts';

/**
 * JSON from a stranger. A key `__proto__` would swap an object's prototype when copied, and nesting without end its
 * reader's stack: both are refused.
 * @throws AppError archive-bad-text naming the entry
 */
export function readJson(bytes: Uint8Array, entry: string): unknown {
  let value: unknown;
  try {
    value = JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes));
  } catch (cause) {
    throw refusal('archive-bad-text', entry, {}, cause);
  }
  const open: { readonly value: unknown; readonly depth: number }[] = [{ value, depth: 0 }];
  for (let at = open.pop(); at; at = open.pop()) {
    if (typeof at.value !== 'object' || at.value === null) continue;
    if (at.depth > LIMITS.jsonDepth) throw refusal('archive-bad-text', entry);
    for (const [key, member] of Object.entries(at.value)) {
      if (key === '__proto__') throw refusal('archive-bad-text', entry);
      if (typeof member === 'object') open.push({ value: member, depth: at.depth + 1 });
    }
  }
  return value;
}
