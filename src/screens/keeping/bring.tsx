import { useEffect, useRef } from 'preact/hooks';
import type { StillOut } from '../../imports/journal.ts';
import type { TakeInStep, TakenIn } from '../../imports/take-in.ts';
import { bringWorkOf } from '../../parts/bring-work.ts';
import { importNotesOf } from '../../parts/import-notes.ts';
import { howLongAgo } from '../../text/ages.ts';
import { sentenceOf } from '../../text/errors.ts';
import { opening } from '../../text/format.ts';
import { useApp } from '../../ui/app.ts';
import { Button } from '../../ui/button.tsx';
import css from './keeping.module.css';
import { PassphraseForm } from './passphrase-field.tsx';
import { PreviewOf } from './preview-of.tsx';
import { filesNamed } from './volume-words.ts';

/** The way in: a backup of this phone or another's file; looked at first, then joined with what is here. */
export function Bring() {
  const { store, now } = useApp();
  const bring = bringWorkOf({ store, now });
  const notes = importNotesOf(store);
  useEffect(() => {
    bring.arrive();
    return bring.leave;
  }, [bring]);
  const state = bring.state.value;
  const cutOff = notes.cutOff.value;
  const isOpen = state.at === 'start' || state.at === 'failed' || state.at === 'done';
  return (
    <div class={css.stack}>
      {cutOff && isOpen && (
        <div class={css.alert} role="alert">
          <p>
            Taking in a file of {howLongAgo(Date.parse(cutOff.made), now())} was cut off. Choose the same file again to
            finish: nothing is lost or doubled.
          </p>
          <Button look="quiet" onPress={() => void notes.forgetCutOff()}>
            Leave it at that
          </Button>
        </div>
      )}
      {state.at === 'failed' && (
        <p role="alert" class={css.alert}>
          {sentenceOf(state.error)}
        </p>
      )}
      {state.at === 'done' && <Done taken={state.taken} />}
      {isOpen && <StillMissing of={notes.stillOut.value} onForget={() => void notes.forgetStillOut()} />}
      {isOpen && <ChooseFiles onChosen={bring.open} />}
      {state.at === 'reading' && (
        <>
          <p role="status">Reading and checking the file…</p>
          <Button wide onPress={bring.putAway}>
            Stop
          </Button>
        </>
      )}
      {state.at === 'locked' && (
        <Locked isWrong={state.isWrong} onOpen={(typed) => bring.open(state.files, typed)} onClose={bring.putAway} />
      )}
      {state.at === 'preview' && (
        <PreviewOf
          archive={state.archive}
          preview={state.preview}
          stillOut={state.stillOut}
          onTake={(blocks) => bring.take(state.archive, blocks)}
          onClose={bring.putAway}
        />
      )}
      {state.at === 'taking' && <Taking step={state.step} stop={bring.stop} />}
    </div>
  );
}

/** What earlier imports left out, until the files that have it are taken in too. */
function StillMissing({ of, onForget }: { readonly of: readonly StillOut[]; readonly onForget: () => void }) {
  const { now } = useApp();
  if (of.length === 0) return null;
  return (
    <div class={css.caution} role="note">
      <p>
        <b>Not all files of a backup are in yet.</b>
      </p>
      <ul>
        {of.map(({ group, made, of: all, volumes, pictures }) => (
          <li key={group}>
            {filesNamed(volumes, all)} made {howLongAgo(Date.parse(made), now())}:{' '}
            {counted(pictures, 'photograph is', 'photographs are')} missing until{' '}
            {volumes.length === 1 ? 'it is' : 'they are'} taken in.
          </li>
        ))}
      </ul>
      <Button look="quiet" onPress={onForget}>
        Leave it at that
      </Button>
    </div>
  );
}

function ChooseFiles({ onChosen }: { readonly onChosen: (files: readonly File[]) => void }) {
  const input = useRef<HTMLInputElement>(null);
  return (
    <>
      <p>
        What is in the file is joined with what is here, the later change counting; nothing here is lost. You see what
        would change before anything does.
      </p>
      <Button wide onPress={() => input.current?.click()}>
        Choose a backup file
      </Button>
      <p class={css.hint}>
        Ends in .zip or .zip.age. Of a backup in several files choose all at once, or one after another.
      </p>
      <input
        ref={input}
        type="file"
        hidden
        multiple
        accept=".zip,.age,application/zip"
        onChange={({ currentTarget }) => {
          const files = Array.from(currentTarget.files ?? []);
          // Otherwise choosing the same file again would say nothing.
          currentTarget.value = '';
          onChosen(files);
        }}
      />
    </>
  );
}

function Locked({
  isWrong,
  onOpen,
  onClose,
}: {
  readonly isWrong: boolean;
  readonly onOpen: (passphrase: string) => void;
  readonly onClose: () => void;
}) {
  return (
    <PassphraseForm action="Open it" onTyped={onOpen} beside={<Button onPress={onClose}>Leave it</Button>}>
      <p role={isWrong ? 'alert' : 'status'}>
        {isWrong ? 'This passphrase does not open the file. Nothing was changed; try again.' : 'This file is locked.'}
      </p>
    </PassphraseForm>
  );
}

function Taking({ step, stop }: { readonly step: TakeInStep | null; readonly stop: () => void }) {
  const { stage, done = 0, of = 0 } = step ?? {};
  const isRecords = stage === 'records';
  return (
    <>
      <p class="visually-hidden" role="status">
        Taking the file in.
      </p>
      <p class="figures">
        {of === 0 ? 'Beginning…' : isRecords ? `Record ${done} of ${of}…` : `Photograph ${done} of ${of}…`}
      </p>
      <progress value={of > 0 ? done : undefined} max={of || 1} aria-label="Taken in" />
      <p class={css.hint}>It goes on while you look at other screens, as long as Blockworth stays open.</p>
      {!isRecords && (
        <Button wide onPress={stop}>
          Stop, and leave everything as it was
        </Button>
      )}
    </>
  );
}

const counted = (count: number, one: string, many: string): string => (count === 1 ? `one ${one}` : `${count} ${many}`);

function Done({ taken }: { readonly taken: TakenIn }) {
  const { changed, pictures, missingPictures, stillOut } = taken;
  const nowhere = missingPictures - stillOut.pictures;
  return (
    <div class={css.good} role="status">
      <p>
        {changed + pictures === 0
          ? 'Everything in it was here already; nothing changed.'
          : `Taken in: ${counted(changed, 'record', 'records')} and ${counted(pictures, 'photograph', 'photographs')}.${changed > 0 ? ' One tap on Undo takes the records back.' : ''}`}
      </p>
      {nowhere > 0 && (
        <p>
          {opening(counted(nowhere, 'photograph is', 'photographs are'))} in none of its files: the phone that made them
          did not have {nowhere === 1 ? 'it' : 'them'}.
        </p>
      )}
    </div>
  );
}
