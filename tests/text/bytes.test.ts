import { expect, it } from 'vitest';
import { bytes } from '../../src/text/bytes.ts';

it.each([
  [0, '0 kB'],
  [1400, '1.4 kB'],
  [999_600, '1 MB'],
  [3_449_000, '3.4 MB'],
  [120_000_000_000, '120 GB'],
  [5e15, '5,000 TB'],
])('says %d bytes as %s', (count, said) => expect(bytes(count)).toBe(said));
