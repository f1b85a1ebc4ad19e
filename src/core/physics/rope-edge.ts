import type { WithCautions } from './cautions.ts';
import { requireRange } from './range.ts';
import type { SourcedRow } from './sourced.ts';

/**
 * A worn pinning edge renewed in cord: pins then enter fibre, not tired wood.
 * SOURCE: common practice; the maker's way of cutting the base off and gluing on new timber is a maker's note, 2012 (looked up).
 */
export const ROPE_EDGE = {
  cordMm: { low: 6, high: 8 },
  /** Depth of the groove as a share of the cord. */
  depthShare: 0.8,
  dryHours: 24,
  orCutOffMm: 10,
  cautions: ['hiddenPins', 'edgedToolsAndClamps', 'hardwoodDust'],
  source: 'common practice',
  confidence: 'practice',
} as const satisfies SourcedRow & WithCautions;

/**
 * Depth to rout for a cord, mm.
 * @param cordMm 2 to 20; 6 to 8 is usual
 * @throws RangeError outside that
 * SOURCE: {@link ROPE_EDGE}
 */
export const grooveDepthMm = (cordMm: number): number => ROPE_EDGE.depthShare * requireRange('cordMm', cordMm, 2, 20);
