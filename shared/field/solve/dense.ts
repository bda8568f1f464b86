/** Dense kernels on row-major matrices: partial Cholesky factorisation, triangular solves, inverse. */
// Indices are bounded by construction throughout, hence `a[i]!`.

/** Columns factored before the rest of the matrix is touched: a panel of this width stays in the fastest cache. */
const PANEL = 32;

/**
 * Eliminates the first k unknowns of the symmetric n × n matrix that starts at `at`; only its lower triangle is read and written.
 *   [ A11  ·  ]     [ L11  ·             ]     A11 = L11 L11ᵀ,   L21 = A21 L11⁻ᵀ,
 *   [ A21 A22 ]  →  [ L21  A22 - L21 L21ᵀ ]
 * False if a pivot is not positive: the matrix is not positive definite (or holds a NaN).
 */
export function partialCholesky(a: Float64Array, at: number, n: number, k: number): boolean {
  for (let from = 0; from < k; from += PANEL) {
    const to = Math.min(k, from + PANEL);
    if (!factorPanel(a, at, n, from, to)) return false;
    subtractPanel(a, at, n, from, to);
  }
  return true;
}

/** Columns from … to - 1, all rows below: l_jj = √(a_jj - Σ l_jm²), l_ij = (a_ij - Σ l_im l_jm)/l_jj; four rows at a time. */
function factorPanel(a: Float64Array, at: number, n: number, from: number, to: number): boolean {
  for (let j = from; j < to; j++) {
    const rj = at + j * n;
    let square = a[rj + j]!;
    for (let m = from; m < j; m++) square -= a[rj + m]! * a[rj + m]!;
    if (!(square > 0)) return false;
    const pivot = Math.sqrt(square);
    const scale = 1 / pivot;
    a[rj + j] = pivot;
    let i = j + 1;
    for (; i + 3 < n; i += 4) {
      const r0 = at + i * n;
      const r1 = r0 + n;
      const r2 = r1 + n;
      const r3 = r2 + n;
      let s0 = a[r0 + j]!;
      let s1 = a[r1 + j]!;
      let s2 = a[r2 + j]!;
      let s3 = a[r3 + j]!;
      for (let m = from; m < j; m++) {
        const l = a[rj + m]!;
        s0 -= a[r0 + m]! * l;
        s1 -= a[r1 + m]! * l;
        s2 -= a[r2 + m]! * l;
        s3 -= a[r3 + m]! * l;
      }
      a[r0 + j] = s0 * scale;
      a[r1 + j] = s1 * scale;
      a[r2 + j] = s2 * scale;
      a[r3 + j] = s3 * scale;
    }
    for (; i < n; i++) {
      const ri = at + i * n;
      let s = a[ri + j]!;
      for (let m = from; m < j; m++) s -= a[ri + m]! * a[rj + m]!;
      a[ri + j] = s * scale;
    }
  }
  return true;
}

/** Lower triangle right of the panel: a_ij -= Σ_m l_im l_jm, m over the panel, in tiles of 3 × 3 (six loads for nine products). */
function subtractPanel(a: Float64Array, at: number, n: number, from: number, to: number): void {
  let i = to;
  for (; i + 2 < n; i += 3) {
    const r0 = at + i * n;
    const r1 = r0 + n;
    const r2 = r1 + n;
    let j = to;
    for (; j < i; j += 3) {
      const q0 = at + j * n;
      const q1 = q0 + n;
      const q2 = q1 + n;
      let s00 = 0;
      let s01 = 0;
      let s02 = 0;
      let s10 = 0;
      let s11 = 0;
      let s12 = 0;
      let s20 = 0;
      let s21 = 0;
      let s22 = 0;
      for (let m = from; m < to; m++) {
        const b0 = a[q0 + m]!;
        const b1 = a[q1 + m]!;
        const b2 = a[q2 + m]!;
        const a0 = a[r0 + m]!;
        const a1 = a[r1 + m]!;
        const a2 = a[r2 + m]!;
        s00 += a0 * b0;
        s01 += a0 * b1;
        s02 += a0 * b2;
        s10 += a1 * b0;
        s11 += a1 * b1;
        s12 += a1 * b2;
        s20 += a2 * b0;
        s21 += a2 * b1;
        s22 += a2 * b2;
      }
      a[r0 + j]! -= s00;
      a[r0 + j + 1]! -= s01;
      a[r0 + j + 2]! -= s02;
      a[r1 + j]! -= s10;
      a[r1 + j + 1]! -= s11;
      a[r1 + j + 2]! -= s12;
      a[r2 + j]! -= s20;
      a[r2 + j + 1]! -= s21;
      a[r2 + j + 2]! -= s22;
    }
    subtractSingly(a, at, n, { from, to, firstRow: i, lastRow: i + 3, firstColumn: j });
  }
  subtractSingly(a, at, n, { from, to, firstRow: i, lastRow: n, firstColumn: to });
}

