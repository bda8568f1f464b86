/**
 * Who neighbours whom: vertices and edges of the mesh as the unknowns see them (two sides of a slit are two), elements (triangles,
 * then fans), pieces of paper and loops of boundary. Independent of the order and of the conditions.
 */
// Indices are bounded by construction throughout, hence `a[i]!`.
import { FAN_RIM, type Mesh } from '../mesh/mesh.ts';
import { INSULATING } from '../problem.ts';
import { UnionFind } from './union-find.ts';

export interface Topology {
  readonly mesh: Mesh;
  readonly triangles: number;
  /** Triangles and fans; fan f is element triangles + f. */
  readonly elements: number;
  /** Vertices and edges are numbered together ("entities"): vertices first, then edges. */
  readonly vertices: number;
  readonly entities: number;
  /** Vertex at the start of each half-edge. */
  readonly start: Int32Array;
  /** Edge entity of each half-edge. */
  readonly edge: Int32Array;
  /** 1 where the half-edge runs in its edge's own sense. */
  readonly forward: Uint8Array;
  /** Boundary half-edges (fan rims not among them). */
  readonly boundary: Int32Array;
  /** Conductor number or INSULATING of a boundary half-edge. */
  tag(halfEdge: number): number;
  /** Fan and place on its rim of a rim half-edge. */
  readonly onRim: ReadonlyMap<number, { readonly fan: number; readonly place: number }>;
  /** Vertices of each fan's rim from ray 0 to ray 1. */
  readonly rimVertices: readonly Int32Array[];
  /** Whether a ray of some fan stands in for the first piece of an arc. */
  readonly fansOnArcs: boolean;
  /** Neighbours of element e: neighbours[neighbourStart[e] … neighbourStart[e + 1] - 1]. */
  readonly neighbourStart: Int32Array;
  readonly neighbours: Int32Array;
  /** Piece of paper of each element, named by its first element, and the conductors on it. */
  readonly piece: Int32Array;
  readonly conductorsOfPiece: ReadonlyMap<number, ReadonlySet<number>>;
  /** Boundary loop of each boundary vertex, named by one vertex of it; a slit or a fan does not interrupt a loop. */
  readonly loopOf: (vertex: number) => number;
}

export const nextEdge = (halfEdge: number): number => (halfEdge % 3 === 2 ? halfEdge - 2 : halfEdge + 1);
export const triangleOf = (halfEdge: number): number => Math.floor(halfEdge / 3);

export function topologyOf(mesh: Mesh): Topology {
  const triangles = mesh.corners.length / 3;
  const { start, vertices } = numberVertices(mesh);
  const { edge, forward, entities } = numberEdges(mesh, vertices);
  const boundary: number[] = [];
  for (let e = 0; e < 3 * triangles; e++) {
    if (mesh.twins[e]! < 0 && mesh.sides[mesh.side[e]!]!.tag !== FAN_RIM) boundary.push(e);
  }
  const onRim = new Map<number, { fan: number; place: number }>();
  mesh.fans.forEach((fan, f) => {
    for (let place = 0; place < fan.rim.length; place++) onRim.set(fan.rim[place]!, { fan: f, place });
  });
  const rimVertices = mesh.fans.map((fan) =>
    Int32Array.from([...fan.rim.map((e) => start[nextEdge(e)]!), start[fan.rim[fan.rim.length - 1]!]!]),
  );
  const tag = (e: number): number => mesh.sides[mesh.side[e]!]!.tag;
  const loops = joinLoops(boundary, start, rimVertices, vertices);
  return {
    mesh,
    triangles,
    elements: triangles + mesh.fans.length,
    vertices,
    entities,
    start,
    edge,
    forward,
    boundary: Int32Array.from(boundary),
    tag,
    onRim,
    rimVertices,
    fansOnArcs: meetsArc(mesh, boundary, start, rimVertices),
    ...neighboursOf(mesh),
    ...piecesOf(mesh, boundary, tag),
    loopOf: (vertex) => loops.find(vertex),
  };
}

