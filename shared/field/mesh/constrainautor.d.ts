/** The part of @kninnug/constrainautor that the mesher uses. Its own types are a `.ts` file that our stricter settings reject. */
interface Delaunation {
  readonly triangles: Uint32Array | Int32Array;
  readonly halfedges: Uint32Array | Int32Array;
  readonly coords: ArrayLike<number>;
}
declare class Constrainautor {
  constructor(del: Delaunation, edges?: readonly (readonly [number, number])[]);
  constrainOne(segP1: number, segP2: number): number;
  delaunify(deep?: boolean): this;
  isConstrained(edge: number): boolean;
}
export default Constrainautor;
