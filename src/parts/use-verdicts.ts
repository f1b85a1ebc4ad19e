import { assess } from '../core/assess.ts';
import { plainTerms } from '../core/blank.ts';
import type { Verdict } from '../core/catalogue.ts';
import { useApp } from '../ui/app.ts';

/** Verdict by block id, reckoned when asked for: a filter over the shelf asks for each once. */
export function useVerdicts(): (blockId: string) => Verdict | undefined {
  const { store, catalogue, own } = useApp();
  return (blockId) => {
    const block = store.get('block', blockId);
    const survey = store.surveyOf(blockId);
    if (!block || !survey) return undefined;
    const terms = (block.saleId ? store.get('sale', block.saleId)?.terms : undefined) ?? plainTerms;
    const facts = {
      block,
      survey,
      findings: store.findingsOf(blockId),
      terms,
      settings: store.settings.value,
      pace: own.pace.value,
    };
    return assess(facts, catalogue).verdict;
  };
}
