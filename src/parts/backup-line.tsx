import { howLongAgo } from '../text/ages.ts';
import { useApp } from '../ui/app.ts';
import { useBackup } from './backup.ts';
import css from './notices.module.css';

/** One quiet line when the last backup is old and something was written since. */
export function BackupLine() {
  const { now } = useApp();
  const { backup, isDue } = useBackup();
  if (!isDue) return null;
  return (
    <p class={css.quiet}>
      {backup ? `Last backed up ${howLongAgo(backup.at, now())}, and things have changed since.` : 'Not backed up yet.'}{' '}
      <a href="#/keeping">Back up</a>
    </p>
  );
}
