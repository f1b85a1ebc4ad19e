const LETTERS = '0123456789abcdefghijklmnopqrstuvwxyz';

/** A device's id: 8 of [0-9a-z], 41 bits of chance; made once and kept with the records. */
export function newDeviceId(
  random: (bytes: Uint8Array<ArrayBuffer>) => unknown = (b) => crypto.getRandomValues(b),
): string {
  let id = '';
  const bytes = new Uint8Array(16);
  while (id.length < 8) {
    random(bytes);
    // 252 is the last multiple of 36: beyond it the first letters would come up more often.
    for (const byte of bytes) if (byte < 252 && id.length < 8) id += LETTERS[byte % 36];
  }
  return id;
}
