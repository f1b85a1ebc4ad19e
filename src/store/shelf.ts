import { batch, computed, type ReadonlySignal, type Signal, signal } from '@preact/signals';
import { type AnyRecord, RECORDS, type RecordOf, type RecordType } from '../core/records.ts';

type Order = (a: never, b: never) => number;
const byText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** How records of a type are listed; ids (which carry the time of their making) decide the rest. */
const ORDER: { readonly [T in RecordType]?: (a: RecordOf<T>, b: RecordOf<T>) => number } = {
  survey: (a, b) => Date.parse(a.begun) - Date.parse(b.begun),
  finding: (a, b) => a.number - b.number,
  statement: (a, b) => a.position - b.position,
  offer: (a, b) => Date.parse(a.at) - Date.parse(b.at),
  stint: (a, b) => Date.parse(a.began) - Date.parse(b.began),
  quarantine: (a, b) => byText(a.begunOn, b.begunOn),
  quarantineCheck: (a, b) => byText(a.on, b.on),
  coldStage: (a, b) => a.round - b.round || a.step - b.step,
  expense: (a, b) => byText(a.on, b.on),
};

/** Fields by which a record goes with another when that is removed. */
export const PART_OF = ['blockId', 'surveyId', 'photoId', 'beforeId', 'afterId', 'quarantineId'] as const;
/** Those, and the ones by which it is only listed. */
const OWNED_BY = [...PART_OF, 'findingId', 'saleId', 'lotId', 'stepId'] as const;
type Owned = { readonly [id in (typeof OWNED_BY)[number]]?: string | null };

/** The records a record belongs to: its block, survey, finding, photographs, sale, step of the work. */
function ownersOf(record: AnyRecord): string[] {
  const owners: string[] = [];
  for (const field of OWNED_BY) {
    const id = (record as Owned)[field];
    if (typeof id === 'string') owners.push(id);
  }
  return owners;
}

const goesWith = (part: AnyRecord, id: string): boolean =>
  PART_OF.some((field) => (part as Owned)[field] === id) ||
  ((part.type === 'block' || part.type === 'lot') && part.example && part.saleId === id);

interface Cell<T> {
  readonly version: Signal<number>;
  readonly list: ReadonlySignal<readonly T[]>;
}

/** All records in memory, indexed so that a look-up costs what it returns, and signalled so that only its readers wake. */
export interface Shelf {
  /** Any record, removed ones included; not tracked by signals. */
  find(id: string): AnyRecord | undefined;
  /** Every record, removed ones included; not tracked by signals. */
  everything(): Iterable<AnyRecord>;
  put(records: Iterable<AnyRecord>): void;
  /** Live records that go with a record when it is removed: everything of a block, the findings of a survey, the marks on a photograph and how it was lined up, the blocks and job lots of the example sale. */
  partsOf(id: string): readonly AnyRecord[];
  /** Live records of a type by id. Copied when read after a change of that type: for lists, not for look-ups. */
  readonly records: { readonly [T in RecordType]: ReadonlySignal<ReadonlyMap<string, RecordOf<T>>> };
  /** A live record; tracked. */
  get<T extends RecordType>(type: T, id: string): RecordOf<T> | undefined;
  /** Live records of a type that belong to another, in their order; tracked. The same array until one changes. */
  listed<T extends RecordType>(type: T, ownerId: string): readonly RecordOf<T>[];
  /** Highest number ever given to a finding of a block, removed ones included. */
  highestNumber(blockId: string): number;
}

export function createShelf(): Shelf {
  const types = Object.keys(RECORDS) as RecordType[];
  const known = new Map<string, AnyRecord>();
  const live = new Map(types.map((type) => [type, new Map<string, AnyRecord>()]));
  const versions = new Map(types.map((type) => [type, signal(0)]));
  const singles = new Map<string, Signal<AnyRecord | undefined>>();
  const members = new Map<string, Set<string>>();
  const cells = new Map<string, Cell<AnyRecord>>();
  const numbers = new Map<string, number>();

  const groupsOf = (record: AnyRecord | undefined): string[] =>
    record && record.deleted === null ? ownersOf(record).map((owner) => `${record.type} ${owner}`) : [];

  function cell(type: RecordType, group: string): Cell<AnyRecord> {
    const found = cells.get(group);
    if (found) return found;
    const version = signal(0);
    const order = ORDER[type] as Order | undefined;
    const list = computed(() => {
      version.value;
      const records = [...(members.get(group) ?? [])].map((id) => known.get(id) as AnyRecord);
      return records.sort((a, b) => order?.(a as never, b as never) || byText(a.id, b.id));
    });
    const made = { version, list };
    cells.set(group, made);
    return made;
  }

  function put(record: AnyRecord): void {
    const before = known.get(record.id);
    if (before === record) return;
    known.set(record.id, record);
    const table = live.get(record.type);
    if (record.deleted === null) table?.set(record.id, record);
    else table?.delete(record.id);
    if (record.type === 'finding') {
      numbers.set(record.blockId, Math.max(numbers.get(record.blockId) ?? 0, record.number));
    }
    const left = groupsOf(before);
    const joined = groupsOf(record);
    for (const group of left) if (!joined.includes(group)) members.get(group)?.delete(record.id);
    for (const group of joined) {
      const ids = members.get(group);
      if (ids) ids.add(record.id);
      else members.set(group, new Set([record.id]));
    }
    for (const group of [...left, ...joined]) {
      const touched = cells.get(group);
      if (touched) touched.version.value += 1;
    }
    const single = singles.get(record.id);
    if (single) single.value = record.deleted === null ? record : undefined;
    const version = versions.get(record.type);
    if (version) version.value += 1;
  }

  const records = Object.fromEntries(
    types.map((type) => [
      type,
      computed(() => {
        versions.get(type)?.value;
        return new Map(live.get(type));
      }),
    ]),
  ) as unknown as Shelf['records'];

  return {
    records,
    find: (id) => known.get(id),
    everything: () => known.values(),
    partsOf(id) {
      const parts = types.flatMap((type) => [...(members.get(`${type} ${id}`) ?? [])].map((part) => known.get(part)));
      return parts.filter((part) => part !== undefined && goesWith(part, id)) as AnyRecord[];
    },
    put(incoming) {
      batch(() => {
        for (const record of incoming) put(record);
      });
    },
    get<T extends RecordType>(type: T, id: string) {
      let single = singles.get(id);
      if (!single) {
        const record = known.get(id);
        single = signal(record?.deleted === null ? record : undefined);
        singles.set(id, single);
      }
      const record = single.value;
      return record?.type === type ? (record as RecordOf<T>) : undefined;
    },
    listed: <T extends RecordType>(type: T, ownerId: string) =>
      cell(type, `${type} ${ownerId}`).list.value as unknown as readonly RecordOf<T>[],
    highestNumber: (blockId) => numbers.get(blockId) ?? 0,
  };
}
