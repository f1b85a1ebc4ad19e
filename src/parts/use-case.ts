import { useMemo } from 'preact/hooks';
import { type Assessment, assess } from '../core/assess.ts';
import { plainTerms } from '../core/blank.ts';
import type {
  Alignment,
  Finding,
  HatBlock,
  Mark,
  Offer,
  Photo,
  PhotoMark,
  Sale,
  Settings,
  Statement,
  Survey,
} from '../core/records.ts';
import { useApp } from '../ui/app.ts';

/** A block with all that belongs to it and its assessment by the book; derived, never stored. */
export interface BlockCase {
  readonly block: HatBlock;
  readonly survey: Survey;
  readonly findings: readonly Finding[];
  readonly photos: readonly Photo[];
  readonly alignments: readonly Alignment[];
  readonly marks: readonly Mark[];
  /** What is drawn over its photographs. */
  readonly photoMarks: readonly PhotoMark[];
  readonly statements: readonly Statement[];
  readonly offers: readonly Offer[];
  readonly sale: Sale | undefined;
  readonly settings: Settings;
  readonly assessment: Assessment;
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
