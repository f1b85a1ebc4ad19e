import { blank } from '../../core/blank.ts';
import { type Catalogue, entry } from '../../core/catalogue.ts';
import type { AnyRecord, Fields, RecordOf, RecordType } from '../../core/records.ts';

/** Fields kept back from an archive that is handed on, for each type of record that goes into one at all. */
type Withheld = {
  readonly [T in RecordType]?: (record: RecordOf<T>, catalogue: Catalogue) => readonly (keyof Fields<T>)[];
};

/**
 * A type that is not here stays at home: offers, hours, own settings, and whatever is added later until somebody says
 * otherwise. Notes are free text and do go out; the screen says so.
 */
const WITHHELD: Withheld = {
  block: () => [
    ...(['priceAsked', 'newPrice', 'equalUsedPrice', 'fallbackPrice'] as const),
    ...(['hatsPerYear', 'marginPerHat', 'blockShare'] as const),
  ],
  survey: () => [],
  finding: () => [],
  mark: ({ kind }, catalogue) => (entry(catalogue.marks, kind)?.mayBePersonal ? ['text'] : []),
  statement: ({ partyIsPrivate }) => (partyIsPrivate ? ['party', 'place'] : []),
  photo: () => ['position', 'original'],
  photoMark: () => [],
  alignment: () => [],
  sale: ({ sellerIsPrivate }) => [
    ...(sellerIsPrivate ? (['seller', 'place'] as const) : []),
    ...(['diligence', 'terms', 'budget', 'hoursToSpare', 'neededBy', 'note'] as const),
  ],
};

/**
 * A record as it may be handed on, or null when its type stays at home or it was removed. What is kept back is blank and
 * has no stamp, as if nobody had ever said it: brought in where the record is known, it overwrites nothing.
 */
export function forOthers<R extends AnyRecord>(record: R, catalogue: Catalogue): R | null {
  const fieldsOf = WITHHELD[record.type] as ((of: R, catalogue: Catalogue) => readonly string[]) | undefined;
  if (!fieldsOf || record.deleted !== null) return null;
  const fields = fieldsOf(record, catalogue);
  if (fields.length === 0) return record;
  const empty: Readonly<Record<string, unknown>> = blank[record.type];
  const stamps = Object.entries(record.stamps).filter(([path]) => !fields.includes(path.split('.')[0] ?? ''));
  return {
    ...record,
    ...Object.fromEntries(fields.map((field) => [field, empty[field]])),
    stamps: Object.fromEntries(stamps),
  };
}
