import { useEffect, useState } from 'preact/hooks';
import { AppError } from '../../core/errors.ts';
import type { ArchiveProgress } from '../../exports/archive/index.ts';
import { canPickFile } from '../../exports/pick-file.ts';
import { useBackup } from '../../parts/backup.ts';
import { type BackupState, type BackupWork, backupWorkOf } from '../../parts/backup-work.ts';
import { bringWorkOf } from '../../parts/bring-work.ts';
import { howLongAgo } from '../../text/ages.ts';
import { bytes } from '../../text/bytes.ts';
import { sentenceOf } from '../../text/errors.ts';
import { useApp } from '../../ui/app.ts';
import { Button } from '../../ui/button.tsx';
import { TickField } from '../../ui/field.tsx';
import css from './keeping.module.css';
import { ALL, type Part, PartFields } from './part-fields.tsx';
import { NewPassphrase } from './passphrase-field.tsx';
import { Ready } from './ready.tsx';

/** Short ones are guessed by trying. Source: house rule. */
const SHORTEST = 10;

/** How old the last backup is, and the way to a new one. */
export function BackUp() {
  const work = backupWorkOf(useApp());
  useEffect(() => {
    work.arrive();
    return work.leave;
  }, [work]);
  const state = work.state.value;
  return (
    <div class={css.stack}>
      <Age />
      {state.at === 'working' && <Working progress={state.progress} stop={work.stop} />}
      {state.at === 'picking' && <Picking state={state} stop={work.stop} />}
      {state.at === 'ready' && <Ready state={state} work={work} />}
      {state.at === 'failed' && (
        <p role="alert" class={css.alert}>
          {sentenceOf(state.error)}
        </p>
      )}
      {(state.at === 'start' || state.at === 'failed') && <Wish state={state} work={work} />}
    </div>
  );
}

function Wish({ state, work }: { readonly state: BackupState; readonly work: BackupWork }) {
  const { store, now } = useApp();
  const { keeping } = store;
  // The main thing on the screen is then to take the file in, or not.
  const isBringing = ['preview', 'locked'].includes(bringWorkOf({ store, now }).state.value.at);
  const [part, setPart] = useState<Part>(ALL);
  const [isLocked, setLocked] = useState(false);
  const [isPicked, setPicked] = useState(false);
  const [typed, setTyped] = useState('');
  const [again, setAgain] = useState('');
  const [isShown, setShown] = useState(false);
  const fault = isLocked ? faultOf(typed, isShown ? typed : again) : null;
  const isTight =
    keeping.room.value === 'low' ||
    keeping.room.value === 'full' ||
    (state.at === 'failed' && state.error instanceof AppError && state.error.code === 'storage-full');
  return (
    <>
      <PartFields part={part} onChange={setPart} />
      <div>
        <TickField
          label="Lock it with a passphrase"
          hint="Then nobody can open it without: not a finder, and not you."
          value={isLocked}
          onChange={setLocked}
        />
        {isLocked && (
          <NewPassphrase
            {...{ typed, again, isShown, fault }}
            onType={setTyped}
            onTypeAgain={setAgain}
            onShow={setShown}
          />
        )}
        {isTight && canPickFile() && (
          <TickField
            label="Write it straight into files I pick"
            hint="It then takes no room here. For each file you say where it goes: a memory stick will do."
            value={isPicked}
            onChange={setPicked}
          />
        )}
      </div>
      <Button
        look={isBringing ? 'plain' : 'main'}
        wide
        disabled={fault !== null}
        onPress={() => work.prepare({ ...part, passphrase: isLocked ? typed : null, isPicked })}
      >
        {part === ALL ? 'Prepare a backup' : 'Prepare the archive'}
      </Button>
    </>
  );
}

function faultOf(typed: string, again: string): string | null {
  if (typed.length < SHORTEST) return `At least ${SHORTEST} letters: three or four words do well.`;
  return typed === again ? null : 'The two are not the same yet.';
}

function Age() {
  const { now } = useApp();
  const { backup, changed } = useBackup();
  if (backup === undefined) return <p>Looking up the last backup…</p>;
  if (backup === null) {
    return (
      <p>
        <b>Never backed up from this device.</b> A backup is a file with all records and photographs; keep it somewhere
        else.
      </p>
    );
  }
  const since =
    changed === 0
      ? 'Nothing has changed since.'
      : `Since then ${changed} ${changed === 1 ? 'record has' : 'records have'} changed or come in.`;
  return (
    <p class="figures">
      <b>Last backed up {howLongAgo(backup.at, now())}</b>, {bytes(backup.bytes)}. {since}
    </p>
  );
}

function Working({ progress, stop }: { readonly progress: ArchiveProgress | null; readonly stop: () => void }) {
  const { stage, done = 0, of = 0, volume = 0, volumes = 0 } = progress ?? {};
  const file = volumes > 1 ? ` into file ${volume} of ${volumes}` : '';
  return (
    <>
      <p class="visually-hidden" role="status">
        Preparing it.
      </p>
      <p class="figures">
        {stage === 'writing' && of > 0
          ? `Writing photograph ${Math.min(done + 1, of)} of ${of}${file}…`
          : 'Gathering the records…'}
      </p>
      <progress value={of > 0 ? done : undefined} max={of || 1} aria-label="Backup prepared" />
      <p class={css.hint}>It goes on while you look at other screens, as long as Blockworth stays open.</p>
      <Button wide onPress={stop}>
        Stop
      </Button>
    </>
  );
}

function Picking({
  state: { name, choose },
  stop,
}: {
  readonly state: Extract<BackupState, { at: 'picking' }>;
  readonly stop: () => void;
}) {
  return (
    <>
      <p role="status">Where is {name} to go?</p>
      <div class={css.ways}>
        <Button look="main" onPress={choose}>
          Pick a place
        </Button>
        <Button onPress={stop}>Stop</Button>
      </div>
    </>
  );
}
