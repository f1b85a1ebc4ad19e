import type { Catalogue } from '../core/catalogue.ts';
import type { ReportDocument } from '../core/report.ts';
import { asFoundReport } from './as-found.ts';
import { beforeAfterReport } from './before-after.ts';
import type { BenchCase } from './case.ts';
import { provenanceReport } from './provenance.ts';
import type { ReportWishes } from './wishes.ts';

/** What a report is written with besides the block and the wishes. */
export interface ReportTools {
  readonly catalogue: Catalogue;
  /** Id of the block's drawing. */
  readonly drawing: string;
  /** RFC 3339, UTC. */
  readonly made: string;
  /** The day it is where the phone is, `YYYY-MM-DD`. */
  readonly today: string;
}

export interface ReportKind {
  readonly label: string;
  /** Who would ask for it, in half a line. */
  readonly about: string;
  /** The wishes it hears. */
  readonly wishes: readonly (keyof ReportWishes)[];
  readonly write: (facts: BenchCase, wishes: ReportWishes, tools: ReportTools) => ReportDocument;
}

/** Every kind of report; a new one is listed by the report screen. */
export const reportKinds = {
  asFound: {
    label: 'Condition as found',
    about: 'What it is, what is wrong with it, what it would take.',
    wishes: ['photographs', 'pairs', 'advice', 'marks', 'plan', 'hours', 'working', 'prices', 'privateNames'],
    write: (facts, wishes, { catalogue, drawing, made, today }) =>
      asFoundReport(facts, wishes, catalogue, drawing, made, today),
  },
  beforeAfter: {
    label: 'Before and after',
    about: 'What was done to it, in how many hours, and what remains.',
    wishes: ['photographs', 'pairs', 'hours', 'prices', 'privateNames'],
    write: (facts, wishes, { catalogue, made }) => beforeAfterReport(facts, wishes, catalogue, made),
  },
  provenance: {
    label: 'Provenance',
    about: 'Where it has been, how one knows, and the years nobody can tell of.',
    wishes: ['marks', 'diligence', 'photographs', 'privateNames'],
    write: (facts, wishes, { catalogue, made }) => provenanceReport(facts, wishes, catalogue, made),
  },
} as const satisfies Record<string, ReportKind>;

export type ReportKindId = keyof typeof reportKinds;
