/** The parts used here of a package that ships no types. */
declare module 'edtf' {
  /** One date as its grammar sees it. */
  export interface ParsedDate {
    readonly type: string;
    /** Year, month from 0, day, hour, minute, second; for a season the year and 21 to 24. */
    readonly values: readonly number[];
    readonly approximate?: boolean | number;
    readonly uncertain?: boolean | number;
    /** Bits of the X digits: 8 decade, 12 century, 48 month, 192 day, 240 both. */
    readonly unspecified?: number;
    readonly timeZone?: string;
  }
  /** An interval's end: a number (Infinity) where open (..), null where unknown (nothing written). */
  export type ParsedEnd = ParsedDate | number | null;
  export interface ParsedInterval {
    readonly type: 'Interval';
    readonly values: readonly [ParsedEnd, ParsedEnd];
  }
  export function parse(text: string, constraints: { level: number }): ParsedDate | ParsedInterval;
  /** @throws on a syntax error, and on an interval that does not run forward */
  export default function edtf(
    text: string,
    constraints: { level: number },
  ): {
    /** Milliseconds; −Infinity or Infinity where open, null where unknown. */
    readonly min: number | null;
    readonly max: number | null;
  };
}