interface Corner {
  readonly from: number;
  readonly to: number;
  readonly firstRow: number;
  readonly lastRow: number;
  readonly firstColumn: number;
}

/** The entries beside the diagonal that no whole tile covers. */
function subtractSingly(a: Float64Array, at: number, n: number, corner: Corner): void {
  const { from, to, firstRow, lastRow, firstColumn } = corner;
  for (let i = firstRow; i < lastRow; i++) {
    const ri = at + i * n;
    for (let j = firstColumn; j <= i; j++) {
      const rj = at + j * n;
      let s = 0;
      for (let m = from; m < to; m++) s += a[ri + m]! * a[rj + m]!;
      a[ri + j]! -= s;
    }
  }
}

/** Solves L x = b in place for one right-hand side; L is the lower triangle of an n × n matrix. */
export function solveLower(l: Float64Array, n: number, b: Float64Array): void {
  for (let i = 0; i < n; i++) {
    let s = b[i]!;
    for (let j = 0; j < i; j++) s -= l[i * n + j]! * b[j]!;
    b[i] = s / l[i * n + i]!;
  }
}

/** Solves Lᵀ x = b in place, L as the leading m × m lower triangle of a matrix with rows of length n. */
export function solveUpper(l: Float64Array, n: number, b: Float64Array, m: number = n): void {
  for (let i = m - 1; i >= 0; i--) {
    const x = b[i]! / l[i * n + i]!;
    b[i] = x;
    for (let j = 0; j < i; j++) b[j]! -= l[i * n + j]! * x;
  }
}

/** Copies the lower triangle up and sets the diagonal so that every row sums to zero. */
export function completeSymmetric(matrix: Float64Array, n: number): void {
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < i; j++) matrix[j * n + i] = matrix[i * n + j]!;
  }
  for (let i = 0; i < n; i++) {
    let sum = 0;
    for (let j = 0; j < n; j++) sum += j === i ? 0 : matrix[i * n + j]!;
    matrix[i * n + i] = -sum;
  }
}

/** Inverse of an n × n matrix by Gauss-Jordan elimination with row exchange; for small, well-conditioned matrices. */
export function inverse(matrix: Float64Array, n: number): Float64Array {
  const a = Float64Array.from(matrix);
  const result = new Float64Array(n * n);
  for (let i = 0; i < n; i++) result[i * n + i] = 1;
  for (let c = 0; c < n; c++) {
    let pivot = c;
    for (let i = c + 1; i < n; i++) {
      if (Math.abs(a[i * n + c]!) > Math.abs(a[pivot * n + c]!)) pivot = i;
    }
    swapRows(a, n, c, pivot);
    swapRows(result, n, c, pivot);
    const scale = 1 / a[c * n + c]!;
    for (let j = 0; j < n; j++) {
      a[c * n + j]! *= scale;
      result[c * n + j]! *= scale;
    }
    for (let i = 0; i < n; i++) {
      const factor = a[i * n + c]!;
      if (i === c || factor === 0) continue;
      for (let j = 0; j < n; j++) {
        a[i * n + j]! -= factor * a[c * n + j]!;
        result[i * n + j]! -= factor * result[c * n + j]!;
      }
    }
  }
  return result;
}

function swapRows(a: Float64Array, n: number, i: number, k: number): void {
  if (i === k) return;
  for (let j = 0; j < n; j++) {
    const kept = a[i * n + j]!;
    a[i * n + j] = a[k * n + j]!;
    a[k * n + j] = kept;
  }
}
