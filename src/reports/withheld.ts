import { type Catalogue, entry } from '../core/catalogue.ts';
import type { Mark, Statement } from '../core/records.ts';
import type { ReportDocument } from '../core/report.ts';
import { anyOf, isTelling, wordsOfName } from '../text/private-names.ts';
import type { ReportCase } from './case.ts';

/** What stands where a private name or place was taken out of somebody's own words. */
export const LEFT_OUT = '(left out)';

/** A mark that may name a person; one of a kind this catalogue does not know might. */
export const mayName = ({ kind }: Pick<Mark, 'kind'>, catalogue: Catalogue): boolean =>
  entry(catalogue.marks, kind)?.mayBePersonal ?? true;

/** Statements as they may leave the workshop: of a private party neither name nor place. */
export const withoutParties = (statements: readonly Statement[]): readonly Statement[] =>
  statements.map((item) => (item.partyIsPrivate ? { ...item, party: '', place: '' } : item));

/** Words of the person's name, without what stands behind it. */
const wordsOfPerson = (name: string): string[] => wordsOfName(name.split(/[,;(]/)[0] ?? '').filter(isTelling);

function changed(value: unknown, change: (text: string) => string): unknown {
  if (typeof value === 'string') return change(value);
  if (Array.isArray(value)) return value.map((one) => changed(one, change));
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, changed(one, change)]));
}

/**
 * The report without the names and places of private people, wherever somebody wrote them: seller, parties of the chain,
 * marks that name people; a name also by each of its words. What was never recorded as private it cannot know.
 */
export function withoutPrivate(
  report: ReportDocument,
  { sale, statements, marks }: Pick<ReportCase, 'sale' | 'statements' | 'marks'>,
  catalogue: Catalogue,
): ReportDocument {
  const parties = statements.filter(({ partyIsPrivate }) => partyIsPrivate);
  const names = [...(sale?.sellerIsPrivate ? [sale.seller] : []), ...parties.map(({ party }) => party)];
  const places = [...(sale?.sellerIsPrivate ? [sale.place] : []), ...parties.map(({ place }) => place)];
  const named = marks.filter((mark) => mayName(mark, catalogue)).map(({ text }) => text);
  const whole = [...names, ...places, ...named];
  const rules = [anyOf(whole, 'giu'), anyOf(names.flatMap(wordsOfPerson), 'gu')].filter((rule) => rule !== null);
  return changed(report, (text) => rules.reduce((said, rule) => said.replace(rule, LEFT_OUT), text)) as ReportDocument;
}
