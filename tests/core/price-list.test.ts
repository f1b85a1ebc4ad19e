import { describe, expect, it } from 'vitest';
import { type PriceLine, priceLineOf, priceListOf, rangeOf, suggestedPrice } from '../../src/core/price-list.ts';
import { fillingOf, type Held, shelfOf, sizesCm } from '../../src/core/shelf-gaps.ts';
import { aBlock, anOffer } from '../make.ts';

const aLine = (blockId: string, fields: Partial<PriceLine> = {}): PriceLine => ({
  blockId,
  blockType: 'domeCrown',
  material: 'lime',
  verdict: 'sound',
  currency: 'GBP',
  asked: null,
  paid: null,
  ...fields,
});

describe('the owner’s own price list', () => {
  it('knows what was asked last and what was paid, fees included', () => {
    const offers = [
      anOffer({ what: 'offered', amount: 4_000 }),
      anOffer({ what: 'paid', amount: 5_000, fees: 1_440 }),
      anOffer({ what: 'paid', amount: 9_900, currency: 'EUR' }),
    ];
    expect(priceLineOf(aBlock({ priceAsked: 5_500 }), 'sound', offers)).toMatchObject({
      blockType: 'domeCrown',
      material: 'lime',
      asked: 5_500,
      paid: 6_440,
    });
    expect(priceLineOf(aBlock(), 'sound', [])).toMatchObject({ asked: null, paid: null });
    // A gift teaches no price.
    expect(priceLineOf(aBlock(), 'sound', [anOffer({ what: 'paid', amount: 0 })]).paid).toBeNull();
  });

  it('keeps types, materials, verdicts and currencies apart, with count, range and middle', () => {
    const list = priceListOf([
      aLine('a', { asked: 6_000, paid: 5_000 }),
      aLine('b', { asked: 8_000 }),
      aLine('c', { asked: 7_000, verdict: 'risky' }),
      aLine('d', { asked: 7_000, currency: 'EUR' }),
      aLine('e', { asked: 7_000, blockType: null }),
      aLine('f'),
    ]);
    expect(list).toHaveLength(3);
    const sound = list.find(({ verdict, currency }) => verdict === 'sound' && currency === 'GBP');
    expect(sound?.asked).toEqual({ count: 2, low: 6_000, median: 7_000, high: 8_000 });
    expect(sound?.paid).toEqual({ count: 1, low: 5_000, median: 5_000, high: 5_000 });
    expect(rangeOf([null, null])).toBeNull();
    expect(rangeOf([3, 1, 2])).toEqual({ count: 3, low: 1, median: 2, high: 3 });
  });

  const mine = aLine('mine');

  it('suggests what was paid before what was asked, and the same wood before any', () => {
    const lines = [
      aLine('a', { paid: 5_000, asked: 9_000 }),
      aLine('b', { paid: 7_000, asked: 9_000 }),
      aLine('c', { paid: 1_000, material: 'poplar' }),
    ];
    expect(suggestedPrice(mine, lines)).toEqual({
      ...{ count: 2, low: 5_000, median: 6_000, high: 7_000 },
      ...{ from: 'paid', sameMaterial: true },
    });
    expect(suggestedPrice(mine, lines.slice(1))).toMatchObject({ count: 2, from: 'paid', sameMaterial: false });
    expect(suggestedPrice(mine, [aLine('x', { asked: 1 }), aLine('y', { asked: 3 })])).toMatchObject({
      from: 'asked',
      median: 2,
    });
  });

  it('suggests nothing from one price, from the block itself, or from another verdict or currency', () => {
    expect(suggestedPrice(mine, [aLine('a', { paid: 5_000 })])).toBeNull();
    expect(suggestedPrice(mine, [aLine('mine', { paid: 5_000 }), aLine('a', { paid: 5_000 })])).toBeNull();
    const other = [aLine('a', { paid: 1, verdict: 'risky' }), aLine('b', { paid: 1, currency: 'EUR' })];
    expect(suggestedPrice(mine, other)).toBeNull();
    expect(suggestedPrice(aLine('n', { blockType: null }), [mine, mine])).toBeNull();
  });
});

describe('gaps on the shelf', () => {
  const dome = (sizeCm: number | null): Held => ({ blockType: 'domeCrown', sizeCm });
  const sized = (type: string): boolean => type !== 'stand';
  const sizes = sizesCm([560, 570, 580, 571]);

  it('are usual sizes a shape is missing in; other sizes and unmeasured ones are counted beside', () => {
    expect(sizes).toEqual([56, 57, 58]);
    const held = [dome(57), dome(57), dome(60), dome(null), { blockType: 'stand', sizeCm: null }];
    expect(shelfOf(held, sizes, sized)).toEqual([
      { blockType: 'domeCrown', counts: [0, 2, 0], others: 2, missing: [56, 58] },
    ]);
  });

  it('list the shape nearest to complete first', () => {
    const cloche = (sizeCm: number): Held => ({ blockType: 'cloche', sizeCm });
    const order = shelfOf([dome(57), cloche(56), cloche(57), cloche(58)], sizes, sized);
    expect(order.map(({ blockType }) => blockType)).toEqual(['cloche', 'domeCrown']);
    expect(order[0]?.missing).toEqual([]);
  });

  it('are filled by a size that is missing or a shape there is none of, and by nothing else', () => {
    const held = [dome(57)];
    expect(fillingOf(dome(56), held, sizes, true)).toBe('size');
    expect(fillingOf(dome(57), held, sizes, true)).toBeNull();
    expect(fillingOf(dome(61), held, sizes, true)).toBeNull();
    expect(fillingOf(dome(null), held, sizes, true)).toBeNull();
    expect(fillingOf({ blockType: 'cloche', sizeCm: 56 }, held, sizes, true)).toBe('shape');
    expect(fillingOf({ blockType: null, sizeCm: 56 }, held, sizes, true)).toBeNull();
    // An empty shelf lacks everything: saying so of every lot would tell nothing.
    expect(fillingOf(dome(56), [], sizes, true)).toBeNull();
  });
});
