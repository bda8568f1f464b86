/** Triangles around a point, and how well a logarithm at the point is seen from their common border. */
// Indices are bounded by construction throughout, hence `a[i]!`.
import { hypot } from '../maths.ts';
import { FAN_RIM, type Mesh } from '../mesh/mesh.ts';
import { INSULATING } from '../problem.ts';
import { nextSide } from './lattice.ts';
import type { Mirror } from './point-source.ts';

export interface Neighbourhood {
  /** In the order of being found. */
  readonly triangles: readonly number[];
  readonly has: ReadonlySet<number>;
}

/** Grows a set of triangles by all that share a vertex with it, without stepping over slits. */
export function grown(mesh: Mesh, inner: readonly number[]): Neighbourhood {
  const has = new Set(inner);
  for (const t of inner) {
    for (let j = 0; j < 3; j++) {
      for (const other of around(mesh, 3 * t + j)) has.add(other);
    }
  }
  return { triangles: [...has], has };
}

/** Triangles met by turning about the start of a half-edge, both ways, up to the edge of the paper. */
function around(mesh: Mesh, halfEdge: number): number[] {
  const found: number[] = [];
  let h = halfEdge;
  // Clockwise: over the half-edge itself, then on to the next of the triangle beyond, which starts at the same vertex.
  while (mesh.twins[h]! >= 0) {
    h = nextSide(mesh.twins[h]!);
    if (h === halfEdge) return found;
    found.push(Math.floor(h / 3));
  }
  h = previous(halfEdge);
  while (mesh.twins[h]! >= 0) {
    found.push(Math.floor(mesh.twins[h]! / 3));
    h = previous(mesh.twins[h]!);
  }
  return found;
}

function previous(halfEdge: number): number {
  return halfEdge % 3 === 0 ? halfEdge + 2 : halfEdge - 1;
}

/** What lies beyond a side on the border of a neighbourhood. */
export type Beyond = 'paper' | 'metal' | 'edge';

export interface BorderSide {
  readonly triangle: number;
  /** Corner from which the side runs to the next. */
  readonly from: number;
  readonly beyond: Beyond;
}

export function borderOf(mesh: Mesh, { triangles, has }: Neighbourhood): BorderSide[] {
  const border: BorderSide[] = [];
  for (const triangle of triangles) {
    for (let from = 0; from < 3; from++) {
      const h = 3 * triangle + from;
      if (mesh.twins[h]! >= 0 && has.has(Math.floor(mesh.twins[h]! / 3))) continue;
      const tag = mesh.side[h]! < 0 ? FAN_RIM : mesh.sides[mesh.side[h]!]!.tag;
      const beyond = mesh.twins[h]! >= 0 || tag === FAN_RIM ? 'paper' : tag === INSULATING ? 'edge' : 'metal';
      border.push({ triangle, from, beyond });
    }
  }
  return border;
}

/** Smallest distance of a point from a side of the border over that side's length, which rules how well polynomials follow 1/r. */
export function clearance(mesh: Mesh, border: readonly BorderSide[], x: number, y: number): number {
  let least = Infinity;
  for (const side of border) {
    const { ax, ay, bx, by } = endsOf(mesh, side);
    least = Math.min(least, distance(mesh, side, x, y) / hypot(bx - ax, by - ay));
  }
  return least;
}

/** Distance of a point from a side's chord, mm. */
export function distance(mesh: Mesh, side: BorderSide, x: number, y: number): number {
  const { ax, ay, bx, by } = endsOf(mesh, side);
  const [dx, dy] = [bx - ax, by - ay];
  const [px, py] = [x - ax, y - ay];
  const along = Math.min(1, Math.max(0, (px * dx + py * dy) / (dx * dx + dy * dy)));
  return hypot(px - along * dx, py - along * dy);
}

function endsOf(
  mesh: Mesh,
  { triangle, from }: BorderSide,
): { ax: number; ay: number; bx: number; by: number } {
  const a = mesh.corners[3 * triangle + from]!;
  const b = mesh.corners[3 * triangle + ((from + 1) % 3)]!;
  return { ax: mesh.x[a]!, ay: mesh.y[a]!, bx: mesh.x[b]!, by: mesh.y[b]! };
}

/** The different lines and circles on which sides at the edge of the paper lie. */
export function mirrorsOf(mesh: Mesh, sides: readonly BorderSide[]): Mirror[] {
  const mirrors: Mirror[] = [];
  for (const side of sides) {
    const mirror = mirrorOf(mesh, side);
    if (!mirrors.some((other) => sameMirror(other, mirror))) mirrors.push(mirror);
  }
  return mirrors;
}

function mirrorOf(mesh: Mesh, side: BorderSide): Mirror {
  const metal = side.beyond === 'metal';
  const arc = mesh.arcs[mesh.sides[mesh.side[3 * side.triangle + side.from]!]!.arc];
  if (arc !== undefined) return { metal, x: arc.x, y: arc.y, along: null, radius: arc.radius };
  const { ax, ay, bx, by } = endsOf(mesh, side);
  const length = hypot(bx - ax, by - ay);
  return { metal, x: ax, y: ay, along: [(bx - ax) / length, (by - ay) / length], radius: 0 };
}

const SAME_MM = 1e-6;

function sameMirror(a: Mirror, b: Mirror): boolean {
  if (a.metal !== b.metal) return false;
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  if (a.along === null || b.along === null) {
    return a.along === b.along && hypot(dx, dy) < SAME_MM && Math.abs(a.radius - b.radius) < SAME_MM;
  }
  const [ax, ay] = a.along;
  const parallel = Math.abs(ax * b.along[1] - ay * b.along[0]) < SAME_MM;
  return parallel && Math.abs(ax * dy - ay * dx) < SAME_MM;
}
