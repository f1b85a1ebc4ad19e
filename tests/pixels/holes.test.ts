import { describe, expect, it } from 'vitest';
import { findHoles, type HoleMark } from '../../src/pixels/holes.ts';
import { pinLine } from '../../src/pixels/pin-line.ts';
import { seededRandom } from '../../src/pixels/random.ts';
import type { Scale } from '../../src/pixels/scale.ts';
import type { Mm, Px } from '../../src/pixels/types.ts';
import { cloud, dimmed, photoOf, wood } from './drawn.ts';

const PX_PER_MM = 7;
const scale: Scale = {
  toMm: ([x, y]) => [x / PX_PER_MM, y / PX_PER_MM],
  sigmaMm: () => 0.05,
  source: 'card',
  zMm: 0,
};
const region: Px[] = [
  [10, 10],
  [410, 10],
  [410, 310],
  [10, 310],
];
/** Centre and diameters in mm: pin holes, one medium, one oval. */
const HOLES = [
  [10, 10, 1.2, 1.2],
  [17, 12, 1.6, 1.6],
  [30, 9, 2, 2],
  [44, 13, 1.4, 1.4],
  [12, 30, 3.2, 3.2],
  [35, 30, 7, 5],
  [50, 34, 1.8, 1.8],
] as const;

const under = wood(6);
const ragged = cloud(9);
const drilled = photoOf(420, 320, (x, y) => {
  const light = under(x, y);
  const [u, v] = [x / PX_PER_MM, y / PX_PER_MM];
  for (const [cx, cy, major, minor] of HOLES)
    if (Math.hypot((u - cx) / (major / 2), (v - cy) / (minor / 2)) < 1) return dimmed(light, 0.15);
  // A soft dark spot (resin, a bruise) and a filled hole: dark but not sharp, sharp but not dark.
  const soft = Math.hypot(u - 22, v - 22);
  if (soft < 6) return dimmed(light, 1 - 0.6 * Math.exp(-((soft / 2) ** 2)));
  if (Math.hypot(u - 45, v - 22) < 1) return dimmed(light, 0.8);
  // Mould: ragged and dark.
  if (Math.hypot(u - 22, v - 38) < 4 && ragged(u * 1.7, v * 1.7) > 0.25) return dimmed(light, 0.5);
  return light;
});
const found = (marks: ReturnType<typeof findHoles>): HoleMark[] => {
  if (!Array.isArray(marks)) throw new Error(marks.why);
  return marks;
};

describe('marks that look like flight holes', () => {
  const marks = found(findHoles(drilled, region, scale));

  it('are all counted, and nothing else: no soft spot, no filling, no mould', () => {
    expect(marks.length).toBe(HOLES.length);
    for (const [x, y] of HOLES)
      expect(marks.filter((m) => Math.hypot(m.x / PX_PER_MM - x, m.y / PX_PER_MM - y) < 0.2).length).toBe(1);
  });

  it('have their diameters within a tenth of a millimetre, ovals both ways', () => {
    for (const [x, y, major, minor] of HOLES) {
      const mark = marks.find((m) => Math.hypot(m.x / PX_PER_MM - x, m.y / PX_PER_MM - y) < 0.2);
      expect(Math.abs((mark?.majorMm ?? 0) - major)).toBeLessThan(0.12);
      expect(Math.abs((mark?.minorMm ?? 0) - minor)).toBeLessThan(0.12);
    }
  });

  it('are left out where the person said not to look', () => {
    const knot: Px[] = [
      [60, 180],
      [110, 180],
      [110, 240],
      [60, 240],
    ];
    expect(found(findHoles(drilled, region, scale, [knot])).length).toBe(HOLES.length - 1);
  });

  it('come out the same each time, and not at all when stopped', () => {
    expect(findHoles({ ...drilled }, region, scale)).toEqual(marks);
    expect(findHoles(drilled, region, scale, [], { signal: { aborted: true } })).toEqual({
      ok: false,
      why: 'cancelled',
    });
    expect(findHoles(drilled, region.slice(2), scale)).toEqual({ ok: false, why: 'too-few-points' });
  });

  it('are not seen in sound wood', () => expect(findHoles(photoOf(420, 320, wood(6)), region, scale)).toEqual([]));
});

describe('holes in a row', () => {
  const scattered = (n: number, seed: number): Mm[] => {
    const random = seededRandom(seed);
    return Array.from({ length: n }, (): Mm => [200 * random(), 150 * random()]);
  };

  it('are told from beetles: eight pins along an edge among twenty flight holes', () => {
    const row = Array.from({ length: 8 }, (_, i): Mm => [20 + 18 * i, 40 + 4 * i + 0.3 * (i % 2)]);
    const line = pinLine([...scattered(20, 5), ...row], 200 * 150);
    expect(line?.aligned).toBe(true);
    for (let i = 20; i < 28; i++) expect(line?.members).toContain(i);
    expect(pinLine(row, 200 * 150)?.unevenness).toBeLessThan(0.1);
  });

  it('are claimed of scattered holes less often than one time in twenty', () => {
    let claimed = 0;
    for (let seed = 1; seed <= 200; seed++) if (pinLine(scattered(25, seed), 200 * 150)?.aligned) claimed++;
    expect(claimed).toBeLessThanOrEqual(10);
  });

  it('are not claimed of three marks', () => {
    expect(
      pinLine(
        [
          [0, 0],
          [10, 0],
          [20, 0],
        ],
        1000,
      ),
    ).toBeUndefined();
  });
});
