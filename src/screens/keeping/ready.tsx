import type { PreparedArchive, PreparedVolume } from '../../exports/archive/index.ts';
import type { BackupState, BackupWork } from '../../parts/backup-work.ts';
import { howLongAgo } from '../../text/ages.ts';
import { bytes } from '../../text/bytes.ts';
import { sentenceOf } from '../../text/errors.ts';
import { useApp } from '../../ui/app.ts';
import { Button } from '../../ui/button.tsx';
import css from './keeping.module.css';
import { PassphraseForm } from './passphrase-field.tsx';

const isOut = ({ ready }: PreparedArchive, handed: readonly number[]): boolean =>
  ready.every(({ volume }) => handed.includes(volume));

/** Files that wait to be taken off this device, and the way on to those that are not made yet. */
export function Ready({
  state: { archive, handed, said, fault },
  work,
}: {
  readonly state: Extract<BackupState, { at: 'ready' }>;
  readonly work: BackupWork;
}) {
  const { left, isBackup, ready } = archive;
  const isAll = isOut(archive, handed);
  const what = isBackup ? 'backup' : 'archive';
  const next = ready.find(({ volume }) => !handed.includes(volume));
  return (
    <>
      <p role="status">{said || <Standing archive={archive} isAll={isAll} />}</p>
      {fault !== null && (
        <p role="alert" class={css.alert}>
          {sentenceOf(fault)}
        </p>
      )}
      {archive.missing.length > 0 && (
        <p class={css.alert} role="alert">
          {archive.missing.length === 1 ? 'One photograph is' : `${archive.missing.length} photographs are`} not in it:
          not on this device, or damaged here. Restore an older backup that has them.
        </p>
      )}
      {left > 0 && (isAll || !archive.isFull) && <GoOn archive={archive} onGoOn={work.goOn} />}
      {ready.length > 0 && (
        <ul class={css.files}>
          {ready.map((volume) => (
            <Volume
              key={volume.name}
              volume={volume}
              isOne={archive.volumes === 1}
              hasLeft={handed.includes(volume.volume)}
              isNext={volume === next}
              work={work}
            />
          ))}
        </ul>
      )}
      <div class={css.ways}>
        {isAll && left === 0 && <Button onPress={work.done}>It has arrived: done</Button>}
        <Button look="quiet" onPress={work.discard}>
          Throw this {what} away
        </Button>
      </div>
    </>
  );
}

/** How it stands with an archive, in a sentence. */
function Standing({ archive, isAll }: { readonly archive: PreparedArchive; readonly isAll: boolean }) {
  const { now } = useApp();
  const { volumes, left, isFull, isBackup, made, wish } = archive;
  const whole = volumes - left;
  const what = `${isBackup ? 'backup' : 'archive'} made ${howLongAgo(Date.parse(made), now())}`;
  const article = isBackup ? 'A' : 'An';
  if (left === 0) {
    return wish.isPicked
      ? `${article} ${what} lies in the ${volumes === 1 ? 'file' : 'files'} you picked.`
      : `${article} ${what} is ready. Now take it off this device.`;
  }
  const done = whole === 1 ? 'One file' : `${whole} files`;
  if (!isFull) return `Making the ${what} was cut off. ${done} of ${volumes} ${whole === 1 ? 'is' : 'are'} whole.`;
  const more = left === 1 ? 'One more file is' : `${left} more files are`;
  return isAll
    ? `${more} to come.`
    : `${more} to come: there was no room for more at once. First take off this device what is ready.`;
}

function GoOn({
  archive: { wish, volumes, left },
  onGoOn,
}: {
  readonly archive: PreparedArchive;
  readonly onGoOn: (passphrase: string | null) => void;
}) {
  const action = `Go on with file ${volumes - left + 1} of ${volumes}`;
  return wish.isLocked ? (
    <PassphraseForm action={action} onTyped={onGoOn} />
  ) : (
    <Button look="main" onPress={() => onGoOn(null)}>
      {action}
    </Button>
  );
}

function Volume({
  volume,
  isOne,
  hasLeft,
  isNext,
  work,
}: {
  readonly volume: PreparedVolume;
  readonly isOne: boolean;
  readonly hasLeft: boolean;
  readonly isNext: boolean;
  readonly work: BackupWork;
}) {
  const which = isOne ? 'the file' : `file ${volume.volume}`;
  return (
    <li>
      <span>
        {volume.name} <span class={`${css.hint} figures`}>{bytes(volume.bytes)}</span>
        {hasLeft && <b> {volume.file ? 'Handed over.' : 'Written.'}</b>}
      </span>
      {volume.file && (
        <div class={css.ways}>
          <Button look={isNext ? 'main' : 'plain'} onPress={() => work.handOver(volume, 'save')}>
            Save {which}
          </Button>
          {work.mayBeSent(volume) && (
            <Button onPress={() => work.handOver(volume, 'send')}>Send {isOne ? 'it' : which}</Button>
          )}
        </div>
      )}
    </li>
  );
}
