import { missedBy, PLANNING } from '../../core/advice/quarantine.ts';
import { adviceOn } from '../../core/advice.ts';
import { OTHER_TREATMENTS } from '../../core/physics/other-treatments.ts';
import { WATCHES } from '../../core/quarantine.ts';
import type { Quarantine } from '../../core/records.ts';
import { useAdviceCase } from '../../parts/advice.tsx';
import { blockName } from '../../parts/block-name.ts';
import { CalendarFile } from '../../parts/calendar-file.tsx';
import { Cautions } from '../../parts/cautions.tsx';
import { Gone } from '../../parts/gone.tsx';
import { OtherWords } from '../../parts/other-words.tsx';
import { useQuarantineActions } from '../../parts/quarantine-actions.ts';
import { type QuarantineView, runningView } from '../../parts/quarantine-facts.ts';
import { type BlockCase, useCase } from '../../parts/use-case.ts';
import { dayHere, dayWords } from '../../text/days.ts';
import { doubtSentences, endSentence, shorterSentence, standingWords, watchOf } from '../../text/quarantine.ts';
import { useApp } from '../../ui/app.ts';
import { DayField } from '../../ui/day-field.tsx';
import { SelectField, TextField } from '../../ui/field.tsx';
import { Page, Section } from '../../ui/page.tsx';
import { type Params, to } from '../../ui/route.ts';
import { Begin } from './begin.tsx';
import { Freezing } from './freezing.tsx';
import { Leave } from './leave.tsx';
import { Looks } from './looks.tsx';
import css from './quarantine.module.css';

export default function QuarantineScreen({ params }: { params: Params }) {
  const of = useCase(params.id ?? '');
  return of ? <QuarantinePage of={of} /> : <Gone />;
}

function QuarantinePage({ of }: { readonly of: BlockCase }) {
  const app = useApp();
  const { catalogue, store } = app;
  const { block } = of;
  const view = runningView(block.id, app);
  const past = store.quarantinesOf(block.id).filter(({ left }) => left !== null);
  return (
    <Page
      title="Quarantine"
      under={blockName(block, catalogue)}
      back={{ href: to('/block/:id', { id: block.id }), label: 'The block' }}
      {...(view ? { aside: <Beside of={of} view={view} /> } : {})}
    >
      {view ? (
        <Running of={of} view={view} />
      ) : (
        <Section title={past.length > 0 ? 'Apart again' : 'Keep it apart'}>
          <Begin of={of} />
        </Section>
      )}
      {past.length > 0 && (
        <Section title="Earlier">
          <ul class={css.past}>
            {[...past].reverse().map((quarantine) => (
              <Past key={quarantine.id} quarantine={quarantine} />
            ))}
          </ul>
        </Section>
      )}
    </Page>
  );
}

function Running({ of, view }: { readonly of: BlockCase; readonly view: QuarantineView }) {
  const { quarantine, course } = view;
  const shortening = course.by === 'season' ? shorterSentence(quarantine.reason) : '';
  return (
    <>
      <Section>
        <p class={css.standing} data-state={course.state} role="status">
          {standingWords(course)}
        </p>
        <p>{endSentence(course)}</p>
        {shortening && <p>{shortening}</p>}
        {of.block.place !== 'quarantine' && (
          <p class={css.gate}>Its place says otherwise: it is not among the blocks in quarantine.</p>
        )}
        {quarantine.why && <p class={css.hint}>{quarantine.why}</p>}
      </Section>
      <Section title="Looks">
        <Looks of={of} view={view} />
      </Section>
      <Section title="Freezing">
        <Freezing of={of} view={view} />
      </Section>
    </>
  );
}

