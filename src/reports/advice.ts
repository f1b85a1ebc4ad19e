import { adviceOn, joinedAdvice } from '../core/advice.ts';
import { type Catalogue, entry } from '../core/catalogue.ts';
import { climateOf } from '../core/climate.ts';
import { CAUTIONS } from '../core/physics/cautions.ts';
import type { ReportPart } from '../core/report.ts';
import { adviceWords, assumptionWords, needsWords } from '../text/advice.ts';
import { list, opening } from '../text/format.ts';
import type { ReportCase } from './case.ts';
import { chapter, findingName, paragraph, section } from './naming.ts';

type Joined = ReturnType<typeof joinedAdvice>[number];

const always = (when: string): boolean => when === 'always' || when === 'any';

function cautionWords(id: keyof typeof CAUTIONS): string {
  const { hazard, when, line, deferTo } = CAUTIONS[id];
  return `${opening(hazard)}${always(when) ? '' : ` (${when})`}: ${line} Final word: ${deferTo}.`;
}

function card({ first, findings }: Joined, facts: ReportCase, catalogue: Catalogue): ReportPart[] {
  const { units } = facts.settings;
  const words = adviceWords(first, units);
  const kind = entry(catalogue.damage, facts.findings.find(({ id }) => id === first.findingId)?.kind);
  const needs = kind ? needsWords(first.needs, kind, catalogue) : '';
  const assumed = first.assumed.map((one) => assumptionWords(one, units));
  const names = list(findings.map((id) => findingName(id, facts.findings, catalogue)));
  const sources = [...new Set(first.sources.map(({ source }) => source))];
  return [
    section(`${words.title}${words.title.endsWith('?') ? '' : ':'} ${names}`),
    ...(first.cautions.length > 0
      ? [{ kind: 'list' as const, tone: 'caution' as const, items: first.cautions.map(cautionWords) }]
      : []),
    ...(words.lead ? [paragraph(words.lead)] : []),
    ...(needs ? [paragraph(needs)] : []),
    ...(words.facts.length > 0 ? [{ kind: 'facts' as const, rows: words.facts }] : []),
    ...(words.points.length > 0 ? [{ kind: 'list' as const, items: words.points }] : []),
    ...(words.list && words.list.items.length > 0
      ? [paragraph(`${words.list.title}: ${words.list.items.join('; ')}.`)]
      : []),
    ...(assumed.length > 0 ? [paragraph(`Taken for granted: ${assumed.join('; ')}.`, 'small')] : []),
    ...(sources.length > 0 ? [paragraph(`After: ${sources.join('; ')}.`, 'small')] : []),
  ];
}

/**
 * What the wood science says to the findings, cautions first; empty where it has nothing to say.
 * @param today `YYYY-MM-DD`: seasons of insects and the end of a quarantine hang on it
 */
export function adviceParts(facts: ReportCase, catalogue: Catalogue, today: string): ReportPart[] {
  const { block, survey, assessment, settings, apart } = facts;
  const about = { block, survey, assessment, climate: climateOf(settings), today, ...(apart && { apart }) };
  const advice = assessment.graded.flatMap(({ finding }) => adviceOn(finding.id, about, catalogue));
  const cards = joinedAdvice(advice).filter(
    ({ first }) => first.answer !== null || first.needs.length > 0 || first.cautions.length > 0,
  );
  if (cards.length === 0) return [];
  return [chapter('What the material asks for'), ...cards.flatMap((one) => card(one, facts, catalogue))];
}
