import type { Catalogue } from '../core/catalogue.ts';
import { small } from './conditions.ts';

/** Sections of the handbook in reading order; also the words in its addresses. */
export const SECTION_IDS = [
  'damage',
  'treatments',
  'materials',
  'types',
  'marks',
  'anatomy',
  'grades',
  'photographs',
  'firstUse',
  'storing',
  'law',
  'safety',
] as const;
export type SectionId = (typeof SECTION_IDS)[number];

/** One entry of the handbook: enough to list it and to find it. Its page is drawn from the catalogue itself. */
export interface GlossaryEntry {
  readonly section: SectionId;
  readonly id: string;
  readonly term: string;
  readonly aliases: readonly string[];
  /** What it is, in a sentence. */
  readonly text: string;
}

export interface GlossarySection {
  readonly id: SectionId;
  readonly title: string;
  readonly about: string;
  readonly entries: readonly GlossaryEntry[];
}

type Listed = Pick<GlossaryEntry, 'term' | 'text'> & Partial<Pick<GlossaryEntry, 'id' | 'aliases'>>;

interface Section {
  readonly title: string;
  readonly about: string;
  readonly list: (catalogue: Catalogue) => readonly (Listed & { readonly retired?: boolean })[];
}

/** Where in the catalogue each section is read from. */
const SECTIONS: Readonly<Record<SectionId, Section>> = {
  damage: {
    title: 'Damage',
    about: 'What can be wrong with a block, how to tell, and how bad it is.',
    list: ({ damage }) => mapped(damage, ({ term, aliases, definition }) => ({ term, aliases, text: definition })),
  },
  treatments: {
    title: 'Treatments',
    about: 'What is done about it, in what order, and how long it takes.',
    list: ({ treatments }) => mapped(treatments, ({ term, how }) => ({ term, text: how })),
  },
  materials: {
    title: 'Materials',
    about: 'Woods and everything else a block is made of, and how to tell them.',
    list: ({ materials }) =>
      mapped(materials, ({ term, aliases, properties }) => ({ term, aliases, text: properties })),
  },
  types: {
    title: 'Types of block',
    about: 'What each is for, its parts, and what it must have to be of use.',
    list: ({ types }) => mapped(types, ({ term, aliases, purpose }) => ({ term, aliases, text: purpose })),
  },
  marks: {
    title: 'Marks',
    about: 'What a stamp or a pencil line tells, and how far to trust it.',
    list: ({ marks }) => mapped(marks, ({ term, tells }) => ({ term, text: tells })),
  },
  anatomy: {
    title: 'Parts of a block',
    about: 'The words for where.',
    list: ({ anatomy }) => anatomy.map(({ term, text }) => ({ id: term, term, text })),
  },
  grades: {
    title: 'Grades and verdicts',
    about: 'The words of the answer.',
    list: ({ gradeWords, verdicts, shapeValues, certainties }) => [
      ...gradeWords.map(({ term, text }, grade) => ({ id: `grade${grade}`, term: `${grade} ${term}`, text })),
      ...mapped(verdicts, ({ term, text }) => ({ term, text })),
      ...mapped(shapeValues, ({ term, text }) => ({ term, text })),
      ...mapped(certainties, ({ term, needs }) => ({
        term,
        text: `Of a step in a block’s history. Needs: ${small(needs)}`,
      })),
    ],
  },
  photographs: {
    title: 'Photographs',
    about: 'The views, and the rules that make two pictures comparable.',
    list: ({ views, photoRules }) => [
      ...mapped(views, ({ term, text }) => ({ term, text })),
      ...photoRules.map((text, index) => ({ id: `rule${index + 1}`, term: `Rule ${index + 1}`, text })),
    ],
  },
  firstUse: {
    title: 'Before first use',
    about: 'What a restored block passes before it meets good felt.',
    list: ({ beforeFirstUse }) => mapped(beforeFirstUse, ({ term, text }) => ({ term, text })),
  },
  storing: {
    title: 'Storing',
    about: 'So that it stays right.',
    list: ({ storing }) => mapped(storing, ({ term, text }) => ({ term, text })),
  },
  law: {
    title: 'Law',
    about: 'Not legal advice. Rules change: check the current ones before you act on any of this.',
    list: ({ law }) => law.map(({ topic, text }) => ({ id: topic, term: topic, text })),
  },
  safety: {
    title: 'Safety',
    about: 'Read the label and your local rules; where a licensed person is asked for, ask one.',
    list: ({ safety }) => numbered(safety, 'Safety'),
  },
};

function mapped<V extends object>(table: Readonly<Record<string, V>>, entry: (value: V) => Listed) {
  return Object.entries(table).map(([id, value]) => ({
    ...entry(value),
    id,
    retired: 'retired' in value && value.retired === true,
  }));
}

const numbered = (lines: readonly string[], term: string): readonly Listed[] =>
  lines.map((text, index) => ({ id: String(index + 1), term: `${term} ${index + 1}`, text }));

/** The handbook's contents, straight from the catalogue. Retired entries are left out of lists; their pages still open. */
export function glossaryOf(catalogue: Catalogue, { retired = false } = {}): readonly GlossarySection[] {
  return SECTION_IDS.map((id) => {
    const { title, about, list } = SECTIONS[id];
    const entries = list(catalogue)
      .filter((each) => retired || !each.retired)
      .map(({ term, text, aliases = [], id: own = term }) => ({ section: id, id: own, term, aliases, text }));
    return { id, title, about, entries };
  });
}

/** Small letters without accents or hyphens, so that “papier-mache” finds papier-mâché. */
const plain = (text: string): string =>
  text
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .replace(/[-–’']/g, ' ')
    .toLocaleLowerCase('en-GB');

/** How well an entry fits: the term itself before its aliases, a beginning before a middle, the explanation last. */
function rankOf({ term, aliases, text }: GlossaryEntry, wanted: string, words: readonly string[]): number | null {
  const names = [plain(term), ...aliases.map(plain)];
  const exact = names.indexOf(wanted);
  if (exact >= 0) return exact === 0 ? 0 : 1;
  const begins = names.findIndex((name) => name.startsWith(wanted));
  if (begins >= 0) return begins === 0 ? 2 : 3;
  const inNames = (word: string): boolean => names.some((name) => name.includes(word));
  if (words.every(inNames)) return 4;
  const explained = plain(text);
  return words.every((word) => inNames(word) || explained.includes(word)) ? 5 : null;
}

/**
 * Entries that have every word asked for in their term, an alias or their explanation; best first, then in book order.
 * @returns an empty list for an empty query
 */
export function findInGlossary(sections: readonly GlossarySection[], query: string): readonly GlossaryEntry[] {
  const wanted = plain(query).trim().replace(/\s+/g, ' ');
  if (wanted === '') return [];
  const words = wanted.split(' ');
  return sections
    .flatMap(({ entries }) => entries)
    .flatMap((entry) => {
      const rank = rankOf(entry, wanted, words);
      return rank === null ? [] : [{ entry, rank }];
    })
    .sort((a, b) => a.rank - b.rank)
    .map(({ entry }) => entry);
}
