import { type Assessment, assess } from '../core/assess.ts';
import { plainTerms } from '../core/blank.ts';
import { type Catalogue, entry } from '../core/catalogue.ts';
import type { Finding } from '../core/records.ts';
import type { ReportDocument, ReportPart } from '../core/report.ts';
import { daySpan, dayWords } from '../text/days.ts';
import { hoursRange, list, opening } from '../text/format.ts';
import type { BenchCase } from './case.ts';
import { chapter, identifierOf, nameOf, paragraph, section, where, within } from './naming.ts';
import { pairParts, pairsInCase } from './pairs.ts';
import { photographs } from './photographs.ts';
import { recordData } from './record-data.ts';
import type { ReportWishes } from './wishes.ts';
import { withoutPrivate } from './withheld.ts';
import { costs, type WorkRow, workDone, workRows } from './work-done.ts';
import { cautionsOf, waitWords } from './work-planned.ts';

/** What became of each finding, by the repairs that were judged and the steps that were done. */
type Outcome = 'held' | 'failed' | 'workedOn' | 'leftOut' | 'untouched';

const OUTCOMES: Readonly<Record<Outcome, string>> = {
  held: 'mended, and it held',
  failed: 'mended, but it did not hold',
  workedOn: 'worked on, not yet judged',
  leftOut: 'left as it is',
  untouched: 'not worked on',
};

function outcomeOf({ id }: Finding, { repairs, steps }: BenchCase): Outcome {
  const judged = repairs.filter(({ findingId }) => findingId === id).at(-1);
  if (judged) return judged.held ? 'held' : 'failed';
  const serving = steps.filter(({ serves }) => serves.includes(id));
  if (serving.some(({ done }) => done)) return 'workedOn';
  return serving.some(({ skipped }) => skipped) ? 'leftOut' : 'untouched';
}

/** The block with what was mended and held no longer counted, by the same book as before. */
export function assessedNow(facts: BenchCase, catalogue: Catalogue): Assessment {
  const { block, survey, sale, settings, findings } = facts;
  const left = findings.filter((finding) => outcomeOf(finding, facts) !== 'held');
  return assess({ block, survey, findings: left, terms: sale?.terms ?? plainTerms, settings, pace: {} }, catalogue);
}

function identity(facts: BenchCase, rows: readonly WorkRow[], catalogue: Catalogue): ReportPart[] {
  const { block, survey, settings } = facts;
  const type = entry(catalogue.types, block.blockType);
  const [first, last] = [rows[0]?.day, rows.at(-1)?.day];
  const written: (readonly [string, string])[] = [
    ['Number', block.objectNumber],
    ['Type', type ? `${type.term} (${type.group})` : 'not said'],
    ['Material', list(block.materials.map((id) => entry(catalogue.materials, id)?.term ?? id)) || 'not said'],
    ['Looked at', `${dayWords(survey.begun.slice(0, 10))}${survey.surveyor ? `, by ${survey.surveyor}` : ''}`],
    ['Worked on', first && last ? (first === last ? dayWords(first) : daySpan(first, last)) : ''],
    ['Work by', rows.length > 0 ? settings.ownerName : ''],
  ];
  return [chapter('The block'), { kind: 'facts', rows: written.filter(([, value]) => value !== '') }];
}

function condition(facts: BenchCase, now: Assessment, catalogue: Catalogue): ReportPart[] {
  const { assessment: found, repairs } = facts;
  const grade = (value: Assessment['worstGrade']): string => `${value} ${within(catalogue.gradeWords[value].term)}`;
  const judged = repairs.length > 0;
  const line = (what: string, of: (one: Assessment) => string): string[] => [
    what,
    of(found),
    ...(judged ? [of(now)] : []),
  ];
  return [
    chapter('Condition'),
    ...(judged
      ? []
      : [paragraph('No repair was judged yet, so there is only the condition as found to tell.', 'lead')]),
    {
      kind: 'table',
      caption: judged ? 'As found, and now' : 'As found',
      head: ['By the book', 'Found', ...(judged ? ['Now'] : [])],
      rows: [
        line('Verdict', ({ verdict }) => catalogue.verdicts[verdict].term),
        line('Score out of 100', ({ found: score }) => score.toFixed(0)),
        line('Worst single finding', ({ worstGrade }) => grade(worstGrade)),
        line('Findings', ({ graded, unscored }) => String(graded.length + unscored.length)),
      ],
      numeric: [],
    },
    {
      kind: 'table',
      caption: 'Finding by finding',
      head: ['No.', 'Finding', 'Where', 'Found', 'Now'],
      rows: found.graded.map(({ finding, grade: of }) => [
        String(finding.number),
        entry(catalogue.damage, finding.kind)?.term ?? finding.kind,
        where(finding, catalogue),
        grade(of),
        opening(OUTCOMES[outcomeOf(finding, facts)]),
      ]),
      numeric: [0],
    },
    ...(judged
      ? [
          paragraph(
            'The score now is by the same book as the score found, without what was mended and held. Whether a repair held, the one who made it says.',
            'small',
          ),
        ]
      : []),
  ];
}

