import type { PhotoMark } from '../../core/records.ts';
import type { LengthUnits } from '../../text/format.ts';
import { lengthWithDoubt } from '../../text/measured.ts';
import { type Desk, type Drawn, straightLength } from './desk.ts';

/** The number of a mark's finding; empty for one that belongs to none. */
export function numberOf(desk: Pick<Desk, 'of'>, findingId: string | null): string {
  const finding = desk.of.findings.find(({ id }) => id === findingId);
  return finding ? String(finding.number) : '';
}

/** What stands beside a mark: its finding's number, its words, and of a line its length. */
export function labelOf(desk: Desk, mark: PhotoMark, units: LengthUnits): string {
  const [a, b] = mark.points;
  const length = mark.shape === 'line' && !mark.measured && a && b ? straightLength(desk, a, b) : null;
  return [numberOf(desk, mark.findingId), mark.text, length && lengthWithDoubt(length.mm, length.sigmaMm, units)]
    .filter(Boolean)
    .join(' · ');
}

/** The marks already on the photograph, without the one being worked on. */
export const savedMarks = (desk: Desk, without: string | null = null): Drawn[] =>
  desk.marks
    .filter(({ id }) => id !== without)
    .map((mark) => ({
      key: mark.id,
      shape: mark.shape,
      points: mark.points,
      label: labelOf(desk, mark, desk.of.settings.units),
    }));
