import type { AdviceCase } from '../core/advice.ts';
import type { Assessment } from '../core/assess.ts';
import type {
  Alignment,
  Expense,
  Finding,
  HatBlock,
  Job,
  Mark,
  Offer,
  Photo,
  PhotoMark,
  Repair,
  Sale,
  Settings,
  Statement,
  Stint,
  Survey,
  WorkStep,
} from '../core/records.ts';

/** What a report is written from: a block with all that belongs to it, and its assessment by the book. */
export interface ReportCase {
  readonly block: HatBlock;
  readonly survey: Survey;
  readonly findings: readonly Finding[];
  readonly photos: readonly Photo[];
  readonly alignments: readonly Alignment[];
  readonly marks: readonly Mark[];
  /** What is drawn over its photographs. */
  readonly photoMarks: readonly PhotoMark[];
  readonly statements: readonly Statement[];
  readonly sale: Sale | undefined;
  readonly settings: Settings;
  readonly assessment: Assessment;
  /** The quarantine it is in. */
  readonly apart?: NonNullable<AdviceCase['apart']>;
}

/** The same with what was done to it and what that cost. */
export interface BenchCase extends ReportCase {
  readonly jobs: readonly Job[];
  readonly steps: readonly WorkStep[];
  readonly stints: readonly Stint[];
  readonly repairs: readonly Repair[];
  readonly expenses: readonly Expense[];
  readonly offers: readonly Offer[];
}
