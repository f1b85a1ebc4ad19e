const UNITS = ['kB', 'MB', 'GB', 'TB'] as const;

/** `3.4 MB`, `120 GB`: bytes in powers of ten, two figures at least. */
export function bytes(count: number): string {
  let value = count / 1000;
  let unit = 0;
  while (value >= 999.5 && unit < UNITS.length - 1) {
    value /= 1000;
    unit += 1;
  }
  return `${value.toLocaleString('en-GB', { maximumFractionDigits: value < 10 ? 1 : 0 })} ${UNITS[unit]}`;
}
