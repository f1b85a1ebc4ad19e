import { type CheckStanding, readyStanding, rulesFor } from '../core/ready.ts';
import type { ReadyCheck } from '../core/records.ts';
import { dayHere, dayWords } from '../text/days.ts';
import { hours } from '../text/format.ts';
import { useApp } from '../ui/app.ts';
import { ChoiceField, TextField } from '../ui/field.tsx';
import { OtherWords } from './other-words.tsx';
import { useQuarantineActions } from './quarantine-actions.ts';
import css from './ready-checks.module.css';
import { SourceLine } from './source-line.tsx';
import type { BlockCase } from './use-case.ts';

const outcomes = [
  { id: 'passed', label: 'Passed' },
  { id: 'failed', label: 'Failed' },
  { id: 'skipped', label: 'Left out' },
] as const;
const stateWords: Readonly<Record<CheckStanding['state'], string>> = {
  open: 'open',
  passed: 'passed',
  failed: 'failed',
  skipped: 'left out',
};

/** What a block passes before it meets good felt, and how it is kept; each check is answered here. */
export function ReadyChecks({ of }: { readonly of: BlockCase }) {
  const { store, catalogue } = useApp();
  const { block, assessment } = of;
  const written = store.readyChecksOf(block.id);
  const { checks, missing } = readyStanding(
    written,
    { jobs: store.jobsOf(block.id), steps: store.stepsOf(block.id) },
    assessment.setting,
    catalogue,
  );
  const done = checks.filter(({ state }) => state === 'passed').length;
  return (
    <>
      <p class={css.sum}>
        <b class="figures">
          {done} of {checks.length}
        </b>{' '}
        passed.{' '}
        {missing.length > 0
          ? 'It becomes ready once a hat was tried on it, or when you say why not.'
          : 'Nothing stands in the way of its being ready.'}
      </p>
      <ul class={css.checks}>
        {checks.map((standing) => (
          <li key={standing.id} data-state={standing.state}>
            <Check of={of} standing={standing} written={written.filter(({ check }) => check === standing.id).at(-1)} />
          </li>
        ))}
      </ul>
      <details>
        <summary>Storing it</summary>
        <ul class={css.store}>
          {rulesFor(catalogue.storing, assessment.setting).map(([id, { term, text, source }]) => (
            <li key={id}>
              <b>{term}.</b> {text}
              <SourceLine source={source} />
            </li>
          ))}
        </ul>
      </details>
    </>
  );
}

function Check({
  of,
  standing: { id, check, state, by },
  written,
}: {
  readonly of: BlockCase;
  readonly standing: CheckStanding;
  readonly written: ReadyCheck | undefined;
}) {
  const actions = useQuarantineActions();
  const outcome = written?.outcome ?? null;
  return (
    <details>
      <summary>
        <span>
          {check.term}
          <small>
            {stateWords[state]}
            {by?.type === 'readyCheck' && `, ${dayWords(by.on)}`}
            {by?.type === 'job' && `, ${dayWords(dayHere(Date.parse(by.at)))}: ${hours(by.actualHours)} logged on it`}
            {by?.type === 'step' && by.done && `, done ${dayWords(dayHere(Date.parse(by.done.at)))}`}
            {check.essential && state === 'open' && ', asked before it is ready'}
          </small>
        </span>
      </summary>
      {check.cautions.length > 0 && (
        <ul class={css.cautions}>
          {check.cautions.map((caution) => (
            <li key={caution}>{caution}</li>
          ))}
        </ul>
      )}
      <p>{check.text}</p>
      <ChoiceField
        label="How did it go?"
        hint={outcome === null ? undefined : 'Tap the same again to take it back.'}
        none
        value={outcome}
        options={outcomes}
        onChange={(picked) => {
          if (picked) actions.writeCheck(of.block, id, written, { outcome: picked });
          else if (written) actions.removeCheck(written);
        }}
      />
      {written && (
        <>
          <TextField
            label={written.outcome === 'skipped' ? 'Why left out' : 'Seen'}
            hint={
              written.outcome === 'skipped' && check.essential && written.note.trim() === ''
                ? 'Without a reason it still counts as open.'
                : undefined
            }
            value={written.note}
            onChange={(note) => actions.writeCheck(of.block, id, written, { note })}
          />
          <OtherWords record={written} path="note" />
        </>
      )}
      <SourceLine source={check.source} />
    </details>
  );
}
