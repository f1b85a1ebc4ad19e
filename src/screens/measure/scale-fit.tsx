import { middleOf, type Spot, toPixel, toSpot } from '../../core/mark-geometry.ts';
import type { PhotoScale } from '../../core/records.ts';
import { plusMinus, refusal } from '../../text/measured.ts';
import { useApp } from '../../ui/app.ts';
import { type Desk, type Drawn, pageScale, straightLength } from './desk.ts';
import css from './measure.module.css';
import { Figure } from './panel-parts.tsx';
import { referenceWords } from './references.ts';

/** Where the edges of a reference were found. */
export type Fit = Pick<PhotoScale, 'corners' | 'rim' | 'sigmaOfWidth'>;

/** The fitted edge as it will count; until then the points in their order. */
export function fitDrawn(fit: Fit | null, taps: readonly Spot[], wanted: number, aspect: number): Drawn[] {
  if (fit?.rim) {
    return [{ key: 'fit', shape: 'region', look: 'chosen', points: rimPoints(fit.rim, aspect) }];
  }
  if (fit) {
    const points = fit.corners as readonly Spot[];
    return [{ key: 'fit', shape: points.length === 2 ? 'line' : 'region', points, look: 'chosen' }];
  }
  if (taps.length < 2) return [];
  return [{ key: 'taps', shape: taps.length === wanted && wanted > 2 ? 'region' : 'polyline', points: taps }];
}

/** A coin's rim as an outline; its half axes are shares of the width, so what goes down is stretched by the aspect. */
function rimPoints({ centre, a, b, angle }: NonNullable<Fit['rim']>, aspect: number): Spot[] {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  return Array.from({ length: 48 }, (_, i) => {
    const t = (2 * Math.PI * i) / 48;
    const [x, y] = [a * Math.cos(t), b * Math.sin(t)];
    return [centre[0] + x * c - y * s, centre[1] + (x * s + y * c) * aspect] as const;
  });
}

/** What the scale makes of 50 mm beside the reference, and how far to trust it. */
export function ScaleDoubt({ desk, draft }: { readonly desk: Desk; readonly draft: PhotoScale }) {
  const { catalogue } = useApp();
  const { size, photo } = desk;
  const scale = pageScale({ scale: draft, focal35: photo.focal35 }, size);
  if (!scale) {
    return (
      <p class={css.refused} role="alert">
        {refusal('no-scale')}
      </p>
    );
  }
  const middle = draft.rim ? (draft.rim.centre as Spot) : middleOf(draft.corners as readonly Spot[]);
  const [x, y] = toPixel(middle, size);
  const probe = straightLength({ scale, size }, middle, toSpot([x + 20, y], size));
  if (!probe) return null;
  const fifty = straightLength({ scale, size }, middle, toSpot([x + (20 * 50) / probe.mm, y], size));
  const tilt = scale.tiltDeg ?? 0;
  return (
    <dl class={css.figures}>
      <Figure
        label="50 mm beside it reads"
        value={plusMinus(50, fifty?.sigmaMm ?? null, 'mm')}
        by={[
          `by ${referenceWords(draft, catalogue)}`,
          tilt > 3 && `seen ${Math.round(tilt)}° off square`,
          draft.kind === 'coin' && 'farther than two coins away it is a guess',
          draft.kind === 'twoPoints' && 'true only where the camera looked square at it',
        ]
          .filter(Boolean)
          .join('; ')}
      />
    </dl>
  );
}
