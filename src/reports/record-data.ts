import type { Catalogue } from '../core/catalogue.ts';
import type { ReportCase } from './case.ts';
import type { ReportWishes } from './wishes.ts';
import { mayName, withoutParties } from './withheld.ts';

/** What a record says, without who wrote which field when and on which device. */
function said<R extends object>(record: R): Partial<R> {
  const { stamps, device, deleted, otherWords, ...rest } = record as R & Readonly<Record<string, unknown>>;
  return rest as Partial<R>;
}

const NO_PRICES = {
  ...{ priceAsked: null, newPrice: null, equalUsedPrice: null, fallbackPrice: null },
  ...{ estimateLow: null, estimateHigh: null, bidNow: null },
  ...{ hatsPerYear: null, marginPerHat: null, blockShare: null },
};

/** Records behind a report, without private names, positions and prices unless wished. */
export function recordData(
  { block, survey, findings, marks, statements, photos, photoMarks, alignments }: ReportCase,
  wishes: Pick<ReportWishes, 'prices' | 'privateNames'>,
  catalogue: Catalogue,
  more: Readonly<Record<string, readonly object[]>> = {},
): unknown {
  const { prices, privateNames } = wishes;
  return {
    format: 'blockworth-survey',
    block: { ...said(block), ...(prices ? {} : NO_PRICES) },
    survey: said(survey),
    findings: findings.map(said),
    marks: marks.filter((mark) => privateNames || !mayName(mark, catalogue)).map(said),
    statements: (privateNames ? statements : withoutParties(statements)).map(said),
    photographs: photos.map((photo) => ({ ...said(photo), position: null, original: null })),
    marksOnPhotographs: photoMarks.map(said),
    alignments: alignments.map(said),
    ...Object.fromEntries(Object.entries(more).map(([name, records]) => [name, records.map(said)])),
  };
}
