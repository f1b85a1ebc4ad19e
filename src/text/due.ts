import { type Catalogue, entry } from '../core/catalogue.ts';
import type { Due } from '../core/due.ts';
import { dayWords, momentWords } from './days.ts';

/** What falls due, in a few words for a list, a line for a calendar, and what to do. */
export function dueWords(
  { kind, treatment, words }: Pick<Due, 'kind' | 'treatment' | 'words'>,
  block: string,
  catalogue: Catalogue,
): { readonly short: string; readonly title: string; readonly what: string } {
  const { short, what } = wordsOf(
    kind,
    entry(catalogue.treatments, treatment)?.term ?? (words.trim() || (treatment ?? 'a step')),
  );
  return { short, title: `${block}: ${short.charAt(0).toLocaleLowerCase('en-GB')}${short.slice(1)}`, what };
}

function wordsOf(kind: Due['kind'], step: string): { readonly short: string; readonly what: string } {
  switch (kind) {
    case 'look':
      return {
        short: 'Look at it in quarantine',
        what: 'Lift the lid and look at the white paper, photograph paper and holes, lay fresh paper, and write down in Blockworth whether there is fresh dust.',
      };
    case 'lastLook':
      return {
        short: 'Last look in quarantine',
        what: 'The last look: nothing fresh on the paper means “no sign seen, probably clean”. Fresh dust starts the time again. Write it down in Blockworth.',
      };
    case 'freezeEnds':
      return {
        short: 'Freezing is over',
        what: 'Read the thermometer, then take the bag out and leave it shut: it warms up sealed for 24 hours, so that dew settles on the bag and not on the wood.',
      };
    case 'thawEnds':
      return { short: 'Thaw is over', what: 'Back into the freezer, still sealed.' };
    case 'warmUpEnds':
      return {
        short: 'Bag may be opened',
        what: 'Only if the bag feels warm and is dry outside. Then lay it on white paper and watch it.',
      };
    case 'waitEnds':
      return {
        short: `Wait is over: ${step}`,
        what: 'The time was an estimate, or the label’s: try it before you go on.',
      };
  }
}

/** When: `on 31 October 2026`, `20 October 2026, 18:30`; what was missed says so. */
export const dueWhen = ({ at, late }: Pick<Due, 'at' | 'late'>): string => {
  const when = 'day' in at ? dayWords(at.day) : momentWords(at.instant);
  return late ? `${'day' in at ? 'since' : 'over since'} ${when}` : when;
};
