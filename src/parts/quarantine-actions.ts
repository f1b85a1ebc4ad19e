import { useMemo } from 'preact/hooks';
import type { Patch } from '../core/changes.ts';
import type { ColdStage, Fields, HatBlock, Place, Quarantine, QuarantineCheck, ReadyCheck } from '../core/records.ts';
import type { PlannedReminder } from '../core/reminders.ts';
import { create, type Edit, remove, set } from '../store/edits.ts';
import type { Store } from '../store/store.ts';
import { dayHere } from '../text/days.ts';
import { useApp } from '../ui/app.ts';

/** Quarantine, freezing, checks before use and moving a block: edits with the words under which each is undone. */
export function quarantineActionsOn(store: Store, now: () => number) {
  const today = (): string => dayHere(now());
  const change = (label: string, ...edits: readonly Edit[]): void => {
    store.change(label, edits).catch(() => undefined);
  };
  const begin = (block: HatBlock, fields: Partial<Fields<'quarantine'>>): Edit =>
    create('quarantine', store.newId(), { blockId: block.id, begunOn: today(), ...fields });
  const leave = (quarantine: Quarantine, early: boolean, reason: string): Edit =>
    set('quarantine', quarantine.id, { left: { on: today(), early, reason } });
  return {
    /** Apart from now on: its quarantine begins and it stands there. */
    begin: (block: HatBlock, fields: Partial<Fields<'quarantine'>>) =>
      change('into quarantine', begin(block, fields), set('block', block.id, { place: 'quarantine' })),
    /** Signs of life, and it is not kept apart: written down with the reason, so that nobody is asked again. */
    decline: (block: HatBlock, fields: Partial<Fields<'quarantine'>>, reason: string) =>
      change('no quarantine', begin(block, { ...fields, left: { on: today(), early: true, reason } })),
    setQuarantine: (quarantine: Quarantine, patch: Patch<'quarantine'>) =>
      change('the quarantine', set('quarantine', quarantine.id, patch)),

    /** Moves a block; a quarantine it leaves ends, checks left out are written down, all as one step. */
    move(
      block: HatBlock,
      place: Place,
      {
        leaving,
        skipped = [],
      }: {
        readonly leaving?: { readonly quarantine: Quarantine; readonly early: boolean; readonly reason: string };
        readonly skipped?: readonly { readonly check: string; readonly reason: string }[];
      } = {},
    ): void {
      change(
        'where it stands',
        set('block', block.id, { place }),
        ...(leaving ? [leave(leaving.quarantine, leaving.early, leaving.reason)] : []),
        ...skipped.map(({ check, reason }) =>
          create('readyCheck', store.newId(), {
            ...{ blockId: block.id, check, outcome: 'skipped', on: today(), note: reason },
          }),
        ),
      );
    },

    addLook(quarantine: Quarantine, fields: Partial<Fields<'quarantineCheck'>>): string {
      const id = store.newId();
      const { blockId } = quarantine;
      change(
        fields.freshSigns ? 'a look: fresh signs' : 'a look',
        create('quarantineCheck', id, { blockId, quarantineId: quarantine.id, on: today(), ...fields }),
      );
      return id;
    },
    setLook: (look: QuarantineCheck, patch: Patch<'quarantineCheck'>) =>
      change('a look', set('quarantineCheck', look.id, patch)),
    removeLook: (look: QuarantineCheck) => change('removing the look', remove(look.id)),

    beginStage: (quarantine: Quarantine, fields: Omit<Fields<'coldStage'>, 'blockId' | 'quarantineId' | 'note'>) =>
      change(
        'a stage of freezing',
        create('coldStage', store.newId(), { ...fields, blockId: quarantine.blockId, quarantineId: quarantine.id }),
      ),
    setStage: (stage: ColdStage, patch: Patch<'coldStage'>, label = 'a stage of freezing') =>
      change(label, set('coldStage', stage.id, patch)),
    /** The stage and what came after it in its round. */
    removeStages: (stages: readonly ColdStage[]) => change('removing the stage', ...stages.map(({ id }) => remove(id))),

    writeCheck(block: HatBlock, check: string, written: ReadyCheck | undefined, patch: Patch<'readyCheck'>): void {
      change(
        'a check before use',
        written
          ? set('readyCheck', written.id, { on: today(), ...patch })
          : create('readyCheck', store.newId(), { blockId: block.id, check, on: today(), ...patch } as Partial<
              Fields<'readyCheck'>
            >),
      );
    },
    removeCheck: (written: ReadyCheck) => change('taking the check back', remove(written.id)),

    addExpense: (block: HatBlock, fields: Partial<Fields<'expense'>>) =>
      change('money spent', create('expense', store.newId(), { blockId: block.id, on: today(), ...fields })),
    removeExpense: (id: string) => change('taking the money out', remove(id)),
    choosePath: (block: HatBlock, path: HatBlock['path']) =>
      change('what to do with it', set('block', block.id, { path: path ?? null })),

    /** Writes down what a calendar file says, so that the next one can change or cancel it. Nothing if it says nothing new. */
    keepReminders(planned: readonly PlannedReminder[]): void {
      const edits = planned
        .filter(({ changed }) => changed)
        .map(({ id, key, forBlockId, start, words, sequence, cancelled }) =>
          id
            ? set('reminder', id, { start, words, sequence, cancelled })
            : create('reminder', store.newId(), { key, forBlockId, start, words, sequence, cancelled }),
        );
      if (edits.length > 0) change('the calendar file', ...edits);
    },
  };
}

export type QuarantineActions = ReturnType<typeof quarantineActionsOn>;

export function useQuarantineActions(): QuarantineActions {
  const { store, now } = useApp();
  return useMemo(() => quarantineActionsOn(store, now), [store, now]);
}
