import type { Catalogue } from '../../core/catalogue.ts';
import { type LostWords, otherWordsIn, type TEXT_FIELDS, wordsAt } from '../../core/merge-words.ts';
import type { AnyRecord } from '../../core/records.ts';
import { blockName } from '../../parts/block-name.ts';
import { useWordChoice } from '../../parts/other-words.tsx';
import { useApp } from '../../ui/app.ts';
import { to } from '../../ui/route.ts';
import css from './keeping.module.css';

interface Twice {
  readonly record: AnyRecord;
  readonly words: LostWords;
}

/** All words that lie beside others, of every live record. */
export function useKeptTwice(): readonly Twice[] {
  const { store } = useApp();
  const found: Twice[] = [];
  for (const table of Object.values(store.records)) {
    for (const record of (table.value as ReadonlyMap<string, AnyRecord>).values()) {
      if (record.otherWords) found.push(...otherWordsIn(record).map((words) => ({ record, words })));
    }
  }
  return found;
}

const typeWords = {
  block: 'Block',
  survey: 'Survey',
  finding: 'Finding',
  mark: 'Mark',
  statement: 'Story',
  photo: 'Photograph',
  photoMark: 'Mark on a photograph',
  sale: 'Sale',
  lot: 'Job lot',
  offer: 'Offer',
  job: 'Work',
  step: 'Step of the work',
  quarantine: 'Quarantine',
  quarantineCheck: 'Look in quarantine',
  coldStage: 'Freezing',
  reminder: 'Reminder',
  readyCheck: 'Check before use',
  expense: 'Money spent',
  settings: 'You',
} as const satisfies Record<keyof typeof TEXT_FIELDS, string>;

/** How a field is called where its name says too little. */
const fieldWords: Readonly<Record<string, string>> = {
  objectNumber: 'number',
  gradeReason: 'reason for the grade',
  ownerName: 'name',
  photoRights: 'rights in photographs',
};

function fieldOf(path: string, { dueDiligence }: Catalogue): string {
  const [field = '', key] = path.split('.');
  if (field === 'diligence') return dueDiligence.find(({ id }) => id === key)?.ask ?? 'asked about';
  return fieldWords[field] ?? field;
}

/** Two phones wrote in one place without knowing of each other: both texts, until one is chosen or put away. */
export function KeptTwice({ words }: { readonly words: readonly Twice[] }) {
  return (
    <>
      <p class={css.hint}>
        Written on two phones apart. The later words stand in the record; these stood on the other.
      </p>
      <ul class={css.twice}>
        {words.map(({ record, words: lost }) => (
          <li key={`${record.id} ${lost.path} ${lost.at}`}>
            <Where record={record} path={lost.path} />
            <p>Stands now:</p>
            <blockquote>{wordsAt(record, lost.path) || '(nothing)'}</blockquote>
            <p>Also written:</p>
            <blockquote>{lost.text}</blockquote>
            <Ways record={record} lost={lost} />
          </li>
        ))}
      </ul>
    </>
  );
}

function Where({ record, path }: { readonly record: AnyRecord; readonly path: string }) {
  const { store, catalogue } = useApp();
  const blockId = record.type === 'block' ? record.id : 'blockId' in record ? (record.blockId ?? undefined) : undefined;
  const block = blockId === undefined ? undefined : store.get('block', blockId);
  const words: Readonly<Record<string, string>> = typeWords;
  return (
    <p>
      <b>
        {words[record.type] ?? 'Record'}, {fieldOf(path, catalogue)}
      </b>
      {block && (
        <>
          {' · '}
          <a href={to('/block/:id', { id: block.id })}>{blockName(block, catalogue)}</a>
        </>
      )}
      {record.type === 'sale' && (
        <>
          {' · '}
          <a href={to('/sale/:id', { id: record.id })}>{record.title || 'Sale without a name'}</a>
        </>
      )}
    </p>
  );
}

function Ways({ record, lost }: { readonly record: AnyRecord; readonly lost: LostWords }) {
  const ways = useWordChoice(record, lost);
  return <div class={css.ways}>{ways}</div>;
}
