import { diameterOf } from '../core/advice/size-of-block.ts';
import type { Catalogue } from '../core/catalogue.ts';
import { climateOf } from '../core/climate.ts';
import { type ColdStageFacts, type RoundStanding, roundsOf } from '../core/cold.ts';
import { type Course, courseOf, type QuarantineFacts, runningOf } from '../core/quarantine.ts';
import type { Quarantine, QuarantineCheck } from '../core/records.ts';
import type { Store } from '../store/store.ts';
import { dayHere } from '../text/days.ts';

/** A quarantine with all that belongs to it, and how it stands today. */
export interface QuarantineView {
  readonly quarantine: Quarantine;
  readonly checks: readonly QuarantineCheck[];
  readonly stages: readonly ColdStageFacts[];
  readonly rounds: readonly RoundStanding[];
  readonly facts: QuarantineFacts;
  /** Half its thickness, measured or usual: how far the cold has to go. */
  readonly radiusMm: number;
  readonly course: Course;
}

interface Here {
  readonly store: Store;
  readonly catalogue: Catalogue;
  readonly now: () => number;
}

/** Half the thickness of a block, from its survey; a usual crown where nobody has measured. */
function radiusOf({ store, catalogue }: Here, blockId: string): number {
  const measures = store.surveyOf(blockId)?.measures ?? {};
  return diameterOf({ survey: { measures }, catalogue }).mm / 2;
}

/** How one quarantine stands. */
export function viewOf(quarantine: Quarantine, here: Here): QuarantineView {
  const { store, now } = here;
  const { id, blockId } = quarantine;
  const checks = store.quarantineChecksOf(id);
  const radiusMm = radiusOf(here, blockId);
  const stages = store.coldStagesOf(id).map((stage): ColdStageFacts => ({ ...stage, radiusMm }));
  const rounds = roundsOf(stages);
  const facts: QuarantineFacts = {
    ...{ id, blockId, begunOn: quarantine.begunOn, reason: quarantine.reason, left: quarantine.left, checks },
    frozenOn: rounds.flatMap(({ endedAt }) => (endedAt === null ? [] : [dayHere(Date.parse(endedAt))])),
    hemisphere: climateOf(store.settings.value).hemisphere,
  };
  return { quarantine, checks, stages, rounds, facts, radiusMm, course: courseOf(facts, dayHere(now())) };
}

/** The quarantine a block is in now, or undefined. Tracked: asked in a component, it is drawn again when it changes. */
export function runningView(blockId: string, here: Here): QuarantineView | undefined {
  const running = runningOf(here.store.quarantinesOf(blockId));
  return running && viewOf(running, here);
}