/** Corners that meet around a mesh vertex without crossing the boundary are one vertex. */
function numberVertices(mesh: Mesh): { start: Int32Array; vertices: number } {
  const count = mesh.corners.length;
  const same = new UnionFind(count);
  for (let e = 0; e < count; e++) {
    const twin = mesh.twins[e]!;
    if (twin <= e) continue;
    same.tie(e, nextEdge(twin));
    same.tie(nextEdge(e), twin);
  }
  const start = new Int32Array(count).fill(-1);
  let vertices = 0;
  for (let e = 0; e < count; e++) {
    const first = same.find(e);
    // The smallest number of a set comes first, so it has its vertex already.
    start[e] = first === e ? vertices++ : start[first]!;
  }
  return { start, vertices };
}

/** A pair of twins, or a boundary half-edge alone, is one edge in the sense of its smaller half-edge. */
function numberEdges(
  mesh: Mesh,
  vertices: number,
): { edge: Int32Array; forward: Uint8Array; entities: number } {
  const count = mesh.corners.length;
  const edge = new Int32Array(count);
  const forward = new Uint8Array(count);
  let entities = vertices;
  for (let e = 0; e < count; e++) {
    const twin = mesh.twins[e]!;
    const owner = twin < 0 || e < twin;
    forward[e] = owner ? 1 : 0;
    edge[e] = owner ? entities++ : edge[twin]!;
  }
  return { edge, forward, entities };
}

function joinLoops(
  boundary: readonly number[],
  start: Int32Array,
  rimVertices: readonly Int32Array[],
  vertices: number,
): UnionFind {
  const loops = new UnionFind(vertices);
  for (const e of boundary) loops.tie(start[e]!, start[nextEdge(e)]!);
  for (const rim of rimVertices) loops.tie(rim[0]!, rim[rim.length - 1]!);
  return loops;
}

function meetsArc(
  mesh: Mesh,
  boundary: readonly number[],
  start: Int32Array,
  rimVertices: readonly Int32Array[],
): boolean {
  const ends = new Set(rimVertices.flatMap((rim) => [rim[0]!, rim[rim.length - 1]!]));
  return boundary.some(
    (e) => mesh.sides[mesh.side[e]!]!.arc >= 0 && (ends.has(start[e]!) || ends.has(start[nextEdge(e)]!)),
  );
}

function neighboursOf(mesh: Mesh): { neighbourStart: Int32Array; neighbours: Int32Array } {
  const triangles = mesh.corners.length / 3;
  const lists: number[][] = Array.from({ length: triangles + mesh.fans.length }, () => []);
  for (let e = 0; e < 3 * triangles; e++) {
    const twin = mesh.twins[e]!;
    if (twin >= 0) lists[triangleOf(e)]!.push(triangleOf(twin));
  }
  mesh.fans.forEach((fan, f) => {
    for (const e of fan.rim) {
      lists[triangleOf(e)]!.push(triangles + f);
      lists[triangles + f]!.push(triangleOf(e));
    }
  });
  const neighbourStart = new Int32Array(lists.length + 1);
  lists.forEach((list, e) => {
    neighbourStart[e + 1] = neighbourStart[e]! + list.length;
  });
  return { neighbourStart, neighbours: Int32Array.from(lists.flat()) };
}

function piecesOf(
  mesh: Mesh,
  boundary: readonly number[],
  tag: (e: number) => number,
): { piece: Int32Array; conductorsOfPiece: Map<number, Set<number>> } {
  const triangles = mesh.corners.length / 3;
  const joined = new UnionFind(triangles + mesh.fans.length);
  for (let e = 0; e < 3 * triangles; e++) {
    if (mesh.twins[e]! > e) joined.tie(triangleOf(e), triangleOf(mesh.twins[e]!));
  }
  mesh.fans.forEach((fan, f) => {
    for (const e of fan.rim) joined.tie(triangleOf(e), triangles + f);
  });
  const piece = Int32Array.from({ length: triangles + mesh.fans.length }, (_, e) => joined.find(e));
  const conductorsOfPiece = new Map<number, Set<number>>();
  const note = (element: number, conductor: number): void => {
    if (conductor === INSULATING) return;
    const known = conductorsOfPiece.get(piece[element]!);
    if (known === undefined) conductorsOfPiece.set(piece[element]!, new Set([conductor]));
    else known.add(conductor);
  };
  for (const e of boundary) note(triangleOf(e), tag(e));
  mesh.fans.forEach((fan, f) => {
    note(triangles + f, fan.tag0);
    note(triangles + f, fan.tag1);
  });
  return { piece, conductorsOfPiece };
}
