import { type BeforeAfter, pairsOf, sharedCrop, WHOLE } from '../core/before-after.ts';
import { type Catalogue, entry } from '../core/catalogue.ts';
import type { Alignment, Finding, Photo } from '../core/records.ts';
import type { ReportPart, ReportPhoto } from '../core/report.ts';
import { scaleBarOf, sharedScaleBar } from '../core/scale-bar.ts';
import { dayWords } from '../text/days.ts';
import { chapter } from './naming.ts';

interface PairCase {
  readonly photos: readonly Photo[];
  readonly alignments: readonly Alignment[];
  readonly findings: readonly Finding[];
}

export const pairsInCase = ({ photos, alignments }: PairCase, catalogue: Catalogue): readonly BeforeAfter[] =>
  pairsOf(photos, alignments, Object.keys(catalogue.views));

const taken = ({ taken: when }: Photo): string => (when ? dayWords(when.local.slice(0, 10)) : 'date not known');

function pairPart(pair: BeforeAfter, { findings }: PairCase, catalogue: Catalogue): ReportPart {
  const { before, after, alignment } = pair;
  const view = entry(catalogue.views, pair.view)?.term ?? pair.view;
  const finding = findings.find(({ id }) => id === pair.findingId);
  const name = finding ? `${view} of finding ${finding.number}` : view;
  const crop = alignment ? sharedCrop(alignment.h) : WHOLE;
  const shared = alignment && sharedScaleBar(before, after, alignment.h, crop);
  const photo = (one: Photo, stage: string): ReportPhoto => ({
    ...{ sha256: one.sha256, bytes: one.bytes, width: one.width, height: one.height },
    caption: `${stage}, ${taken(one)}`,
    alt: `${name}, ${stage.toLocaleLowerCase('en-GB')} the work${one.caption ? `: ${one.caption}` : ''}`,
    scaleBar: alignment ? (shared ?? null) : one.scale && scaleBarOf(one.scale, one),
    ...{ marks: [], notes: [] },
  });
  return {
    kind: 'pair',
    before: photo(before, 'Before'),
    after: photo(after, 'After'),
    h: alignment?.h ?? null,
    crop,
    caption: `${name}. ${laid(alignment)}`,
  };
}

/** Views taken before and after the work, beside each other; the part both show where they were lined up. */
export function pairParts(facts: PairCase, catalogue: Catalogue): ReportPart[] {
  const pairs = pairsInCase(facts, catalogue);
  if (pairs.length === 0) return [];
  return [chapter('Before and after'), ...pairs.map((pair) => pairPart(pair, facts, catalogue))];
}

function laid(alignment: Alignment | undefined): string {
  if (!alignment) return 'Not lined up.';
  const { agreement, method } = alignment;
  const how = method === 'features' ? '' : ' by tapped places';
  const figure = agreement === null ? '' : `, agreement ${agreement.toFixed(2)} of 1`;
  return `The part both show, the after laid over the before${how}${figure}; the photographs themselves, whose hashes these are, are unchanged.`;
}
