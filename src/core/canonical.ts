/**
 * One text for one value: JSON with the keys of every object sorted by UTF-16 code unit and absent keys left out, as
 * RFC 8785 orders them. Equal values give equal text whatever order their keys were written in.
 * @param value JSON data: no functions, no cycles
 */
export function canonical(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map((item) => canonical(item ?? null)).join(',')}]`;
  if (typeof value !== 'object' || value === null) return JSON.stringify(value ?? null);
  const members = Object.entries(value)
    .filter(([, member]) => member !== undefined)
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([key, member]) => `${JSON.stringify(key)}:${canonical(member)}`);
  return `{${members.join(',')}}`;
}

/** Whether two JSON values say the same. */
export function sameValue(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return a === b;
  return canonical(a) === canonical(b);
}
