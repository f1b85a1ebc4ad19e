import {
  type Ask,
  type AskUnit,
  type Catalogue,
  type Condition,
  entry,
  type MaterialGroup,
  type TypeGroup,
  type ZoneClass,
} from '../core/catalogue.ts';
import { list } from './format.ts';

export const zoneClassWords: Readonly<Record<ZoneClass, string>> = {
  work: 'the working surface',
  line: 'the rope line or groove',
  joint: 'a joint',
  opening: 'the head opening',
  base: 'the base',
  whole: 'the whole block',
};

export const groupWords: Readonly<Record<TypeGroup, string>> = {
  crown: 'crowns',
  brim: 'brims',
  full: 'full shapes',
  puzzle: 'puzzle blocks',
  small: 'small shapes',
  support: 'stands',
  pan: 'pressing pans',
  last: 'lasts',
  head: 'heads',
};

const unitWords: Readonly<Record<AskUnit, string>> = {
  mm: ' mm',
  cm2: ' cm²',
  pct: ' %',
  count: '',
  perCm2: ' per cm²',
  perDm2: ' per dm²',
  level: '',
};

/** A figure in an ask’s unit: `12 %`, `3 per cm²`; a level by the name of its step. */
export function inUnitOf(ask: Ask | undefined, value: number): string {
  if (ask?.type !== 'measure') return String(value);
  return ask.steps?.[value - 1]?.toLocaleLowerCase('en-GB') ?? `${value}${unitWords[ask.unit]}`;
}

/** `a`, `a or b`, `a, b or c`. */
const either = (items: readonly string[]): string =>
  items.length < 2 ? (items[0] ?? '') : `${items.slice(0, -1).join(', ')} or ${items.at(-1)}`;
/** First letter small, for a term inside a sentence; what follows keeps its capitals (UV, °C). */
export const small = (text: string): string => text.charAt(0).toLocaleLowerCase('en-GB') + text.slice(1);
const label = (ask: Ask | undefined, id: string): string => (ask ? small(ask.label.replace(/\?$/, '')) : id);

const groupNames: Readonly<Record<MaterialGroup, string>> = {
  wood: 'wood',
  metal: 'metal',
  sparterie: 'sparterie',
  shell: 'moulded shell',
  plastic: 'plastic',
  covering: 'covering',
};
/** A group of this many or more is named as such when all or nearly all of it is meant. */
const WORTH_NAMING = 4;
const MOST_LEFT_OUT = 2;

/** Materials as one says them: “any wood but plywood, papier-mâché” rather than ten woods. */
export function materialNames(ids: readonly string[], materials: Catalogue['materials']): readonly string[] {
  // “Plywood, blockboard, MDF layers” is “plywood” in a list: what explains it there would read as more materials.
  const termOf = (id: string): string => small(entry(materials, id)?.term.split(/, | \(/)[0] ?? id);
  const named = new Set<string>();
  const groups = (Object.keys(groupNames) as MaterialGroup[]).flatMap((group) => {
    const members = Object.keys(materials).filter((id) => materials[id]?.group === group);
    const leftOut = members.filter((id) => !ids.includes(id));
    if (members.length < WORTH_NAMING || leftOut.length > MOST_LEFT_OUT) return [];
    for (const id of members) named.add(id);
    return [`any ${groupNames[group]}${leftOut.length > 0 ? ` but ${list(leftOut.map(termOf))}` : ''}`];
  });
  return [...groups, ...ids.filter((id) => !named.has(id)).map(termOf)];
}

/** An answer in a sentence, or its opposite. */
function answerWords(ask: Ask | undefined, id: string, is: boolean | string, holds: boolean): string {
  const name = label(ask, id);
  if (typeof is === 'boolean') return `${name}: ${is === holds ? 'yes' : 'no'}`;
  const options = ask?.type === 'choice' ? ask.options : [];
  return `${name}: ${holds ? '' : 'not '}“${small(options.find((option) => option.id === is)?.label ?? is)}”`;
}

type Words = (condition: Condition) => string;

/** Parts joined by “and”; an “or” among them is put in brackets, so that it cannot be read across. */
const both = (parts: readonly Condition[], words: Words): string =>
  list(
    parts.flatMap((part) => {
      const said = words(part);
      if (said === '') return [];
      return ['any' in part && part.any.length > 1 && parts.length > 1 ? `(${said})` : said];
    }),
  );

function opposite(condition: Condition, asks: readonly Ask[], words: Words): string {
  if ('ask' in condition && 'atLeast' in condition) return words({ ask: condition.ask, below: condition.atLeast });
  if ('ask' in condition && 'below' in condition) return words({ ask: condition.ask, atLeast: condition.below });
  if ('ask' in condition && 'is' in condition) {
    return answerWords(
      asks.find(({ id }) => id === condition.ask),
      condition.ask,
      condition.is,
      false,
    );
  }
  const said = words(condition);
  return 'all' in condition || 'any' in condition ? `not (${said})` : `not ${said}`;
}

/**
 * A condition in words, to stand after “when”: “gap at the widest: at least 3 mm and closes under hand pressure: no”.
 * @param asks of the damage kind the condition belongs to
 * @returns an empty string for a condition that always holds
 */
export function conditionWords(
  condition: Condition,
  asks: readonly Ask[],
  catalogue: Pick<Catalogue, 'materials' | 'shapeValues'>,
): string {
  const words: Words = (part) => conditionWords(part, asks, catalogue);
  if ('all' in condition) return both(condition.all, words);
  if ('any' in condition) return either(condition.any.map(words).filter(Boolean));
  if ('not' in condition) return opposite(condition.not, asks, words);
  if ('ask' in condition) {
    const ask = asks.find(({ id }) => id === condition.ask);
    if ('is' in condition) return answerWords(ask, condition.ask, condition.is, true);
    const name = label(ask, condition.ask);
    return 'atLeast' in condition
      ? `${name}: at least ${inUnitOf(ask, condition.atLeast)}`
      : `${name}: under ${inUnitOf(ask, condition.below)}`;
  }
  if ('grade' in condition) {
    const { from, to } = condition.grade;
    if (from !== undefined && to !== undefined) return from === to ? `grade ${from}` : `grade ${from} to ${to}`;
    return from !== undefined ? `grade ${from} or more` : `grade ${to} or less`;
  }
  if ('zoneClass' in condition) return `on ${either(condition.zoneClass.map((id) => zoneClassWords[id]))}`;
  if ('group' in condition) return `on ${either(condition.group.map((id) => groupWords[id]))}`;
  if ('material' in condition) return `of ${either(materialNames(condition.material, catalogue.materials))}`;
  if ('parts' in condition) return condition.parts === 'one' ? 'in one part' : 'in several parts';
  return `the shape is ${either(condition.shapeValue.map((id) => small(catalogue.shapeValues[id].term)))}`;
}