function views(facts: BenchCase, wishes: ReportWishes, catalogue: Catalogue): ReportPart[] {
  const { photos, alignments } = facts;
  const count = (stage: string): number => photos.filter((photo) => photo.stage === stage).length;
  const pairs = pairsInCase({ photos, alignments, findings: facts.findings }, catalogue);
  if (pairs.length > 0) return wishes.pairs ? pairParts(facts, catalogue) : [];
  const why =
    photos.length === 0
      ? 'No photographs were taken, before or after the work.'
      : count('after') === 0
        ? 'There are no photographs from after the work yet, so nothing can be shown beside the ones from before.'
        : count('before') === 0
          ? 'There are no photographs from before the work, so nothing can be shown beside the ones from after.'
          : 'No view was taken both before and after the work, so no two photographs can be laid beside each other.';
  return [chapter('Before and after'), paragraph(why)];
}

function remaining(now: Assessment, wishes: ReportWishes, catalogue: Catalogue): ReportPart[] {
  const { plan } = now;
  const open = now.graded.filter(({ grade }) => grade >= 2);
  // A plan holds steps of its own, such as the record; with nothing left to mend they are no work that remains.
  if (open.length === 0)
    return [chapter('What remains'), paragraph('Nothing of grade 2 or worse remains to be mended.')];
  const serving = plan.steps.filter(({ serves }) => serves.length > 0);
  const cautions = cautionsOf(serving, catalogue);
  return [
    chapter('What remains'),
    ...(cautions.length > 0
      ? [section('Cautions'), { kind: 'list' as const, tone: 'caution' as const, items: cautions }]
      : []),
    {
      kind: 'table',
      caption: 'Still to do, in the order it must be done',
      head: ['Step', 'For', ...(wishes.hours ? ['Hours'] : []), 'Then wait'],
      rows: serving.map((step) => [
        entry(catalogue.treatments, step.treatment)?.term ?? step.treatment,
        list(
          now.graded
            .filter(({ finding }) => step.serves.includes(finding.id))
            .map(
              ({ finding }) =>
                `${finding.number} ${within(entry(catalogue.damage, finding.kind)?.term ?? finding.kind)}`,
            ),
        ),
        ...(wishes.hours ? [hoursRange(step.hours.o, step.hours.p)] : []),
        waitWords(step.waitHours.m),
      ]),
      numeric: [],
    },
  ];
}

/**
 * What became of a block: condition as found and now, the views before and after beside each other, what was done, with
 * what, in how many hours against the estimate, at what cost, and what remains.
 * Contents after EN 16853 (implementation, documentation) and the rule of before, during and after, strictly alike (trade
 * handbook §4.1).
 */
export function beforeAfterReport(
  facts: BenchCase,
  wishes: ReportWishes,
  catalogue: Catalogue,
  made: string,
): ReportDocument {
  const { block, settings, photos, jobs, steps, repairs, expenses } = facts;
  const now = assessedNow(facts, catalogue);
  const rows = workRows(facts, catalogue);
  const after = photos.filter(({ stage }) => stage !== 'before');
  const report: ReportDocument = {
    object: nameOf(block, catalogue),
    title: `${nameOf(block, catalogue)}: before and after`,
    subtitle: [
      block.objectNumber && `No. ${block.objectNumber}`,
      `${rows.length} ${rows.length === 1 ? 'piece' : 'pieces'} of work`,
    ]
      .filter(Boolean)
      .join(' · '),
    identifier: `${identifierOf(block, catalogue)}-before-and-after`,
    lang: 'en-GB',
    author: settings.ownerName,
    rights: settings.photoRights ?? '',
    made,
    paper: settings.paper,
    parts: [
      ...identity(facts, rows, catalogue),
      ...condition(facts, now, catalogue),
      ...views(facts, wishes, catalogue),
      chapter('What was done'),
      ...workDone(facts, rows, wishes, catalogue),
      ...(wishes.prices ? costs(facts, wishes, catalogue) : []),
      ...remaining(now, wishes, catalogue),
      ...(wishes.photographs
        ? photographs(after, facts, catalogue, {
            title: 'Photographs from the work and after it',
            none: 'No photographs were taken during the work or after it.',
          })
        : []),
    ],
    data: recordData(facts, wishes, catalogue, {
      repairs,
      steps: wishes.hours ? steps : steps.map(({ hours, waitHours, amount, ...step }) => step),
      ...(wishes.hours ? { jobs } : {}),
      ...(wishes.prices ? { expenses } : {}),
    }),
  };
  return wishes.privateNames ? report : withoutPrivate(report, facts, catalogue);
}
