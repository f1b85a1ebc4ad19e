import { betaLogit, betaTails } from './incomplete-beta.ts';

/** @throws when a probability is outside 0 to 1 */
function checkProbability(p: number): void {
  if (!(p >= 0 && p <= 1)) throw new Error(`Probability came as ${p}, expected 0 to 1.`);
}

const SQRT_2PI = Math.sqrt(2 * Math.PI);

/** Chance of a standard normal below z, to 1e−13 relative in either tail. Series near the middle, continued fraction outside. */
export function normalCdf(z: number): number {
  const density = Math.exp((-z * z) / 2) / SQRT_2PI;
  if (Math.abs(z) < 2) {
    // Φ(z) − ½ = φ(z)·(z + z³/3 + z⁵/15 + …): every term has the same sign, so nothing cancels.
    let term = z;
    let sum = z;
    for (let odd = 3; Math.abs(term) > 1e-17 * Math.abs(sum); odd += 2) {
      term *= (z * z) / odd;
      sum += term;
    }
    return 0.5 + density * sum;
  }
  // Mills' ratio 1/(z + 1/(z + 2/(z + …))), from the far end inwards; at |z| = 2 it needs some 150 terms.
  const far = Math.abs(z);
  let tail = far;
  for (let n = Math.ceil(40 + 500 / (far * far)); n >= 1; n--) tail = far + n / tail;
  const outside = density / tail;
  return z < 0 ? outside : 1 - outside;
}

/** Σ cᵢ·xⁱ, coefficients from the constant up. */
const polynomial = (x: number, coefficients: readonly number[]): number =>
  coefficients.reduceRight((sum, coefficient) => sum * x + coefficient, 0);

/** Wichura's rational approximations to the normal quantile: numerator and denominator for middle, shoulder, far tail. */
const MIDDLE = [
  [
    3.3871328727963665, 133.14166789178438, 1971.5909503065513, 13731.69376550946, 45921.95393154987, 67265.7709270087,
    33430.57558358813, 2509.0809287301227,
  ],
  [
    1, 42.31333070160091, 687.1870074920579, 5394.196021424751, 21213.794301586597, 39307.89580009271,
    28729.085735721943, 5226.495278852854,
  ],
] as const;
const SHOULDER = [
  [
    1.4234371107496835, 4.630337846156546, 5.769497221460691, 3.6478483247632045, 1.2704582524523684,
    0.2417807251774506, 0.022723844989269184, 0.0007745450142783414,
  ],
  [
    1, 2.053191626637759, 1.6763848301838038, 0.6897673349851, 0.14810397642748008, 0.015198666563616457,
    0.0005475938084995345, 1.0507500716444169e-9,
  ],
] as const;
const FAR = [
  [
    6.657904643501103, 5.463784911164114, 1.7848265399172913, 0.29656057182850487, 0.026532189526576124,
    0.0012426609473880784, 2.7115555687434876e-5, 2.0103343992922881e-7,
  ],
  [
    1, 0.599832206555888, 0.1369298809227358, 0.014875361290850615, 0.0007868691311456133, 1.8463183175100548e-5,
    1.421511758316446e-7, 2.0442631033899397e-15,
  ],
] as const;
const rational = (x: number, [top, bottom]: readonly [readonly number[], readonly number[]]): number =>
  polynomial(x, top) / polynomial(x, bottom);

/**
 * The z below which a standard normal falls with chance p, to 1e−15 relative.
 * Source: Wichura 1988, algorithm AS 241 (its published coefficients).
 * @returns −Infinity at 0, Infinity at 1
 * @throws when p is outside 0 to 1
 */
export function normalQuantile(p: number): number {
  checkProbability(p);
  if (p === 0 || p === 1) return p === 0 ? -Infinity : Infinity;
  const q = p - 0.5;
  if (Math.abs(q) <= 0.425) return q * rational(0.180625 - q * q, MIDDLE);
  const r = Math.sqrt(-Math.log(Math.min(p, 1 - p)));
  return Math.sign(q) * (r <= 5 ? rational(r - 1.6, SHOULDER) : rational(r - 5, FAR));
}

function checkShapes(a: number, b: number): void {
  if (!(a > 0 && b > 0 && Number.isFinite(a + b))) throw new Error(`Beta shapes came as ${a}, ${b}, expected above 0.`);
}

/** Chance of a beta variable at or below x: the regularised incomplete beta function, to 1e−13. */
export function betaCdf(x: number, a: number, b: number): number {
  checkShapes(a, b);
  return Math.exp(betaTails(a, b, x, 1 - x).logBelow);
}

/** The x below which a beta variable falls with chance p; inverse of `betaCdf`. */
export function betaQuantile(p: number, a: number, b: number): number {
  checkShapes(a, b);
  checkProbability(p);
  if (p === 0 || p === 1) return p;
  return 1 / (1 + Math.exp(-betaLogit(p, 1 - p, a, b)));
}

function checkFreedom(df: number): void {
  if (!(df > 0)) throw new Error(`Degrees of freedom came as ${df}, expected above 0.`);
}

/** Above so many degrees of freedom t is the normal with its first correction, to 1e−14. */
const NEARLY_NORMAL = 1e7;

/** Chance of Student's t at or below `t`. */
export function studentTCdf(t: number, df: number): number {
  checkFreedom(df);
  if (df > NEARLY_NORMAL) return normalCdf(t - (t ** 3 + t) / (4 * df));
  const square = t * t;
  const { logBelow } = betaTails(df / 2, 0.5, df / (df + square), square / (df + square));
  const outside = Math.exp(logBelow) / 2;
  return t < 0 ? outside : 1 - outside;
}

/** The t below which Student's t falls with chance p; `df` need not be whole. */
export function studentTQuantile(p: number, df: number): number {
  checkFreedom(df);
  checkProbability(p);
  if (p === 0.5) return 0;
  if (p === 0 || p === 1) return p === 0 ? -Infinity : Infinity;
  if (df > NEARLY_NORMAL) {
    const z = normalQuantile(p);
    return z + (z ** 3 + z) / (4 * df);
  }
  const outside = 2 * Math.min(p, 1 - p);
  // df/(df + t²) is Beta(df/2, ½), and its logit is ln(df/t²).
  return Math.sign(p - 0.5) * Math.sqrt(df * Math.exp(-betaLogit(outside, 1 - outside, df / 2, 0.5)));
}

/** Chance of k or fewer successes in n trials of chance p. */
export function binomialCdf(k: number, n: number, p: number): number {
  checkProbability(p);
  if (!(Number.isInteger(n) && n >= 0)) throw new Error(`Trials came as ${n}, expected a whole number.`);
  const whole = Math.floor(k);
  if (whole < 0) return 0;
  return whole >= n ? 1 : betaCdf(1 - p, n - whole, whole + 1);
}
