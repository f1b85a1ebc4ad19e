import { useState } from 'preact/hooks';
import { entry } from '../../core/catalogue.ts';
import { neededHours, regimeOf, stagesOf } from '../../core/cold.ts';
import type { CautionId } from '../../core/physics/cautions.ts';
import {
  FREEZE_OBSTACLES,
  FREEZING,
  type FreezeObstacle,
  type FreezeRegimeId,
  freezeAnswer,
} from '../../core/physics/freezing.ts';
import { Cautions } from '../../parts/cautions.tsx';
import { useQuarantineActions } from '../../parts/quarantine-actions.ts';
import type { QuarantineView } from '../../parts/quarantine-facts.ts';
import { SourceLine } from '../../parts/source-line.tsx';
import type { BlockCase } from '../../parts/use-case.ts';
import { sourceOf } from '../../text/advice.ts';
import { days, list } from '../../text/format.ts';
import { degrees, obstacleWords, regimeWords } from '../../text/quarantine.ts';
import { useApp } from '../../ui/app.ts';
import { Button } from '../../ui/button.tsx';
import { ChoiceField, NumberField, TickField } from '../../ui/field.tsx';
import css from './quarantine.module.css';
import { Round } from './round.tsx';

interface Freezing {
  readonly of: BlockCase;
  readonly view: QuarantineView;
}

/** Rounds of freezing, as done and to do; a new one by what the freezer can and the block may. */
export function Freezing({ of, view }: Freezing) {
  const { rounds } = view;
  const running = rounds.some(({ state }) => state === 'running');
  return (
    <>
      <Cautions ids={FREEZING.cautions} />
      {rounds.map((round) => (
        <Round key={round.round} view={view} round={round} />
      ))}
      {running ? null : <NewRound of={of} view={view} />}
    </>
  );
}

/** What the block's materials and parts say against cold. */
function useKnownObstacles({ assessment }: BlockCase): readonly FreezeObstacle[] {
  const { catalogue } = useApp();
  const { materials, parts, assumed } = assessment.setting;
  const named = assumed.includes('material') ? [] : materials;
  return [
    ...named.flatMap((id) => entry(catalogue.materials, id)?.freezing ?? []),
    ...(parts === 'several' ? (['laminatedOrMultiPart'] as const) : []),
  ];
}

/** What only the owner can see on it. */
const TOLD = ['paintedOrGessoed', 'animalGlue'] as const satisfies readonly FreezeObstacle[];
/** A household freezer at its coldest. */
const USUAL_C = -20;

function NewRound({ of, view }: Freezing) {
  const { now } = useApp();
  const actions = useQuarantineActions();
  const { quarantine, rounds } = view;
  const [below, setBelow] = useState<number | null>(-USUAL_C);
  const [picked, setPicked] = useState<FreezeRegimeId | null>(null);
  const known = useKnownObstacles(of);
  const obstacles = [...known, ...TOLD.filter((id) => quarantine.bears.includes(id))];
  // Nobody knows how cold it is: nothing can be offered.
  const answer = below === null ? undefined : freezeAnswer(-below, obstacles);
  const asks = obstacles.filter((id) => FREEZE_OBSTACLES[id].verdict === 'ask first');
  const regime = answer?.kind === 'regimes' ? (answer.ids.find((id) => id === picked) ?? answer.ids[0]) : undefined;
  const number = (rounds.at(-1)?.round ?? 0) + 1;
  const begin = (): void => {
    if (!regime) return;
    const at = new Date(now()).toISOString();
    actions.beginStage(quarantine, {
      ...{ regime, round: number, step: 0, does: 'bag', begun: at, ended: at, freezerC: null },
    });
  };
  return (
    <div class={css.round}>
      <h3>{number === 1 ? 'Freeze it' : `Round ${number}`}</h3>
      <p>
        Vacuum it first, so that new dust shows. Wood borers often need {FREEZING.rounds.low} to {FREEZING.rounds.high}{' '}
        rounds.
      </p>
      <NumberField
        label="How far below zero is the freezer?"
        hint="By a thermometer lying in it, not by its dial."
        unit="°C"
        step={1}
        max={60}
        chips={[15, 18, 20, 30]}
        value={below}
        onChange={setBelow}
      />
      {TOLD.map((id) => (
        <TickField
          key={id}
          label={obstacleWords[id]}
          value={quarantine.bears.includes(id)}
          onChange={(bears) =>
            actions.setQuarantine(quarantine, {
              bears: bears ? [...quarantine.bears, id] : quarantine.bears.filter((one) => one !== id),
            })
          }
        />
      ))}
      {answer?.kind === 'not-cold-enough' && (
        <p class={css.gate}>
          At {degrees(-(below ?? 0))} nothing is killed reliably: it needs {degrees(answer.neededC)} or colder.
        </p>
      )}
      {answer?.kind === 'refused' && (
        <>
          <p class={css.gate}>Do not freeze it: {list(answer.because.map((id) => obstacleWords[id].toLowerCase()))}.</p>
          <Cautions ids={answer.cautions.filter((id) => !SHOWN.includes(id))} />
        </>
      )}
      {answer?.kind === 'regimes' && asks.length > 0 && (
        <p class={css.care}>Ask a conservator first: {list(asks.map((id) => obstacleWords[id].toLowerCase()))}.</p>
      )}
      {answer?.kind === 'regimes' && answer.ids.length === 0 && (
        <p class={css.gate}>
          Old animal glue wants a freezer no colder than −20 °C, and a longer stay: none of the known ways fits.
        </p>
      )}
      {answer?.kind === 'regimes' && regime && (
        <>
          <ChoiceField
            label="Which way?"
            value={regime}
            options={answer.ids.map((id) => ({
              id,
              label: regimeWords(stagesOf(id)),
              text: `at ${degrees(regimeOf(id)?.freezerC ?? 0)}`,
            }))}
            onChange={setPicked}
          />
          <p>{durationWords(regime, view.radiusMm)}</p>
          <SourceLine source={sourceOf(regimeOf(regime) ?? { source: '', confidence: 'own' })} />
          <Button onPress={begin}>Sealed in its bag: begin round {number}</Button>
        </>
      )}
    </div>
  );
}

const SHOWN: readonly CautionId[] = FREEZING.cautions;

/** How long one round takes, the cold's way to the middle counted in. */
function durationWords(regime: FreezeRegimeId, radiusMm: number): string {
  const hours = stagesOf(regime).map((_, step) => neededHours({ regime, step, radiusMm })?.surely ?? 0);
  const all = hours.reduce((sum, one) => sum + one, 0);
  return `Until the bag may be opened: ${days(Math.ceil(all / 24))}. The time counts from when the middle is cold, and that takes a wrapped block of this size its time too.`;
}
