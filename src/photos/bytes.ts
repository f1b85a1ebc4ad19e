/** Bytes that own an ordinary buffer: what a file gives and what storage and digests take. */
export type Bytes = Uint8Array<ArrayBuffer>;

/** Big-endian 16 and 32 bits at `at`; bytes past the end count as 0. */
export const u16 = (bytes: Uint8Array, at: number): number => ((bytes[at] ?? 0) << 8) | (bytes[at + 1] ?? 0);
export const u32 = (bytes: Uint8Array, at: number): number => u16(bytes, at) * 0x10000 + u16(bytes, at + 2);
/** Little-endian, likewise. */
export const u16le = (bytes: Uint8Array, at: number): number => (bytes[at] ?? 0) | ((bytes[at + 1] ?? 0) << 8);
export const u32le = (bytes: Uint8Array, at: number): number => u16le(bytes, at) + u16le(bytes, at + 2) * 0x10000;

/** Whether the ASCII text stands at `at`. */
export function hasText(bytes: Uint8Array, at: number, text: string): boolean {
  for (let i = 0; i < text.length; i++) if (bytes[at + i] !== text.charCodeAt(i)) return false;
  return true;
}

/** `length` bytes from `at` as Latin-1 text: names of chunks and boxes. */
export const textAt = (bytes: Uint8Array, at: number, length: number): string =>
  String.fromCharCode(...bytes.subarray(at, at + length));

export const ascii = (text: string): Bytes => Uint8Array.from(text, (letter) => letter.charCodeAt(0));

/** The parts end to end, in a buffer of their own. */
export function join(parts: readonly Uint8Array[]): Bytes {
  const whole = new Uint8Array(parts.reduce((length, part) => length + part.length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}
