/** Dense kernels on row-major matrices: partial Cholesky, triangular solves, inverse. */
// Indices are bounded by construction throughout, hence `a[i]!`.

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
      a[c * n + j] = a[c * n + j]! * scale;
      result[c * n + j] = result[c * n + j]! * scale;
    }
    for (let i = 0; i < n; i++) {
      const factor = a[i * n + c]!;
      if (i === c || factor === 0) continue;
      for (let j = 0; j < n; j++) {
        a[i * n + j] = a[i * n + j]! - factor * a[c * n + j]!;
        result[i * n + j] = result[i * n + j]! - factor * result[c * n + j]!;
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
