import type { DamageKind } from '../../core/catalogue.ts';
import type { Measured } from '../../core/records.ts';
import { rounded } from '../../text/measured.ts';

/** The measured values a kind of damage asks for, cut to what they are worth; none if it does not ask for the needed one. */
export const answersFrom =
  ({ values }: Measured, needed: string) =>
  (kind: DamageKind): Record<string, number> => {
    const asked = new Set(kind.asks.map(({ id }) => id));
    if (!asked.has(needed)) return {};
    const known = values.filter(({ what }) => asked.has(what));
    return Object.fromEntries(known.map(({ what, value, sigma }) => [what, rounded(value, sigma)]));
  };
