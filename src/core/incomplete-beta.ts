/*
 * The regularised incomplete beta function and its inverse, from which beta, Student's t and the binomial follow.
 * Textbook mathematics (gamma's asymptotic series, Lentz's continued fraction); checked in the tests against a
 * published numerical library to 1e−9 and better.
 */

const HALF_LOG_2PI = 0.5 * Math.log(2 * Math.PI);

/** lnΓ(x) − [(x − ½)·ln x − x + ½·ln 2π] for x ≥ 10, to 1e−15: the asymptotic series in 1/x. */
function stirlingRest(x: number): number {
  const y = 1 / (x * x);
  return (1 / 12 - y * (1 / 360 - y * (1 / 1260 - y * (1 / 1680 - y * (1 / 1188 - (y * 691) / 360360))))) / x;
}

/** ln Γ(x) for x > 0. */
export function logGamma(x: number): number {
  let lifted = x;
  let product = 1;
  while (lifted < 10) product *= lifted++;
  return (lifted - 0.5) * Math.log(lifted) - lifted + HALF_LOG_2PI + stirlingRest(lifted) - Math.log(product);
}

/** ln B(a, b), arranged so that large arguments do not cancel. */
export function logBeta(a: number, b: number): number {
  const [small, large] = a <= b ? [a, b] : [b, a];
  if (large < 10) return logGamma(small) + logGamma(large) - logGamma(small + large);
  const sum = small + large;
  if (small < 10) {
    const ratio = stirlingRest(large) - stirlingRest(sum) - (sum - 0.5) * Math.log1p(small / large) + small;
    return logGamma(small) + ratio - small * Math.log(large);
  }
  const rest = stirlingRest(small) + stirlingRest(large) - stirlingRest(sum);
  const share = small / large;
  return (
    HALF_LOG_2PI -
    0.5 * Math.log(large) +
    rest +
    (small - 0.5) * Math.log(share / (1 + share)) -
    large * Math.log1p(share)
  );
}

/** The continued fraction of the incomplete beta at x, by Lentz's method; converges fast for x below (a + 1)/(a + b + 2). */
function continuedFraction(a: number, b: number, x: number): number {
  const guard = (value: number): number => (Math.abs(value) < 1e-300 ? 1e-300 : value);
  let c = 1;
  let d = 1 / guard(1 - ((a + b) * x) / (a + 1));
  let fraction = d;
  for (let m = 1; m <= 100_000; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / guard(1 + even * d);
    c = guard(1 + even / c);
    fraction *= d * c;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / guard(1 + odd * d);
    c = guard(1 + odd / c);
    fraction *= d * c;
    if (Math.abs(d * c - 1) < 1e-16) break;
  }
  return fraction;
}

/** Both tails of a beta distribution, in logarithms so that neither underflows, and the slope of the lower one. */
export interface BetaTails {
  readonly logBelow: number;
  readonly logAbove: number;
  /** ln of xᵃ(1 − x)ᵇ/B(a, b): the lower tail's slope against ln(x/(1 − x)). */
  readonly logSlope: number;
}

/** A point from 0 to 1, with its distance from 1 and the logarithms of both, so that neither end loses digits. */
interface Place {
  readonly x: number;
  readonly y: number;
  readonly logX: number;
  readonly logY: number;
}

function tailsAt(a: number, b: number, { x, y, logX, logY }: Place, logB: number): BetaTails {
  const logSlope = a * logX + b * logY - logB;
  if (x < (a + 1) / (a + b + 2)) {
    const logBelow = logSlope + Math.log(continuedFraction(a, b, x) / a);
    return { logBelow, logAbove: Math.log1p(-Math.min(1, Math.exp(logBelow))), logSlope };
  }
  const logAbove = logSlope + Math.log(continuedFraction(b, a, y) / b);
  return { logBelow: Math.log1p(-Math.min(1, Math.exp(logAbove))), logAbove, logSlope };
}

/** @param x,y the point and 1 minus it, given apart because near 1 the difference would lose digits */
export function betaTails(a: number, b: number, x: number, y: number): BetaTails {
  if (x <= 0) return { logBelow: -Infinity, logAbove: 0, logSlope: -Infinity };
  if (y <= 0) return { logBelow: 0, logAbove: -Infinity, logSlope: -Infinity };
  const logX = x < 0.5 ? Math.log(x) : Math.log1p(-y);
  const logY = y < 0.5 ? Math.log(y) : Math.log1p(-x);
  return tailsAt(a, b, { x, y, logX, logY }, logBeta(a, b));
}

/** The point whose ln(x/(1 − x)) is u; its logarithms stay right where the point itself is too small to write. */
function placeAt(u: number): Place {
  const rest = Math.log1p(Math.exp(-Math.abs(u)));
  return {
    x: 1 / (1 + Math.exp(-u)),
    y: 1 / (1 + Math.exp(u)),
    logX: Math.min(u, 0) - rest,
    logY: Math.min(-u, 0) - rest,
  };
}

/**
 * Where a beta distribution has `below` of its mass below and `above` of it above, as ln(x/(1 − x)): both ends in full
 * precision. Newton's steps on the logarithm of the lighter tail, which is concave in this coordinate: from anywhere they
 * land on the near side of the answer and then close in without overshooting, so no bracket is needed.
 * @param below,above both in (0, 1), adding up to 1
 */
export function betaLogit(below: number, above: number, a: number, b: number): number {
  const logB = logBeta(a, b);
  const lower = below <= above;
  const target = Math.log(lower ? below : above);
  let u = Math.log(a / b);
  for (let step = 0; step < 100; step++) {
    const { logBelow, logAbove, logSlope } = tailsAt(a, b, placeAt(u), logB);
    const logTail = lower ? logBelow : logAbove;
    const move = (target - logTail) * Math.exp(logTail - logSlope) * (lower ? 1 : -1);
    u += move;
    if (Math.abs(move) <= 1e-15 * Math.max(1, Math.abs(u))) break;
  }
  return u;
}
