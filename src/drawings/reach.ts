/** Radius of a mark in view units: 9, or more in a small figure, where a number still needs about 8 px. */
export const reachAt = (width: number): number => Math.max(9, (8.2 * 320) / width);
