import { catalogue } from '../../src/catalogue/index.ts';
import { assess, type Case } from '../../src/core/assess.ts';
import { applicableKinds, settingOf, zonesFor } from '../../src/core/block.ts';
import { looksWorth } from '../../src/core/simulate/looks.ts';
import { type ForecastCase, forecast } from '../../src/core/simulate/simulate.ts';
import { aBlock, aCase, aFinding, aSurvey, everythingLookedAt, someSettings } from '../make.ts';

export { assess, catalogue, forecast, looksWorth };

/** So many kinds are found over and over: the rest of the puzzle's forty can still be unlooked. */
const KINDS_FOUND = 20;

/**
 * A puzzle block with so many findings, kind after kind, each measure at one of its chips: more than any block has, and
 * of many sorts. The rest of the walk is done, or none of it.
 */
export function caseWith(count: number, looked: 'everything' | 'nothing'): Case {
  const block = aBlock({
    blockType: 'puzzle',
    materials: ['lime'],
    partsFound: 5,
    partsExpected: 5,
    shapeValue: 'uncommon',
    priceAsked: 9_000,
    newPrice: 52_000,
    fallbackPrice: 12_000,
    equalUsedPrice: 20_000,
    hatsPerYear: 7,
    marginPerHat: 8_500,
    blockShare: 0.45,
  });
  const setting = settingOf(block, catalogue);
  const kinds = applicableKinds(setting, catalogue).slice(0, KINDS_FOUND);
  const findings = Array.from({ length: count }, (_, n) => {
    const id = kinds[n % kinds.length] ?? '';
    const kind = catalogue.damage[id];
    if (!kind) throw new Error(`No kind ${id}.`);
    const zones = zonesFor(kind, setting, catalogue);
    const answers = Object.fromEntries(
      kind.asks.flatMap((ask) => (ask.type === 'measure' ? [[ask.id, ask.chips[n % ask.chips.length] ?? 0]] : [])),
    );
    return aFinding({ number: n + 1, kind: id, zone: zones[n % zones.length] ?? 'whole', answers });
  });
  const survey = looked === 'everything' ? everythingLookedAt(block, findings) : aSurvey();
  return aCase({ block, survey, findings, settings: someSettings() });
}

export const forecastCase = (count: number, looked: 'everything' | 'nothing', seed = 1): ForecastCase => ({
  ...caseWith(count, looked),
  origin: 'unknown',
  tallies: {},
  seed,
});
