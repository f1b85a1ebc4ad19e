/**
 * Error function, right to about 1e-15 over the whole line: power series near zero, continued fraction further out.
 * @param x any number
 * @throws RangeError for NaN
 * SOURCE: textbook series, and Lentz's method for the continued fraction of erfc (from memory); held against the C library in the tests.
 */
export function erf(x: number): number {
  if (Number.isNaN(x)) throw new RangeError(`x: got ${x}, expected a number.`);
  const size = Math.abs(x);
  const value = size < 2.5 ? series(size) : size > 6 ? 1 : 1 - complement(size);
  return x < 0 ? -value : value;
}

/** 2/√π · Σ 2ⁿ x^(2n+1) e^(−x²) / (2n+1)!! : every term positive, so nothing cancels. */
function series(x: number): number {
  let term = x;
  let sum = x;
  for (let n = 1; term > sum * 1e-17; n++) {
    term *= (2 * x * x) / (2 * n + 1);
    sum += term;
  }
  return (2 / Math.sqrt(Math.PI)) * Math.exp(-x * x) * sum;
}

/** erfc(x) = e^(−x²)/√π · 1/(x + (1/2)/(x + 1/(x + (3/2)/(x + …)))), worked from the inside out. */
function complement(x: number): number {
  let fraction = x;
  for (let k = 60; k >= 1; k--) fraction = x + k / 2 / fraction;
  return Math.exp(-x * x) / Math.sqrt(Math.PI) / fraction;
}
