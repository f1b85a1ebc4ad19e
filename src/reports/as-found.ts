import type { Catalogue } from '../core/catalogue.ts';
import type { ReportDocument } from '../core/report.ts';
import { marksOf } from '../core/report-marks.ts';
import { list } from '../text/format.ts';
import { adviceParts } from './advice.ts';
import type { ReportCase } from './case.ts';
import { condition } from './condition.ts';
import { identification } from './identification.ts';
import { identifierOf, nameOf, where } from './naming.ts';
import { pairParts } from './pairs.ts';
import { photographs } from './photographs.ts';
import { recordData } from './record-data.ts';
import { story } from './story.ts';
import { type ReportWishes, usualWishes } from './wishes.ts';
import { withoutPrivate } from './withheld.ts';
import { workPlanned } from './work-planned.ts';
import { working } from './working.ts';

export { usualWishes };

/**
 * The "as found" condition report of a block: identification, condition with every finding and what was not looked for,
 * damage map, what the wood science says, marks and story, recommended work with its cautions, working, photographs with
 * their hashes. Contents follow what EN 16095 and Spectrum ask of a condition report (trade handbook §4.1).
 * @param made RFC 3339, UTC @param today the day it is where the phone is; without it the day of `made`
 */
export function asFoundReport(
  facts: ReportCase,
  wishes: ReportWishes,
  catalogue: Catalogue,
  drawing: string,
  made: string,
  today: string = made.slice(0, 10),
): ReportDocument {
  const { block, assessment, settings, photos } = facts;
  const marks = marksOf(assessment, catalogue);
  const drawn = new Set(marks.map(({ mechanism }) => mechanism));
  const report: ReportDocument = {
    object: nameOf(block, catalogue),
    title: `${nameOf(block, catalogue)}: condition as found`,
    subtitle: [
      block.objectNumber && `No. ${block.objectNumber}`,
      wishes.photographs && `${photos.length} ${photos.length === 1 ? 'photograph' : 'photographs'}`,
    ]
      .filter(Boolean)
      .join(' · '),
    identifier: `${identifierOf(block, catalogue)}-as-found`,
    lang: 'en-GB',
    author: settings.ownerName,
    rights: settings.photoRights ?? '',
    made,
    paper: settings.paper,
    parts: [
      ...identification(facts, wishes, catalogue),
      ...condition(facts, catalogue),
      {
        kind: 'damageMap',
        drawing,
        marks,
        key: [...drawn].map((mechanism) => ({ mechanism, term: catalogue.mechanisms[mechanism] })),
        alt: `Drawing of the block with ${assessment.graded.length} numbered findings: ${list(
          assessment.graded.map(({ finding }) => `${finding.number} at the ${where(finding, catalogue)}`),
        )}`,
        caption: 'Where the findings are: number of the finding, shape by what it is, heavier the worse.',
      },
      ...(wishes.advice ? adviceParts(facts, catalogue, today) : []),
      ...(wishes.marks ? story(facts, wishes, catalogue) : []),
      ...(wishes.plan ? workPlanned(facts, wishes, catalogue) : []),
      ...(wishes.working ? working(facts, wishes, catalogue) : []),
      ...(wishes.pairs ? pairParts(facts, catalogue) : []),
      ...(wishes.photographs ? photographs(photos, facts, catalogue) : []),
    ],
    data: recordData(facts, wishes, catalogue),
  };
  return wishes.privateNames ? report : withoutPrivate(report, facts, catalogue);
}
