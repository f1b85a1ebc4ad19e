import { entry } from '../../core/catalogue.ts';
import { AppError } from '../../core/errors.ts';
import { dayIn } from '../../core/local-time.ts';
import { benchTimeOf, lacking } from '../../core/schedule/from-plan.ts';
import { tonight } from '../../core/schedule/tonight.ts';
import type { BenchInput } from '../../core/schedule/types.ts';
import { benchBlockFrom } from '../../core/steps/bench-block.ts';
import { useNow, zoneHere } from '../../parts/clock.ts';
import { DueList } from '../../parts/due-list.tsx';
import { useBench } from '../../parts/use-bench.ts';
import { useDues } from '../../parts/use-dues.ts';
import { useSchedule } from '../../parts/use-schedule.ts';
import { dayWords } from '../../text/days.ts';
import { sentenceOf } from '../../text/errors.ts';
import { useApp } from '../../ui/app.ts';
import { Button } from '../../ui/button.tsx';
import { Page, Section } from '../../ui/page.tsx';
import { to } from '../../ui/route.ts';
import { AllOfIt } from './all-of-it.tsx';
import css from './bench.module.css';
import { Running } from './running.tsx';
import { Tonight } from './tonight.tsx';
import { Waiting } from './waiting.tsx';

/** Tonight at the bench: what runs, what to take up, what waits and what is due; and when all of it will be ready. */
export default function BenchScreen() {
  const { catalogue, store } = useApp();
  const now = useNow();
  const zone = zoneHere();
  const works = useBench();
  const settings = store.settings.value;
  const dues = useDues().filter(
    ({ kind, at, late }) => kind !== 'waitEnds' && (late || ('day' in at ? at.day <= dayIn(now, zone) : false)),
  );
  const input: BenchInput | undefined =
    works.length === 0
      ? undefined
      : {
          today: dayIn(now, zone),
          blocks: works.map(({ of, items }) => benchBlockFrom(of.block.id, items, catalogue, { nowMs: now, zone })),
          ...benchTimeOf(settings, catalogue),
        };
  const made = useSchedule(input, 'the bench').value;
  const isEmpty = works.length === 0 && dues.length === 0;
  return (
    <Page
      title="The bench"
      under={dayWords(dayIn(now, zone))}
      lead={<Running works={works} />}
      {...(works.length > 0
        ? {
            aside: (
              <Section title="All of it">
                {made.schedule && <AllOfIt works={works} schedule={made.schedule} />}
                {input && <Lacking ids={lacking(input.blocks, settings, catalogue)} />}
                {made.state === 'busy' && !made.schedule && <p class={css.hint}>Laying out the evenings…</p>}
                {made.state === 'failed' && <p role="alert">{sentenceOf(new AppError(made.code))}</p>}
              </Section>
            ),
          }
        : {})}
    >
      {isEmpty && <Empty />}
      {works.length > 0 && (
        <Section title="Tonight">
          {made.schedule ? (
            <Tonight works={works} evening={tonight(made.schedule)} schedule={made.schedule} />
          ) : (
            <p class={css.hint}>Laying out the evenings…</p>
          )}
        </Section>
      )}
      <Waiting works={works} />
      {dues.length > 0 && (
        <Section title="Due" aside={<a href={to('/quarantine')}>Quarantine</a>}>
          <DueList dues={dues} />
        </Section>
      )}
    </Page>
  );
}

/** What the dates count on and the owner does not have. */
function Lacking({ ids }: { readonly ids: readonly string[] }) {
  const { catalogue } = useApp();
  if (ids.length === 0) return null;
  return (
    <p class={css.hint} role="note">
      Some steps need what you have none of: {ids.map((id) => entry(catalogue.resources, id)?.term ?? id).join('; ')}.
      The dates count on borrowing it; or leave those steps out on the block’s page, with the reason.
    </p>
  );
}

function Empty() {
  return (
    <div class={css.empty}>
      <p>
        Nothing on the bench. Open a block and put it on the list of work to do: its steps, your evenings and what has
        to dry then stand here.
      </p>
      <Button href="#/" wide>
        To the shelf
      </Button>
    </div>
  );
}
