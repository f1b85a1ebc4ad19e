import { type Catalogue, entry } from '../core/catalogue.ts';
import type { Finding, Settings } from '../core/records.ts';
import type { ReportPart } from '../core/report.ts';
import { list, measured } from '../text/format.ts';
import { reasonSentence } from '../text/verdicts.ts';
import type { ReportCase } from './case.ts';
import { findingName, where } from './naming.ts';

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

/** The condition with every finding, what was not seen and what was not looked for. */
export function condition(facts: ReportCase, catalogue: Catalogue): ReportPart[] {
  const { assessment, findings, settings } = facts;
  const nameOf = (id: string): string => findingName(id, findings, catalogue);
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
