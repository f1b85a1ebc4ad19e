import { entry } from '../core/catalogue.ts';
import type { Mark } from '../core/records.ts';
import { readingsAgainstTape, type StampReading, stampReadings, type TapedReading } from '../core/size-stamps.ts';
import { type LengthUnits, length } from '../text/format.ts';
import { ukScaleOf } from './uk-scale.ts';
import type { BlockCase } from './use-case.ts';

/** The tape at the rope line, or null where it was not taken. */
export const tapeOf = ({ survey }: Pick<BlockCase, 'survey'>): number | null =>
  entry(survey.measures, 'circRopeMm') ?? null;

/** Everything a stamp can mean on this block, the one nearest to the tape first where there is a tape. */
export function readingsOf(
  of: Pick<BlockCase, 'survey' | 'settings'>,
  mark: Pick<Mark, 'text'>,
): readonly (StampReading | TapedReading)[] {
  const tape = tapeOf(of);
  const scale = ukScaleOf(of.settings);
  return tape === null ? stampReadings(mark.text, scale) : readingsAgainstTape(mark.text, tape, scale);
}

/** “571.5 mm; the tape says 571 mm, 0.5 mm less”; without a tape, “571.5 mm round”. */
export function againstTape(reading: StampReading | TapedReading, units: LengthUnits): string {
  const stamped = length(reading.circumferenceMm, units);
  if (!('differenceMm' in reading)) return `${stamped} round`;
  // A tape is read to the millimetre: a tenth is all a difference can mean.
  const differenceMm = Math.round(reading.differenceMm * 10) / 10;
  if (differenceMm === 0) return `${stamped}, as the tape says`;
  const tape = length(reading.circumferenceMm + reading.differenceMm, units);
  return `${stamped}; the tape says ${tape}, ${length(Math.abs(differenceMm), units)} ${differenceMm < 0 ? 'less' : 'more'}`;
}

/** “22½ in is 571.5 mm; the tape says 571 mm, 0.5 mm less.” */
export const readingSentence = (reading: StampReading | TapedReading, units: LengthUnits): string =>
  `${reading.label} is ${againstTape(reading, units)}.`;

/** The reading chosen for a mark, else the one nearest to the tape; undefined where it is no size. */
export function stampedSize(of: Pick<BlockCase, 'survey' | 'settings'>, mark: Mark): string | undefined {
  const readings = readingsOf(of, mark);
  const chosen = readings.find(({ reading }) => reading === mark.reading);
  // Without a tape two scales may fit, and neither is to be preferred.
  const reading = chosen ?? (tapeOf(of) !== null || readings.length === 1 ? readings[0] : undefined);
  return reading && readingSentence(reading, of.settings.units);
}
