import { acceptUpdate, offline, updateWaiting, updating } from '../offline.ts';
import { sentenceOf } from '../text/errors.ts';
import { useApp } from '../ui/app.ts';
import { Button } from '../ui/button.tsx';
import { BackupLine } from './backup-line.tsx';
import { importNotesOf } from './import-notes.ts';
import { canInstall, install, isInstalled, onIphone, readyNoticeSeen, seeReadyNotice } from './install.ts';
import css from './notices.module.css';

/** What the owner should know now, each with what to do: not saved, storage cleared, update, install, ready without signal. */
export function Notices() {
  const { store } = useApp();
  const saving = store.saving.value;
  const unreadable = store.unreadable.value.length;
  const { cutOff, stillOut } = importNotesOf(store);
  const missing = stillOut.value.reduce((sum, { pictures }) => sum + pictures, 0);
  return (
    <div class={css.notices}>
      {store.cleared.value && (
        <Notice kind="bad" title="The phone has cleared Blockworth’s storage.">
          <p>There were blocks here before. If you have a backup, restore it; what is not backed up is gone.</p>
          <Button href="#/keeping">Restore a backup</Button>
          <Button onPress={() => store.acknowledgeCleared().catch(() => undefined)}>I have seen this</Button>
        </Notice>
      )}
      {typeof saving === 'object' && (
        <Notice kind="bad" title="Not saved.">
          <p>{sentenceOf(saving.failed)}</p>
          <Button onPress={() => store.retry().catch(() => undefined)}>Try again</Button>
        </Notice>
      )}
      {cutOff.value && (
        <Notice kind="warn" title="Taking a file in was cut off.">
          <p>Choose the same file again to finish: nothing is lost or doubled.</p>
          <Button href="#/keeping">Finish it</Button>
        </Notice>
      )}
      {unreadable > 0 && (
        <Notice
          kind="warn"
          title={unreadable === 1 ? 'One record cannot be read.' : `${unreadable} records cannot be read.`}
        >
          <p>
            They are kept as they are. <a href="#/keeping">Keeping</a> can save them to a file.
          </p>
        </Notice>
      )}
      {updateWaiting.value && (
        <Notice kind="plain" title="A new version is here.">
          <Button disabled={updating.value} onPress={() => void acceptUpdate(store.settled())}>
            {updating.value ? 'Changing over…' : 'Use it now'}
          </Button>
        </Notice>
      )}
      {offline.value === 'ready' && !readyNoticeSeen.value && (
        <Notice kind="good" title="Ready without signal.">
          <p>Blockworth is on this device now and needs no network. Everything you enter stays here.</p>
          {!isInstalled() && canInstall.value && (
            <Button onPress={() => void install()}>Put it on the home screen</Button>
          )}
          {!isInstalled() && onIphone() && (
            <p>
              On an iPhone: Share, then <b>Add to Home Screen</b>. Only then does the phone promise to keep what you
              enter.
            </p>
          )}
          <Button look="quiet" onPress={seeReadyNotice}>
            Got it
          </Button>
        </Notice>
      )}
      {missing > 0 && (
        <p class={css.quiet}>
          {missing === 1 ? 'One photograph waits' : `${missing} photographs wait`} in a backup file that is not in yet.{' '}
          <a href="#/keeping">Keeping</a>
        </p>
      )}
      <BackupLine />
    </div>
  );
}

function Notice({
  kind,
  title,
  children,
}: {
  readonly kind: 'good' | 'warn' | 'bad' | 'plain';
  readonly title: string;
  readonly children: preact.ComponentChildren;
}) {
  return (
    <section class={css.notice} data-kind={kind} role={kind === 'bad' ? 'alert' : 'status'}>
      <p class={css.title}>{title}</p>
      {children}
    </section>
  );
}
