import { useMemo } from 'preact/hooks';
import { type Catalogue, entry } from '../core/catalogue.ts';
import type { Patch } from '../core/changes.ts';
import { pertQuantile } from '../core/estimate.ts';
import { offsetText } from '../core/local-time.ts';
import type { PaceBook } from '../core/plan.ts';
import { runningOf } from '../core/quarantine.ts';
import type { Fields, HatBlock, Stint, WorkStep } from '../core/records.ts';
import type { Move } from '../core/steps/order.ts';
import { isRunning, longestStint, stopped } from '../core/steps/stints.ts';
import { waitFrom } from '../core/steps/waits.ts';
import type { WorkItem } from '../core/steps/work-plan.ts';
import { create, type Edit, remove, set } from '../store/edits.ts';
import type { Store } from '../store/store.ts';
import { useApp } from '../ui/app.ts';
import { zoneHere } from './clock.ts';

interface Bench {
  readonly store: Store;
  readonly catalogue: Catalogue;
  readonly now: () => number;
  /** Of the phone, asked at every tap: one may be on a journey. */
  readonly zone: () => string;
  readonly pace: () => PaceBook;
}

/** What a person does at the bench, each one change that undo takes back whole. */
export function workActionsOn({ store, catalogue, now, zone, pace }: Bench) {
  const change = (label: string, edits: readonly Edit[]): void => {
    // A failed save is shown by `store.saving` with its sentence; the rejection needs no second reader.
    store.change(label, edits).catch(() => undefined);
  };
  const instant = (): string => new Date(now()).toISOString();

  /** The record of a step, made when it is first touched. */
  function recorded(
    block: HatBlock,
    item: WorkItem,
  ): { readonly ids: readonly string[]; readonly edits: readonly Edit[] } {
    if (item.records.length > 0) return { ids: item.records.map(({ id }) => id), edits: [] };
    const id = store.newId();
    const { treatment, serves, amount } = item;
    return { ids: [id], edits: [create('step', id, { blockId: block.id, treatment, serves: [...serves], amount })] };
  }

  const ending = (stint: Stint): Pick<Stint, 'ended' | 'minutes'> =>
    stopped(stint, now(), longestStint(store.settings.peek()), store.aheadMs.peek() > 0);

  /** Every timer that runs, stopped: there is one pair of hands. */
  const stops = (): Edit[] =>
    store
      .all('stint')
      .peek()
      .filter(isRunning)
      .map((stint) => set('stint', stint.id, ending(stint)));

  /** Not out of a quarantine that runs: what is done to it there, freezing for one, is done there. */
  const ontoTheBench = (block: HatBlock): Edit[] =>
    block.place === 'onTheBench' || runningOf(store.quarantinesOf(block.id))
      ? []
      : [set('block', block.id, { place: 'onTheBench' })];

  /** What the log says of a step that is done: estimate as it was, minutes as they now are; nothing where none were said. */
  function logged(step: Pick<WorkStep, 'id' | 'blockId' | 'treatment'>, minutes: number, estimate?: WorkItem): Edit[] {
    const job = store.jobsOf(step.blockId).find(({ stepId }) => stepId === step.id);
    if (!(minutes > 0)) return job ? [remove(job.id)] : [];
    if (job) return [set('job', job.id, { actualHours: minutes / 60 })];
    const treatment = entry(catalogue.treatments, step.treatment);
    if (!treatment || !estimate || step.treatment === null) return [];
    const fields: Fields<'job'> = {
      ...{ blockId: step.blockId, treatment: step.treatment, reference: treatment.reference, stepId: step.id },
      ...{ estimateHours: estimate.hours.m, pace: pace()[treatment.reference]?.median ?? 1 },
      ...{ lowHours: pertQuantile(estimate.hours, 0.1), highHours: pertQuantile(estimate.hours, 0.9) },
      ...{ actualHours: minutes / 60, at: instant(), note: '' },
    };
    return [create('job', store.newId(), fields)];
  }

  /** Minutes of a step once one of its stints says something else. */
  const minutesWith = (stint: Stint, minutes: number | null): number =>
    store
      .stintsOfStep(stint.stepId)
      .reduce((sum, each) => sum + ((each.id === stint.id ? minutes : each.minutes) ?? 0), 0);

  /** The log of a step that was done already, after its minutes changed. */
  function relogged(stint: Stint, minutes: number | null, estimate: WorkItem | undefined): Edit[] {
    const step = store.get('step', stint.stepId);
    return step?.done ? logged(step, minutesWith(stint, minutes), estimate) : [];
  }

  return {
    /** Starts the timer, after stopping any other; the block comes onto the bench. */
    start(block: HatBlock, item: WorkItem): void {
      const { ids, edits } = recorded(block, item);
      const halted = stops();
      change(halted.length > 0 ? 'changing over to this step' : 'starting work', [
        ...edits,
        ...halted,
        ...ontoTheBench(block),
        create('stint', store.newId(), {
          ...{ blockId: block.id, stepId: ids[0] ?? '', began: instant(), offset: offsetText(now(), zone()) },
        }),
      ]);
    },
    stop: (stint: Stint): void => change('stopping the timer', [set('stint', stint.id, ending(stint))]),
    /** Minutes as somebody says them, for a span in doubt or a stint written down wrong. */
    sayMinutes(stint: Stint, minutes: number, item?: WorkItem): void {
      change('minutes of work', [
        set('stint', stint.id, { minutes, ended: stint.ended ?? instant() }),
        ...relogged(stint, minutes, item),
      ]);
    },
    removeStint: (stint: Stint, item?: WorkItem): void =>
      change('taking minutes out', [remove(stint.id), ...relogged(stint, null, item)]),
    writeDown(block: HatBlock, item: WorkItem, minutes: number): void {
      const { ids, edits } = recorded(block, item);
      const [stepId = ''] = ids;
      const ended = instant();
      const began = new Date(now() - minutes * 60_000).toISOString();
      const offset = offsetText(now(), zone());
      const isDone = item.stand === 'done';
      change('minutes of work', [
        ...edits,
        ...(isDone ? [] : ontoTheBench(block)),
        create('stint', store.newId(), { blockId: block.id, stepId, began, ended, offset, minutes, by: 'hand' }),
        ...(isDone && item.records[0] ? logged(item.records[0], item.minutes + minutes, item) : []),
      ]);
    },

    /** The step is done: its timer stops, its wait begins, what it took goes into the log. */
    finish(block: HatBlock, item: WorkItem): void {
      const { ids, edits } = recorded(block, item);
      const [first = ''] = ids;
      const running = item.stints.filter(isRunning);
      const ends = running.map((stint) => ({ id: stint.id, ...ending(stint) }));
      const minutes = item.minutes + ends.reduce((sum, end) => sum + (end.minutes ?? 0), 0);
      const offset = offsetText(now(), zone());
      const patch: Patch<'step'> = {
        ...{ done: { at: instant(), offset }, skipped: null, serves: [...item.serves], amount: item.amount },
        wait: waitFrom(now(), item.waitHours.m, offset),
      };
      change('a step done', [
        ...edits,
        ...ends.map(({ id, ended, minutes: counted }) => set('stint', id, { ended, minutes: counted })),
        ...ontoTheBench(block),
        ...ids.map((id) => set('step', id, patch)),
        ...logged({ id: first, blockId: block.id, treatment: item.treatment }, minutes, item),
      ]);
    },
    /** Not done after all: the wait and the log go, the minutes stay. */
    reopen(item: WorkItem): void {
      const ids = new Set(item.records.map(({ id }) => id));
      change('a step not done after all', [
        ...[...ids].map((id) => set('step', id, { done: null, wait: null })),
        ...store
          .all('job')
          .peek()
          .filter(({ stepId }) => stepId !== undefined && ids.has(stepId))
          .map(({ id }) => remove(id)),
      ]);
    },
    /** The wait is over sooner, or lasts longer. */
    setWaitEnd: (item: WorkItem, untilMs: number): void =>
      change(
        'how long it waits',
        item.records.flatMap(({ id, wait }) =>
          wait ? [set('step', id, { wait: { ...wait, until: new Date(untilMs).toISOString() } })] : [],
        ),
      ),

    /** The record of a step, made now if nobody has touched it: what is filed under it needs its id. */
    touch(block: HatBlock, item: WorkItem): string {
      const { ids, edits } = recorded(block, item);
      if (edits.length > 0) change('work on a step', edits);
      return ids[0] ?? '';
    },

    skip(block: HatBlock, item: WorkItem, reason: string): void {
      const { ids, edits } = recorded(block, item);
      change('leaving a step out', [
        ...edits,
        ...item.stints.filter(isRunning).map((stint) => set('stint', stint.id, ending(stint))),
        ...ids.map((id) =>
          set('step', id, { skipped: { at: instant(), reason }, serves: [...item.serves], amount: item.amount }),
        ),
      ]);
    },
    takeUp: (item: WorkItem): void =>
      change(
        'taking the step up again',
        item.records.map(({ id }) => set('step', id, { skipped: null })),
      ),

    /** Puts a step in: of the catalogue, or in own words. @returns its id */
    addStep(block: HatBlock, fields: Partial<Fields<'step'>>): string {
      const id = store.newId();
      change('a step put in', [create('step', id, { ...fields, blockId: block.id, added: true })]);
      return id;
    },
    setStep: (step: WorkStep, patch: Patch<'step'>): void => change('a step', [set('step', step.id, patch)]),
    /** Takes out a step somebody put in, with its minutes; photographs taken during it stay with the block. */
    removeStep: (step: WorkStep): void =>
      change('taking the step out', [
        remove(step.id),
        ...store.stintsOfStep(step.id).map(({ id }) => remove(id)),
        ...store
          .jobsOf(step.blockId)
          .filter(({ stepId }) => stepId === step.id)
          .map(({ id }) => remove(id)),
      ]),
    /** New places in the order, as one step. */
    move(block: HatBlock, items: readonly WorkItem[], { places }: Extract<Move, { ok: true }>): void {
      change(
        'the order of work',
        places.flatMap(({ key, position }) => {
          const item = items.find((each) => each.key === key);
          if (!item) return [];
          const { ids, edits } = recorded(block, item);
          return [...edits, ...ids.map((id) => set('step', id, { position }))];
        }),
      );
    },
  };
}

export type WorkActions = ReturnType<typeof workActionsOn>;

export function useWorkActions(): WorkActions {
  const { store, catalogue, now, own } = useApp();
  return useMemo(
    () => workActionsOn({ store, catalogue, now, zone: zoneHere, pace: () => own.pace.peek() }),
    [store, catalogue, now, own],
  );
}
