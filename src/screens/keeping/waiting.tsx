import { useState } from 'preact/hooks';
import type { Kept } from '../../store/repository.ts';
import { roughSpan } from '../../text/ages.ts';
import { sentenceOf } from '../../text/errors.ts';
import { useApp } from '../../ui/app.ts';
import { Button } from '../../ui/button.tsx';
import css from './keeping.module.css';

/** Records dated in the future: one of two clocks is wrong, and joining them would date every later edit so too. */
export function Waiting({ rows }: { readonly rows: readonly Kept[] }) {
  const { store } = useApp();
  const [failed, setFailed] = useState<unknown>();
  const furthest = Math.max(...rows.map(({ aheadMs }) => aheadMs ?? 0));
  return (
    <div class={css.stack}>
      <p>
        {rows.length === 1 ? 'One record is' : `${rows.length} records are`} dated up to {roughSpan(furthest)} ahead of
        this phone’s clock. They are kept aside and join by themselves once that time has come. Check the date on both
        phones.
      </p>
      {failed !== undefined && (
        <p role="alert" class={css.alert}>
          {sentenceOf(failed)}
        </p>
      )}
      <Button onPress={() => store.joinKept(true).catch(setFailed)}>Join them now all the same</Button>
      <p class={css.hint}>Then what you write here before that time may give way to them.</p>
    </div>
  );
}
