/**
 * What the solver hands to sampling, tracing and loading: a finite element space on a mesh, scalars on it, and the factorised
 * primal system. A scalar is a polynomial of the space's order on each triangle (nodal values in the order of the reference
 * triangle) and, inside a fan, layers of tensor-product polynomials in (log radius, place on the rim).
 */
import type { Mesh } from '../mesh/mesh.ts';

/** Nodal basis of order p on the triangle with corners (-1,-1), (1,-1), (-1,1) in (r, s). */
export interface ReferenceTriangle {
  readonly order: number;
  /** Number of nodes, (p + 1)(p + 2)/2: three corners, then p - 1 on each edge 0→1, 1→2, 2→0, then the inner ones. */
  readonly count: number;
  readonly r: Float64Array;
  readonly s: Float64Array;
  /** Values of all basis functions at (r, s), written into `into`. */
  basis(r: number, s: number, into: Float64Array): void;
  /** Derivatives by r and by s. */
  gradient(r: number, s: number, intoR: Float64Array, intoS: Float64Array): void;
}

export interface Space {
  readonly mesh: Mesh;
  readonly reference: ReferenceTriangle;
  /** Gauss-Lobatto points of the order on [-1, 1]: the nodes along every edge and rim chord. */
  readonly edgeNodes: Float64Array;
  /** Geometry of each fan's rim: vertices as (x, y) relative to the fan's vertex, chords + 1 of them, from ray 0 to ray 1. */
  readonly rims: readonly Float64Array[];
  /** Layers of a fan are `layerDepth` deep in t = ln(rim radius / radius); each has radial nodes at `radialNodes` in [-1, 1]. */
  readonly layerDepth: number;
  readonly radialNodes: Float64Array;
  /** Layers that a fan holds before its tip counts as one point. */
  readonly layerCount: number;
  /** Node positions of triangle t: curved where a side lies on a circle. Null for a straight triangle. */
  curved(t: number): { readonly x: Float64Array; readonly y: Float64Array } | null;
}

export interface Scalar {
  readonly space: Space;
  /** Nodal values of triangle t. Jumps of a stream function are already in them: values agree along a chain of triangles only up to a constant. */
  triangle(t: number): Float64Array;
  /**
   * Nodal values of layer `layer` of fan `fan`: radial node a (0 = outer rim of the layer) times rim node i (chords × order + 1,
   * from ray 0 to ray 1), at index a × rimNodes + i. Position of node: the fan's vertex plus exp(-t) times the rim point.
   */
  fanLayer(fan: number, layer: number): Float64Array;
}

/** The factorised primal problem: more right-hand sides cost a forward and a backward sweep each. */
export interface PrimalSystem {
  readonly space: Space;
  readonly conductors: number;
  /** σ as (xx, xy, yy), S per square. */
  readonly sigma: readonly [number, number, number];
  newLoad(): Float64Array;
  /** Adds a local load vector (A, one per node) of triangle t. */
  addToTriangle(load: Float64Array, t: number, values: Float64Array): void;
  /** Stiffness of triangle t, row-major, S. */
  stiffness(t: number): Float64Array;
  /** All conductors at 0 V: potential that the load makes in triangle t, and the current that flows into each conductor, A. */
  solveGrounded(
    load: Float64Array,
    t: number,
  ): { readonly nodal: Float64Array; readonly into_A: Float64Array };
  /** Potential for given conductor potentials, V. */
  potential(conductors_V: Float64Array): Scalar;
}
