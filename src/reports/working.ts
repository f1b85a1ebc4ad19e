import { type Catalogue, entry } from '../core/catalogue.ts';
import type { ReportPart } from '../core/report.ts';
import { hours, money, percent } from '../text/format.ts';
import { limitSentence } from '../text/verdicts.ts';
import type { ReportCase } from './case.ts';
import type { ReportWishes } from './wishes.ts';

/** How the score came about, and the most worth paying where prices are let in. */
export function working(facts: ReportCase, wishes: ReportWishes, catalogue: Catalogue): ReportPart[] {
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
        [wishes.hours ? `Less ${hours(assessment.plan.meanHours)} of work` : 'Less the work', `−${say(worth.labour)}`],
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
