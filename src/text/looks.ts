import type { Catalogue } from '../core/catalogue.ts';
import { entry } from '../core/catalogue.ts';
import type { Look } from '../core/simulate/looks.ts';
import { percent } from './format.ts';

/** Why to look there next, in one sentence. */
export function lookSentence(look: Look, catalogue: Catalogue): string {
  const kind = entry(catalogue.damage, look.mostTelling)?.term.toLocaleLowerCase('en-GB') ?? look.mostTelling;
  if (look.changes >= 0.01) {
    return `It changes the decision ${look.changes >= 0.1 ? `about ${percent(look.changes)} of the time` : 'now and then'}, mostly by ${kind}.`;
  }
  return `It shows ${kind}; it would hardly change the decision at this price.`;
}

/** Stations from a look that are worth naming: what could change the decision, and never more than `most`. */
export const worthNaming = (looks: readonly Look[], most: number): readonly Look[] =>
  looks.filter(({ worth }) => worth > 0.5).slice(0, most);

/**
 * A message to an online seller, ready to send: what one cannot see in the pictures, most telling first, each as a
 * question with the photograph that would answer it.
 */
export function sellerMessage(looks: readonly Look[], name: string, catalogue: Catalogue): string {
  const asked = looks.slice(0, 5).flatMap(({ station }) => entry(catalogue.stations, station)?.askSeller ?? []);
  return [
    `Hello, I am interested in the hat block (${name}). Before I decide, could you help me with this?`,
    ...asked.map((question, index) => `${index + 1}. ${question}`),
    'A coin or bank card beside it in the picture would help me with the size. Thank you.',
  ].join('\n');
}
