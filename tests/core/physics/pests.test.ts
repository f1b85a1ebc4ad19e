import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { eggsIn } from '../../../src/core/physics/beetle-dryness.ts';
import {
  CLUES_IN_ORDER,
  COMMON_IN_HAT_BLOCKS,
  type HoleClues,
  rankBorers,
} from '../../../src/core/physics/borer-ranking.ts';
import { dayNumber, daysAfter, isoDateOf } from '../../../src/core/physics/civil-date.ts';
import {
  FREEZE_REGIME_IDS,
  FREEZE_REGIMES,
  freezeAnswer,
  freezeRoundHours,
  regimesFor,
} from '../../../src/core/physics/freezing.ts';
import { BORERS, DUSTS, WOOD_KINDS } from '../../../src/core/physics/insects.ts';
import {
  chanceNoneEmerges,
  firstWholeSeason,
  type Hemisphere,
  inSeason,
  quarantinePlan,
  quarantineStanding,
} from '../../../src/core/physics/quarantine.ts';
import { readLifeSigns } from '../../../src/core/physics/signs-of-life.ts';

const runs = { numRuns: 500 };
const date = fc.integer({ min: dayNumber('1990-01-01'), max: dayNumber('2090-12-31') }).map(isoDateOf);
const hemisphere = fc.constantFrom<Hemisphere>('north', 'south');
const maybe = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: undefined });
const clues: fc.Arbitrary<HoleClues> = fc
  .record({
    followsPinningLine: maybe(fc.boolean()),
    holeMm: maybe(fc.double({ min: 0.1, max: 12, noNaN: true })),
    dust: maybe(fc.constantFrom(...DUSTS)),
    shape: maybe(fc.constantFrom('round' as const, 'oval' as const, 'ragged' as const)),
    wood: maybe(fc.constantFrom(...WOOD_KINDS)),
    darkWalls: maybe(fc.boolean()),
    damp: maybe(fc.boolean()),
    bark: maybe(fc.boolean()),
    warmRegion: maybe(fc.boolean()),
  })
  .map((all) => Object.fromEntries(Object.entries(all).filter(([, value]) => value !== undefined)) as HoleClues);

const first = (seen: HoleClues) => rankBorers(seen).ranked[0]?.suspect;

