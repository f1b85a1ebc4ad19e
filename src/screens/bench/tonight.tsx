import { entry } from '../../core/catalogue.ts';
import type { BenchEvening, BenchSchedule, Sitting } from '../../core/schedule/types.ts';
import { isRunning } from '../../core/steps/stints.ts';
import { blockName } from '../../parts/block-name.ts';
import { StepHow } from '../../parts/step-how.tsx';
import { stepName } from '../../parts/step-name.ts';
import { StepWork } from '../../parts/step-work.tsx';
import type { BenchWork } from '../../parts/use-bench.ts';
import { dayWords } from '../../text/days.ts';
import { hours } from '../../text/format.ts';
import { useApp } from '../../ui/app.ts';
import { to } from '../../ui/route.ts';
import css from './bench.module.css';

/** What to take up this evening, in order: the first thing to mind in sight, the rest a tap away, and the timer at hand. */
export function Tonight({
  works,
  evening,
  schedule,
}: {
  readonly works: readonly BenchWork[];
  readonly evening: BenchEvening | undefined;
  readonly schedule: BenchSchedule;
}) {
  if (!evening || evening.sittings.length === 0) return <Nothing schedule={schedule} />;
  return (
    <>
      <p class={css.hint}>
        {hours(evening.used)} of the {hours(evening.hours)} there are.
      </p>
      <ol class={css.sittings}>
        {evening.sittings.map((sitting) => (
          <Row
            key={`${sitting.blockId} ${sitting.treatment}`}
            sitting={sitting}
            works={works}
            tonight={evening.sittings}
          />
        ))}
      </ol>
    </>
  );
}

function Nothing({ schedule }: { readonly schedule: BenchSchedule }) {
  const next = schedule.evenings.find(({ day }) => day > 0);
  if (schedule.hours <= 0 && schedule.days === 0) return <p>Every step is done or left out.</p>;
  return (
    <p>Nothing for tonight: {next ? `the next evening with work is ${dayWords(next.date)}.` : 'everything waits.'}</p>
  );
}

function Row({
  sitting,
  works,
  tonight,
}: {
  readonly sitting: Sitting;
  readonly works: readonly BenchWork[];
  readonly tonight: readonly Sitting[];
}) {
  const { catalogue } = useApp();
  const work = works.find(({ of }) => of.block.id === sitting.blockId);
  const item = work?.items.find(({ key }) => key === sitting.treatment);
  // Done a moment ago: the next schedule is on its way.
  if (!work || item?.stand !== 'open') return null;
  const { of, items } = work;
  const isInHand = item.stints.some(isRunning);
  // What stands before it on tonight’s list need not be said again.
  const inTurn = tonight.filter(({ blockId }) => blockId === of.block.id).map(({ treatment }) => treatment);
  const mind = entry(catalogue.treatments, item.treatment)?.cautions[0];
  return (
    <li data-running={isInHand || undefined}>
      <p class={css.what}>
        <b>{stepName(item, catalogue)}</b>
        <span class="figures">
          {hours(sitting.hours)}
          {!sitting.ends && ' of it'}
        </span>
      </p>
      <p class={css.where}>
        <a href={to('/block/:id', { id: of.block.id })}>{blockName(of.block, catalogue)}</a>
      </p>
      {mind && <p class={css.mind}>{mind}</p>}
      <details class={css.how}>
        <summary>How, and all there is to mind</summary>
        <div>
          <StepHow of={of} item={item} />
        </div>
      </details>
      {isInHand ? (
        <p class={css.hint}>In hand, with its timer running.</p>
      ) : (
        <StepWork of={of} items={items} item={item} inTurn={inTurn} />
      )}
    </li>
  );
}
