import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { catalogue } from '../../src/catalogue/index.ts';
import { force, shares, span, volume } from '../../src/text/advice/figures.ts';
import { adviceWords, assumptionWords, needsWords } from '../../src/text/advice.ts';
import { dayHere, daySpan, dayWords } from '../../src/text/days.ts';
import { adviceFor, type Told } from '../support/advice-case.ts';

/** Everything advice says, in one string. */
function said(told: Told): string {
  const kind = catalogue.damage[told.kind];
  if (!kind) throw new Error(told.kind);
  return adviceFor(told)
    .flatMap((advice) => {
      const { title, lead, facts, points, list } = adviceWords(advice, 'mm');
      return [
        title,
        lead,
        ...facts.flat(),
        ...points,
        ...(list ? [list.title, ...list.items] : []),
        ...advice.assumed.map((assumed) => assumptionWords(assumed, 'mm')),
        needsWords(advice.needs, kind, catalogue),
      ];
    })
    .join('\n');
}

describe('advice in words', () => {
  it('has a word for everything: no undefined, no raw id, no NaN, whatever was answered', () => {
    const kinds = Object.keys(catalogue.damage).filter((id) => catalogue.damage[id]?.physics);
    fc.assert(
      fc.property(
        fc.constantFrom(...kinds),
        fc.infiniteStream(fc.nat({ max: 7 })),
        fc.constantFrom(...Object.keys(catalogue.materials), ''),
        fc.constantFrom('domeCrown', 'flatBrim', 'puzzle'),
        fc.record({
          roomTemperatureC: fc.integer({ min: 0, max: 45 }),
          roomHumidityPct: fc.integer({ min: 5, max: 95 }),
        }),
        fc.boolean(),
        (kindId, picks, material, blockType, settings, isMeasured) => {
          const pick = (): number => picks.next().value ?? 0;
          const asks = catalogue.damage[kindId]?.asks ?? [];
          const answers = Object.fromEntries(
            asks.flatMap((ask): [string, number | boolean | string][] => {
              const place = pick();
              if (place === 7) return [];
              if (ask.type === 'yesNo') return [[ask.id, true]];
              if (ask.type === 'choice') return [[ask.id, ask.options[place % ask.options.length]?.id ?? '']];
              return [[ask.id, ask.chips[place % ask.chips.length] ?? 0]];
            }),
          );
          const text = said({
            kind: kindId,
            answers,
            settings,
            zone: pick() > 3 ? 'ropeLine' : 'sideLeft',
            gradeByHand: 3,
            block: { materials: material ? [material] : [], blockType },
            measures: isMeasured
              ? {
                  circRopeMm: 570,
                  lengthMm: 200,
                  widthMm: 164,
                  depthFrontMm: 130,
                  weightG: 300 + 200 * pick(),
                  moisturePct: 5 + 4 * pick(),
                }
              : {},
          });
          expect(text).not.toMatch(/undefined|NaN|Infinity|null|\[object|[a-z][A-Z][a-z]/);
          expect(text).not.toMatch(/is free of worm(?!\.)/);
        },
      ),
      { numRuns: 400 },
    );
  });

  it('says “free of worm” only where it says that nobody can', () => {
    const text = said({ kind: 'flightHoles', answers: { diaMm: 1.5, activity: 'inactive' } });
    expect(text.match(/[^.]*free of worm[^.]*\./g)).toEqual(['\u0020Nobody can say that it is free of worm.']);
  });

  it('asks for what is missing in the words of the sheet', () => {
    const kind = catalogue.damage.split;
    if (!kind) throw new Error('no split');
    expect(needsWords([{ ask: 'widthMm' }, { measure: 'weightG' }], kind, catalogue)).toBe(
      'To say more: “Gap at the widest” and “Weight”.',
    );
    expect(needsWords([], kind, catalogue)).toBe('');
  });
});

describe('figures', () => {
  it('say one figure where both ends are the same, and a range where not', () => {
    expect([span(3, 3), span(2.6, 3.4), span(1, 4)]).toEqual(['3', '3', '1–4']);
    expect(shares(0.125, 0.512)).toBe('13–51 %');
  });

  it('are finer for little filler than for much', () => {
    expect([volume(20, 60), volume(527.6, 527.6), volume(4000, 12000)]).toEqual([
      '0.02–0.06 cm³',
      '0.53 cm³',
      '4–12 cm³',
    ]);
  });

  it('give a force to two figures, and as the weight that presses so', () => {
    // 1598.41 N by the handbook (basswood, 2 mm), within a factor of two either way; 1 kg presses with 9.80665 N (standard gravity).
    expect(force(799.2, 3196.8)).toBe('800–3200 N, as 81–330 kg press');
  });
});

describe('days', () => {
  it('are written out, and the year once where one is enough', () => {
    expect(dayWords('2026-09-30')).toBe('30 September 2026');
    expect(daySpan('2026-04-01', '2026-09-30')).toBe('1 April to 30 September 2026');
    expect(daySpan('2026-10-01', '2027-03-31')).toBe('1 October 2026 to 31 March 2027');
  });

  it('are those of the place where the phone is', () => {
    const noon = new Date(2026, 9, 17, 12).getTime();
    const lastMinute = new Date(2026, 11, 31, 23, 59).getTime();
    expect([dayHere(noon), dayHere(lastMinute)]).toEqual(['2026-10-17', '2026-12-31']);
  });
});
