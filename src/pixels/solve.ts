/**
 * Solves A·x = b by elimination with partial pivoting; A is n×n, row by row.
 * @returns x, or undefined when the rows do not determine it
 */
export function solve(a: readonly (readonly number[])[], b: readonly number[]): number[] | undefined {
  const n = b.length;
  const m = a.map((row, i) => [...row, b[i] as number]);
  for (let c = 0; c < n; c++) {
    let pivot = c;
    const size = (r: number): number => Math.abs((m[r] as number[])[c] as number);
    for (let r = c + 1; r < n; r++) if (size(r) > size(pivot)) pivot = r;
    const top = m[pivot] as number[];
    m[pivot] = m[c] as number[];
    m[c] = top;
    if (!(Math.abs(top[c] as number) > 1e-12)) return undefined;
    for (let r = c + 1; r < n; r++) {
      const row = m[r] as number[];
      const f = (row[c] as number) / (top[c] as number);
      if (f !== 0) for (let k = c; k <= n; k++) row[k] = (row[k] as number) - f * (top[k] as number);
    }
  }
  const x = new Array<number>(n).fill(0);
  for (let r = n - 1; r >= 0; r--) {
    const row = m[r] as number[];
    let s = row[n] as number;
    for (let k = r + 1; k < n; k++) s -= (row[k] as number) * (x[k] as number);
    x[r] = s / (row[r] as number);
  }
  return x;
}

/** Gathers weighted equations row·x = value and solves them in the least-squares sense (normal equations). */
export class LeastSquares {
  private readonly a: number[][];
  private readonly b: number[];
  constructor(private readonly n: number) {
    this.a = Array.from({ length: n }, () => new Array<number>(n).fill(0));
    this.b = new Array<number>(n).fill(0);
  }

  add(row: readonly number[], value: number, weight = 1): void {
    for (let i = 0; i < this.n; i++) {
      const w = weight * (row[i] as number);
      if (w === 0) continue;
      const line = this.a[i] as number[];
      for (let j = 0; j < this.n; j++) line[j] = (line[j] as number) + w * (row[j] as number);
      this.b[i] = (this.b[i] as number) + w * value;
    }
  }

  solve(): number[] | undefined {
    return solve(this.a, this.b);
  }
}
