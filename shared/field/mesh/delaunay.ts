/**
 * The first triangulation: constrained Delaunay triangles over all points, of which those are kept that can be reached from the left
 * of a boundary piece without crossing another one.
 *
 * Indices are bounded by construction: `a[i]!` below never meets a missing entry.
 */
import Constrainautor from '@kninnug/constrainautor';
import Delaunator from 'delaunator';
import type { Pieces } from './pieces.ts';
import { nextEdge, Triangulation } from './triangulation.ts';

/** Null where the pieces enclose nothing or cross each other. */
export function firstTriangulation(pieces: Pieces): Triangulation | null {
  const { x, y } = pieces;
  const count = x.length;
  if (count < 3) return null;
  // Delaunator turns clockwise where y points up: with y reversed its triangles are anticlockwise.
  const coordinates = new Float64Array(2 * count);
  for (let i = 0; i < count; i++) {
    coordinates[2 * i] = x[i]!;
    coordinates[2 * i + 1] = -y[i]!;
  }
  const all = new Delaunator(coordinates);
  if (all.triangles.length === 0 || !constrain(all, pieces)) return null;
  const piece = pieceOfHalfEdge(all, pieces);
  if (!piece) return null;
  const kept = flood(all, piece);
  return kept ? collect(all, piece, kept, pieces) : null;
}

function constrain(all: Delaunator<Float64Array>, pieces: Pieces): boolean {
  try {
    const constrained = new Constrainautor(all);
    pieces.from.forEach((from, i) => {
      constrained.constrainOne(from, pieces.to[i]!);
    });
    constrained.delaunify(true);
    return true;
  } catch {
    // Pieces that cross or run through a point: the one way in which the library says so.
    return false;
  }
}

/** For every half-edge the piece that runs along it in its direction, or -1. Null if a piece is not an edge. */
function pieceOfHalfEdge(all: Delaunator<Float64Array>, pieces: Pieces): Int32Array | null {
  const { triangles } = all;
  const count = pieces.x.length;
  const wanted = new Map<number, number>();
  pieces.from.forEach((from, i) => {
    wanted.set(from * count + pieces.to[i]!, i);
  });
  const piece = new Int32Array(triangles.length).fill(-1);
  let found = 0;
  for (let e = 0; e < triangles.length; e++) {
    const i = wanted.get(triangles[e]! * count + triangles[nextEdge(e)]!);
    if (i === undefined) continue;
    piece[e] = i;
    found++;
  }
  return found === wanted.size ? piece : null;
}

/** Triangles to the left of pieces and all behind them; null if that runs out of the boundary, or into it from outside. */
function flood(all: Delaunator<Float64Array>, piece: Int32Array): Uint8Array | null {
  const { halfedges } = all;
  const kept = new Uint8Array(halfedges.length / 3);
  const open: number[] = [];
  const keep = (t: number) => {
    if (kept[t]) return;
    kept[t] = 1;
    open.push(t);
  };
  for (let e = 0; e < piece.length; e++) if (piece[e]! >= 0) keep((e / 3) | 0);
  for (let t = open.pop(); t !== undefined; t = open.pop()) {
    for (let e = 3 * t; e < 3 * t + 3; e++) {
      if (piece[e]! >= 0) continue;
      const beyond = halfedges[e]!;
      if (beyond < 0 || piece[beyond]! >= 0) return null;
      keep((beyond / 3) | 0);
    }
  }
  return kept;
}

function collect(
  all: Delaunator<Float64Array>,
  piece: Int32Array,
  kept: Uint8Array,
  pieces: Pieces,
): Triangulation {
  const { triangles, halfedges } = all;
  const mesh = new Triangulation(4 * pieces.x.length + 256, 8 * pieces.x.length + 256);
  for (let i = 0; i < pieces.x.length; i++) mesh.addVertex(pieces.x[i]!, pieces.y[i]!);
  const place = new Int32Array(kept.length).fill(-1);
  for (let t = 0; t < kept.length; t++) {
    if (!kept[t]) continue;
    place[t] = mesh.addTriangle(triangles[3 * t]!, triangles[3 * t + 1]!, triangles[3 * t + 2]!);
  }
  for (let e = 0; e < piece.length; e++) {
    const t = place[(e / 3) | 0]!;
    if (t < 0) continue;
    const here = 3 * t + (e % 3);
    const there = halfedges[e]!;
    if (piece[e]! >= 0) mesh.side[here] = pieces.side[piece[e]!]!;
    else if (there >= 0) mesh.twins[here] = 3 * place[(there / 3) | 0]! + (there % 3);
  }
  return mesh;
}
