/**
 * Random numbers that belong to a purpose, not to a call: the draws for (seed, kind, purpose) are the same whatever else
 * is drawn, so adding one finding does not reshuffle the others and a "what if" is compared on the same luck.
 */

/** FNV-1a over the text, 32 bits; then mixed, because FNV alone is weak in its high bits. */
export function hash32(text: string): number {
  let h = 0x811c9dc5;
  for (let i = 0; i < text.length; i += 1) {
    h ^= text.charCodeAt(i);
    h = Math.imul(h, 0x01000193);
  }
  h ^= h >>> 16;
  h = Math.imul(h, 0x85ebca6b);
  h ^= h >>> 13;
  h = Math.imul(h, 0xc2b2ae35);
  return (h ^ (h >>> 16)) >>> 0;
}

/**
 * `count` numbers in (0, 1), stratified: one in each of `count` equal slices, in an order of its own. The mean of a
 * smooth function over them has far less noise than over independent draws, and quantiles hardly any.
 * Generator: sfc32 (Doty-Humphrey, public domain algorithm, from memory), seeded by the purpose; order by Fisher–Yates.
 */
export function uniforms(purpose: string, seed: number, count: number): Float64Array {
  const raw = sfc32(hash32(purpose), seed >>> 0, hash32(`${seed}:${purpose}`), 2 * count);
  const values = new Float64Array(count);
  for (let i = 0; i < count; i += 1) values[i] = (i + (raw[i] as number) / 4294967296) / count;
  for (let i = count - 1, n = count; i > 0; i -= 1, n += 1) {
    const j = Math.floor(((raw[n] as number) / 4294967296) * (i + 1));
    const held = values[i] as number;
    values[i] = values[j] as number;
    values[j] = held;
  }
  return values;
}

let buffer = new Uint32Array(0);

/** The first `count` numbers of a seeded stream, 32 bits each; good until it is called again. */
function sfc32(seedA: number, seedB: number, seedC: number, count: number): Uint32Array {
  if (buffer.length < count) buffer = new Uint32Array(count);
  let a = seedA | 0;
  let b = seedB | 0;
  let c = seedC | 0;
  let d = 1;
  // The first dozen still show the seed.
  for (let i = -12; i < count; i += 1) {
    const t = (((a + b) | 0) + d) | 0;
    d = (d + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = (c << 21) | (c >>> 11);
    c = (c + t) | 0;
    if (i >= 0) buffer[i] = t;
  }
  return buffer;
}
