/**
 * Triangles over the paper, with a small polygon cut out around every singular vertex (a fan). Half-edge 3t + j of triangle t runs
 * from its corner j to corner (j + 1) mod 3; triangles are anticlockwise. The two sides of a slit share vertices but not twins, and are divided
 * each for itself.
 */

/** Tag of a mesh edge on the rim of a fan. Others: conductor number ≥ 0, INSULATING = -1. */
export const FAN_RIM = -3;

export interface Mesh {
  /** Vertex positions, mm. */
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** Vertex numbers, three a triangle. */
  readonly corners: Int32Array;
  /** Opposite half-edge, or -1 on the boundary (slit sides and fan rims included). */
  readonly twins: Int32Array;
  /** Index into `sides` of a boundary half-edge, else -1. */
  readonly side: Int32Array;
  readonly sides: readonly MeshSide[];
  readonly arcs: readonly MeshArc[];
  readonly fans: readonly Fan[];
  /** Steps the refinement took, for tests of bounded work; `complete` false if it gave up at its limits. */
  readonly steps: number;
  readonly complete: boolean;
}

export interface MeshSide {
  readonly tag: number;
  /** Index into `arcs` where the boundary is a circle, else -1. */
  readonly arc: number;
  /** Index into `fans` for a fan rim, else -1. */
  readonly fan: number;
}

export interface MeshArc {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
}

/**
 * A singular vertex. Seen from it the paper fills `angle` (rad, up to 2π) anticlockwise from ray 0 to ray 1. The rim is a chain of
 * chords from ray 0 to ray 1, given by the half-edges on it (in that order, as seen from the triangles outside the fan). Where the boundary
 * is an arc, a straight ray stands in for it; the fan is so small that this changes the energy around the corner by no more than 1e-9.
 */
export interface Fan {
  readonly x: number;
  readonly y: number;
  readonly angle: number;
  /** Unit vectors of the two bounding rays. */
  readonly ray0: readonly [number, number];
  readonly ray1: readonly [number, number];
  /** Conductor number or INSULATING of the boundary along each ray. */
  readonly tag0: number;
  readonly tag1: number;
  readonly rim: readonly number[];
}