/** What goes with it: how sure it is, the way out, reminders, where it is kept. */
function Beside({ of, view }: { readonly of: BlockCase; readonly view: QuarantineView }) {
  const actions = useQuarantineActions();
  const { quarantine } = view;
  const today = dayHere(useApp().now());
  const doubts = useDoubts(of, view);
  const known = WATCHES.map((id) => ({ id: id as string, label: watchOf(id).label }));
  const options = known.some(({ id }) => id === quarantine.reason)
    ? known
    : [...known, { id: quarantine.reason, label: quarantine.reason }];
  return (
    <>
      <Section title="How sure">
        {doubts.map((sentence) => (
          <p key={sentence} class={css.doubt}>
            {sentence}
          </p>
        ))}
      </Section>
      <Section title="Out of it">
        <Leave of={of} view={view} />
      </Section>
      <Section title="Reminders">
        <CalendarFile blockId={of.block.id} />
      </Section>
      <Section title="About it">
        <SelectField
          label="Watched for"
          value={quarantine.reason}
          options={options}
          onChange={(reason) => actions.setQuarantine(quarantine, { reason })}
        />
        <DayField
          label="Apart since"
          value={quarantine.begunOn}
          max={today}
          onChange={(begunOn) => {
            if (begunOn && begunOn <= today) actions.setQuarantine(quarantine, { begunOn });
          }}
        />
        <TextField
          label="Where"
          value={quarantine.where}
          hint="Lidded clear box or sealed bag, white paper beneath, away from felt, straw and timber."
          onChange={(where) => actions.setQuarantine(quarantine, { where })}
        />
        <OtherWords record={quarantine} path="where" />
      </Section>
      <Section title="Other ways">
        <OtherWays />
      </Section>
    </>
  );
}

/** What a quiet watch is worth, for the insect its holes speak of; furniture beetle where nothing speaks. */
function useDoubts(of: BlockCase, view: QuarantineView): readonly string[] {
  const { catalogue } = useApp();
  const facts = useAdviceCase(of);
  const answer = of.findings
    .flatMap(({ id }) => adviceOn(id, facts, catalogue))
    .flatMap((advice) => (advice.does === 'quarantine' && advice.answer ? [advice.answer] : []))[0];
  const borer = answer?.borer ?? 'furnitureBeetle';
  const missed = answer?.missed ?? PLANNING.larvae.map((larvae) => missedBy(borer, larvae));
  return doubtSentences(view.course.by, borer, missed);
}

/** Gas, heat and poison: for professionals, or not at all; with what can go wrong first. */
function OtherWays() {
  const { anoxia, warmAnoxia, heat, surfaceInsecticide } = OTHER_TREATMENTS;
  return (
    <details>
      <summary>Without a freezer</summary>
      <Cautions ids={[...anoxia.cautions, ...heat.cautions, ...surfaceInsecticide.cautions]} />
      <ul class={css.ways}>
        <li>
          Without oxygen, by trained people: at most {anoxia.oxygenPctAtMost} % for {anoxia.days.low} days at{' '}
          {anoxia.temperatureC} °C; some report {warmAnoxia.days.low}–{warmAnoxia.days.high} days at{' '}
          {warmAnoxia.temperatureC} °C.
        </li>
        <li>Heat: {heat.coreC} °C at the core, with the air’s dampness held, in a chamber made for it.</li>
        <li>
          Insecticide: only a product allowed for it where you live, by its label. It reaches{' '}
          {surfaceInsecticide.reaches}; a block meets felt that a head will wear, so prefer cold.
        </li>
      </ul>
    </details>
  );
}

function Past({ quarantine }: { readonly quarantine: Quarantine }) {
  const { store } = useApp();
  const { begunOn, left, reason } = quarantine;
  const looks = store.quarantineChecksOf(quarantine.id);
  const fresh = looks.filter(({ freshSigns }) => freshSigns).length;
  return (
    <li>
      <b>{watchOf(reason).label}</b>
      <span class="figures">
        {' '}
        {dayWords(begunOn)} to {dayWords(left?.on ?? begunOn)}
      </span>
      <small>
        {looks.length === 1 ? '1 look' : `${looks.length} looks`}
        {fresh > 0 && `, ${fresh} with fresh signs`}
        {left?.early ? `. Left early: ${left.reason || 'no reason given'}` : '. No sign seen at the end'}
      </small>
    </li>
  );
}
