import type { Catalogue } from '../catalogue.ts';
import type { Survey } from '../records.ts';
import type { Strategy } from './simulate.ts';
import type { Unlooked } from './situation.ts';

/** A station not done yet, and what going there is worth. */
export interface Look {
  readonly station: string;
  /** Kinds it would show that nobody has looked for. */
  readonly kinds: readonly string[];
  readonly seconds: number;
  /** Expected gain of knowing before deciding, minor units; never below 0. */
  readonly worth: number;
  readonly worthPerMinute: number;
  /** Chance that the look changes whether to buy at the price. */
  readonly changes: number;
  /** The kind whose bad grades there cost the score most, weighed by how likely they are. */
  readonly mostTelling: string;
}

interface Question {
  readonly nets: Readonly<Record<Strategy, Float64Array>>;
  /** All-in price to decide at; the present limit where none was asked. */
  readonly price: number;
  readonly unlooked: readonly Unlooked[];
  readonly grades: readonly Uint8Array[];
  readonly survey: Pick<Survey, 'stationsDone'>;
  readonly catalogue: Pick<Catalogue, 'stations' | 'damage'>;
}

/** A group of draws with fewer than this many is judged together with others as bad: fewer tell luck, not worth. */
const LEAST_GROUP = 24;

interface Group {
  count: number;
  restore: number;
  copy: number;
  keep: number;
}

const emptyGroup = (): Group => ({ count: 0, restore: 0, copy: 0, keep: 0 });

/** Best mean net of a group above the price, or nothing: one may always walk away. */
const gainOf = ({ count, restore, copy, keep }: Group, price: number): number =>
  count === 0 ? 0 : Math.max(0, Math.max(restore, copy, keep) / count - price);

/**
 * Value of each look from draws already made: mean over what it could show of the best one could then do, less the best
 * one can do now. Within the grouping it cannot be negative, since one may ignore what one sees. What a look shows is
 * grouped as none, slight, or bad (grade 2 and 3+) by kind. Source: assessment notes §6; expected value of sample
 * information, textbook (Raiffa and Schlaifer, from memory).
 */
export function looksWorth({ nets, price, unlooked, grades, survey, catalogue }: Question): readonly Look[] {
  const { restore, copy, keep } = nets;
  const count = restore.length;
  const put = (group: Group, i: number): void => {
    group.count += 1;
    group.restore += restore[i] as number;
    group.copy += copy[i] as number;
    group.keep += keep[i] as number;
  };
  const all = emptyGroup();
  for (let i = 0; i < count; i += 1) put(all, i);
  const now = gainOf(all, price);
  const buyNow = now > 0;

  const looks = Object.entries(catalogue.stations).flatMap(([station, { seconds }]): Look[] => {
    if (Object.hasOwn(survey.stationsDone, station)) return [];
    const shown = unlooked.flatMap((one, index) =>
      catalogue.damage[one.kind]?.stations.includes(station)
        ? [{ kind: one.kind, unlooked: one, grade: grades[index] as Uint8Array }]
        : [],
    );
    if (shown.length === 0) return [];
    const groups = new Map<number, Group>();
    const keys = new Float64Array(count);
    for (let i = 0; i < count; i += 1) {
      let key = 0;
      for (const { grade } of shown) {
        const g = grade[i] as number;
        key = key * 3 + (g < 2 ? 0 : g === 2 ? 1 : 2);
      }
      keys[i] = key;
      let group = groups.get(key);
      if (!group) {
        group = emptyGroup();
        groups.set(key, group);
      }
      put(group, i);
    }
    // Rare outcomes join by how bad the worst of them is.
    const merged = new Map<number, Group>();
    for (let i = 0; i < count; i += 1) {
      const group = groups.get(keys[i] as number) as Group;
      if (group.count >= LEAST_GROUP) continue;
      let worst = 0;
      for (const { grade } of shown) worst = Math.max(worst, grade[i] as number);
      let joined = merged.get(worst);
      if (!joined) {
        joined = emptyGroup();
        merged.set(worst, joined);
      }
      put(joined, i);
    }
    let after = 0;
    let changed = 0;
    for (const group of [...[...groups.values()].filter((one) => one.count >= LEAST_GROUP), ...merged.values()]) {
      const gain = gainOf(group, price);
      after += (gain * group.count) / count;
      if (gain > 0 !== buyNow) changed += group.count / count;
    }
    const worth = Math.max(0, after - now);
    const telling = shown.map(({ kind, unlooked: { belief, atGrade } }) => ({
      kind,
      weight: belief.present * (belief.grades[2] * atGrade[2].loss + belief.grades[3] * atGrade[3].loss),
    }));
    const mostTelling = telling.reduce((a, b) => (b.weight > a.weight ? b : a)).kind;
    return [
      {
        station,
        kinds: shown.map(({ kind }) => kind),
        seconds,
        worth,
        worthPerMinute: worth / (seconds / 60),
        changes: changed,
        mostTelling,
      },
    ];
  });
  return looks.sort((a, b) => b.worthPerMinute - a.worthPerMinute || (a.station < b.station ? -1 : 1));
}
