import { describe, expect, it } from 'vitest';
import { catalogue } from '../../src/catalogue/index.ts';
import type { DamageKind } from '../../src/core/catalogue.ts';
import { beliefIn, type Tally } from '../../src/core/simulate/belief.ts';
import { looksWorth } from '../../src/core/simulate/looks.ts';
import type { Unlooked } from '../../src/core/simulate/situation.ts';

// What is believed of kinds nobody looked for, and what looking would be worth. Figures worked by hand.

describe('belief in what nobody looked for', () => {
  const kind: Pick<DamageKind, 'prior'> = {
    prior: {
      present: { workshopInUse: 0.1, dealer: 0.2, dampStore: 0.5, unknown: 0.25 },
      presentIn: { metal: { workshopInUse: 0, dealer: 0, dampStore: 0.125, unknown: 0 } },
      grades: [0.5, 0.25, 0.125, 0.125],
    },
  };

  it('is the catalogue’s before any survey of one’s own', () => {
    expect(beliefIn(kind, 'wood', 'dampStore', undefined)).toEqual({
      present: 0.5,
      grades: [0.5, 0.25, 0.125, 0.125],
      surveys: 0,
    });
    expect(beliefIn(kind, 'metal', 'dampStore', undefined).present).toBe(0.125);
  });

  it('counts the prior as eight blocks: four of eight and one of eight more are five of sixteen', () => {
    const tally: Tally = { looked: 8, found: 1, grades: [0, 0, 1, 0] };
    const belief = beliefIn(kind, 'wood', 'dampStore', tally);
    expect(belief.present).toBeCloseTo(5 / 16, 12);
    // Grades 2, 1, ½, ½ of the four blocks of the prior, and one of grade 3.
    expect(belief.grades).toEqual([2 / 5, 1 / 5, 1.5 / 5, 0.5 / 5]);
  });

  it('comes round to what one has seen oneself', () => {
    const tally: Tally = { looked: 992, found: 0, grades: [0, 0, 0, 0] };
    expect(beliefIn(kind, 'wood', 'dampStore', tally).present).toBeCloseTo(0.004, 12);
  });
});

describe('what a look is worth', () => {
  const nothing = { loss: 0 };
  const unlooked = (kind: string): Unlooked =>
    ({
      kind,
      belief: { present: 0.5, grades: [0, 0, 1, 0], surveys: 0 },
      atGrade: [nothing, nothing, nothing, nothing],
    }) as unknown as Unlooked;
  /** In every second draw mould of grade 3, and the block then worth this instead of that. */
  const halves = (good: number, bad: number, price: number, done: Record<string, true> = {}) => {
    const grades = Uint8Array.from({ length: 200 }, (_, i) => (i % 2 === 0 ? 0 : 3));
    const restore = Float64Array.from(grades, (grade) => (grade === 0 ? good : bad));
    const none = new Float64Array(200);
    return looksWorth({
      nets: { restore, copy: none, keep: none },
      price,
      hidden: [{ unlooked: unlooked('mould'), grades }],
      survey: { stationsDone: done },
      catalogue,
    });
  };

  it('is what one saves by walking away from the bad half: (100 − 60)/2 when one would not buy unseen', () => {
    // Unseen it is worth (100 − 20)/2 = 40, less than the 60 asked: one would leave it. Seen, one buys the good half.
    const [look] = halves(100, -20, 60);
    expect(look?.worth).toBeCloseTo(20, 9);
    expect(look?.changes).toBeCloseTo(0.5, 9);
  });

  it('is half the loss one is spared when one would have bought: (30 − 0)/2', () => {
    // Unseen 50 is more than the 30 asked: one would buy, and lose 30 in the bad half, where it is worth nothing.
    const [look] = halves(100, 0, 30);
    expect(look?.worth).toBeCloseTo(15, 9);
  });

  it('is nothing where it cannot change the mind', () => {
    expect(halves(100, 80, 30)[0]?.worth).toBe(0);
    expect(halves(20, 10, 30)[0]?.worth).toBe(0);
  });

  it('is the same at each station that shows it, more for a minute at the shorter one, and gone where one has been', () => {
    const looks = halves(100, -20, 60);
    expect(looks.map(({ station }) => station).sort()).toEqual([...(catalogue.damage.mould?.stations ?? [])].sort());
    for (const { worth, worthPerMinute, seconds } of looks)
      expect(worthPerMinute).toBeCloseTo(worth / (seconds / 60), 9);
    expect(halves(100, -20, 60, { nose: true }).map(({ station }) => station)).not.toContain('nose');
  });

  it('is judged on two dozen draws at least: rarer outcomes are luck, and join by how bad they are', () => {
    const among = (from: number, to: number) =>
      Uint8Array.from({ length: 200 }, (_, i) => (i >= from && i < to ? 3 : 0));
    const hidden = [
      { unlooked: unlooked('mould'), grades: among(0, 5) },
      { unlooked: unlooked('dust'), grades: among(5, 10) },
    ];
    // Five draws with bad mould happen to be a bargain, five with bad dust a disaster.
    const restore = Float64Array.from({ length: 200 }, (_, i) => (i < 5 ? 500 : i < 10 ? -500 : 10));
    const none = new Float64Array(200);
    const looks = looksWorth({
      nets: { restore, copy: none, keep: none },
      price: 60,
      hidden,
      survey: { stationsDone: {} },
      catalogue,
    });
    const worthOf = (id: string) => looks.find(({ station }) => station === id)?.worth;
    // The nose would tell mould from dust, but not from so few: ten bad draws together are worth nothing.
    expect(worthOf('nose')).toBe(0);
    // Under the base there is only mould to be seen: (500 − 60)·5/200.
    expect(worthOf('under')).toBeCloseTo(11, 9);
  });
});
