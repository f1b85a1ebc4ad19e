import type { Assessment } from '../core/assess.ts';
import { type Catalogue, entry } from '../core/catalogue.ts';
import type {
  Alignment,
  Finding,
  HatBlock,
  Mark,
  Photo,
  PhotoMark,
  Sale,
  Settings,
  Statement,
  Survey,
} from '../core/records.ts';
import type { ReportDocument, ReportPart } from '../core/report.ts';
import { marksOf } from '../core/report-marks.ts';
import { days, hours, hoursRange, list, measured, money, opening, percent } from '../text/format.ts';
import { chainOf } from '../text/provenance.ts';
import { limitSentence, reasonSentence } from '../text/verdicts.ts';
import { pairParts } from './pairs.ts';
import { photoDrawn } from './photo-drawn.ts';

/** What the owner lets into the report. Private names, places and prices stay out unless ticked. */
export interface ReportWishes {
  readonly photographs: boolean;
  /** Views taken before and after the work, beside each other. */
  readonly pairs: boolean;
  readonly plan: boolean;
  readonly working: boolean;
  readonly prices: boolean;
  readonly privateNames: boolean;
}

export const usualWishes: ReportWishes = {
  photographs: true,
  pairs: true,
  plan: true,
  working: true,
  prices: false,
  privateNames: false,
};

export interface ReportCase {
  readonly block: HatBlock;
  readonly survey: Survey;
  readonly findings: readonly Finding[];
  readonly photos: readonly Photo[];
  readonly alignments: readonly Alignment[];
  readonly marks: readonly Mark[];
  readonly photoMarks: readonly PhotoMark[];
  readonly statements: readonly Statement[];
  readonly sale: Sale | undefined;
  readonly settings: Settings;
  readonly assessment: Assessment;
}

/** Zone and part as one says them: `tip`, `joint face, part 3`. */
function where(finding: Finding, catalogue: Catalogue): string {
  const zone = entry(catalogue.zones, finding.zone)?.term ?? finding.zone;
  return finding.part === null ? zone : `${zone}, part ${finding.part}`;
}

/** The measures and answers of a finding as words: `length 40 mm, moving`. */
export function answersInWords(finding: Finding, catalogue: Catalogue, units: Settings['units']): string {
  const asks = entry(catalogue.damage, finding.kind)?.asks ?? [];
  const known = asks.flatMap((ask) => {
    const answer = Object.hasOwn(finding.answers, ask.id) ? finding.answers[ask.id] : undefined;
    const label = ask.label.replace(/\?$/, '').toLocaleLowerCase('en-GB');
    if (answer === true) return [`${label}: yes`];
    if (ask.type === 'choice') {
      const option = ask.options.find(({ id }) => id === answer);
      return option ? [`${label}: ${option.label.toLocaleLowerCase('en-GB')}`] : [];
    }
    if (ask.type !== 'measure' || typeof answer !== 'number') return [];
    const step = ask.unit === 'level' ? ask.steps?.[answer - 1] : undefined;
    return [step ? step.toLocaleLowerCase('en-GB') : `${label} ${measured(answer, ask.unit, units)}`];
  });
  const strange = Object.entries(finding.answers)
    .filter(([id]) => !asks.some((ask) => ask.id === id))
    .map(([id, value]) => `${id} ${value}`);
  return [...known, ...strange].join(', ');
}

function identification(
  { block, survey, settings, sale }: ReportCase,
  wishes: ReportWishes,
  catalogue: Catalogue,
): ReportPart[] {
  const type = entry(catalogue.types, block.blockType);
  const measures = Object.entries(survey.measures).map(([id, value]): [string, string] => {
    const kind = entry(catalogue.measures, id);
    return [kind?.term ?? id, measured(value, kind?.unit ?? 'mm', settings.units)];
  });
  const seller = sale && (wishes.privateNames || !sale.sellerIsPrivate) ? sale.seller : sale ? 'private seller' : '';
  const rows: (readonly [string, string])[] = [
    ['Number', block.objectNumber],
    ['Type', type ? `${type.term} (${type.group})` : 'not said'],
    ['Material', list(block.materials.map((id) => entry(catalogue.materials, id)?.term ?? id)) || 'not said'],
    [
      'Parts',
      block.partsFound === null
        ? 'not counted'
        : `${block.partsFound} here, ${block.partsExpected ?? 'unknown how many'} expected`,
    ],
    ['Made', block.made.words],
    ['Maker', block.maker],
    [
      'Seen at',
      sale ? [sale.title, wishes.privateNames ? sale.place : '', sale.when.words].filter(Boolean).join(', ') : '',
    ],
    ['Seller', seller],
    ['Looked at', survey.begun.slice(0, 10)],
    ['By', survey.surveyor],
    ['Reason', survey.reason],
  ];
  return [
    { kind: 'heading', level: 2, text: 'The block' },
    { kind: 'facts', rows: rows.filter(([, value]) => value !== '') },
    ...(measures.length > 0
      ? [
          {
            kind: 'table' as const,
            caption: 'Measures',
            head: ['Measure', 'Value'],
            rows: measures,
            numeric: [1],
          },
        ]
      : []),
    ...(block.note ? [{ kind: 'paragraph' as const, text: block.note }] : []),
  ];
}

