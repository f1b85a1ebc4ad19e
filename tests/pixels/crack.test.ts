import { describe, expect, it } from 'vitest';
import { crackInBox } from '../../src/pixels/crack-box.ts';
import { crackSize } from '../../src/pixels/crack-size.ts';
import { suggestCracks } from '../../src/pixels/crack-suggest.ts';
import { type CrackTrace, traceCrack } from '../../src/pixels/crack-trace.ts';
import type { Scale } from '../../src/pixels/scale.ts';
import type { Failed, Img, Px } from '../../src/pixels/types.ts';
import { dimmed, lengthOf, nearLine, photoOf, toLine, wood } from './drawn.ts';

/** A crack running down and a little across, wavering as cracks do; drawn tapering to a third of its width. */
const crackLine = (size = 1): Px[] =>
  Array.from({ length: 101 }, (_, i): Px => {
    const t = i / 100;
    return [(150 + 60 * t + 9 * Math.sin(7 * t) + 3 * Math.sin(23 * t)) * size, (50 + 240 * t) * size];
  });

const crackedWood = (widthPx: number, size = 1, seed = 1): Img => {
  const line = crackLine(size);
  const total = lengthOf(line);
  const under = wood(seed);
  const at = nearLine(line, widthPx);
  return photoOf(360 * size, 340 * size, (x, y) => {
    const light = under(x / size, y / size);
    const { away, along } = at(x, y);
    const taper = Math.min(1, Math.max(0.35, Math.min(along, total - along) / (0.08 * total)));
    return away < (widthPx * taper) / 2 ? dimmed(light, 0.15) : light;
  });
};

const square = (mmPerPx: number): Scale => ({
  toMm: ([x, y]) => [x * mmPerPx, y * mmPerPx],
  sigmaMm: (a, b) => 0.004 * mmPerPx * Math.hypot(a[0] - b[0], a[1] - b[1]),
  source: 'card',
  zMm: 0,
});

const traced = (result: CrackTrace | Failed): CrackTrace => {
  if (!result.ok) throw new Error(result.why);
  return result;
};
const near = ([x, y]: Px, dx: number, dy: number): Px => [x + dx, y + dy];
const farthest = (path: readonly Px[], line: readonly Px[]): number =>
  Math.max(...path.map((p) => toLine(line, p[0], p[1]).away));

const line = crackLine();
const photo = crackedWood(4);
const roughTaps = [near(line[0] as Px, 6, -5), near(line[100] as Px, -6, 6)];

describe('following a crack between two taps', () => {
  it('keeps to its middle from taps 8 px off', () => {
    const { path, strength, weakLegs } = traced(traceCrack(photo, roughTaps));
    const mean = path.reduce((s, p) => s + toLine(line, p[0], p[1]).away, 0) / path.length;
    expect(mean).toBeLessThan(0.5);
    expect(farthest(path, line)).toBeLessThan(6);
    expect(strength).toBeGreaterThan(0.5);
    expect(weakLegs).toEqual([]);
  });

  it('measures its length within 2 % and inside its own error', () => {
    const mm = 0.15;
    const size = crackSize(photo, traced(traceCrack(photo, roughTaps)).path, square(mm));
    if (!size.ok) throw new Error(size.why);
    const truth = lengthOf(line) * mm;
    expect(Math.abs(size.lengthMm / truth - 1)).toBeLessThan(0.02);
    expect(Math.abs(size.lengthMm - truth)).toBeLessThan(2 * size.sigmaMm);
  });

  it('goes through every tap of several, and follows each leg', () => {
    const middle = line[50] as Px;
    const { path } = traced(traceCrack(photo, [line[0] as Px, near(middle, 4, 3), line[100] as Px]));
    expect(farthest(path, line)).toBeLessThan(6);
    expect(toLine(path, middle[0], middle[1]).away).toBeLessThan(1.5);
  });

  it('gives the same crack end to end when the taps are swapped', () => {
    const forth = traced(traceCrack(photo, roughTaps)).path;
    const back = traced(traceCrack(photo, [...roughTaps].reverse())).path;
    expect(farthest(back, forth)).toBeLessThan(1.5);
  });

  it('is half as long again in a photo half as large again', () => {
    const small = lengthOf(traced(traceCrack(photo, roughTaps)).path);
    const large = lengthOf(
      traced(
        traceCrack(
          crackedWood(6, 1.5),
          roughTaps.map(([x, y]): Px => [1.5 * x, 1.5 * y]),
          { snapPx: 15 },
        ),
      ).path,
    );
    expect(Math.abs(large / small / 1.5 - 1)).toBeLessThan(0.02);
  });

  it('is the same to the last bit, whatever was asked of the photo before', () => {
    const first = traceCrack({ ...photo }, roughTaps);
    const used = { ...photo };
    traceCrack(used, [
      [300, 20],
      [310, 300],
    ]);
    expect(traceCrack(used, roughTaps)).toEqual(first);
    expect(traceCrack({ ...photo }, roughTaps)).toEqual(first);
  });

  it('calls a leg through plain wood weak', () => {
    const plain = photoOf(300, 300, () => [0.5, 0.4, 0.3]);
    const lost = traceCrack(plain, [
      [50, 50],
      [250, 250],
    ]);
    expect(lost.ok && lost.weakLegs).toEqual([0]);
  });

  it('says why when it can not, and stops when told to', () => {
    expect(traceCrack(photo, [[10, 10]])).toEqual({ ok: false, why: 'too-few-points' });
    const stages: string[] = [];
    const signal = { aborted: false };
    const stopping = traceCrack(photo, roughTaps, undefined, {
      signal,
      onStage: (name) => {
        stages.push(name);
        signal.aborted = true;
      },
    });
    expect(stopping).toEqual({ ok: false, why: 'cancelled' });
    expect(stages.length).toBe(1);
  });
});

