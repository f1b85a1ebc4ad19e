import { type RoundStanding, regimeOf, type StageStanding, stageEnds } from '../../core/cold.ts';
import type { ColdStage } from '../../core/records.ts';
import { useQuarantineActions } from '../../parts/quarantine-actions.ts';
import type { QuarantineView } from '../../parts/quarantine-facts.ts';
import { momentWords } from '../../text/days.ts';
import { degrees, regimeWords, stageSentence, stageWords } from '../../text/quarantine.ts';
import { useApp } from '../../ui/app.ts';
import { Button } from '../../ui/button.tsx';
import { NumberField } from '../../ui/field.tsx';
import { MomentField } from '../../ui/moment-field.tsx';
import css from './quarantine.module.css';

const stateWords: Readonly<Record<RoundStanding['state'], string>> = {
  running: 'running',
  done: 'done, it counts',
  failed: 'does not count',
};
const BEGIN: Readonly<Record<ColdStage['does'], string>> = {
  bag: 'It is sealed',
  freeze: 'It is in the freezer now',
  thaw: 'It is out to thaw now',
  warmInBag: 'It is out now: let it warm up sealed',
};
const END: Readonly<Record<ColdStage['does'], string>> = {
  bag: '',
  freeze: 'It comes out now',
  thaw: 'It has thawed',
  warmInBag: 'The bag is opened',
};

/** One round of freezing: each stage with what it asks, when it began and ended, and whether that was enough. */
export function Round({ view, round }: { readonly view: QuarantineView; readonly round: RoundStanding }) {
  const { store, now } = useApp();
  const actions = useQuarantineActions();
  const records = store.coldStagesOf(view.quarantine.id).filter((stage) => stage.round === round.round);
  const recordOf = (step: number) => records.filter((stage) => stage.step === step).at(-1);
  // The first stage not begun waits for the one before it to end.
  const next = round.stages.findIndex(({ done }) => !done);
  const ready = next > 0 && round.state !== 'failed' && round.stages[next - 1]?.done?.ended != null;
  const last = records.at(-1);
  const coldest = records.filter(({ does }) => does === 'freeze').at(-1)?.freezerC ?? null;
  const instant = (): string => new Date(now()).toISOString();
  return (
    <section class={css.round} data-state={round.state} aria-label={`Round ${round.round}`}>
      <h3>
        Round {round.round}: <span>{stateWords[round.state]}</span>
      </h3>
      <p class={css.hint}>
        {regimeWords(round.stages.map(({ planned }) => planned))} at {degrees(regimeOf(round.regime)?.freezerC ?? 0)}
      </p>
      <ol class={css.stages}>
        {round.stages.map(({ planned, done, standing }, step) => {
          const record = recordOf(step);
          return (
            <li key={step} data-state={standing?.state ?? 'open'}>
              <p>
                <b>{stageWords[planned.does].term}</b>
              </p>
              {((step === next && ready) || standing?.state === 'running') && <p>{stageWords[planned.does].how}</p>}
              {done && standing && record && <Done record={record} standing={standing} ends={stageEnds(done)?.at} />}
              {record && record.ended === null && (
                <Button onPress={() => actions.setStage(record, { ended: instant() }, 'the end of a stage')}>
                  {END[planned.does]}
                </Button>
              )}
              {step === next && ready && (
                <Button
                  onPress={() =>
                    actions.beginStage(view.quarantine, {
                      ...{ regime: round.regime, round: round.round, step, does: planned.does, begun: instant() },
                      ...{ ended: null, freezerC: planned.does === 'freeze' ? coldest : null },
                    })
                  }
                >
                  {BEGIN[planned.does]}
                </Button>
              )}
            </li>
          );
        })}
      </ol>
      {last && (
        <Button look="quiet" onPress={() => actions.removeStages(records.filter(({ step }) => step === last.step))}>
          Take back: {stageWords[last.does].term.toLocaleLowerCase('en-GB')}
        </Button>
      )}
    </section>
  );
}

function Done({
  record,
  standing,
  ends,
}: {
  readonly record: ColdStage;
  readonly standing: StageStanding;
  readonly ends: string | undefined;
}) {
  const actions = useQuarantineActions();
  const { does, begun, ended, freezerC } = record;
  if (does === 'bag') return <p class={css.hint}>{momentWords(begun)}</p>;
  return (
    <>
      <p data-standing={standing.state}>{stageSentence(standing, does)}</p>
      {ends && standing.state === 'running' && (
        <p>
          Not before <b class="figures">{momentWords(ends)}</b>.
        </p>
      )}
      <details class={css.more}>
        <summary>
          <span class="figures">
            {momentWords(begun)}
            {ended && ` to ${momentWords(ended)}`}
            {freezerC !== null && `, ${degrees(freezerC)}`}
          </span>
        </summary>
        <MomentField label="Began" value={begun} onChange={(at) => actions.setStage(record, { begun: at })} />
        {ended && (
          <MomentField label="Ended" value={ended} onChange={(at) => actions.setStage(record, { ended: at })} />
        )}
      </details>
      {does === 'freeze' && (
        <NumberField
          label="The thermometer says, below zero"
          unit="°C"
          step={1}
          max={60}
          chips={[18, 20, 25, 30]}
          value={freezerC === null ? null : -freezerC}
          onChange={(below) => actions.setStage(record, { freezerC: below === null ? null : 0 - below })}
        />
      )}
    </>
  );
}
