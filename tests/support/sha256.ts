/** SHA-256 written out from FIPS 180-4, so that stored hashes are checked by something other than what made them. */

const primes: number[] = [];
for (let n = 2; primes.length < 64; n++) if (primes.every((p) => n % p)) primes.push(n);
const fraction = (x: number): number => ((x - Math.floor(x)) * 2 ** 32) >>> 0;
const ROUND = primes.map((p) => fraction(Math.cbrt(p)));
const START = primes.slice(0, 8).map((p) => fraction(Math.sqrt(p)));

const turn = (x: number, by: number): number => (x >>> by) | (x << (32 - by));

export function sha256Hex(bytes: Uint8Array): string {
  const padded = new Uint8Array((((bytes.length + 8) >> 6) + 1) << 6);
  padded.set(bytes);
  padded[bytes.length] = 0x80;
  const view = new DataView(padded.buffer);
  view.setUint32(padded.length - 8, Math.floor(bytes.length / 2 ** 29));
  view.setUint32(padded.length - 4, (bytes.length << 3) >>> 0);
  const state = Int32Array.from(START);
  const w = new Int32Array(64);
  for (let block = 0; block < padded.length; block += 64) {
    for (let i = 0; i < 64; i++) {
      if (i < 16) {
        w[i] = view.getInt32(block + i * 4);
        continue;
      }
      const [a, b] = [w[i - 15] as number, w[i - 2] as number];
      const s0 = turn(a, 7) ^ turn(a, 18) ^ (a >>> 3);
      const s1 = turn(b, 17) ^ turn(b, 19) ^ (b >>> 10);
      w[i] = ((w[i - 16] as number) + s0 + (w[i - 7] as number) + s1) | 0;
    }
    let [a, b, c, d, e, f, g, h] = state as unknown as [number, number, number, number, number, number, number, number];
    for (let i = 0; i < 64; i++) {
      const s1 = turn(e, 6) ^ turn(e, 11) ^ turn(e, 25);
      const t1 = (h + s1 + ((e & f) ^ (~e & g)) + (ROUND[i] as number) + (w[i] as number)) | 0;
      const s0 = turn(a, 2) ^ turn(a, 13) ^ turn(a, 22);
      const t2 = (s0 + ((a & b) ^ (a & c) ^ (b & c))) | 0;
      [a, b, c, d, e, f, g, h] = [(t1 + t2) | 0, a, b, c, (d + t1) | 0, e, f, g];
    }
    [a, b, c, d, e, f, g, h].forEach((value, i) => {
      state[i] = ((state[i] as number) + value) | 0;
    });
  }
  return [...state].map((word) => (word >>> 0).toString(16).padStart(8, '0')).join('');
}
