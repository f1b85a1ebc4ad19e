import type { UkScale } from '../core/hat-sizes.ts';
import type { Settings } from '../core/records.ts';

/** The setting under the name the size sums use. */
export const ukScaleOf = ({ ukHatScale }: Pick<Settings, 'ukHatScale'>): UkScale =>
  ukHatScale === 'asUs' ? 'as-us' : 'eighth-below-us';
