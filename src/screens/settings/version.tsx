import { SCHEMA } from '../../core/records.ts';
import { acceptUpdate, updateWaiting, updating } from '../../offline.ts';
import { useApp } from '../../ui/app.ts';
import { Button } from '../../ui/button.tsx';
import css from './settings.module.css';

/** Which rules and which form of record this app works with, and the way to a newer one when it waits. */
export function Version() {
  const { store, catalogue } = useApp();
  return (
    <>
      <dl class={css.facts}>
        <dt>Catalogue</dt>
        <dd>{catalogue.version}</dd>
        <dt>Form of record</dt>
        <dd>{SCHEMA}</dd>
      </dl>
      {updateWaiting.value ? (
        <Button disabled={updating.value} onPress={() => void acceptUpdate(store.settled())}>
          {updating.value ? 'Changing over…' : 'Use the new version now'}
        </Button>
      ) : (
        <p class={css.hint}>A new version is offered when there is one, never forced.</p>
      )}
    </>
  );
}
