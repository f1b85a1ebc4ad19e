import { list } from './format.ts';

/**
 * The caption of a damage map, with what the figure in its corner counts.
 * @param left numbers of the findings that found no place on the drawing
 */
export const mapCaption = (caption: string, left: readonly number[]): string =>
  left.length === 0
    ? caption
    : `${caption} +${left.length}: ${left.length === 1 ? `finding ${left[0]} has` : `findings ${list(left.map(String))} have`} no place of ${left.length === 1 ? 'its' : 'their'} own on it.`;
