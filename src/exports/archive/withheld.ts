import { blank } from '../../core/blank.ts';
import { type Catalogue, entry } from '../../core/catalogue.ts';
import { isEnvelope } from '../../core/changes.ts';
import { isTextPath } from '../../core/merge-words.ts';
import type { AnyRecord, Fields, RecordOf, RecordType } from '../../core/records.ts';
import { anyOf, isTelling, wordsOfName } from '../../text/private-names.ts';

/** Fields of a record that go into an archive for others, for each type that goes into one at all. */
type GoingOut = {
  readonly [T in RecordType]?: (record: RecordOf<T>, catalogue: Catalogue) => readonly (keyof Fields<T>)[];
};

/**
 * A list of what goes, not of what stays: a type or field added later stays at home until somebody says otherwise. So do
 * prices, offers, hours, the owner's settings, a camera file and where it was taken, and the names that are private.
 */
const GOES: GoingOut = {
  block: () => [
    ...(['name', 'objectNumber', 'blockType', 'materials', 'saleId', 'partsFound', 'partsExpected'] as const),
    ...(['shapeValue', 'copyable', 'currency', 'coverPhotoId', 'made', 'maker', 'note', 'example'] as const),
  ],
  survey: () => [
    ...(['blockId', 'stage', 'reason', 'surveyor', 'begun', 'noneSeen', 'stationsDone', 'measures', 'note'] as const),
  ],
  finding: () => [
    ...(['blockId', 'surveyId', 'number', 'kind', 'zone', 'part', 'at', 'answers'] as const),
    ...(['gradeByHand', 'gradeReason', 'note'] as const),
  ],
  mark: ({ kind }, catalogue) => [
    ...(['blockId', 'kind', 'zone', 'reading', 'keep', 'note'] as const),
    ...((entry(catalogue.marks, kind)?.mayBePersonal ?? true) ? [] : (['text'] as const)),
  ],
  statement: ({ partyIsPrivate }) => [
    ...(['blockId', 'position', 'transfer', 'partyIsPrivate', 'when', 'certainty', 'evidence'] as const),
    ...(['direct', 'note'] as const),
    ...(partyIsPrivate ? [] : (['party', 'place'] as const)),
  ],
  photo: () => [
    ...(['blockId', 'findingId', 'view', 'stage', 'sha256', 'bytes', 'mime', 'width', 'height'] as const),
    ...(['thumbnail', 'taken', 'focal35', 'scale', 'caption'] as const),
  ],
  photoMark: () => ['blockId', 'photoId', 'findingId', 'shape', 'points', 'text', 'measured'],
  alignment: () => ['blockId', 'beforeId', 'afterId', 'h', 'agreement', 'method', 'taps', 'version'],
  sale: ({ sellerIsPrivate }) => [
    ...(['title', 'when', 'channel', 'sellerIsPrivate', 'currency', 'example'] as const),
    ...(sellerIsPrivate ? [] : (['seller', 'place'] as const)),
  ],
};

/** Whether a text says what must not be said. */
export type SaysPrivate = (text: string) => boolean;

/**
 * Finds what must not be said anywhere: sellers and owners marked as private and their places, marks that name people; a
 * name as a whole and by each of its words. Null when there is nobody. What was never recorded as private cannot be known.
 */
export function privateNames(records: readonly AnyRecord[], catalogue: Catalogue): SaysPrivate | null {
  const names: string[] = [];
  const places: string[] = [];
  for (const record of records) {
    if (record.type === 'sale' && record.sellerIsPrivate) names.push(record.seller);
    if (record.type === 'sale' && record.sellerIsPrivate) places.push(record.place);
    if (record.type === 'statement' && record.partyIsPrivate) names.push(record.party);
    if (record.type === 'statement' && record.partyIsPrivate) places.push(record.place);
    if (record.type === 'mark' && (entry(catalogue.marks, record.kind)?.mayBePersonal ?? true)) names.push(record.text);
  }
  const words = names.flatMap(wordsOfName);
  const rules = [
    anyOf([...names, ...places, ...words.filter(({ length }) => length > 3)], 'iu'),
    // “Kit” is a name, “kit” is none.
    anyOf(words.filter(isTelling), 'u'),
  ].filter((rule) => rule !== null);
  return rules.length === 0 ? null : (text) => rules.some((rule) => rule.test(text));
}

/** Fields with words in them besides those of `TEXT_FIELDS`. */
const OTHER_TEXTS: readonly string[] = ['evidence', 'made', 'when'];
const isText = (type: RecordType, field: string): boolean => isTextPath(type, field) || OTHER_TEXTS.includes(field);

const says = (value: unknown, names: SaysPrivate | null): boolean =>
  typeof value === 'string'
    ? (names?.(value) ?? false)
    : typeof value === 'object' && value !== null && Object.values(value).some((one) => says(one, names));

/**
 * A record as it may be handed on, or null when its type stays at home or it was removed. What is kept back is blank and
 * has no stamp, as if nobody had ever said it: brought in where the record is known, it overwrites nothing. A text that
 * names somebody private is kept back whole.
 */
export function forOthers<R extends AnyRecord>(record: R, names: SaysPrivate | null, catalogue: Catalogue): R | null {
  const fieldsOf = GOES[record.type] as ((of: R, catalogue: Catalogue) => readonly string[]) | undefined;
  if (!fieldsOf || record.deleted !== null) return null;
  const going = new Set(fieldsOf(record, catalogue));
  const empty: Readonly<Record<string, unknown>> = blank[record.type];
  const out: [string, unknown][] = [];
  const back = new Set<string>();
  for (const [field, value] of Object.entries(record)) {
    if (isEnvelope(field)) continue;
    const texts =
      record.otherWords && Object.entries(record.otherWords).filter(([path]) => path.split('.')[0] === field);
    if (going.has(field) && !(isText(record.type, field) && says([value, texts], names))) out.push([field, value]);
    else {
      back.add(field);
      if (Object.hasOwn(empty, field) && empty[field] !== undefined) out.push([field, empty[field]]);
    }
  }
  const paths = <T>(of: Readonly<Record<string, T>>): Record<string, T> =>
    Object.fromEntries(Object.entries(of).filter(([path]) => !back.has(path.split('.')[0] ?? '')));
  const { id, type, schema, device, stamps, otherWords } = record;
  return {
    ...Object.fromEntries(out),
    ...{ id, type, schema, device, deleted: null },
    stamps: paths(stamps),
    ...(otherWords ? { otherWords: paths(otherWords) } : {}),
  } as unknown as R;
}