describe('the opening of a crack', () => {
  it.each([
    [4, 0.6, 'fine'],
    [8, 1.2, 'open'],
  ] as const)('is right within an eighth for one %i px wide', (widthPx, expectedMm, widthClass) => {
    const wide = crackedWood(widthPx);
    const size = crackSize(wide, traced(traceCrack(wide, roughTaps)).path, square(0.15));
    if (!size.ok) throw new Error(size.why);
    // The drawn crack tapers over 8 % of its length at each end.
    expect(Math.abs(size.meanWidthMm / (expectedMm * 0.92) - 1)).toBeLessThan(0.12);
    expect(Math.abs(size.maxWidthMm / expectedMm - 1)).toBeLessThan(0.15);
    expect(size.widthClass).toBe(widthClass);
  });

  it('is only called a hairline below three pixels', () => {
    const fine = crackedWood(1.6);
    const size = crackSize(fine, traced(traceCrack(fine, roughTaps)).path, square(0.3));
    expect(size.ok && size.widthClass).toBe('hairline');
  });

  it('changes by less than a sixth when the photo is much softer', () => {
    const widths = [0.6, 1.6].map((lens) => {
      const under = wood(4, 0.3);
      const soft = photoOf(200, 200, (x, y) => dimmed(under(x, y), Math.abs(x - 100) < 2.5 ? 0.15 : 1), { lens });
      const path = Array.from({ length: 140 }, (_, i): Px => [100, 30.5 + i]);
      const size = crackSize(soft, path, square(0.2));
      return size.ok ? size.meanWidthMm : Number.NaN;
    });
    expect(Math.abs((widths[0] as number) / (widths[1] as number) - 1)).toBeLessThan(0.16);
    expect(Math.abs((widths[0] as number) - 1)).toBeLessThan(0.12);
  });
});

describe('cracks nobody pointed out', () => {
  const all: Px[] = [
    [2, 2],
    [358, 2],
    [358, 338],
    [2, 338],
  ];

  it('suggests a plain crack on plain wood, and nothing where there is none', () => {
    const found = suggestCracks(photo, all);
    if (!Array.isArray(found)) throw new Error(found.why);
    expect(found.length).toBe(1);
    expect(farthest(found[0]?.path ?? [], line)).toBeLessThan(4);
    expect(suggestCracks(photoOf(360, 340, wood(1)), all)).toEqual([]);
  });

  it('looks only inside the outline', () => {
    const right: Px[] = [
      [260, 2],
      [358, 2],
      [358, 338],
      [260, 338],
    ];
    expect(suggestCracks(photo, right)).toEqual([]);
  });

  it('follows the crack in a dragged box, not the box', () => {
    const found = traced(crackInBox(photo, [130, 20], [240, 320]));
    expect(farthest(found.path, line)).toBeLessThan(8);
    const ys = found.path.map((p) => p[1]);
    expect(Math.min(...ys)).toBeGreaterThan(35);
    expect(Math.max(...ys)).toBeLessThan(305);
  });
});
