import { type Catalogue, entry, type Grade } from '../core/catalogue.ts';
import type { FigureMark } from '../drawings/placing.ts';
import type { BlockCase } from './use-case.ts';

/** The findings as numbered marks for the drawing: shape by mechanism, weight by grade. */
export function figureMarks(of: Pick<BlockCase, 'assessment'>, catalogue: Catalogue): readonly FigureMark[] {
  return of.assessment.graded
    .filter(({ grade }) => grade > 0)
    .map(({ finding, grade }) => ({
      number: finding.number,
      zone: finding.zone as FigureMark['zone'],
      ...(finding.part === null ? {} : { part: finding.part }),
      mechanism: entry(catalogue.damage, finding.kind)?.mechanism ?? 'surface',
      grade: grade as Exclude<Grade, 0>,
    }));
}
