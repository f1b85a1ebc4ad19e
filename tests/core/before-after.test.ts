import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pairsOf, sharedCrop, WHOLE } from '../../src/core/before-after.ts';
import { asTransform, inPixels, inShares, inverted, joined, mapped, type PlaneMap } from '../../src/core/plane-map.ts';
import { aPhoto, id, make } from '../store/make.ts';

const VIEWS = ['threeQuarter', 'top', 'front', 'damageClose'];
const photo = (n: number, view: string, stage: 'before' | 'during' | 'after', findingId: string | null = null) =>
  aPhoto({ id: id(n), view, stage, findingId });

describe('pairs of photographs', () => {
  it('are made of views taken before and after, in the order the views are taken', () => {
    const photos = [
      photo(10, 'front', 'before'),
      photo(11, 'top', 'before'),
      photo(12, 'threeQuarter', 'before'),
      photo(13, 'front', 'during'),
      photo(14, 'front', 'after'),
      photo(15, 'top', 'after'),
    ];
    expect(pairsOf(photos, [], VIEWS).map(({ view }) => view)).toEqual(['top', 'front']);
  });

  it('take the newest of each, and the newest alignment of those two', () => {
    const photos = [photo(10, 'top', 'before'), photo(11, 'top', 'before'), photo(12, 'top', 'after')];
    const alignments = [
      make('alignment', { id: id(20), beforeId: id(10), afterId: id(12) }),
      make('alignment', { id: id(21), beforeId: id(11), afterId: id(12), method: 'features' }),
      make('alignment', { id: id(22), beforeId: id(11), afterId: id(12), method: 'taps' }),
    ];
    const [pair] = pairsOf(photos, alignments, VIEWS);
    expect([pair?.before.id, pair?.after.id, pair?.alignment?.id]).toEqual([id(11), id(12), id(22)]);
  });

  it('do not mix close views of different findings', () => {
    const photos = [photo(10, 'damageClose', 'before', id(3)), photo(11, 'damageClose', 'after', id(4))];
    expect(pairsOf(photos, [], VIEWS)).toEqual([]);
    expect(pairsOf([...photos, photo(12, 'damageClose', 'after', id(3))], [], VIEWS)[0]?.findingId).toBe(id(3));
  });

  it('of a view no catalogue knows come last', () => {
    const photos = ['innerLip', 'front'].flatMap((view, i) => [
      photo(10 + i, view, 'before'),
      photo(20 + i, view, 'after'),
    ]);
    expect(pairsOf(photos, [], VIEWS).map(({ view }) => view)).toEqual(['front', 'innerLip']);
  });
});

/** Plane maps as two looks at one face make them: a little turned, moved, and tilted. */
const maps = fc
  .tuple(...[0.2, 0.2, 0.2, 0.2].map((most) => fc.double({ min: -most, max: most, noNaN: true })))
  .map(([x = 0, y = 0, turn = 0, tilt = 0]): PlaneMap => {
    const [c, s] = [Math.cos(turn), Math.sin(turn)];
    return [c, -s, x, s, c, y, tilt, -tilt / 2, 1];
  });

describe('a plane map', () => {
  it('and its way back leave every place where it was', () => {
    fc.assert(
      fc.property(
        maps,
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (map, x, y) => {
          const back = inverted(map);
          const there = mapped(map, [x, y]);
          const home = back && there && mapped(back, there);
          expect(home?.[0]).toBeCloseTo(x, 9);
          expect(home?.[1]).toBeCloseTo(y, 9);
        },
      ),
    );
  });

  it('between pixels says the same in shares', () => {
    const [from, to] = [
      { width: 1600, height: 1200 },
      { width: 800, height: 600 },
    ];
    // Half the size and 40 px to the right in the second picture's pixels: by hand, 40 / 800 = 0.05 of its width.
    const shares = inShares([0.5, 0, 40, 0, 0.5, 0, 0, 0, 1], from, to);
    expect(mapped(shares, [0.2, 0.5])?.[0]).toBeCloseTo(0.25, 12);
    expect(mapped(shares, [0.2, 0.5])?.[1]).toBeCloseTo(0.5, 12);
    expect(mapped(inPixels(shares, from, to), [1600, 1200])?.[0]).toBeCloseTo(840, 9);
  });

  it('has no place for what lies beyond the horizon', () => {
    expect(mapped([1, 0, 0, 0, 1, 0, -2, 0, 1], [0.6, 0])).toBeUndefined();
    expect(inverted([1, 0, 0, 2, 0, 0, 0, 0, 1])).toBeUndefined();
  });

  it('is written as CSS wants it: columns first, depth left alone', () => {
    // CSS Transforms 2: matrix3d takes 16 numbers in column-major order.
    expect(asTransform([1, 2, 3, 4, 5, 6, 7, 8, 9])).toBe('matrix3d(1, 4, 0, 7, 2, 5, 0, 8, 0, 0, 1, 0, 3, 6, 0, 9)');
  });

  it('joined with another does one after the other', () => {
    const twice: PlaneMap = [2, 0, 0, 0, 2, 0, 0, 0, 1];
    const right: PlaneMap = [1, 0, 1, 0, 1, 0, 0, 0, 1];
    expect(mapped(joined(twice, right), [1, 1])).toEqual([4, 2]);
    expect(mapped(joined(right, twice), [1, 1])).toEqual([3, 2]);
  });
});

describe('the part both photographs show', () => {
  it('is what is left when the camera moved aside', () => {
    // A quarter of the width to the right: the after shows the before's left three quarters at its right.
    expect(sharedCrop([1, 0, 0.25, 0, 1, 0, 0, 0, 1])).toEqual({ x: 0, y: 0, width: 0.75, height: 1 });
    expect(sharedCrop([1, 0, 0, 0, 1, -0.5, 0, 0, 1])).toEqual({ x: 0, y: 0.5, width: 1, height: 0.5 });
  });

  it('is the whole without a map, and when they share next to nothing', () => {
    expect(sharedCrop(null)).toEqual(WHOLE);
    expect(sharedCrop([1, 0, 0, 0, 1, 0, 0, 0])).toEqual(WHOLE);
    expect(sharedCrop([1, 0, 0.95, 0, 1, 0, 0, 0, 1])).toEqual(WHOLE);
  });

  it('lies inside the after photograph with all its corners, however that was held', () => {
    fc.assert(
      fc.property(maps, (map) => {
        const crop = sharedCrop(map);
        if (crop === WHOLE) return;
        for (const across of [0, 1])
          for (const down of [0, 1]) {
            const at = mapped(map, [crop.x + across * crop.width, crop.y + down * crop.height]);
            for (const share of at ?? [-1]) {
              expect(share).toBeGreaterThan(-1e-6);
              expect(share).toBeLessThan(1 + 1e-6);
            }
          }
      }),
      { numRuns: 40 },
    );
  });
});
