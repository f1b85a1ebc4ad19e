import { useMemo } from 'preact/hooks';
import { pathOf } from '../core/path.ts';
import { type WorkItem, workPlan } from '../core/steps/work-plan.ts';
import { useApp } from '../ui/app.ts';
import type { BlockCase } from './use-case.ts';

/** The work on a block, drawn again when its findings, its steps or the owner's pace change. */
export function useWork({ block, assessment, marks }: BlockCase): readonly WorkItem[] {
  const { store, catalogue, own } = useApp();
  const pace = own.pace.value;
  const steps = store.stepsOf(block.id);
  const stints = store.stintsOf(block.id);
  return useMemo(
    () => workPlan({ path: pathOf(block, assessment).path, assessment, marks, steps, stints }, catalogue, pace),
    [block, assessment, marks, steps, stints, catalogue, pace],
  );
}
