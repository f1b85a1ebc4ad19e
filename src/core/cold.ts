import { entry } from './catalogue.ts';
import { type ColdStep, FREEZE_REGIMES, FREEZING, type FreezeRegime } from './physics/freezing.ts';
import { coreHours } from './physics/heat-flow.ts';
import type { ColdStage } from './records.ts';

const HOUR_MS = 3_600_000;
/** A block goes in at room temperature. SOURCE: {@link FREEZING} asks for more than 18 °C. */
const START_C = 20;
/** The core counts as cold within so many degrees of the freezer. SOURCE: materials handbook §2.4, as computed there. */
const NEAR_C = 2;

/** A stage of freezing as recorded, with what its sums need of the block. */
export type ColdStageFacts = Pick<
  ColdStage,
  'id' | 'blockId' | 'regime' | 'round' | 'step' | 'does' | 'begun' | 'ended' | 'freezerC'
> & {
  /** Half the block's thickness, taken as a round bar: how long the cold needs to its middle. */
  readonly radiusMm: number;
};

/** A stage of a round as the regime asks for it. */
export interface PlannedStage {
  readonly does: ColdStage['does'];
  readonly leastHours: number;
  readonly mostHours: number;
}

export const regimeOf = (id: string): FreezeRegime | undefined => entry<FreezeRegime>(FREEZE_REGIMES, id);

/**
 * All stages of one round: sealed in its bag first, warmed up in it last, whatever the regime says between.
 * @returns empty for a regime this app does not know
 * SOURCE: {@link FREEZE_REGIMES}, {@link FREEZING}
 */
export function stagesOf(regime: string): readonly PlannedStage[] {
  const steps: readonly ColdStep[] = regimeOf(regime)?.steps ?? [];
  if (steps.length === 0) return [];
  const warm = FREEZING.sealedWhileWarmingHours;
  const planned = steps.map(({ do: does, leastHours, mostHours }): PlannedStage => ({ does, leastHours, mostHours }));
  const warmsUp = planned.at(-1)?.does === 'warmInBag';
  return [
    { does: 'bag', leastHours: 0, mostHours: 0 },
    ...planned,
    ...(warmsUp ? [] : [{ does: 'warmInBag' as const, leastHours: warm, mostHours: warm }]),
  ];
}

/** Hours a stage must last: when it may have been enough, and when it surely was, the cold having come to the middle slowly. */
export interface NeededHours {
  readonly perhaps: number;
  readonly surely: number;
}

/** @returns null for a regime or step this app does not know, or a thickness that is none. SOURCE: {@link coreHours} */
export function neededHours({
  regime,
  step,
  radiusMm,
}: Pick<ColdStageFacts, 'regime' | 'step' | 'radiusMm'>): NeededHours | null {
  const known = regimeOf(regime);
  const planned = stagesOf(regime)[step];
  if (!known || !planned) return null;
  const { does, leastHours } = planned;
  if (does !== 'freeze') return { perhaps: leastHours, surely: leastHours };
  const lag = coreHours(Math.min(500, Math.max(1, radiusMm)), NEAR_C / (START_C - known.freezerC));
  return { perhaps: leastHours + lag.best, surely: leastHours + lag.worst };
}

const ENDS = { freeze: 'freezeEnds', thaw: 'thawEnds', warmInBag: 'warmUpEnds' } as const;

/** When a running stage has surely been long enough; null for one that has ended, has no time, or is not known. */
export function stageEnds(
  facts: ColdStageFacts,
): { readonly kind: (typeof ENDS)[keyof typeof ENDS]; readonly at: string } | null {
  const needed = neededHours(facts);
  const begun = Date.parse(facts.begun);
  if (facts.ended !== null || facts.does === 'bag' || !needed || Number.isNaN(begun)) return null;
  return { kind: ENDS[facts.does], at: new Date(begun + Math.ceil(needed.surely * HOUR_MS)).toISOString() };
}

/** What a stage that has ended, or still runs, is worth. */
export type StageStanding =
  | { readonly state: 'running' }
  | { readonly state: 'enough' }
  /** Long enough only if the cold came to the middle quickly. */
  | { readonly state: 'perhaps'; readonly shortHours: number }
  | { readonly state: 'tooShort'; readonly shortHours: number }
  | { readonly state: 'tooWarm'; readonly neededC: number }
  /** Nobody read a thermometer in the freezer. */
  | { readonly state: 'notRead' }
  | { readonly state: 'unknown' };

/** Whether one stage was long and cold enough. SOURCE: {@link neededHours}, {@link FREEZE_REGIMES} */
export function stageStanding(facts: ColdStageFacts): StageStanding {
  const needed = neededHours(facts);
  const regime = regimeOf(facts.regime);
  if (!needed || !regime) return { state: 'unknown' };
  if (facts.does === 'freeze' && facts.freezerC !== null && facts.freezerC > regime.freezerC) {
    return { state: 'tooWarm', neededC: regime.freezerC };
  }
  if (facts.ended === null) return { state: 'running' };
  const lasted = Math.max(0, (Date.parse(facts.ended) - Date.parse(facts.begun)) / HOUR_MS);
  // A damaged backup may hold a moment that is none.
  if (Number.isNaN(lasted)) return { state: 'unknown' };
  if (lasted < needed.perhaps) return { state: 'tooShort', shortHours: needed.surely - lasted };
  if (facts.does === 'freeze' && facts.freezerC === null) return { state: 'notRead' };
  if (lasted < needed.surely) return { state: 'perhaps', shortHours: needed.surely - lasted };
  return { state: 'enough' };
}

/** One round of freezing with its stages, as planned and as done. */
export interface RoundStanding {
  readonly round: number;
  readonly regime: string;
  readonly stages: readonly {
    readonly planned: PlannedStage;
    readonly done: ColdStageFacts | undefined;
    readonly standing: StageStanding | undefined;
  }[];
  /** `failed`: a stage was too short, too warm or not measured; the round does not count. */
  readonly state: 'running' | 'done' | 'failed';
  /** When the bag could be opened; null until the round is done. */
  readonly endedAt: string | null;
}

/**
 * The rounds of freezing of one quarantine, oldest first. A round counts when every stage was long and cold enough.
 * SOURCE: {@link stageStanding}
 */
export function roundsOf(stages: readonly ColdStageFacts[]): readonly RoundStanding[] {
  const numbers = [...new Set(stages.map(({ round }) => round))].sort((a, b) => a - b);
  return numbers.map((round) => {
    const done = stages.filter((stage) => stage.round === round);
    const regime = done[0]?.regime ?? '';
    const rows = stagesOf(regime).map((planned, step) => {
      // Of two written for the same step, as two phones may, the later one counts.
      const stage = done
        .filter((one) => one.step === step)
        .sort((a, b) => Date.parse(a.begun) - Date.parse(b.begun))
        .at(-1);
      return { planned, done: stage, standing: stage && stageStanding(stage) };
    });
    const failed = rows.some(({ standing }) => standing && standing.state !== 'enough' && standing.state !== 'running');
    const complete = rows.length > 0 && rows.every(({ standing }) => standing?.state === 'enough');
    return {
      round,
      regime,
      stages: rows,
      state: failed || rows.length === 0 ? 'failed' : complete ? 'done' : 'running',
      endedAt: complete ? (rows.at(-1)?.done?.ended ?? null) : null,
    };
  });
}