describe('who made the holes', () => {
  it('is always a ranked list of two or more, and asks about the pinning line first', () => {
    fc.assert(
      fc.property(clues, (seen) => {
        const { ranked, ask, returningShare } = rankBorers(seen);
        expect(ranked.length).toBeGreaterThanOrEqual(2);
        const shares = ranked.map(({ share }) => share);
        expect(shares).toEqual([...shares].sort((a, b) => b - a));
        expect(shares.reduce((sum, share) => sum + share, 0)).toBeLessThanOrEqual(1 + 1e-9);
        expect(returningShare).toBeGreaterThanOrEqual(0);
        expect(returningShare).toBeLessThanOrEqual(1 + 1e-9);
        expect(ask).toEqual(CLUES_IN_ORDER.filter((clue) => seen[clue] === undefined));
        if (seen.followsPinningLine === undefined) expect(ask[0]).toBe('followsPinningLine');
      }),
      runs,
    );
  });

  it('is pins when the holes follow the pinning line, whatever their size', () => {
    expect(first({ followsPinningLine: true, holeMm: 1.2 })).toBe('toolHoles');
    expect(first({ followsPinningLine: true, dust: 'none' })).toBe('toolHoles');
  });

  it.each([
    [{ followsPinningLine: false, holeMm: 1.5, dust: 'gritty', shape: 'round' }, 'furnitureBeetle'],
    [{ followsPinningLine: false, holeMm: 1.2, dust: 'flour', wood: 'hardwoodLargePored' }, 'powderpost'],
    [{ followsPinningLine: false, holeMm: 1.2, dust: 'talcPacked', wood: 'hardwoodFinePored' }, 'fanBearingBorer'],
    [
      { followsPinningLine: false, holeMm: 4, dust: 'bunPellets', damp: true, wood: 'hardwoodLargePored' },
      'deathwatch',
    ],
    [{ followsPinningLine: false, holeMm: 8, shape: 'oval', wood: 'softwood' }, 'houseLonghorn'],
    [{ followsPinningLine: false, holeMm: 1.5, dust: 'none', darkWalls: true }, 'ambrosiaBeetle'],
    [{ followsPinningLine: false, holeMm: 1, shape: 'ragged', damp: true }, 'woodWeevil'],
    [{ followsPinningLine: false, holeMm: 1.5, dust: 'sixSidedPellets', warmRegion: true }, 'drywoodTermite'],
    [{ followsPinningLine: false, holeMm: 2, dust: 'twoColouredPellets', bark: true, wood: 'softwood' }, 'barkBorer'],
    [
      { followsPinningLine: false, holeMm: 5.5, dust: 'coarsePacked', shape: 'round', wood: 'hardwoodFinePored' },
      'falsePowderpost',
    ],
    [{ followsPinningLine: false, holeMm: 0.5, dust: 'none', darkWalls: false }, 'parasiticWasp'],
  ] as const)('%j points to %s', (seen, suspect) => {
    expect(first(seen)).toBe(suspect);
  });

  it('holds the evidence for and against, clue by clue', () => {
    const { ranked } = rankBorers({ holeMm: 1.5, dust: 'flour' });
    const beetle = ranked.find(({ suspect }) => suspect === 'furnitureBeetle');
    expect(beetle?.evidence).toEqual([
      { clue: 'holeMm', speaks: 'for' },
      { clue: 'dust', speaks: 'against' },
    ]);
  });

  it('never thinks less of a suspect for a clue that fits it', () => {
    fc.assert(
      fc.property(clues, (seen) => {
        const { dust: _, ...without } = seen;
        const odds = (all: HoleClues) => {
          const { ranked } = rankBorers(all);
          const share = (id: string) => ranked.find(({ suspect }) => suspect === id)?.share ?? 0;
          return share('furnitureBeetle');
        };
        expect(odds({ ...without, dust: 'gritty' })).toBeGreaterThanOrEqual(odds(without) - 1e-9);
      }),
      runs,
    );
  });

  it('begins from shares that add up, one for each suspect', () => {
    expect(Object.values(COMMON_IN_HAT_BLOCKS).reduce((sum, share) => sum + share, 0)).toBeCloseTo(1);
    expect(Object.keys(COMMON_IN_HAT_BLOCKS).sort()).toEqual([...Object.keys(BORERS), 'toolHoles'].sort());
  });
});

describe('alive or old', () => {
  it('takes returning dust as life, whatever speaks for age', () => {
    const verdict = readLifeSigns({ dustReturnsAfterCleaning: true, darkOrDirtyHoles: true });
    expect(verdict).toMatchObject({ verdict: 'alive', because: ['dustReturnsAfterCleaning'] });
  });

  it('takes dust after a journey as nothing', () => {
    expect(readLifeSigns({ dustAfterKnocksOrTransport: true }).verdict).toBe('cannot-tell');
    expect(readLifeSigns({}).verdict).toBe('cannot-tell');
  });

  it('reports lost wood beside any verdict', () => {
    expect(readLifeSigns({ varnishOverHoles: true, crumblesUnderThumbnail: true })).toMatchObject({
      verdict: 'looks-old',
      structuralLoss: true,
    });
    expect(readLifeSigns({ waspPinpricks: true }).verdict).toBe('perhaps-alive');
  });

  it('lets no eggs hatch at 45 % and many at 65', () => {
    expect([45, 46, 65].map(eggsIn)).toEqual(['do not hatch', 'some hatch', 'hatch well']);
  });
});

