import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitted, kept, type PictureView, pushed, showing, spotAt, zoomed } from '../../src/core/picture-view.ts';

const picture = { width: 1600, height: 1200 };
const screen = { width: 360, height: 420 };
const whole = fitted(picture, screen);

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const anyView = fc
  .record({ left: number(-4000, 4000), top: number(-4000, 4000), zoom: number(0.01, 50) })
  .map((view): PictureView => view);

describe('the view of a picture', () => {
  it('at first is all of it, in the middle', () => {
    expect(whole.zoom).toBeCloseTo(0.225, 12);
    expect(spotAt(whole, picture, [180, 210])).toEqual([0.5, 0.5]);
    expect(spotAt(whole, picture, [0, 210])[0]).toBeCloseTo(0, 12);
  });

  it('magnified keeps the place under the fingers where it is', () => {
    fc.assert(
      fc.property(anyView, number(0.2, 5), number(0, 360), number(0, 420), (view, by, x, y) => {
        const before = spotAt(view, picture, [x, y]);
        const after = spotAt(zoomed(view, by, [x, y]), picture, [x, y]);
        expect(after[0]).toBeCloseTo(before[0], 6);
        expect(after[1]).toBeCloseTo(before[1], 6);
      }),
    );
  });

  it('never shows less picture than it could, whatever is done to it', () => {
    fc.assert(
      fc.property(anyView, (view) => {
        const now = kept(view, picture, screen);
        expect(now.zoom).toBeGreaterThanOrEqual(whole.zoom - 1e-12);
        const [left, top] = spotAt(now, picture, [0, 0]);
        const [right, bottom] = spotAt(now, picture, [screen.width, screen.height]);
        // On each axis: either the picture fills the screen, or all of it is there.
        expect((left >= -1e-9 && right <= 1 + 1e-9) || (left <= 1e-9 && right >= 1 - 1e-9)).toBe(true);
        expect((top >= -1e-9 && bottom <= 1 + 1e-9) || (top <= 1e-9 && bottom >= 1 - 1e-9)).toBe(true);
      }),
    );
  });

  it('pushed goes with the finger', () => {
    const near = zoomed(whole, 6, [180, 210]);
    const under = spotAt(near, picture, [100, 100]);
    const after = spotAt(pushed(near, 30, -12), picture, [130, 88]);
    expect(after[0]).toBeCloseTo(under[0], 12);
    expect(after[1]).toBeCloseTo(under[1], 12);
  });

  it('brings a spot onto the screen, and does not move for one that is there', () => {
    const near = kept(zoomed(whole, 6, [180, 210]), picture, screen);
    expect(showing(near, picture, screen, [0.5, 0.5])).toEqual(near);
    const there = showing(near, picture, screen, [0.9, 0.1]);
    const x = (0.9 * picture.width - there.left) * there.zoom;
    const y = (0.1 * picture.height - there.top) * there.zoom;
    expect(x).toBeGreaterThan(0);
    expect(x).toBeLessThan(screen.width);
    expect(y).toBeGreaterThan(0);
    expect(y).toBeLessThan(screen.height);
  });
});
