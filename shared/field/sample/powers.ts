/** Nodal values to power series: on a triangle, on a chord of a fan's layer (u inwards, v along the chord), on the chord alone. */
// Indices are bounded by construction throughout, hence `a[i]!`.
import { inverse } from '../solve/dense.ts';
import type { Space } from '../solve/discrete.ts';

/** From nodal values to coefficients of u^i v^j, stored j by j. */
export interface Transforms {
  ofTriangle(values: Float64Array): Float64Array;
  ofLayer(values: Float64Array): Float64Array;
  ofChord(values: Float64Array): Float64Array;
}

const kept = new WeakMap<Space, Transforms>();

export function transformsOf(space: Space): Transforms {
  let transforms = kept.get(space);
  if (transforms === undefined) {
    transforms = makeTransforms(space);
    kept.set(space, transforms);
  }
  return transforms;
}

function makeTransforms(space: Space): Transforms {
  const { order, count, r, s } = space.reference;
  const vandermonde = new Float64Array(count * count);
  for (let k = 0; k < count; k++) {
    let at = k * count;
    for (let j = 0; j <= order; j++) {
      for (let i = 0; i + j <= order; i++) vandermonde[at++] = power(r[k]!, i) * power(s[k]!, j);
    }
  }
  const triangle = inverse(vandermonde, count);
  const chord = powersInverse(space.edgeNodes);
  const radial = powersInverse(space.radialNodes);
  const along = space.edgeNodes.length;
  const across = space.radialNodes.length;
  const ofLayer = (values: Float64Array): Float64Array => {
    const rows = new Float64Array(along * across);
    for (let a = 0; a < across; a++) {
      const row = product(chord, values.subarray(a * along, (a + 1) * along));
      for (let j = 0; j < along; j++) rows[j * across + a] = row[j]!;
    }
    for (let j = 0; j < along; j++) {
      rows.set(product(radial, rows.subarray(j * across, (j + 1) * across)), j * across);
    }
    return rows;
  };
  return {
    ofTriangle: (values) => product(triangle, values),
    ofLayer,
    ofChord: (values) => product(chord, values),
  };
}

/** Inverse of the Vandermonde matrix of nodes on a line. */
function powersInverse(nodes: Float64Array): Float64Array {
  const n = nodes.length;
  const powers = new Float64Array(n * n);
  for (let k = 0; k < n; k++) {
    for (let i = 0; i < n; i++) powers[k * n + i] = power(nodes[k]!, i);
  }
  return inverse(powers, n);
}

function product(matrix: Float64Array, vector: Float64Array): Float64Array {
  const n = vector.length;
  const result = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    let sum = 0;
    for (let j = 0; j < n; j++) sum += matrix[i * n + j]! * vector[j]!;
    result[i] = sum;
  }
  return result;
}

/** By multiplication: the same bits everywhere. */
function power(x: number, n: number): number {
  let result = 1;
  for (let i = 0; i < n; i++) result *= x;
  return result;
}
