import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import {
  apart,
  distanceMm,
  findCard,
  findHoles,
  type Px,
  quality,
  refineCard,
  refineCoin,
  register,
  scaleFromCard,
  traceCrack,
} from '../../src/pixels/index.ts';
import { focalPx } from '../../src/workers/scale-of.ts';
import { readPhoto } from '../support/read-photo.ts';

/*
 * The photographs of the example sale, against where the renderer's own geometry puts things: corners of the card, rim of
 * the coin, ends of a split, middles of the holes (`tests/render/truth.json`, written by Blender's camera).
 */

interface Known {
  readonly focal35: number;
  readonly card?: readonly Px[];
  readonly coin?: readonly Px[];
  readonly crack?: readonly Px[];
  readonly holes?: readonly Px[];
}

const root = fileURLToPath(new URL('../..', import.meta.url));
const truth: Readonly<Record<string, Known>> = JSON.parse(readFileSync(`${root}tests/render/truth.json`, 'utf8'));
const photo = (name: string) => readPhoto(`${root}public/example/${name}.jpg`);
const known = (name: string): Known => truth[name] ?? { focal35: Number.NaN };
const named = Object.keys(truth);

const inPixels = (spots: readonly Px[] = [], { width, height }: { width: number; height: number }): Px[] =>
  spots.map(([u, v]): Px => [u * width, v * height]);

const nearest = (from: Px, to: readonly Px[]): number => Math.min(...to.map((p) => apart(from, p)));

describe('the example’s photographs, measured', { timeout: 60_000 }, () => {
  /** Lies among lines of glue, knife and pencil, which the search takes for sides. */
  const TAPPED = 'L03-damageClose';

  it.each(named.filter((name) => known(name).card && name !== TAPPED))(
    'shows its card to the search without taps: %s',
    (name) => {
      const img = photo(name);
      const found = findCard(img);
      if (!found.ok) throw new Error(`No card: ${found.why}.`);
      const corners = inPixels(known(name).card, img);
      for (const corner of corners) expect(nearest(corner, found.corners)).toBeLessThan(4);
    },
  );

  it('shows the card that the search refuses to four taps', () => {
    const img = photo(TAPPED);
    const corners = inPixels(known(TAPPED).card, img);
    const rough = corners.map(([x, y], i): Px => [x + (i % 2 ? 6 : -5), y + (i < 2 ? 5 : -6)]);
    const found = refineCard(img, rough);
    if (!found.ok) throw new Error(`No card: ${found.why}.`);
    for (const corner of corners) expect(nearest(corner, found.corners)).toBeLessThan(5);
  });

  it.each(named.filter((name) => known(name).coin))('shows its coin from three taps on the rim: %s', (name) => {
    const img = photo(name);
    const rim = inPixels(known(name).coin, img);
    const found = refineCoin(img, [rim[0], rim[3], rim[5]] as readonly Px[]);
    if (!found.ok) throw new Error(`No coin: ${found.why}.`);
    const across = apart(rim[0] as Px, rim[4] as Px);
    expect(Math.abs((2 * found.ellipse.a) / across - 1)).toBeLessThan(0.06);
  });

  it('is sharp and light enough wherever a card is measured by', () => {
    const measured = named.filter((name) => known(name).card);
    expect(measured.flatMap((name) => quality(photo(name)).reasons.map((why) => [name, why]))).toEqual([]);
  });

  it('follows the split of the platter from two taps, and gives its length to a few per cent', () => {
    const name = 'L09-damageClose';
    const img = photo(name);
    const [from, to] = inPixels(known(name).crack, img) as [Px, Px];
    const traced = traceCrack(img, [from, to]);
    const card = findCard(img);
    if (!traced.ok || !card.ok) throw new Error('No split or no card.');
    for (const [x] of traced.path) expect(Math.abs(x - from[0])).toBeLessThan(14);
    const focal = focalPx(known(name).focal35, img);
    const scale = scaleFromCard(card.corners, card.sigmaPx, { photo: img, ...(focal ? { focalPx: focal } : {}) });
    if ('ok' in scale) throw new Error('No scale.');
    // The model's split runs on 79 mm from the collar's foot; its upper face slopes, the card lies on it.
    const { lengthMm } = distanceMm(scale, from, to);
    expect(Math.abs(lengthMm / 79 - 1)).toBeLessThan(0.05);
  });

  it('lays the picture with the spline over the one with the split, by itself', () => {
    const before = photo('L09-damageClose');
    const laid = register(before, photo('L09-after'));
    if (!laid.ok) throw new Error(`Not laid over: ${laid.why}.`);
    // The same camera: every corner of the card stays where it is.
    for (const [x, y] of inPixels(known('L09-after').card, before)) {
      const [h0 = 0, h1 = 0, h2 = 0, h3 = 0, h4 = 0, h5 = 0, h6 = 0, h7 = 0, h8 = 1] = laid.H;
      const w = h6 * x + h7 * y + h8;
      expect(apart([x, y], [(h0 * x + h1 * y + h2) / w, (h3 * x + h4 * y + h5) / w])).toBeLessThan(1);
    }
  });

  it('counts the flight holes that are not behind the card', () => {
    const name = 'L04-damageClose';
    const img = photo(name);
    const card = findCard(img);
    if (!card.ok) throw new Error('No card.');
    const scale = scaleFromCard(card.corners, card.sigmaPx, { photo: img, zMm: -15 });
    if ('ok' in scale) throw new Error('No scale.');
    const holes = inPixels(known(name).holes, img);
    const xs = holes.map(([x]) => x);
    const ys = holes.map(([, y]) => y);
    const [left, right, top, bottom] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
    const edge = 14;
    const found = findHoles(
      img,
      [
        [left - edge, top - edge],
        [right + edge, top - edge],
        [right + edge, bottom + edge],
        [left - edge, bottom + edge],
      ],
      scale,
    );
    if (!Array.isArray(found)) throw new Error('No count.');
    const hit = holes.filter((hole) => found.some(({ x, y }) => apart(hole, [x, y]) < 4)).length;
    const truePart = found.filter(({ x, y }) => holes.some((hole) => apart(hole, [x, y]) < 4)).length;
    expect(hit / holes.length).toBeGreaterThan(0.9);
    expect(truePart / found.length).toBeGreaterThan(0.9);
  });
});
