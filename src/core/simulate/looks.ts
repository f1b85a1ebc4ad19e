import type { Catalogue } from '../catalogue.ts';
import type { Survey } from '../records.ts';
import type { Hidden } from './fate.ts';
import { STRATEGIES, type Strategy } from './strategies.ts';

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
  readonly hidden: readonly Pick<Hidden, 'unlooked' | 'grades'>[];
  readonly survey: Pick<Survey, 'stationsDone'>;
  readonly catalogue: Pick<Catalogue, 'stations' | 'damage'>;
}

/** A group of draws with fewer than this many is judged together with others as bad: fewer tell luck, not worth. */
const LEAST_GROUP = 24;

/** What a look shows of a kind: none or a trace · slight · bad. */
const SHOWN = 3;
const shownAt = (grade: number): number => (grade < 2 ? 0 : grade === 2 ? 1 : 2);

/** Draws in groups: how many, and what each strategy nets in all. */
class Groups {
  readonly count: Float64Array;
  private readonly sums: Float64Array;
  readonly size: number;

  constructor(size: number) {
    this.size = size;
    this.count = new Float64Array(size);
    this.sums = new Float64Array(STRATEGIES.length * size);
  }

  put(group: number, nets: readonly Float64Array[], i: number): void {
    this.count[group] = (this.count[group] as number) + 1;
    for (let s = 0; s < nets.length; s += 1) {
      const at = s * this.size + group;
      this.sums[at] = (this.sums[at] as number) + ((nets[s] as Float64Array)[i] as number);
    }
  }

  /** Best mean net of a group above the price, or nothing: one may always walk away. */
  gain(group: number, price: number): number {
    const count = this.count[group] as number;
    if (count === 0) return 0;
    let best = this.sums[group] as number;
    for (let s = 1; s < STRATEGIES.length; s += 1) best = Math.max(best, this.sums[s * this.size + group] as number);
    return Math.max(0, best / count - price);
  }
}

/**
 * Parts the draws by all that a look would show, kind by kind.
 * @returns group of every draw, numbered from 0 in order of the first draw in each, and how many there are
 */
function partedBy(
  shown: readonly Uint8Array[],
  count: number,
): { readonly group: Int32Array; readonly groups: number } {
  const group = new Int32Array(count);
  let groups = count > 0 ? 1 : 0;
  for (const code of shown) {
    const renamed = new Int32Array(groups * SHOWN).fill(-1);
    groups = 0;
    for (let i = 0; i < count; i += 1) {
      const key = (group[i] as number) * SHOWN + (code[i] as number);
      if (renamed[key] === -1) {
        renamed[key] = groups;
        groups += 1;
      }
      group[i] = renamed[key] as number;
    }
  }
  return { group, groups };
}

/**
 * Value of each look from draws already made: mean over what it could show of the best one could then do, less the best
 * one can do now. Within the grouping it cannot be negative, since one may ignore what one sees. What a look shows is
 * grouped as none, slight, or bad (grade 2 and 3+) by kind. Source: assessment notes §6; expected value of sample
 * information, textbook (Raiffa and Schlaifer, from memory).
 */
export function looksWorth({ nets, price, hidden, survey, catalogue }: Question): readonly Look[] {
  const columns = STRATEGIES.map((strategy) => nets[strategy]);
  const count = nets.restore.length;
  const all = new Groups(1);
  for (let i = 0; i < count; i += 1) all.put(0, columns, i);
  const now = all.gain(0, price);
  const kinds = hidden.map(({ unlooked, grades }) => ({ unlooked, grades, code: grades.map(shownAt) }));

  const looks = Object.entries(catalogue.stations).flatMap(([station, { seconds }]): Look[] => {
    if (Object.hasOwn(survey.stationsDone, station)) return [];
    const shown = kinds.filter(({ unlooked }) => catalogue.damage[unlooked.kind]?.stations.includes(station));
    if (shown.length === 0) return [];
    const { worth, changes } = worthOfParting(
      shown.map(({ code }) => code),
      shown.map(({ grades }) => grades),
      columns,
      price,
      now,
    );
    const telling = shown.map(({ unlooked: { kind, belief, atGrade } }) => ({
      kind,
      weight: belief.present * (belief.grades[2] * atGrade[2].loss + belief.grades[3] * atGrade[3].loss),
    }));
    return [
      {
        station,
        kinds: shown.map(({ unlooked }) => unlooked.kind),
        seconds,
        worth,
        worthPerMinute: worth / (seconds / 60),
        changes,
        mostTelling: telling.reduce((a, b) => (b.weight > a.weight ? b : a)).kind,
      },
    ];
  });
  return looks.sort((a, b) => b.worthPerMinute - a.worthPerMinute || (a.station < b.station ? -1 : 1));
}

/** Gain of deciding group by group over deciding once, and the chance that the decision to buy changes. */
function worthOfParting(
  codes: readonly Uint8Array[],
  grades: readonly Uint8Array[],
  nets: readonly Float64Array[],
  price: number,
  now: number,
): { readonly worth: number; readonly changes: number } {
  const count = nets[0]?.length ?? 0;
  const { group, groups } = partedBy(codes, count);
  const parted = new Groups(groups);
  for (let i = 0; i < count; i += 1) parted.put(group[i] as number, nets, i);
  // Rare outcomes join by how bad the worst of them is.
  const joined = new Groups(5);
  const order: number[] = [];
  for (let i = 0; i < count; i += 1) {
    if ((parted.count[group[i] as number] as number) >= LEAST_GROUP) continue;
    let worst = 0;
    for (const grade of grades) worst = Math.max(worst, grade[i] as number);
    if (joined.count[worst] === 0) order.push(worst);
    joined.put(worst, nets, i);
  }
  let after = 0;
  let changes = 0;
  const weigh = (some: Groups, g: number): void => {
    const size = some.count[g] as number;
    const gain = some.gain(g, price);
    after += (gain * size) / count;
    if (gain > 0 !== now > 0) changes += size / count;
  };
  for (let g = 0; g < groups; g += 1) if ((parted.count[g] as number) >= LEAST_GROUP) weigh(parted, g);
  for (const worst of order) weigh(joined, worst);
  return { worth: Math.max(0, after - now), changes };
}
