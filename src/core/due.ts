import { type ColdStageFacts, stageEnds } from './cold.ts';
import { courseOf, type QuarantineFacts } from './quarantine.ts';

/** What can fall due on a block. */
export const DUE_KINDS = ['look', 'lastLook', 'freezeEnds', 'thawEnds', 'warmUpEnds', 'waitEnds'] as const;
export type DueKind = (typeof DUE_KINDS)[number];

/** A whole day where the owner is (`YYYY-MM-DD`), or a moment (UTC, RFC 3339). */
export type DueAt = { readonly day: string } | { readonly instant: string };

/** One thing that falls due. */
export interface Due {
  /** Stable from day to day and the same on every phone: made of the id of the record it comes from. */
  readonly key: string;
  readonly blockId: string;
  readonly kind: DueKind;
  readonly at: DueAt;
  /** It was due before today, or its moment has passed. */
  readonly late: boolean;
  /** Treatment of the catalogue whose wait it is; null for a look and for a step in own words. */
  readonly treatment: string | null;
  /** A step's own words; empty otherwise. */
  readonly words: string;
}

/** A wait that runs, or is over and not followed up: drying, glue, a finish. Comes from the steps of the bench. */
export interface RunningWait {
  readonly id: string;
  readonly blockId: string;
  /** Null for a step in the owner's own words. */
  readonly treatment: string | null;
  readonly words: string;
  /** UTC, RFC 3339. */
  readonly until: string;
}

export interface DueFacts {
  readonly quarantines: readonly QuarantineFacts[];
  readonly freezing: readonly ColdStageFacts[];
  readonly waits: readonly RunningWait[];
}

/** Where the owner stands in time: the day on the wall, and the moment. */
export interface Now {
  /** `YYYY-MM-DD`. */
  readonly today: string;
  /** Unix milliseconds. */
  readonly ms: number;
}

/** First what a day or a moment means for the order: a day counts from its beginning, in universal time. */
const orderOf = (at: DueAt): string => ('day' in at ? at.day : at.instant);

/**
 * Everything that falls due on these blocks, soonest first: looks at blocks in quarantine that were not yet taken, ends
 * of freezing, thawing and warming up, ends of waits. What was left, ended or done is not in it.
 * Pure: same facts, same list, whatever their order.
 */
export function dueList({ quarantines, freezing, waits }: DueFacts, now: Now): readonly Due[] {
  const looks = quarantines.flatMap((facts): Due[] => {
    const open = courseOf(facts, now.today).looks.filter(({ taken }) => !taken);
    // Of several that were missed the last says it all: one look makes up for them.
    const missed = open.filter(({ on }) => on < now.today).at(-1);
    return open
      .filter((look) => look.on >= now.today || look === missed)
      .map(({ number, on, last }) => ({
        key: `${facts.id}-look-${number}`,
        blockId: facts.blockId,
        kind: last ? 'lastLook' : 'look',
        at: { day: on },
        late: on < now.today,
        treatment: null,
        words: '',
      }));
  });
  const cold = freezing.flatMap((facts): Due[] => {
    const ends = stageEnds(facts);
    if (!ends) return [];
    return [
      {
        key: `${facts.id}-ends`,
        blockId: facts.blockId,
        kind: ends.kind,
        at: { instant: ends.at },
        late: Date.parse(ends.at) <= now.ms,
        treatment: ends.kind === 'warmUpEnds' ? 'warmUp' : 'freeze',
        words: '',
      },
    ];
  });
  const over = waits.map(
    ({ id, blockId, treatment, words, until }): Due => ({
      key: `${id}-ends`,
      blockId,
      kind: 'waitEnds',
      at: { instant: until },
      late: Date.parse(until) <= now.ms,
      treatment,
      words,
    }),
  );
  return [...looks, ...cold, ...over].sort((a, b) => {
    const [first, second] = [orderOf(a.at), orderOf(b.at)];
    return first < second || (first === second && a.key < b.key) ? -1 : 1;
  });
}

/** The same list with one look a block, the soonest: what one has to know now, without the year of looks behind it. */
export function soonestOf(dues: readonly Due[]): readonly Due[] {
  const looked = new Set<string>();
  return dues.filter(({ kind, blockId }) => {
    if (kind !== 'look' && kind !== 'lastLook') return true;
    if (looked.has(blockId)) return false;
    looked.add(blockId);
    return true;
  });
}
