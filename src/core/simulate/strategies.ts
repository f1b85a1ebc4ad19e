export const STRATEGIES = ['restore', 'copy', 'keep'] as const;
/** Restore it, take a copy of the shape and nothing else, or use it as it is. */
export type Strategy = (typeof STRATEGIES)[number];
