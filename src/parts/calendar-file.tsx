import { useEffect, useState } from 'preact/hooks';
import { remindersFor } from '../core/reminders.ts';
import { CALENDAR_MIME, calendarFile } from '../exports/calendar.ts';
import { dayHere } from '../text/days.ts';
import { dueWords } from '../text/due.ts';
import { sentenceOf } from '../text/errors.ts';
import { useApp } from '../ui/app.ts';
import { Button } from '../ui/button.tsx';
import { blockName } from './block-name.ts';
import css from './calendar-file.module.css';
import { useQuarantineActions } from './quarantine-actions.ts';
import { ReadyFile } from './ready-file.tsx';
import { useDues } from './use-dues.ts';

type State =
  | { readonly at: 'start' }
  | { readonly at: 'nothing' }
  | { readonly at: 'ready'; readonly file: File; readonly said: string }
  | { readonly at: 'failed'; readonly error: unknown };

/** An id of ours is no address; `.invalid` says so. SOURCE: RFC 2606 for the name, RFC 5545, 3.8.4.7 for the form. */
const uidOf = (key: string): string => `${key}@blockworth.invalid`;

/**
 * What falls due as a file for the phone's own calendar, which can ring; an app in a browser cannot.
 * @param blockId one block; all of them without it
 */
export function CalendarFile({ blockId }: { readonly blockId?: string }) {
  const { store, catalogue, now } = useApp();
  const actions = useQuarantineActions();
  const dues = useDues(blockId);
  const [state, setState] = useState<State>({ at: 'start' });
  // A file that was prepared says what fell due then.
  useEffect(() => setState({ at: 'start' }), [JSON.stringify(dues)]);

  function prepare(): void {
    const ms = now();
    const named = dues.map((due) => {
      const block = store.get('block', due.blockId);
      return { ...due, words: dueWords(due, block ? blockName(block, catalogue) : 'A block', catalogue).title };
    });
    const written = store.all('reminder').value.filter(({ forBlockId }) => !blockId || forBlockId === blockId);
    const planned = remindersFor(named, written, { today: dayHere(ms), ms });
    if (planned.length === 0) {
      setState({ at: 'nothing' });
      return;
    }
    const what = new Map(dues.map((due) => [due.key, dueWords(due, '', catalogue).what]));
    const text = calendarFile(
      planned.map(({ key, start, words, sequence, cancelled }) => ({
        uid: uidOf(key),
        ...{ start, sequence, cancelled },
        summary: words,
        description: cancelled ? 'No longer due.' : (what.get(key) ?? ''),
      })),
      ms,
    );
    const file = new File([text], `blockworth-reminders-${dayHere(ms)}.ics`, { type: CALENDAR_MIME });
    actions.keepReminders(planned);
    const gone = planned.filter(({ cancelled }) => cancelled).length;
    const counts = [
      `${planned.length - gone} ${planned.length - gone === 1 ? 'day or hour' : 'days and hours'}`,
      ...(gone > 0 ? [`${gone} taken out again`] : []),
    ];
    setState({ at: 'ready', file, said: `${file.name} is ready: ${counts.join(', ')}.` });
  }

  if (state.at === 'ready') {
    return (
      <ReadyFile
        file={state.file}
        said={state.said}
        saved="Handed to the browser to save. Open it, and the calendar takes it in."
        onFail={(error) => setState({ at: 'failed', error })}
      />
    );
  }
  return (
    <div class={css.file}>
      {state.at === 'failed' && <p role="alert">{sentenceOf(state.error)}</p>}
      {state.at === 'nothing' && <p role="status">Nothing falls due: there is nothing for the calendar.</p>}
      <Button onPress={prepare}>Prepare a calendar file</Button>
      <p class={css.hint}>
        For the phone’s own calendar, which rings. When something changes, take a new file in: it moves the same entries
        and takes out what is no longer due.
      </p>
    </div>
  );
}
