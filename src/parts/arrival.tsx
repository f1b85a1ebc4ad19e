import { useState } from 'preact/hooks';
import { useApp } from '../ui/app.ts';
import { Button } from '../ui/button.tsx';
import { TextField } from '../ui/field.tsx';
import { to } from '../ui/route.ts';
import css from './place-field.module.css';
import { useQuarantineActions } from './quarantine-actions.ts';
import { runningView } from './quarantine-facts.ts';
import type { BlockCase } from './use-case.ts';

/** Places a block is in only once it is the owner's. */
const HOME: readonly string[] = ['quarantine', 'toDo', 'onTheBench', 'ready'];

/**
 * A block that is one's own and bears signs of life: into quarantine with one tap, undone like any other. Asked until it
 * was kept apart once, or somebody wrote down why not. Also says when one in quarantine stands somewhere else.
 */
export function Arrival({ of }: { readonly of: BlockCase }) {
  const app = useApp();
  const actions = useQuarantineActions();
  const [reason, setReason] = useState<string>();
  const { block, offers, assessment } = of;
  const view = runningView(block.id, app);
  const gate = assessment.gates.find(({ watch }) => watch);
  const own = offers.some(({ what }) => what === 'paid') || HOME.includes(block.place);
  if (view) {
    if (block.place === 'quarantine' || view.course.state !== 'running') return null;
    return (
      <section class={css.gate} aria-label="Quarantine">
        <p>
          <b>Its quarantine still runs, and it does not stand there.</b>
        </p>
        <div class={css.ways}>
          <Button onPress={() => actions.move(block, 'quarantine')}>Back into quarantine</Button>
          <Button look="quiet" href={to('/block/:id/quarantine', { id: block.id })}>
            See the quarantine
          </Button>
        </div>
      </section>
    );
  }
  const asked = app.store.quarantinesOf(block.id).length > 0;
  if (!gate?.watch || !own || asked || block.place === 'letGo') return null;
  const fields = { reason: gate.watch, why: gate.advice };
  return (
    <section class={css.gate} aria-label="Quarantine">
      <p>
        <b>Yours now, and not kept apart.</b> {gate.advice}
      </p>
      {reason === undefined ? (
        <div class={css.ways}>
          <Button onPress={() => actions.begin(block, fields)}>Into quarantine</Button>
          <Button look="quiet" onPress={() => setReason('')}>
            Not this one
          </Button>
        </div>
      ) : (
        <>
          <TextField label="Why not?" value={reason} onChange={setReason} />
          <div class={css.ways}>
            <Button disabled={reason.trim() === ''} onPress={() => actions.decline(block, fields, reason)}>
              No quarantine
            </Button>
            <Button look="quiet" onPress={() => setReason(undefined)}>
              Back
            </Button>
          </div>
        </>
      )}
    </section>
  );
}
