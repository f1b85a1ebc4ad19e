import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { refineCard } from '../../src/pixels/card.ts';
import { findCard } from '../../src/pixels/card-find.ts';
import { traceCrack } from '../../src/pixels/crack-trace.ts';
import { quality } from '../../src/pixels/quality.ts';
import type { Px } from '../../src/pixels/types.ts';
import { readPhoto } from '../support/read-photo.ts';

/*
 * A small subset of the photos with known truth that lie beside the project when it is developed. Their licences keep
 * them out of it. All of them are measured by `node tests/bench/vision.mjs`.
 */
const folder = fileURLToPath(new URL('../../../shared/data/cracks/', import.meta.url));
const here = existsSync(`${folder}real/truth.json`);
if (!here) console.log('Skipped: the photos with known truth do not lie in a folder "shared" beside the project.');

interface RealPhoto {
  readonly id: string;
  readonly file: string;
  readonly paths: readonly { readonly points: readonly Px[]; readonly taps: readonly Px[] }[];
}
interface Rendered {
  readonly id: string;
  readonly file: string;
  readonly card: { readonly corners: readonly Px[]; readonly taps: readonly Px[] } | null;
}
const images = <T>(part: string): readonly T[] =>
  here ? JSON.parse(readFileSync(`${folder}${part}/truth.json`, 'utf8')).images : [];
const apart = (a: Px, b: Px): number => Math.hypot(a[0] - b[0], a[1] - b[1]);
const shareNear = (points: readonly Px[], others: readonly Px[], px: number): number =>
  points.filter((p) => others.some((q) => apart(p, q) <= px)).length / points.length;

describe.skipIf(!here)('photos with known truth', () => {
  it('of real cracks are traced within 3 px of the line a person drew', () => {
    const f1s = images<RealPhoto>('real')
      .slice(0, 5)
      .flatMap(({ file, paths }) => {
        const photo = readPhoto(`${folder}real/${file}`);
        return paths.map(({ points, taps }) => {
          const trace = traceCrack(photo, taps);
          if (!trace.ok) return 0;
          const drawn = points.map(([x, y]): Px => [x + 0.5, y + 0.5]);
          // Drawn points lie one pixel apart, traced ones one to two: a little more than 3 px allows for the gaps.
          const precision = shareNear(trace.path, drawn, 3.2);
          const recall = shareNear(drawn, trace.path, 3.2);
          return precision + recall > 0 ? (2 * precision * recall) / (precision + recall) : 0;
        });
      });
    expect(f1s.length).toBeGreaterThan(5);
    expect(f1s.reduce((s, v) => s + v, 0) / f1s.length).toBeGreaterThan(0.9);
  }, 30_000);

  it('of cards give corners to half a pixel, from taps and without', () => {
    const cards = images<Rendered>('synth').filter((i) => i.card);
    for (const { file, card } of cards.slice(1, 3)) {
      const photo = readPhoto(`${folder}synth/${file}`);
      const truth = card?.corners ?? [];
      for (const fit of [refineCard(photo, card?.taps ?? []), findCard(photo)]) {
        if (!fit.ok) throw new Error(`${file}: ${fit.why}`);
        const off = truth.map((t) => Math.min(...fit.corners.map((c) => apart(c, t))));
        expect(off.reduce((s, v) => s + v, 0) / 4, file).toBeLessThan(0.5);
      }
    }
  }, 30_000);

  it('of boards without a card show none', () => {
    const bare = images<RealPhoto>('real').slice(5, 7);
    for (const { file } of bare) expect(findCard(readPhoto(`${folder}real/${file}`)).ok, file).toBe(false);
  }, 30_000);

  it('that are out of focus are told from sharp ones', () => {
    const photos = images<{ file: string; kind: string }>('blur');
    const of = (kind: string) => photos.filter((p) => p.kind === kind).slice(0, 1);
    for (const { file } of of('ok')) expect(quality(readPhoto(`${folder}blur/${file}`)).verdict, file).toBe('ok');
    for (const { file } of of('defocus'))
      expect(quality(readPhoto(`${folder}blur/${file}`)).reasons, file).toContain('soft');
  }, 30_000);
});
