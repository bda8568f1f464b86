/** Small dense systems of linear equations, by elimination with partial pivoting. */

// Indices are bounded by construction: rows and columns run from 0 to size - 1.

export interface Factors {
  readonly size: number;
  /** L below the diagonal, U on and above it, row-major, rows in pivoted order. */
  readonly entries: Float64Array;
  readonly order: Int32Array;
  /** False where a pivot is zero: the system has no single solution. */
  readonly regular: boolean;
}

/** PA = LU of a row-major matrix. */
export function factorise(matrix: Float64Array, size: number): Factors {
  const a = Float64Array.from(matrix);
  const order = Int32Array.from({ length: size }, (_, i) => i);
  let regular = true;
  for (let k = 0; k < size; k++) {
    let pivot = k;
    for (let i = k + 1; i < size; i++) {
      if (Math.abs(a[i * size + k]!) > Math.abs(a[pivot * size + k]!)) pivot = i;
    }
    if (a[pivot * size + k] === 0) {
      regular = false;
      continue;
    }
    if (pivot !== k) swapRows(a, order, size, k, pivot);
    for (let i = k + 1; i < size; i++) {
      const factor = a[i * size + k]! / a[k * size + k]!;
      a[i * size + k] = factor;
      for (let j = k + 1; j < size; j++) a[i * size + j]! -= factor * a[k * size + j]!;
    }
  }
  return { size, entries: a, order, regular };
}

export function solveWith({ size, entries, order }: Factors, right: Float64Array): Float64Array {
  const x = new Float64Array(size);
  for (let i = 0; i < size; i++) {
    let sum = right[order[i]!]!;
    for (let j = 0; j < i; j++) sum -= entries[i * size + j]! * x[j]!;
    x[i] = sum;
  }
  for (let i = size - 1; i >= 0; i--) {
    let sum = x[i]!;
    for (let j = i + 1; j < size; j++) sum -= entries[i * size + j]! * x[j]!;
    x[i] = sum / entries[i * size + i]!;
  }
  return x;
}

/** Product of a row-major square matrix with a vector. */
export function multiply(matrix: Float64Array, vector: Float64Array): Float64Array {
  const size = vector.length;
  const product = new Float64Array(size);
  for (let i = 0; i < size; i++) {
    let sum = 0;
    for (let j = 0; j < size; j++) sum += matrix[i * size + j]! * vector[j]!;
    product[i] = sum;
  }
  return product;
}

function swapRows(a: Float64Array, order: Int32Array, size: number, i: number, j: number): void {
  for (let k = 0; k < size; k++) {
    const kept = a[i * size + k]!;
    a[i * size + k] = a[j * size + k]!;
    a[j * size + k] = kept;
  }
  const kept = order[i]!;
  order[i] = order[j]!;
  order[j] = kept;
}
