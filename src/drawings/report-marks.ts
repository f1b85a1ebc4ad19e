import type { ReportMark } from '../core/report.ts';
import type { FigureMark } from './placing.ts';

/** Marks of a report as the drawing takes them; a grade of 0 is nothing to mark. */
export const reportMarks = (marks: readonly ReportMark[]): FigureMark[] =>
  marks.flatMap(({ number, zone, part, mechanism, grade }) =>
    grade === 0
      ? []
      : [{ number, zone: zone as FigureMark['zone'], mechanism, grade, ...(part === null ? {} : { part }) }],
  );