describe('civil dates', () => {
  it('count days as the calendar does', () => {
    expect(dayNumber('1970-01-01')).toBe(0);
    expect(daysAfter('2024-02-28', 1)).toBe('2024-02-29');
    expect(daysAfter('2025-02-28', 1)).toBe('2025-03-01');
    expect(daysAfter('1999-12-31', 1)).toBe('2000-01-01');
    // Julian day 2 451 545 is 2000-01-01, 2 440 588 is 1970-01-01 (astronomers' epoch, as remembered).
    expect(dayNumber('2000-01-01') - dayNumber('1970-01-01')).toBe(2_451_545 - 2_440_588);
  });

  it('come back from their day number', () => {
    fc.assert(
      fc.property(date, fc.integer({ min: -5000, max: 5000 }), (day, step) => {
        expect(daysAfter(daysAfter(day, step), -step)).toBe(day);
      }),
      runs,
    );
  });

  it.each(['2025-02-30', '2025-13-01', '2025-1-01', '25-01-01', '', '2025-06-15T00:00', '2023-02-29'])(
    'refuse %j',
    (bad) => {
      expect(() => dayNumber(bad)).toThrow(RangeError);
    },
  );
});

describe('quarantine', () => {
  it('lasts a year and holds a whole season, from any arrival', () => {
    fc.assert(
      fc.property(date, hemisphere, (arrived, where) => {
        const { endsOn, season, startedOn } = quarantinePlan(arrived, where);
        expect(startedOn).toBe(arrived);
        expect(dayNumber(endsOn)).toBeGreaterThanOrEqual(dayNumber(arrived) + 365);
        expect(season.first >= arrived && season.last <= endsOn).toBe(true);
        // Never more than a year and the season just missed.
        expect(dayNumber(endsOn) - dayNumber(arrived)).toBeLessThanOrEqual(365 + 183);
      }),
      runs,
    );
  });

  it('is watched: no gap over 30 days, none over 14 inside the season', () => {
    fc.assert(
      fc.property(date, hemisphere, (arrived, where) => {
        const { checkOn, endsOn } = quarantinePlan(arrived, where);
        expect(checkOn.at(-1)).toBe(endsOn);
        // One expectation a run: a thousand small ones would cost more than the dates.
        const tooLong = checkOn.filter((next, k) => {
          const last = checkOn[k - 1] ?? arrived;
          const gap = dayNumber(next) - dayNumber(last);
          if (gap <= 0 || gap > 30) return true;
          if (inSeason(last, where)) return gap > 14;
          return inSeason(next, where) && dayNumber(next) - dayNumber(firstWholeSeason(last, where).first) >= 14;
        });
        expect(tooLong).toEqual([]);
      }),
      runs,
    );
  });

  it('starts again with any fresh dust, and the last dust decides', () => {
    const plan = quarantinePlan('2025-01-15', 'north', ['2025-07-02', '2025-05-20']);
    expect(plan).toMatchObject({ startedOn: '2025-07-02', restarts: 2, endsOn: '2026-09-30' });
    expect(() => quarantinePlan('2025-01-15', 'north', ['2024-12-31'])).toThrow(/2024-12-31/);
    fc.assert(
      fc.property(
        date,
        hemisphere,
        fc.array(fc.integer({ min: 0, max: 900 }), { maxLength: 4 }),
        (arrived, where, days) => {
          const dusty = quarantinePlan(
            arrived,
            where,
            days.map((later) => daysAfter(arrived, later)),
          );
          expect(dusty.endsOn >= quarantinePlan(arrived, where).endsOn).toBe(true);
        },
      ),
      runs,
    );
  });

  it('ends in "probably clean" and only after a look on or past the last day', () => {
    const plan = quarantinePlan('2025-01-15', 'north');
    expect(quarantineStanding(plan, '2026-02-01', []).kind).toBe('running');
    expect(quarantineStanding(plan, '2026-02-01', ['2026-01-14']).kind).toBe('running');
    expect(quarantineStanding(plan, '2026-02-01', ['2026-01-20'])).toEqual({ kind: 'probably-clean', overdue: [] });
    const early = quarantineStanding(plan, '2025-03-01', ['2025-02-14']);
    expect(early).toMatchObject({ kind: 'running', overdue: [] });
    if (early.kind === 'running') expect(early.nextCheckOn).toBe('2025-03-16');
    expect(quarantineStanding(plan, '2025-03-20', ['2025-02-14']).overdue).toEqual(['2025-03-16']);
  });

  it('proves less the longer the cycle and the fewer the larvae', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 10, noNaN: true }),
        fc.integer({ min: 0, max: 40 }),
        fc.integer({ min: 1, max: 5 }),
        (cycle, larvae, summers) => {
          const chance = chanceNoneEmerges(cycle, larvae, summers);
          expect(chance).toBeGreaterThanOrEqual(0);
          expect(chance).toBeLessThanOrEqual(1);
          expect(chanceNoneEmerges(cycle, larvae + 1, summers)).toBeLessThanOrEqual(chance);
          expect(chanceNoneEmerges(cycle, larvae, summers + 1)).toBeLessThanOrEqual(chance);
          expect(chanceNoneEmerges(cycle + 1, larvae, summers)).toBeGreaterThanOrEqual(chance);
        },
      ),
      runs,
    );
    expect(chanceNoneEmerges(3, 5, 3)).toBe(0);
    expect(chanceNoneEmerges(3, 0)).toBe(1);
  });
});

