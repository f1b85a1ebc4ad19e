import {
  DEFAULT_UK_SCALE,
  EIGHTHS,
  formatEighths,
  mmFromFrenchPoints,
  mmFromInches,
  mmFromUkSize,
  mmFromUsSize,
  type UkScale,
} from './hat-sizes.ts';

export const READINGS = ['inch', 'cm', 'us', 'uk', 'frenchPoint'] as const;
export type Reading = (typeof READINGS)[number];

/** One thing a size stamp can mean. */
export interface StampReading {
  readonly reading: Reading;
  /** The stamped number on that scale. */
  readonly value: number;
  /** In words a milliner uses: “22½ in”, “US 7⅛”, “3½ French points”. */
  readonly label: string;
  readonly circumferenceMm: number;
}

/** A reading held against the tape. */
export interface TapedReading extends StampReading {
  /** Tape minus stamp, mm: negative when the block has shrunk or been cut down since it was stamped. */
  readonly differenceMm: number;
}

interface Scale {
  readonly from: number;
  readonly to: number;
  /** Stamps come in these steps; anything between is another kind of mark. */
  readonly step: number;
  readonly label: (value: number) => string;
  readonly toMm: (value: number, uk: UkScale) => number;
}

/** Ranges and steps of each scale. Source: handbook, marks vocabulary; cm in tenths so that 57,5 is not lost. */
const SCALES: Record<Reading, Scale> = {
  inch: { from: 19, to: 26, step: 1 / 8, label: (v) => `${formatEighths(v)} in`, toMm: mmFromInches },
  cm: { from: 47, to: 68, step: 1 / 10, label: (v) => `${v} cm`, toMm: (v) => v * 10 },
  us: { from: 5.75, to: 8.5, step: 1 / 8, label: (v) => `US ${formatEighths(v)}`, toMm: mmFromUsSize },
  uk: { from: 5.75, to: 8.5, step: 1 / 8, label: (v) => `UK ${formatEighths(v)}`, toMm: mmFromUkSize },
  frenchPoint: {
    from: 0,
    to: 9.5,
    step: 1 / 2,
    label: (v) => `${formatEighths(v)} French points`,
    toMm: mmFromFrenchPoints,
  },
};

/** A unit written beside the number settles the reading. */
const UNITS: readonly (readonly [RegExp, Reading])[] = [
  [/^us|us$/, 'us'],
  [/^uk|uk$/, 'uk'],
  [/(?:inches|inch|ins|in|"|″|”|'')\.?$/, 'inch'],
  [/cm\.?$/, 'cm'],
  [/(?:french points?|points?|pts?)\.?$/, 'frenchPoint'],
];

/** Decimals may be cut short: 7.12 and 7.13 both stand for 7⅛. */
const CUT_SHORT = 0.0051;

/** “22½”, “22 1/2”, “22-1/2”, “22.5”, “57,5”, “½” → the number, or null. */
function numberOf(text: string): number | null {
  const decimal = /^(\d{1,2})(?:[.,](\d{1,3}))?$/.exec(text);
  if (decimal) return Number(`${decimal[1]}.${decimal[2] ?? 0}`);
  const glyph = /^(\d{1,2})?\s*([⅛¼⅜½⅝¾⅞])$/.exec(text);
  if (glyph) return Number(glyph[1] ?? 0) + EIGHTHS.indexOf(glyph[2] as (typeof EIGHTHS)[number]) / 8;
  const typed = /^(?:(\d{1,2})[\s-]+)?(\d)\s*[/⁄]\s*([248])$/.exec(text);
  if (!typed) return null;
  const [top, bottom] = [Number(typed[2]), Number(typed[3])];
  return top > 0 && top < bottom ? Number(typed[1] ?? 0) + top / bottom : null;
}

/** The value snapped to the scale's steps, or null when it lies outside or between them. */
function onScale(value: number, { from, to, step }: Scale): number | null {
  const snapped = Number((Math.round(value / step) * step).toFixed(4));
  return Math.abs(snapped - value) < CUT_SHORT && snapped >= from && snapped <= to ? snapped : null;
}

/**
 * Everything a size stamp can mean, in a fixed order: inches, centimetres, US, UK, French points.
 * “7” is a hat size or a French point; only the tape decides. A unit beside the number (in, cm, US, UK, points) settles it.
 * @returns an empty list for anything that is no size on any scale
 */
export function stampReadings(text: string, ukScale: UkScale = DEFAULT_UK_SCALE): StampReading[] {
  const stamp = text.trim().toLowerCase();
  const named = UNITS.find(([pattern]) => pattern.test(stamp));
  const value = numberOf((named ? stamp.replace(named[0], '') : stamp).trim());
  if (value === null) return [];
  return READINGS.filter((reading) => !named || named[1] === reading).flatMap((reading) => {
    const scale = SCALES[reading];
    const stamped = onScale(value, scale);
    if (stamped === null) return [];
    return [{ reading, value: stamped, label: scale.label(stamped), circumferenceMm: scale.toMm(stamped, ukScale) }];
  });
}

/** The same readings, the one nearest to the tape first. The tape decides which was meant; the stamp is left as it is. */
export function readingsAgainstTape(text: string, tapeMm: number, ukScale: UkScale = DEFAULT_UK_SCALE): TapedReading[] {
  return stampReadings(text, ukScale)
    .map((reading) => ({ ...reading, differenceMm: tapeMm - reading.circumferenceMm }))
    .sort((a, b) => Math.abs(a.differenceMm) - Math.abs(b.differenceMm));
}