function condition(facts: ReportCase, catalogue: Catalogue): ReportPart[] {
  const { assessment, findings, settings } = facts;
  const nameOf = (id: string): string => {
    const finding = findings.find((item) => item.id === id);
    return finding ? `${finding.number} ${entry(catalogue.damage, finding.kind)?.term ?? finding.kind}` : 'A finding';
  };
  const terms = (state: 'noneSeen' | 'notLooked'): string[] =>
    assessment.kinds
      .filter((item) => item.state === state)
      .map(({ kind }) => entry(catalogue.damage, kind)?.term ?? kind);
  const noneSeen = terms('noneSeen');
  const notLooked = terms('notLooked');
  const verdict = catalogue.verdicts[assessment.verdict];
  return [
    { kind: 'heading', level: 2, text: 'Condition as found' },
    {
      kind: 'paragraph',
      tone: 'lead',
      text: `${verdict.term}. ${verdict.text} Overall condition, by the worst single finding: ${assessment.worstGrade} (${catalogue.gradeWords[assessment.worstGrade].term.toLocaleLowerCase('en-GB')}).`,
    },
    { kind: 'list', items: assessment.reasons.map((reason) => reasonSentence(reason, nameOf)) },
    ...(assessment.gates.length > 0
      ? [
          { kind: 'heading' as const, level: 3 as const, text: 'Hazards and handling' },
          {
            kind: 'list' as const,
            tone: 'caution' as const,
            items: assessment.gates.map((gate) => `${nameOf(gate.findingId)}: ${gate.advice}`),
          },
        ]
      : []),
    {
      kind: 'table',
      caption: 'Findings, numbered as on the drawing',
      head: ['No.', 'Finding', 'Where', 'Measured', 'Grade'],
      rows: [
        ...assessment.graded.map(({ finding, grade, byHand }) => [
          String(finding.number),
          entry(catalogue.damage, finding.kind)?.term ?? finding.kind,
          where(finding, catalogue),
          [answersInWords(finding, catalogue, settings.units), finding.note].filter(Boolean).join('. '),
          `${grade} ${catalogue.gradeWords[grade].term.toLocaleLowerCase('en-GB')}${byHand ? `, by hand: ${finding.gradeReason || 'no reason given'}` : ''}`,
        ]),
        ...assessment.unscored.map((finding) => [
          String(finding.number),
          `${finding.kind} (unknown to this version; kept, not scored)`,
          where(finding, catalogue),
          finding.note,
          '–',
        ]),
      ],
      numeric: [0],
    },
    {
      kind: 'paragraph',
      text:
        noneSeen.length > 0
          ? `Looked for and not seen: ${list(noneSeen.map((term) => term.toLocaleLowerCase('en-GB')))}.`
          : 'Nothing was recorded as looked for and not seen.',
    },
    {
      kind: 'paragraph',
      text:
        notLooked.length > 0
          ? `Not looked for, so not known: ${list(notLooked.map((term) => term.toLocaleLowerCase('en-GB')))}.`
          : 'Everything on the list for this block was looked for.',
    },
    {
      kind: 'paragraph',
      tone: 'small',
      text: 'What was not seen may still be there: a report says what was looked at on that day, not that a block is free of worm or mould.',
    },
  ];
}