describe('the freezer', () => {
  it('must reach −18 °C to count at all', () => {
    expect(regimesFor(-15)).toEqual({ kind: 'not-cold-enough', neededC: -18 });
    expect(regimesFor(-18)).toEqual({ kind: 'regimes', ids: ['minus18Fortnight'] });
    const cold = regimesFor(-35);
    expect(cold.kind === 'regimes' && cold.ids.length).toBe(FREEZE_REGIME_IDS.length);
  });

  it('offers looked-up regimes before remembered ones', () => {
    const offer = regimesFor(-40);
    if (offer.kind !== 'regimes') throw new Error('no offer');
    const order = offer.ids.map((id) => FREEZE_REGIMES[id].confidence === 'memory');
    expect(order).toEqual([...order].sort());
  });

  it('is refused to plaster, papier-mâché and paint, with the caution', () => {
    const answer = freezeAnswer(-30, ['plaster', 'laminatedOrMultiPart']);
    expect(answer).toMatchObject({ kind: 'refused', because: ['plaster'] });
    if (answer.kind === 'refused') expect(answer.cautions).toContain('freezeRefused');
  });

  it('stays at −20 °C where old animal glue holds the block', () => {
    const answer = freezeAnswer(-30, ['animalGlue']);
    if (answer.kind !== 'regimes') throw new Error('no offer');
    expect(answer.ids.length).toBeGreaterThan(0);
    for (const id of answer.ids) expect(FREEZE_REGIMES[id].freezerC).toBeGreaterThanOrEqual(-20);
  });

  it('starts the clock at the core: a bigger block stays in longer', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...FREEZE_REGIME_IDS),
        fc.double({ min: 10, max: 150, noNaN: true }),
        fc.double({ min: 0, max: 40, noNaN: true }),
        (id, radius, start) => {
          const small = freezeRoundHours(id, radius, start);
          const big = freezeRoundHours(id, radius + 10, start);
          expect(big.core.best).toBeGreaterThan(small.core.best);
          expect(small.round.best).toBeLessThanOrEqual(small.round.likely);
          expect(small.round.likely).toBeLessThanOrEqual(small.round.worst);
          expect(small.round.best).toBeGreaterThan(small.core.best);
        },
      ),
      runs,
    );
    // The handbook's own example: r 80 mm at −30 °C, 7.1 hours to within 2 °C of the freezer.
    expect(freezeRoundHours('minus30Core', 80).core.best).toBeCloseTo(7.1, 1);
  });
});
