import { useRef } from 'preact/hooks';
import { assess } from '../core/assess.ts';
import { plainTerms } from '../core/blank.ts';
import { pathOf } from '../core/path.ts';
import type { HatBlock } from '../core/records.ts';
import { type WorkItem, workPlan } from '../core/steps/work-plan.ts';
import { type App, useApp } from '../ui/app.ts';
import type { BlockCase } from './use-case.ts';

/** A block with work to do or under way, and that work. */
export interface BenchWork {
  readonly of: BlockCase;
  readonly items: readonly WorkItem[];
}

/** Of the blocks in quarantine only those somebody has begun to work on. */
const isWorkedOn = ({ place, id }: HatBlock, { stintsOf }: App['store']): boolean =>
  place === 'onTheBench' || place === 'toDo' || (place === 'quarantine' && stintsOf(id).length > 0);

/** Facts a block's work was derived from, in a fixed order, and what came of them. */
type Known = Map<string, { readonly from: readonly unknown[]; readonly work: BenchWork }>;

/** The blocks with work to do: those on the bench first, then those to do, each as they came. Derived again only where a fact changed. */
export function useBench(): readonly BenchWork[] {
  const app = useApp();
  const known = useRef<Known>(new Map());
  const blocks = [...app.store.blocks.value].reverse().filter((block) => isWorkedOn(block, app.store));
  const begun = (block: HatBlock): number => (block.place === 'toDo' ? 1 : 0);
  return blocks.sort((a, b) => begun(a) - begun(b)).flatMap(({ id }) => workOf(id, app, known.current) ?? []);
}

function workOf(blockId: string, { store, catalogue, own }: App, known: Known): BenchWork | undefined {
  const block = store.get('block', blockId);
  const survey = store.surveyOf(blockId);
  if (!block || !survey) return undefined;
  const sale = block.saleId ? store.get('sale', block.saleId) : undefined;
  const records = {
    findings: store.findingsOf(blockId),
    photos: store.photosOf(blockId),
    alignments: store.alignmentsOf(blockId),
    marks: store.marksOf(blockId),
    photoMarks: store.photoMarksOf(blockId),
    statements: store.statementsOf(blockId),
    offers: store.offersOf(blockId),
  };
  const settings = store.settings.value;
  const pace = own.pace.value;
  const steps = store.stepsOf(blockId);
  const stints = store.stintsOf(blockId);
  const from = [block, survey, sale, settings, pace, steps, stints, ...Object.values(records)];
  const before = known.get(blockId);
  if (before?.from.every((fact, index) => fact === from[index])) return before.work;
  const terms = sale?.terms ?? plainTerms;
  const assessment = assess({ block, survey, findings: records.findings, terms, settings, pace }, catalogue);
  const { path } = pathOf(block, assessment);
  const work: BenchWork = {
    of: { block, survey, sale, settings, assessment, ...records },
    items: workPlan({ path, assessment, marks: records.marks, steps, stints }, catalogue, pace),
  };
  known.set(blockId, { from, work });
  return work;
}
