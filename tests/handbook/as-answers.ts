import type { ZoneClass } from '../../src/core/catalogue.ts';
import { damageIds, materialIds, treatmentIds, typeIds, zoneIds } from './codes.ts';

const known = (table: Readonly<Record<string, string>>, code: string, what: string): string => {
  const id = table[code];
  if (!id) throw new Error(`The handbook's ${what} ${code} has no id here.`);
  return id;
};

export const kindOf = (code: string): string => known(damageIds, code, 'damage');
export const treatmentOf = (code: string): string => known(treatmentIds, code, 'treatment');
export const typeOf = (code: string): string => known(typeIds, code, 'type');
export const materialOf = (code: string): string => known(materialIds, code, 'material');
export const zoneOf = (code: string): string => known(zoneIds, code, 'zone');

/** `width_mm` → `widthMm`: the handbook's field names in the app's spelling. */
export const camel = (name: string): string => name.replace(/_(\w)/g, (_, letter: string) => letter.toUpperCase());

/** What the handbook calls a flag, as the answer a person would give, and the zone it presumes. */
const flagAnswers: Readonly<Record<string, { answers: Record<string, boolean | string>; zoneClass?: ZoneClass }>> = {
  active: { answers: { activity: 'active' } },
  piece_missing: { answers: { pieceMissing: true } },
  rusty_on_work: { answers: { rusty: true }, zoneClass: 'work' },
  bleeds_on_work: { answers: { bleeds: true }, zoneClass: 'work' },
  tacky: { answers: { tacky: true } },
  stuck_frees: { answers: { stuck: 'frees' } },
  stuck_fast: { answers: { stuck: 'fast' } },
  missing: { answers: { missing: true } },
  binds: { answers: { binds: true } },
};

/** Measures and flags of a handbook row as the answers of a finding. */
export function answersFor(
  code: string,
  measures: Readonly<Record<string, number>>,
  flags: readonly string[],
): { answers: Record<string, number | boolean | string>; zoneClass: ZoneClass } {
  const answers: Record<string, number | boolean | string> = {};
  let zoneClass: ZoneClass = 'base';
  for (const [name, value] of Object.entries(measures)) answers[camel(name)] = value;
  for (const flag of flags) {
    const said = flagAnswers[flag];
    if (!said) throw new Error(`Flag ${flag} of ${code} is not known here.`);
    Object.assign(answers, said.answers);
    zoneClass = said.zoneClass ?? zoneClass;
  }
  return { answers, zoneClass };
}
