import { type Catalogue, entry } from '../core/catalogue.ts';
import type { HatBlock, Statement } from '../core/records.ts';
import { readEdtf } from '../text/edtf-words.ts';
import { list } from '../text/format.ts';
import { inOrder } from '../text/provenance.ts';

/*
 * Years of a block's life nobody can account for. "Gaps are normal and must show": CDWA 23 (trade handbook §4.1, §4.4).
 */

/** When something was, at the earliest and the latest, as years; null where that is not known. */
interface When {
  readonly label: string;
  readonly earliest: number | null;
  readonly latest: number | null;
  /** About, or perhaps. */
  readonly isRough: boolean;
}

const year = (day: string | null): number | null => (day === null ? null : Number(day.slice(0, 4)));

/** A stored date in words, EDTF and years; the words as typed come first, so that no doubt is lost. */
export function whenOf({ words, edtf }: Statement['when']): When & { readonly edtf: string; readonly meaning: string } {
  const read = edtf ? readEdtf(edtf) : null;
  const known = read?.ok ? read : null;
  return {
    label: words.trim() || (known?.label ?? edtf ?? ''),
    edtf: known?.edtf ?? '',
    meaning: known?.meaning ?? '',
    earliest: year(known?.earliest ?? null),
    latest: year(known?.latest ?? null),
    isRough: /[~?%]/.test(known?.edtf ?? ''),
  };
}

const years = (count: number): string => (count === 1 ? '1 year' : `${count} years`);

/** How long lies between two dates, neither more surely than they are known. */
function span(from: When, to: When): string {
  if (from.earliest === null || from.latest === null || to.earliest === null || to.latest === null)
    return 'how long that was is not known';
  const [least, most] = [Math.max(0, to.earliest - from.latest), to.latest - from.earliest];
  if (most < 0) return 'the dates run against the order: look at them again';
  const about = from.isRough || to.isRough ? 'about ' : '';
  if (most === 0) return about ? 'about a year or less' : 'less than a year';
  if (least === 0) return `up to ${years(most)}`;
  return least === most ? about + years(most) : `between ${about}${least} and ${years(most)}`;
}

const isFirm = (statement: Statement, catalogue: Pick<Catalogue, 'certainties'>): boolean =>
  !entry(catalogue.certainties, statement.certainty)?.refuted;

/**
 * The years not accounted for, a sentence each, oldest first: before the first statement, and after every one that did not
 * pass straight to the next. Statements since disproved count for nothing.
 */
export function gapsIn(
  { made }: Pick<HatBlock, 'made'>,
  statements: readonly Statement[],
  catalogue: Pick<Catalogue, 'certainties'>,
): readonly string[] {
  const chain = inOrder(statements).filter((statement) => isFirm(statement, catalogue));
  const birth = whenOf(made);
  const [first] = chain;
  if (!first)
    return [
      birth.label
        ? `From its making, ${birth.label}, until today nothing is known.`
        : 'Nothing is known of where it was before today.',
    ];
  const told: string[] = [];
  const begun = whenOf(first.when);
  if (begun.label === '') told.push('When the story begins is not known.');
  else if (birth.label !== '' && birth.label !== begun.label)
    told.push(`From its making, ${birth.label}, to ${begun.label}: ${span(birth, begun)} not accounted for.`);
  else if (birth.label === '') told.push(`Before ${begun.label} nothing is known.`);
  for (const [index, statement] of chain.entries()) {
    const next = chain[index + 1];
    if (!next || statement.direct) continue;
    const [from, to] = [whenOf(statement.when), whenOf(next.when)];
    const dates = [from, to].filter(({ label }) => label !== '').map(({ label }) => label);
    if (dates.length < 2)
      told.push(
        `Between step ${index + 1} and step ${index + 2}${dates.length > 0 ? `, ${list(dates)}` : ''}: a date is missing, so the gap has no length.`,
      );
    else
      told.push(
        `From ${from.label} to ${to.label}: ${span(from, to)}${/known|order/.test(span(from, to)) ? '' : ' not accounted for'}.`,
      );
  }
  return told;
}
