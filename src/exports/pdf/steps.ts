import type { ReportDocument, ReportPart, ReportPhoto } from '../../core/report.ts';
import type { Face } from './paper.ts';

/** How the writing of a PDF is counted, for whoever watches it. */

export const FACES = ['text', 'strong', 'heading'] as const satisfies readonly Face[];

const picturesIn = (part: ReportPart): number =>
  part.kind === 'photographs' ? part.items.length : part.kind === 'pair' ? 1 : 0;

/** Steps of the writer: opened, each part laid out, each part and picture drawn, all drawn, the pages and each face packed. */
export const writerSteps = ({ parts }: ReportDocument): number =>
  parts.reduce((sum, part) => sum + 2 + picturesIn(part), 3 + FACES.length);

/** Photographs that a report shows whole, each once, in their order; of a lined-up pair it shows crops. */
export function wholePhotographs({ parts }: ReportDocument): readonly string[] {
  const shown = parts.flatMap((part): readonly ReportPhoto[] =>
    part.kind === 'photographs' ? part.items : part.kind === 'pair' && !part.h ? [part.before, part.after] : [],
  );
  return [...new Set(shown.map(({ sha256 }) => sha256))];
}
