import { type Catalogue, entry } from '../core/catalogue.ts';
import type { Finding, HatBlock } from '../core/records.ts';
import type { ReportPart } from '../core/report.ts';

export const chapter = (text: string): ReportPart => ({ kind: 'heading', level: 2, text });
export const section = (text: string): ReportPart => ({ kind: 'heading', level: 3, text });
export const paragraph = (text: string, tone?: 'caution' | 'small' | 'lead'): ReportPart => ({
  ...{ kind: 'paragraph', text },
  ...(tone && { tone }),
});

/** First letter small, inside a sentence. */
export const within = (term: string): string => term.charAt(0).toLocaleLowerCase('en-GB') + term.slice(1);

/** What the block is called: its name, else its type. */
export const nameOf = (block: HatBlock, catalogue: Catalogue): string =>
  block.name || (entry(catalogue.types, block.blockType)?.term ?? 'Hat block');

/** For file names and headers: letters, digits and hyphens. */
export const identifierOf = (block: HatBlock, catalogue: Catalogue): string =>
  (
    `${block.objectNumber} ${nameOf(block, catalogue)}`
      .normalize('NFKD')
      .replace(/\p{M}+/gu, '')
      .replace(/[^A-Za-z0-9]+/g, '-')
      .replace(/^-+|-+$/g, '') || 'hat-block'
  ).slice(0, 60);

/** Zone and part as one says them: `tip`, `joint face, part 3`. */
export function where(finding: Finding, catalogue: Catalogue): string {
  const zone = entry(catalogue.zones, finding.zone)?.term ?? finding.zone;
  return finding.part === null ? zone : `${zone}, part ${finding.part}`;
}

/** `2 Split`: the number on the drawing and the term. */
export function findingName(id: string | null, findings: readonly Finding[], catalogue: Catalogue): string {
  const finding = findings.find((one) => one.id === id);
  return finding
    ? `${entry(catalogue.damage, finding.kind)?.term ?? finding.kind} (no. ${finding.number})`
    : 'A finding';
}

type Table = ReportPart & { kind: 'table' };

/** The table without columns in which nothing stands; the first stays. */
export function fullColumns(table: Table): Table {
  const says = (column: number): boolean =>
    column === 0 || [...table.rows, ...(table.foot ?? [])].some((row) => (row[column] ?? '') !== '');
  const kept = table.head.map((_, column) => column).filter(says);
  const cut = (row: readonly string[]): string[] => kept.map((column) => row[column] ?? '');
  return {
    ...table,
    ...{ head: cut(table.head), rows: table.rows.map(cut) },
    ...(table.foot && { foot: table.foot.map(cut) }),
    numeric: table.numeric.map((column) => kept.indexOf(column)).filter((column) => column >= 0),
  };
}
