import { type Catalogue, entry } from '../core/catalogue.ts';
import type { ReportPart } from '../core/report.ts';
import { chainOf } from '../text/provenance.ts';
import type { ReportCase } from './case.ts';
import { chapter, fullColumns, paragraph } from './naming.ts';
import type { ReportWishes } from './wishes.ts';
import { mayName, withoutParties } from './withheld.ts';

type Facts = Pick<ReportCase, 'marks' | 'statements'>;

/** The marks as they were read, with what each tells where asked. */
export function marksTable(
  { marks }: Facts,
  wishes: Pick<ReportWishes, 'privateNames'>,
  catalogue: Catalogue,
  { telling = false } = {},
): ReportPart[] {
  if (marks.length === 0) return [paragraph('No marks were recorded.')];
  return [
    fullColumns({
      kind: 'table',
      caption: 'Marks, transcribed as seen',
      head: ['Mark', 'Text', 'Where', ...(telling ? ['What it tells, and how much it proves'] : []), 'Note'],
      rows: marks.map((mark) => {
        const kind = entry(catalogue.marks, mark.kind);
        return [
          kind?.term ?? mark.kind,
          mayName(mark, catalogue) && !wishes.privateNames ? '(may name a person; left out)' : mark.text,
          entry(catalogue.zones, mark.zone)?.term ?? mark.zone,
          ...(telling ? [kind ? `${kind.tells} ${kind.weight}` : ''] : []),
          mark.note,
        ];
      }),
      numeric: [],
    }),
  ];
}

/** The chain of ownership as museums write it. */
export function chainWords(
  { statements }: Facts,
  wishes: Pick<ReportWishes, 'privateNames'>,
  catalogue: Catalogue,
): string {
  const told = wishes.privateNames ? statements : withoutParties(statements);
  return chainOf(told, catalogue, { showPrivate: wishes.privateNames }) || 'Nothing is known of where it has been.';
}

export const story = (facts: Facts, wishes: ReportWishes, catalogue: Catalogue): ReportPart[] => [
  chapter('Marks and story'),
  ...marksTable(facts, wishes, catalogue),
  paragraph(chainWords(facts, wishes, catalogue)),
];
