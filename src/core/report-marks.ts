import type { Assessment } from './assess.ts';
import { type Catalogue, entry } from './catalogue.ts';
import type { ReportMark } from './report.ts';

/** The findings as numbered marks: shape by mechanism, weight by grade. */
export const marksOf = ({ graded }: Pick<Assessment, 'graded'>, catalogue: Catalogue): readonly ReportMark[] =>
  graded
    .filter(({ grade }) => grade > 0)
    .map(({ finding, grade }) => ({
      number: finding.number,
      zone: finding.zone,
      part: finding.part,
      mechanism: entry(catalogue.damage, finding.kind)?.mechanism ?? 'surface',
      grade,
    }));
