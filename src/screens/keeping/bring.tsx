import { useRef, useState } from 'preact/hooks';
import type { TakeInStep } from '../../imports/take-in.ts';
import { howLongAgo } from '../../text/ages.ts';
import { sentenceOf } from '../../text/errors.ts';
import { useApp } from '../../ui/app.ts';
import { Button } from '../../ui/button.tsx';
import css from './keeping.module.css';
import { PassphraseField } from './passphrase-field.tsx';
import { PreviewOf } from './preview-of.tsx';
import { type BringState, useBring } from './use-bring.ts';

/** The way in: a backup of this phone or another's file; looked at first, then joined with what is here. */
export function Bring() {
  const bring = useBring();
  const { state, cutOff } = bring;
  const { now } = useApp();
  return (
    <div class={css.stack}>
      {cutOff && state.at !== 'taking' && state.at !== 'done' && (
        <div class={css.alert} role="alert">
          <p>
            Taking in a file of {howLongAgo(Date.parse(cutOff.made), now())} was cut off. Choose the same file again to
            finish: nothing is lost or doubled.
          </p>
          <Button look="quiet" onPress={() => void bring.forget()}>
            Leave it at that
          </Button>
        </div>
      )}
      {state.at === 'failed' && (
        <p role="alert" class={css.alert}>
          {sentenceOf(state.error)}
        </p>
      )}
      {state.at === 'done' && <Done state={state} />}
      {(state.at === 'start' || state.at === 'failed' || state.at === 'done') && <ChooseFiles onChosen={bring.open} />}
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
          onTake={(blocks) => bring.take(state.archive, blocks)}
          onClose={bring.putAway}
        />
      )}
      {state.at === 'taking' && <Taking step={state.step} stop={bring.stop} />}
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
  const [typed, setTyped] = useState('');
  return (
    <form
      class={css.stack}
      onSubmit={(event) => {
        event.preventDefault();
        onOpen(typed);
      }}
    >
      <p role={isWrong ? 'alert' : 'status'}>
        {isWrong ? 'This passphrase does not open the file. Nothing was changed; try again.' : 'This file is locked.'}
      </p>
      <PassphraseField label="Its passphrase" value={typed} onChange={setTyped} />
      <div class={css.ways}>
        <Button type="submit" look="main" disabled={typed === ''}>
          Open it
        </Button>
        <Button onPress={onClose}>Leave it</Button>
      </div>
    </form>
  );
}

function Taking({ step, stop }: { readonly step: TakeInStep | null; readonly stop: () => void }) {
  const { stage, done = 0, of = 0 } = step ?? {};
  const isRecords = stage === 'records';
  return (
    <>
      <p role="status" class="figures">
        {of === 0 ? 'Beginning…' : isRecords ? `Record ${done} of ${of}…` : `Photograph ${done} of ${of}…`}
      </p>
      <progress value={of > 0 ? done : undefined} max={of || 1} aria-label="Taken in" />
      {!isRecords && (
        <Button wide onPress={stop}>
          Stop, and leave everything as it was
        </Button>
      )}
    </>
  );
}

const counted = (count: number, one: string, many: string): string => (count === 1 ? `one ${one}` : `${count} ${many}`);

function Done({ state: { taken, archive } }: { readonly state: Extract<BringState, { at: 'done' }> }) {
  const { changed, pictures, missingPictures } = taken;
  return (
    <div class={css.good} role="status">
      <p>
        {changed + pictures === 0
          ? 'Everything in it was here already; nothing changed.'
          : `Taken in: ${counted(changed, 'record', 'records')} and ${counted(pictures, 'photograph', 'photographs')}. One tap on Undo takes the records back.`}
      </p>
      {missingPictures > 0 && (
        <p>
          {counted(missingPictures, 'photograph is', 'photographs are')} still missing
          {archive.missingVolumes.length > 0 &&
            `: take in file ${archive.missingVolumes.join(', ')} of ${archive.index.volumes} as well`}
          .
        </p>
      )}
    </div>
  );
}