function story(facts: ReportCase, wishes: ReportWishes, catalogue: Catalogue): ReportPart[] {
  const { marks, statements } = facts;
  const parts: ReportPart[] = [{ kind: 'heading', level: 2, text: 'Marks and story' }];
  if (marks.length > 0) {
    parts.push({
      kind: 'table',
      caption: 'Marks, transcribed as seen',
      head: ['Mark', 'Text', 'Where', 'Note'],
      rows: marks.map((mark) => [
        entry(catalogue.marks, mark.kind)?.term ?? mark.kind,
        entry(catalogue.marks, mark.kind)?.mayBePersonal && !wishes.privateNames ? '(a name; left out)' : mark.text,
        entry(catalogue.zones, mark.zone)?.term ?? mark.zone,
        mark.note,
      ]),
      numeric: [],
    });
  }
  const chain = chainOf(statements, catalogue, { showPrivate: wishes.privateNames });
  parts.push({ kind: 'paragraph', text: chain || 'Nothing is known of where it has been.' });
  if (marks.length === 0) parts.push({ kind: 'paragraph', text: 'No marks were recorded.' });
  return parts;
}

function plan({ assessment, block, settings }: ReportCase, wishes: ReportWishes, catalogue: Catalogue): ReportPart[] {
  const { plan: work, days: elapsed } = assessment;
  const cautions = work.steps.flatMap(({ treatment }) => {
    const known = entry(catalogue.treatments, treatment);
    return (known?.cautions ?? []).map((caution) => `${known?.term}: ${caution}`);
  });
  return [
    { kind: 'heading', level: 2, text: 'Recommended work' },
    {
      kind: 'paragraph',
      text: `${opening(hoursRange(work.hours.o, work.hours.p))} of work, about ${days(elapsed.total)} with the waits, in evenings of ${settings.eveningHours} h${wishes.prices ? `, ${money(work.consumables, block.currency)} of consumables` : ''}. Hours are trade estimates.`,
    },
    ...(cautions.length > 0
      ? [
          { kind: 'heading' as const, level: 3 as const, text: 'Cautions' },
          { kind: 'list' as const, tone: 'caution' as const, items: cautions },
        ]
      : []),
    {
      kind: 'table',
      caption: 'Steps, in the order they must be done',
      head: ['Step', 'How', 'Hours', 'Then wait'],
      rows: work.steps.map((step) => [
        entry(catalogue.treatments, step.treatment)?.term ?? step.treatment,
        entry(catalogue.treatments, step.treatment)?.how ?? '',
        hoursRange(step.hours.o, step.hours.p),
        step.waitHours.m > 0
          ? step.waitHours.m < 36
            ? `${step.waitHours.m} h`
            : days(Math.round(step.waitHours.m / 24))
          : '–',
      ]),
      numeric: [],
    },
  ];
}

function working(facts: ReportCase, wishes: ReportWishes, catalogue: Catalogue): ReportPart[] {
  const { assessment, block, settings } = facts;
  const { worth } = assessment;
  const one = (value: number): string => value.toFixed(1).replace('-', '−');
  const parts: ReportPart[] = [
    { kind: 'heading', level: 2, text: 'Working' },
    {
      kind: 'table',
      caption: 'Score out of 100',
      head: ['Finding', 'Points lost', 'Still lost after repair', 'Chance the repair holds'],
      rows: assessment.graded.map(({ finding, loss }) => [
        `${finding.number} ${entry(catalogue.damage, finding.kind)?.term ?? finding.kind}`,
        one(loss.points),
        one(loss.pointsAfter),
        loss.chance === null ? 'none needed' : percent(loss.chance),
      ]),
      foot: [
        [
          '100 less these; all repairs together',
          one(assessment.found),
          one(assessment.after),
          percent(assessment.odds),
        ],
      ],
      numeric: [1, 2, 3],
    },
  ];
  if (wishes.prices) {
    const say = (minor: number): string => money(minor, block.currency);
    const whose = (from: string): string => (from === 'owner' ? '' : ' (trade estimate)');
    parts.push({
      kind: 'table',
      caption: 'The most worth paying',
      head: ['Line', 'Amount'],
      rows: [
        [`New, made to order${whose(worth.newPrice.from)}`, say(worth.newPrice.amount)],
        ['Worth restored', say(worth.valueOk)],
        [`Worth if the work fails${whose(worth.fallback.from)}`, say(worth.fallback.amount)],
        [`Weighed by the odds, less ${percent(settings.gain)} gain`, say(worth.weighed)],
        [`Less ${hours(assessment.plan.meanHours)} of work`, `−${say(worth.labour)}`],
        ['Less consumables', `−${say(worth.consumables)}`],
        ['The most that leaves the gain', say(worth.ceiling)],
        [`An equal used block${whose(worth.equalUsed.from)}`, say(worth.equalUsed.amount)],
      ],
      foot: [
        ['Walk away above, all costs in', say(worth.walkAway)],
        ...(block.priceAsked === null ? [] : [['Asked', say(block.priceAsked)]]),
      ],
      numeric: [1],
    });
    parts.push({ kind: 'paragraph', text: limitSentence(worth, block.currency), tone: 'small' });
  }
  parts.push({
    kind: 'paragraph',
    tone: 'small',
    text: `${catalogue.model.source.text} Catalogue ${catalogue.version}.`,
  });
  return parts;
}

