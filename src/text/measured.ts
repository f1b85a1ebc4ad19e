import type { Measured, PhotoMark } from '../core/records.ts';
import type { LengthUnits } from './format.ts';

/** Words for what was measured in a photograph. Every figure shows how far to trust it: value ± two standard errors. */

/** An uncertainty with one honest digit, or one and a half below two; rounded up rather than down. */
function honest(value: number): number {
  const power = 10 ** Math.floor(Math.log10(value) + 1e-9);
  const lead = value / power;
  return (lead < 1.9 ? Math.ceil(lead * 2 - 0.2) / 2 : Math.ceil(lead - 0.25)) * power;
}

/** The last place that means something beside an uncertainty. */
function placeOf(uncertainty: number): number {
  const power = 10 ** Math.floor(Math.log10(uncertainty) + 1e-9);
  return Math.abs(uncertainty / power - 1.5) < 1e-6 ? power / 10 : power;
}

const plain = (value: number, step: number): string => {
  const digits = Math.max(0, Math.ceil(-Math.log10(step) - 1e-9));
  return (Math.round(value / step) * step).toLocaleString('en-GB', {
    minimumFractionDigits: digits,
    maximumFractionDigits: digits,
    useGrouping: false,
  });
};

const usualStep = (value: number): number => (Math.abs(value) < 10 ? 0.1 : 1);

/** A measured value cut to what its standard error allows: what is shown and what is taken into a finding are the same. */
export function rounded(value: number, sigma: number | null): number {
  const step = sigma !== null && sigma > 0 ? placeOf(honest(2 * sigma)) : usualStep(value);
  return Number((Math.round(value / step) * step).toFixed(6));
}

/**
 * `42 ± 2 mm`: two standard errors, rounded up; the value to the same place.
 * @param sigma one standard error in the value's unit, above 0; null leaves the ± out
 */
export function plusMinus(value: number, sigma: number | null, unit: string): string {
  if (sigma === null || !(sigma > 0)) return `${plain(value, usualStep(value))} ${unit}`.trim();
  const two = honest(2 * sigma);
  const step = placeOf(two);
  return `${plain(value, step)} ± ${plain(two, step)} ${unit}`.trim();
}

/** A length with its uncertainty in the owner's units; inches decimal, because eighths would hide the ±. */
export const lengthWithDoubt = (mm: number, sigmaMm: number | null, units: LengthUnits): string =>
  units === 'mm' ? plusMinus(mm, sigmaMm, 'mm') : plusMinus(mm / 25.4, sigmaMm === null ? null : sigmaMm / 25.4, 'in');

/** Below this, or 3 px, an opening is a hairline and no number. Source: trials on rendered photographs. */
export const HAIRLINE_MM = 0.4;

const FRACTIONS = [
  [1 / 10, 'a tenth'],
  [1 / 6, 'a sixth'],
  [1 / 5, 'a fifth'],
  [1 / 4, 'a quarter'],
  [1 / 3, 'a third'],
  [2 / 5, 'two fifths'],
  [1 / 2, 'half'],
  [3 / 5, 'three fifths'],
  [2 / 3, 'two thirds'],
  [3 / 4, 'three quarters'],
  [4 / 5, 'four fifths'],
  [9 / 10, 'nine tenths'],
  [1, ''],
] as const;

/** `about a third of`, to stand before something everybody can see, for a length without millimetres. */
export function shareInWords(share: number): string {
  if (share < 0.07) return 'less than a tenth of';
  if (share > 1.05) return `about ${share.toFixed(1)} times`;
  const [fraction, words] = FRACTIONS.reduce((best, next) =>
    Math.abs(next[0] - share) < Math.abs(best[0] - share) ? next : best,
  );
  return fraction === 1 ? 'as long as' : `about ${words} of`;
}

/** Why something was not measured, and what to do instead. */
const REFUSALS: Readonly<Record<string, string>> = {
  'no-edge': 'No clear edge there: it is hidden, or as light as what it lies on.',
  'too-few-points': 'Too few points, or too close together.',
  clipped: 'Burnt out or black there: nothing is left to measure.',
  'no-scale': 'The points do not make the shape that was named.',
  'too-weak': 'Too faint to follow.',
  cancelled: 'Stopped.',
};
export const refusal = (why: string): string => REFUSALS[why] ?? 'It could not be measured.';

const WHAT: Readonly<Record<string, string>> = {
  lengthMm: 'length',
  meanWidthMm: 'mean width',
  widthMm: 'widest',
  count: 'counted',
  densityPerDm2: 'on 10 × 10 cm',
  diaMm: 'across',
  areaPct: 'share of the area outlined',
  deltaE: 'colour difference CIEDE2000',
};

/** `length 42 ± 2 mm, mean width 1.4 ± 0.2 mm`: what was measured and accepted. */
export function measuredWords({ values }: Measured, units: LengthUnits): string {
  return values
    .filter(({ what }) => Object.hasOwn(WHAT, what))
    .map(({ what, value, sigma, unit }) => {
      const name = WHAT[what] ?? what;
      if (unit === 'mm') return `${name} ${lengthWithDoubt(value, sigma, units)}`;
      return `${name} ${plusMinus(value, sigma, { count: '', perDm2: '', perCm2: '', pct: '%', deltaE: '' }[unit])}`;
    })
    .join(', ');
}

/** The measured value that stands behind an answer of a finding, if the answer is still the measured one. */
export function measuredBehind(
  marks: readonly Pick<PhotoMark, 'findingId' | 'measured'>[],
  findingId: string,
  ask: string,
  answer: unknown,
): Measured['values'][number] | undefined {
  return marks
    .filter((mark) => mark.findingId === findingId)
    .flatMap(({ measured }) => measured?.values ?? [])
    .find(({ what, value, sigma }) => what === ask && rounded(value, sigma) === answer);
}
