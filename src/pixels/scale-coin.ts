import type { Ellipse } from './ellipse.ts';
import { USUAL_FOCAL } from './plane-pose.ts';
import { apart, type Scale, tapSigmaMm } from './scale.ts';
import type { Mm, Px } from './types.ts';

/**
 * Standard error of a coin's diameter in a photo, as a share: rims are rounded and throw shadows. Measured: 1.2 %
 * median error.
 */
const RIM_SIGMA = 0.014;

/** Axes nearer than this are taken for a coin seen square on: their ratio is only good to about 1 %. */
const ROUND = 1.02;

/**
 * Rough millimetres from one coin. Shrinking along the tilt is undone; the perspective beyond the coin is not known
 * (a coin does not show which side is nearer) and so is counted as error, growing with the distance from the coin.
 * @param photo size of the photo, for the usual focal length; more exact with `focalPx`
 * Source: orthographic ellipse of a tilted circle; perspective as sin(tilt)·offset / camera distance.
 */
export function scaleFromCoin(
  ellipse: Ellipse,
  diameterMm: number,
  photo: { readonly width: number; readonly height: number },
  focalPx = USUAL_FOCAL * Math.max(photo.width, photo.height),
): Scale {
  const { cx, cy, a, theta } = ellipse;
  const tilted = a / ellipse.b > ROUND;
  const round = Math.sqrt(a * ellipse.b);
  const perA = diameterMm / (2 * (tilted ? a : round));
  const perB = diameterMm / (2 * (tilted ? ellipse.b : round));
  const c = Math.cos(theta);
  const s = Math.sin(theta);
  const toMm = (p: Px): Mm => [((p[0] - cx) * c + (p[1] - cy) * s) * perA, (-(p[0] - cx) * s + (p[1] - cy) * c) * perB];
  const cosTilt = tilted ? ellipse.b / a : 1;
  // An unseen tilt of up to 11° is as likely as none.
  const sinTilt = Math.max(Math.sqrt(1 - cosTilt * cosTilt), 0.1);
  const cameraMm = focalPx * perA;
  const sigmaMm = (p: Px, q: Px): number => {
    const u = toMm(p);
    const v = toMm(q);
    const length = apart(u, v);
    // A length lying `away` along the tilt is enlarged by sin·away/distance; across the tilt twice that much.
    const away = Math.abs(u[1] + v[1]) / 2 + apart(u, v) / 4;
    const perspective = (1.5 * sinTilt * away) / cameraMm;
    return Math.hypot(tapSigmaMm(toMm, p, q), length * Math.hypot(RIM_SIGMA, perspective));
  };
  return { toMm, sigmaMm, source: 'coin', zMm: 0, tiltDeg: (Math.acos(cosTilt) * 180) / Math.PI };
}
