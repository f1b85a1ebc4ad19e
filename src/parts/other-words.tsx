import type { ComponentChildren } from 'preact';
import { isMapField } from '../core/changes.ts';
import { type LostWords, otherWordsIn, wordsAt } from '../core/merge-words.ts';
import type { AnyRecord } from '../core/records.ts';
import { type Edit, putAway } from '../store/edits.ts';
import { useApp } from '../ui/app.ts';
import { Button } from '../ui/button.tsx';
import css from './other-words.module.css';

/** New words at a path, also in a map field: `diligence.seen`. */
function written({ id, type }: AnyRecord, path: string, text: string): Edit {
  const [field = '', key] = isMapField(type, path.split('.')[0] ?? '') ? path.split('.') : [path];
  return { do: 'set', type, id, patch: { [field]: key === undefined ? text : { [key]: text } } };
}

/** What can be done with words that lie beside others: put in their place, added to them, put away. Each can be undone. */
export function useWordChoice(record: AnyRecord, { path, at, text }: LostWords): ComponentChildren {
  const { store } = useApp();
  const away = putAway(record.id, path, at);
  const change = (label: string, ...edits: Edit[]): void => {
    store.change(label, edits).catch(() => undefined);
  };
  const both = `${wordsAt(record, path)}\n${text}`;
  return (
    <>
      <Button onPress={() => change('choosing the other words', written(record, path, text), away)}>Use these</Button>
      {path === 'note' && (
        <Button onPress={() => change('adding the other words', written(record, path, both), away)}>Add below</Button>
      )}
      <Button onPress={() => change('putting words away', away)}>Put away</Button>
    </>
  );
}

/** Under a field: what another phone wrote in it without knowing of these words. Nothing where there is nothing. */
export function OtherWords({ record, path }: { readonly record: AnyRecord; readonly path: string }) {
  return (
    <>
      {otherWordsIn(record, path).map((lost) => (
        <Lost key={lost.at} record={record} lost={lost} />
      ))}
    </>
  );
}

function Lost({ record, lost }: { readonly record: AnyRecord; readonly lost: LostWords }) {
  const ways = useWordChoice(record, lost);
  return (
    <section class={css.lost} aria-label="Written on another phone">
      <p>Also written, on another phone:</p>
      <blockquote>{lost.text}</blockquote>
      <div class={css.ways}>{ways}</div>
    </section>
  );
}
