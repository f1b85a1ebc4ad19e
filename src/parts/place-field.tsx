import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import { entry } from '../core/catalogue.ts';
import { type PlaceQuestion, questionsBefore } from '../core/place.ts';
import { readyStanding } from '../core/ready.ts';
import { PLACES, type Place } from '../core/records.ts';
import { dayHere, dayWords } from '../text/days.ts';
import { list } from '../text/format.ts';
import { placeWords } from '../text/places.ts';
import { useApp } from '../ui/app.ts';
import { Button } from '../ui/button.tsx';
import { SelectField, TextField } from '../ui/field.tsx';
import { to } from '../ui/route.ts';
import { Sheet } from '../ui/sheet.tsx';
import css from './place-field.module.css';
import { useQuarantineActions } from './quarantine-actions.ts';
import { type QuarantineView, runningView } from './quarantine-facts.ts';
import type { BlockCase } from './use-case.ts';

const options = PLACES.map((id) => ({ id, label: placeWords[id] }));

/** Moves a block, after asking what must be asked; the question stands until it is answered or left. */
function useMove(of: BlockCase): {
  readonly view: QuarantineView | undefined;
  readonly move: (to: Place) => void;
  readonly question: ComponentChildren;
} {
  const app = useApp();
  const { store, catalogue, now } = app;
  const actions = useQuarantineActions();
  const [wanted, setWanted] = useState<Place>();
  const { block } = of;
  const view = runningView(block.id, app);
  const done = { jobs: store.jobsOf(block.id), steps: store.stepsOf(block.id) };
  const ready = readyStanding(store.readyChecksOf(block.id), done, of.assessment.setting, catalogue);
  const questions = wanted ? questionsBefore(wanted, view?.course, ready) : [];
  const move = (place: Place): void => {
    if (place === block.place) return;
    if (questionsBefore(place, view?.course, ready).length > 0) {
      setWanted(place);
      return;
    }
    if (place === 'quarantine' && !view) {
      const gate = of.assessment.gates.find(({ watch }) => watch);
      const reason = gate?.watch ?? 'unknownSource';
      actions.begin(block, { reason, begunOn: dayHere(now()), why: gate?.advice ?? '' });
      return;
    }
    // Its time is over: leaving needs no reason, but it is written down.
    const over = view && place !== 'quarantine' ? { quarantine: view.quarantine, early: false, reason: '' } : undefined;
    actions.move(block, place, over ? { leaving: over } : {});
  };
  const question = wanted && questions.length > 0 && (
    <Ask of={of} view={view} to={wanted} questions={questions} onClose={() => setWanted(undefined)} />
  );
  return { view, move, question };
}

/** Where a block stands. A running quarantine is not left, and nothing becomes ready, without a word. */
export function PlaceField({ of }: { readonly of: BlockCase }) {
  const { view, move, question } = useMove(of);
  const { block } = of;
  return (
    <>
      <SelectField label="Where it stands" value={block.place} options={options} onChange={move} />
      <p class={css.link}>
        <a href={to('/block/:id/quarantine', { id: block.id })}>
          {view ? `Quarantine until ${dayWords(view.course.endsOn)}` : 'Quarantine'}
        </a>
      </p>
      {question}
    </>
  );
}

/** One tap to another place, asking what the field would ask. */
export function MoveButton({
  of,
  place,
  label,
}: {
  readonly of: BlockCase;
  readonly place: Place;
  readonly label: string;
}) {
  const { move, question } = useMove(of);
  return (
    <>
      <Button onPress={() => move(place)}>{label}</Button>
      {question}
    </>
  );
}

function Ask({
  of,
  view,
  to: place,
  questions,
  onClose,
}: {
  readonly of: BlockCase;
  readonly view: QuarantineView | undefined;
  readonly to: Place;
  readonly questions: readonly PlaceQuestion[];
  readonly onClose: () => void;
}) {
  const { catalogue } = useApp();
  const actions = useQuarantineActions();
  const [leaving, setLeaving] = useState('');
  const [untried, setUntried] = useState('');
  const quarantine = questions.find((question) => question.ask === 'leaveQuarantine');
  const test = questions.find((question) => question.ask === 'notTested');
  const complete = (!quarantine || leaving.trim() !== '') && (!test || untried.trim() !== '');
  const go = (): void => {
    actions.move(of.block, place, {
      ...(quarantine && view ? { leaving: { quarantine: view.quarantine, early: true, reason: leaving } } : {}),
      skipped: test?.missing.map((check) => ({ check, reason: untried })) ?? [],
    });
    onClose();
  };
  return (
    <Sheet title={`${placeWords[place]}?`} onClose={onClose} closeLabel="Leave it where it is">
      {quarantine && (
        <>
          <p class={css.gate}>
            Its quarantine runs until {dayWords(quarantine.endsOn)}. What lives in one block gets into the others, into
            straw and felt.
          </p>
          <TextField label="Why before its time?" value={leaving} onChange={setLeaving} />
        </>
      )}
      {test && (
        <>
          <p class={css.care}>
            Not tried yet:{' '}
            {list(
              test.missing.map((id) => (entry(catalogue.beforeFirstUse, id)?.term ?? id).toLocaleLowerCase('en-GB')),
            )}
            . Write the test down under “Before first use”, or say why it is left out.
          </p>
          <TextField label="Why without the test?" value={untried} onChange={setUntried} />
        </>
      )}
      <Button disabled={!complete} onPress={go}>
        {placeWords[place]}, all the same
      </Button>
    </Sheet>
  );
}
