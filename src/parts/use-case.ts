import { useMemo } from 'preact/hooks';
import { assess } from '../core/assess.ts';
import { plainTerms } from '../core/blank.ts';
import type { Offer } from '../core/records.ts';
import type { ReportCase } from '../reports/case.ts';
import { useApp } from '../ui/app.ts';

/** A block with all that belongs to it and its assessment by the book; derived, never stored. */
export interface BlockCase extends ReportCase {
  readonly offers: readonly Offer[];
}

/** The case of a block, drawn again whenever one of its records changes; undefined when the block is not there. */
export function useCase(blockId: string): BlockCase | undefined {
  const { store, catalogue, own } = useApp();
  const pace = own.pace.value;
  const block = store.get('block', blockId);
  const survey = store.surveyOf(blockId);
  const findings = store.findingsOf(blockId);
  const sale = block?.saleId ? store.get('sale', block.saleId) : undefined;
  const settings = store.settings.value;
  const assessment = useMemo(
    () =>
      block && survey
        ? assess({ block, survey, findings, terms: sale?.terms ?? plainTerms, settings, pace }, catalogue)
        : undefined,
    [block, survey, findings, sale, settings, pace, catalogue],
  );
  if (!block || !survey || !assessment) return undefined;
  return {
    block,
    survey,
    findings,
    photos: store.photosOf(blockId),
    alignments: store.alignmentsOf(blockId),
    marks: store.marksOf(blockId),
    photoMarks: store.photoMarksOf(blockId),
    statements: store.statementsOf(blockId),
    offers: store.offersOf(blockId),
    sale,
    settings,
    assessment,
  };
}
