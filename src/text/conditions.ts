import {
  type Ask,
  type AskUnit,
  type Catalogue,
  type Condition,
  entry,
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
const small = (text: string): string => text.charAt(0).toLocaleLowerCase('en-GB') + text.slice(1);
const label = (ask: Ask | undefined, id: string): string => (ask ? small(ask.label.replace(/\?$/, '')) : id);

function answerWords(ask: Ask | undefined, is: boolean | string): string {
  if (typeof is === 'boolean') return is ? 'yes' : 'no';
  const options = ask?.type === 'choice' ? ask.options : [];
  return (options.find(({ id }) => id === is)?.label ?? is).toLocaleLowerCase('en-GB');
}

/**
 * A condition in words, to stand after “when”: “gap at the widest at least 3 mm and closes under hand pressure: no”.
 * @param asks of the damage kind the condition belongs to
 * @returns an empty string for a condition that always holds
 */
export function conditionWords(
  condition: Condition,
  asks: readonly Ask[],
  catalogue: Pick<Catalogue, 'materials' | 'shapeValues'>,
): string {
  const words = (part: Condition): string => conditionWords(part, asks, catalogue);
  if ('all' in condition) return list(condition.all.map(words).filter(Boolean));
  if ('any' in condition) return either(condition.any.map(words).filter(Boolean));
  if ('not' in condition) return `not ${words(condition.not)}`;
  if ('ask' in condition) {
    const ask = asks.find(({ id }) => id === condition.ask);
    const name = label(ask, condition.ask);
    if ('is' in condition) return `${name}: ${answerWords(ask, condition.is)}`;
    return 'atLeast' in condition
      ? `${name} at least ${inUnitOf(ask, condition.atLeast)}`
      : `${name} under ${inUnitOf(ask, condition.below)}`;
  }
  if ('grade' in condition) {
    const { from, to } = condition.grade;
    if (from !== undefined && to !== undefined) return from === to ? `grade ${from}` : `grade ${from} to ${to}`;
    return from !== undefined ? `grade ${from} or more` : `grade ${to} or less`;
  }
  if ('zoneClass' in condition) return `on ${either(condition.zoneClass.map((id) => zoneClassWords[id]))}`;
  if ('group' in condition) return `on ${either(condition.group.map((id) => groupWords[id]))}`;
  if ('material' in condition) {
    return `of ${either(condition.material.map((id) => entry(catalogue.materials, id)?.term.toLocaleLowerCase('en-GB') ?? id))}`;
  }
  if ('parts' in condition) return condition.parts === 'one' ? 'in one part' : 'in several parts';
  return `the shape is ${either(condition.shapeValue.map((id) => catalogue.shapeValues[id].term.toLocaleLowerCase('en-GB')))}`;
}