function photographs({ photos, photoMarks, findings, settings }: ReportCase, catalogue: Catalogue): ReportPart[] {
  if (photos.length === 0)
    return [
      { kind: 'heading', level: 2, text: 'Photographs' },
      { kind: 'paragraph', text: 'No photographs were taken.' },
    ];
  return [
    { kind: 'heading', level: 2, text: 'Photographs' },
    {
      kind: 'photographs',
      items: photos.map((photo) => {
        const view = entry(catalogue.views, photo.view)?.term ?? photo.view;
        const finding = findings.find(({ id }) => id === photo.findingId);
        const of = finding ? ` of finding ${finding.number}` : '';
        const taken = photo.taken ? `, ${photo.taken.local.replace('T', ' ')}${photo.taken.offset ?? ''}` : '';
        return {
          sha256: photo.sha256,
          width: photo.width,
          height: photo.height,
          caption: `${view}${of}${taken}${photo.caption ? `: ${photo.caption}` : ''}`,
          alt: photo.caption || `${view}${of}`,
          ...photoDrawn(photo, photoMarks, findings, settings.units, catalogue),
        };
      }),
    },
  ];
}

/** Records behind the report, without private names, positions and prices unless wished. */
function data(
  { block, survey, findings, marks, statements, photos, photoMarks, alignments }: ReportCase,
  wishes: ReportWishes,
  catalogue: Catalogue,
): unknown {
  const money = wishes.prices
    ? {}
    : { priceAsked: null, newPrice: null, equalUsedPrice: null, fallbackPrice: null, marginPerHat: null };
  return {
    format: 'blockworth-survey',
    block: { ...block, ...money },
    survey,
    findings,
    marks: wishes.privateNames ? marks : marks.filter(({ kind }) => !entry(catalogue.marks, kind)?.mayBePersonal),
    statements: wishes.privateNames
      ? statements
      : statements.map((item) => (item.partyIsPrivate ? { ...item, party: '', place: '' } : item)),
    photographs: photos.map((photo) => ({ ...photo, position: null, original: null })),
    marksOnPhotographs: photoMarks,
    alignments,
  };
}

/**
 * The "as found" condition report of a block: identification, condition with every finding and what was not looked for,
 * damage map, marks and story, recommended work with its cautions, working, photographs with their hashes.
 * Contents follow what EN 16095 and Spectrum ask of a condition report (trade handbook §4.1).
 */
export function asFoundReport(
  facts: ReportCase,
  wishes: ReportWishes,
  catalogue: Catalogue,
  drawing: string,
  made: string,
): ReportDocument {
  const { block, assessment, settings, photos } = facts;
  const name = block.name || (entry(catalogue.types, block.blockType)?.term ?? 'Hat block');
  return {
    title: `${name}: condition as found`,
    subtitle: [block.objectNumber && `No. ${block.objectNumber}`, `${photos.length} photographs`]
      .filter(Boolean)
      .join(' · '),
    identifier: (
      `${block.objectNumber} ${name}`
        .normalize('NFKD')
        .replace(/[^A-Za-z0-9]+/g, '-')
        .replace(/^-+|-+$/g, '') || 'hat-block'
    ).slice(0, 60),
    lang: 'en-GB',
    author: settings.ownerName,
    made,
    paper: settings.paper,
    parts: [
      ...identification(facts, wishes, catalogue),
      ...condition(facts, catalogue),
      {
        kind: 'damageMap',
        drawing,
        marks: marksOf(assessment, catalogue),
        alt: `Drawing of the block with ${assessment.graded.length} numbered findings: ${list(
          assessment.graded.map(({ finding }) => `${finding.number} at the ${where(finding, catalogue)}`),
        )}`,
        caption: 'Where the findings are: number of the finding, shape by what did it, heavier the worse.',
      },
      ...story(facts, wishes, catalogue),
      ...(wishes.plan ? plan(facts, wishes, catalogue) : []),
      ...(wishes.working ? working(facts, wishes, catalogue) : []),
      ...(wishes.pairs ? pairParts(facts, catalogue) : []),
      ...(wishes.photographs ? photographs(facts, catalogue) : []),
    ],
    data: data(facts, wishes, catalogue),
  };
}
