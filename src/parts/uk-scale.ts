import type { UkScale } from '../core/hat-sizes.ts';
import type { Settings } from '../core/records.ts';
import type { Reading } from '../core/size-stamps.ts';

/** The setting under the name the size sums use. */
export const ukScaleOf = ({ ukHatScale }: Pick<Settings, 'ukHatScale'>): UkScale =>
  ukHatScale === 'asUs' ? 'as-us' : 'eighth-below-us';

/** A stamp's reading as a key of a record, which may hold letters and figures only. */
export const readingKey = (reading: Reading): string =>
  reading.replace(/_(\w)/g, (_, letter: string) => letter.toUpperCase());
