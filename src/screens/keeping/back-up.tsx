import { useState } from 'preact/hooks';
import type { ArchiveProgress } from '../../exports/archive/index.ts';
import { useBackup } from '../../parts/backup.ts';
import { howLongAgo } from '../../text/ages.ts';
import { bytes } from '../../text/bytes.ts';
import { sentenceOf } from '../../text/errors.ts';
import { useApp } from '../../ui/app.ts';
import { Button } from '../../ui/button.tsx';
import { TickField } from '../../ui/field.tsx';
import css from './keeping.module.css';
import { ALL, type Part, PartFields } from './part-fields.tsx';
import { PassphraseField } from './passphrase-field.tsx';
import { type BackupState, useBackupWork } from './use-backup-work.ts';

type Work = ReturnType<typeof useBackupWork>;

/** Short ones are guessed by trying. Source: house rule. */
const SHORTEST = 10;

/** How old the last backup is, and the way to a new one. */
export function BackUp() {
  const work = useBackupWork();
  const [isLocked, setLocked] = useState(false);
  const [typed, setTyped] = useState('');
  const [again, setAgain] = useState('');
  const passphrase = isLocked ? typed : null;
  const fault = isLocked ? faultOf(typed, again) : null;
  const [part, setPart] = useState<Part>(ALL);
  const { state } = work;
  return (
    <div class={css.stack}>
      <Age />
      {state.at === 'working' && <Working progress={state.progress} stop={work.stop} />}
      {state.at === 'ready' && <Ready state={state} work={work} passphrase={passphrase} />}
      {state.at === 'failed' && (
        <p role="alert" class={css.alert}>
          {sentenceOf(state.error)}
        </p>
      )}
      {(state.at === 'start' || state.at === 'failed') && (
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
              <>
                <PassphraseField label="Passphrase" value={typed} onChange={setTyped} isNew />
                <PassphraseField
                  label="The same again"
                  value={again}
                  onChange={setAgain}
                  isNew
                  hint={fault ?? undefined}
                />
              </>
            )}
          </div>
          <Button look="main" wide disabled={fault !== null} onPress={() => void work.prepare({ ...part, passphrase })}>
            {part === ALL ? 'Prepare a backup' : 'Prepare the archive'}
          </Button>
        </>
      )}
    </div>
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
      : `Since then ${changed} ${changed === 1 ? 'record has' : 'records have'} changed.`;
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
      <p role="status" class="figures">
        {stage === 'writing' && of > 0
          ? `Writing photograph ${Math.min(done + 1, of)} of ${of}${file}…`
          : 'Gathering the records…'}
      </p>
      <progress value={of > 0 ? done : undefined} max={of || 1} aria-label="Backup prepared" />
      <Button wide onPress={stop}>
        Stop
      </Button>
    </>
  );
}

function Ready({
  state: { archive, handed, said },
  work,
  passphrase,
}: {
  readonly state: Extract<BackupState, { at: 'ready' }>;
  readonly work: Work;
  readonly passphrase: string | null;
}) {
  const { now } = useApp();
  const several = archive.volumes > 1;
  const isAll = archive.ready.every(({ volume }) => handed.includes(volume));
  return (
    <>
      <p role="status">
        {said ||
          `${archive.isBackup ? 'A backup' : 'An archive'} made ${howLongAgo(Date.parse(archive.made), now())} is ready. Now take it off this device.`}
      </p>
      {archive.missing.length > 0 && (
        <p class={css.alert} role="alert">
          {archive.missing.length === 1 ? 'One photograph is' : `${archive.missing.length} photographs are`} not in it:
          not on this device, or damaged here. Restore an older backup that has them.
        </p>
      )}
      <ul class={css.files}>
        {archive.ready.map((volume) => (
          <li key={volume.name}>
            <span>
              {volume.name} <span class={`${css.hint} figures`}>{bytes(volume.bytes)}</span>
              {handed.includes(volume.volume) && <b> Handed over.</b>}
            </span>
            <div class={css.ways}>
              <Button
                look={handed.includes(volume.volume) ? 'plain' : 'main'}
                label={several ? `Save file ${volume.volume}` : 'Save the file'}
                onPress={() => work.handOver(volume, 'save')}
              >
                Save {several ? `file ${volume.volume}` : 'the file'}
              </Button>
              {work.mayBeSent(volume) && (
                <Button onPress={() => work.handOver(volume, 'send')}>
                  Send {several ? `file ${volume.volume}` : 'it'}
                </Button>
              )}
            </div>
          </li>
        ))}
      </ul>
      {archive.left > 0 && (
        <p>
          {archive.left === 1 ? 'One more file is' : `${archive.left} more files are`} to come: there was no room for
          more at once.
        </p>
      )}
      <div class={css.ways}>
        {isAll && (
          <Button onPress={() => work.done(passphrase)}>
            {archive.left > 0 ? 'Go on with the next' : 'It has arrived: done'}
          </Button>
        )}
        <Button look="quiet" onPress={work.discard}>
          {archive.isBackup ? 'Throw this backup away' : 'Throw this archive away'}
        </Button>
      </div>
    </>
  );
}
