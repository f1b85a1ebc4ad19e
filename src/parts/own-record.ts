import { computed, type ReadonlySignal } from '@preact/signals';
import type { Catalogue, Treatment } from '../core/catalogue.ts';
import { addTallies, paceBookOf, type SurveyedBlock, tallyOf } from '../core/own-record.ts';
import type { PaceBook } from '../core/plan.ts';
import type { Tallies } from '../core/simulate/belief.ts';
import type { Store } from '../store/store.ts';

/** The owner's pace and beliefs, derived again when a job is logged or a survey changes. The example teaches nothing. */
export function createOwnRecord(
  store: Store,
  catalogue: Catalogue,
): { pace: ReadonlySignal<PaceBook>; tallies: ReadonlySignal<Tallies> } {
  // A survey is counted once and again only when it changes: with thousands of blocks an edit touches one of them.
  const known = new Map<string, SurveyedBlock & { readonly tally: Tallies }>();
  const counted = (one: SurveyedBlock): Tallies => {
    const before = known.get(one.block.id);
    if (before?.block === one.block && before.survey === one.survey && before.findings === one.findings)
      return before.tally;
    const tally = tallyOf(one, catalogue);
    known.set(one.block.id, { ...one, tally });
    return tally;
  };
  const references = [...new Set(Object.values(catalogue.treatments).map(({ reference }) => reference))];
  return {
    pace: computed(() => paceBookOf(store.all('job').value, references as Treatment['reference'][])),
    tallies: computed(() =>
      addTallies(
        store.blocks.value
          .filter(({ example }) => !example)
          .flatMap((block) => {
            const survey = store.surveyOf(block.id);
            return survey ? [counted({ block, survey, findings: store.findingsOf(block.id) })] : [];
          }),
      ),
    ),
  };
}
