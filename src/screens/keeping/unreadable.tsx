import { saveFile } from '../../parts/save-file.ts';
import type { Unreadable as UnreadableRecord } from '../../store/repository.ts';
import { Button } from '../../ui/button.tsx';
import css from './keeping.module.css';

const stateWords: Record<UnreadableRecord['state'], string> = {
  'too-new': 'Written by a newer Blockworth: update the app to see it.',
  unreadable: 'Damaged: restore a backup that has it.',
};

/** Storage can hold what JSON cannot say: large integers go out as text, bytes by their number. */
function asJson(_: string, value: unknown): unknown {
  if (typeof value === 'bigint') return `${value}n`;
  return value instanceof ArrayBuffer ? `${value.byteLength} bytes` : value;
}

const typeOf = ({ raw }: UnreadableRecord): string =>
  String((raw as { type?: unknown } | null)?.type ?? 'unknown type');

/** Records this app cannot read. Nothing of them is changed or deleted; they can be taken out as they are. */
export function Unreadable({ records }: { readonly records: readonly UnreadableRecord[] }) {
  const save = (): void =>
    saveFile(
      new Blob([JSON.stringify(records, asJson, 2)], { type: 'application/json' }),
      'blockworth-unread-records.json',
    );
  return (
    <>
      <p>They are kept as they are and take no part in anything.</p>
      <ul class={css.unread}>
        {records.map((record, index) => (
          <li key={record.id || index}>
            <b>{typeOf(record)}</b> <span class={css.id}>{record.id || 'without an id'}</span>
            <p>
              {stateWords[record.state]} <span class={css.hint}>({record.why})</span>
            </p>
          </li>
        ))}
      </ul>
      <Button onPress={save}>Save them to a file</Button>
    </>
  );
}
