import { type Catalogue, entry } from '../core/catalogue.ts';
import type { Statement } from '../core/records.ts';
import type { ReportDocument, ReportPart } from '../core/report.ts';
import { opening } from '../text/format.ts';
import { inOrder, stepOf } from '../text/provenance.ts';
import type { ReportCase } from './case.ts';
import { gapsIn, whenOf } from './gaps.ts';
import { identification } from './identification.ts';
import { chapter, identifierOf, nameOf, paragraph, section } from './naming.ts';
import { photographs } from './photographs.ts';
import { recordData } from './record-data.ts';
import { chainWords, marksTable } from './story.ts';
import type { ReportWishes } from './wishes.ts';
import { withoutParties, withoutPrivate } from './withheld.ts';

const certaintyOf = ({ certainty }: Statement, catalogue: Catalogue): string =>
  entry(catalogue.certainties, certainty)?.term ?? certainty;

/** When it was, in the words typed, what they mean, and as EDTF for a machine. */
function whenWords(statement: Statement): string {
  const { label, meaning, edtf } = whenOf(statement.when);
  if (label === '') return 'no date';
  return [label, meaning && meaning !== label && !meaning.endsWith(` ${label}`) && meaning, edtf && `EDTF ${edtf}`]
    .filter(Boolean)
    .join('; ');
}

/** The step alone: its date, its certainty and what it rests on stand in columns of their own. */
function bareStep(statement: Statement, wishes: ReportWishes, catalogue: Catalogue): string {
  const bare: Statement = {
    ...statement,
    when: { words: '', edtf: null },
    evidence: [],
    note: '',
    certainty: 'certain',
  };
  return opening(stepOf(bare, catalogue, { showPrivate: wishes.privateNames }));
}

const restsOn = ({ evidence, note }: Statement, catalogue: Catalogue): string =>
  [
    ...evidence.map(({ kind, text }) => {
      const term = entry(catalogue.evidence, kind)?.term ?? kind;
      return text.trim() ? `${term}: ${text.trim()}` : term;
    }),
    note.trim(),
  ]
    .filter(Boolean)
    .join('. ') || 'nothing named';

function chain(facts: ReportCase, wishes: ReportWishes, catalogue: Catalogue): ReportPart[] {
  const told = inOrder(wishes.privateNames ? facts.statements : withoutParties(facts.statements));
  const used = new Set(told.map(({ certainty }) => certainty));
  const gaps = gapsIn(facts.block, facts.statements, catalogue);
  return [
    chapter('Where it has been'),
    paragraph(chainWords(facts, wishes, catalogue), 'lead'),
    ...(told.length > 0
      ? [
          {
            kind: 'table' as const,
            caption: 'Step by step, oldest first',
            head: ['Step', 'When', 'What', 'How sure', 'Rests on'],
            rows: told.map((statement, index) => [
              String(index + 1),
              whenWords(statement),
              bareStep(statement, wishes, catalogue),
              certaintyOf(statement, catalogue),
              restsOn(statement, catalogue),
            ]),
            numeric: [],
          },
        ]
      : []),
    section('Years not accounted for'),
    gaps.length > 0 ? { kind: 'list', items: gaps } : paragraph('None: every step passed straight to the next.'),
    ...(told.length > 0
      ? [
          section('What the words of certainty ask for'),
          {
            kind: 'facts' as const,
            rows: Object.entries(catalogue.certainties)
              .filter(([id]) => used.has(id))
              .map(([, { term, say, needs }]) => [say ? `${term}: “${say}”` : `${term}: no word`, needs] as const),
          },
          paragraph(
            'A semicolon in the chain says that it passed straight to the next owner, a full stop that there is a gap; what a step rests on stands in square brackets.',
            'small',
          ),
        ]
      : []),
  ];
}

/** The buyer's card; of a private seller only which questions were answered, for the answers name people. */
function diligence({ sale }: ReportCase, { privateNames }: ReportWishes, catalogue: Catalogue): ReportPart[] {
  const hide = sale?.sellerIsPrivate === true && !privateNames;
  return [
    chapter('Care taken in buying'),
    sale
      ? {
          kind: 'facts',
          rows: catalogue.dueDiligence.map(({ id, ask }) => {
            const answer = Object.hasOwn(sale.diligence, id) ? (sale.diligence[id] ?? '').trim() : '';
            return [
              ask,
              answer === '' ? 'not answered' : hide ? 'answered; left out, the seller being private' : answer,
            ];
          }),
        }
      : paragraph('This block belongs to no recorded sale, so the buyer’s questions were not put.'),
  ];
}

/**
 * Where a block has been and how one knows: the chain with its words of certainty and its evidence, the years not
 * accounted for, the marks as they were read with their photographs, and the care taken in buying.
 * Contents after CDWA 23, Object ID and the heads of UNIDROIT 1995 art. 4(4) (trade handbook §4.1, §4.4, §7).
 */
export function provenanceReport(
  facts: ReportCase,
  wishes: ReportWishes,
  catalogue: Catalogue,
  made: string,
): ReportDocument {
  const { block, settings, photos, statements } = facts;
  const proving = photos.filter(({ view }) => entry(catalogue.views, view)?.proves);
  const report: ReportDocument = {
    object: nameOf(block, catalogue),
    title: `${nameOf(block, catalogue)}: provenance`,
    subtitle: [
      block.objectNumber && `No. ${block.objectNumber}`,
      `${statements.length} ${statements.length === 1 ? 'step' : 'steps'} known`,
    ]
      .filter(Boolean)
      .join(' · '),
    identifier: `${identifierOf(block, catalogue)}-provenance`,
    lang: 'en-GB',
    author: settings.ownerName,
    rights: settings.photoRights ?? '',
    made,
    paper: settings.paper,
    parts: [
      ...chain(facts, wishes, catalogue),
      ...identification(facts, wishes, catalogue),
      ...(wishes.marks ? [chapter('Marks'), ...marksTable(facts, wishes, catalogue, { telling: true })] : []),
      ...(wishes.diligence ? diligence(facts, wishes, catalogue) : []),
      ...(wishes.photographs
        ? photographs(proving, facts, catalogue, {
            title: 'Photographs of marks and papers',
            none: 'No mark and no paper was photographed.',
          })
        : []),
    ],
    data: recordData(facts, wishes, catalogue),
  };
  return wishes.privateNames ? report : withoutPrivate(report, facts, catalogue);
}
