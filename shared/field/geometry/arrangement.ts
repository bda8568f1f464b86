/**
 * The plane graph of all outlines and slits: curves divided where they meet, points within a millionth of a millimetre made one,
 * pieces that lie on each other merged. Every outline stays a closed chain of edges, so which faces it holds is a matter of parity.
 */
import { hypot } from '../maths.ts';
import { type Curve, circular, curveBounds, distanceToCurve, nearestOn, pointAt, straight } from './curve.ts';
import { meetings, TOUCH } from './intersect.ts';
import type { Point } from './outline.ts';

/** A curve and the outline that it belongs to; null for a slit. */
export interface SourceCurve {
  readonly curve: Curve;
  readonly outline: number | null;
}

/** An edge between two different vertices. */
export interface GraphEdge {
  readonly a: number;
  readonly b: number;
  readonly curve: Curve;
  /** Outlines that change from inside to outside here, ascending. */
  readonly outlines: readonly number[];
  readonly slit: boolean;
}

export interface Graph {
  readonly points: readonly Point[];
  readonly edges: readonly GraphEdge[];
}

/** Dividing moves points by up to TOUCH, which can bring about new meetings; rarely more than one further pass finds any. */
const PASSES = 8;
/** An arc that leaves its chord by less than this (mm) is drawn as the chord. */
const FLAT = 1e-9;

export function arrange(sources: readonly SourceCurve[]): Graph {
  const vertices = new Vertices();
  let edges: GraphEdge[] = [];
  for (const { curve, outline } of sources) {
    const outlines = outline === null ? [] : [outline];
    for (const part of halvesOfLongArcs(curve)) {
      const a = vertices.at({ x: part.ax, y: part.ay });
      const b = vertices.at({ x: part.bx, y: part.by });
      if (a !== b) edges.push({ a, b, curve: vertices.fitted(part, a, b), outlines, slit: outline === null });
    }
  }
  for (let pass = 0; pass < PASSES; pass++) {
    edges = merged(edges);
    const cuts = findCuts(edges, vertices);
    if (cuts.every((list) => list.length === 0)) break;
    edges = edges.flatMap((edge, i) => divided(edge, cuts[i] ?? [], vertices));
  }
  return { points: vertices.points, edges: merged(edges) };
}

/** No arc of the graph exceeds a half turn, and none closes in itself. */
function halvesOfLongArcs(curve: Curve): Curve[] {
  if (curve.sweep !== 0 && !(curve.radius > TOUCH)) return [];
  if (Math.abs(curve.sweep) <= Math.PI) return [curve];
  const middle = pointAt(curve, 0.5);
  const sweep = curve.sweep / 2;
  return [
    { ...curve, bx: middle.x, by: middle.y, sweep },
    { ...curve, ax: middle.x, ay: middle.y, sweep },
  ];
}

/** Points by place: whoever comes first keeps its exact position, later ones within TOUCH take it over. */
class Vertices {
  readonly points: Point[] = [];
  private readonly cells = new Map<string, number[]>();

  at(p: Point): number {
    const i = Math.floor(p.x / (2 * TOUCH));
    const j = Math.floor(p.y / (2 * TOUCH));
    for (let di = -1; di <= 1; di++) {
      for (let dj = -1; dj <= 1; dj++) {
        for (const n of this.cells.get(`${i + di},${j + dj}`) ?? []) {
          const q = this.points[n] as Point;
          if (hypot(p.x - q.x, p.y - q.y) <= TOUCH) return n;
        }
      }
    }
    const n = this.points.push(p) - 1;
    const key = `${i},${j}`;
    this.cells.set(key, [...(this.cells.get(key) ?? []), n]);
    return n;
  }

  /** The curve moved to end in the given vertices; an arc keeps its circle, or the nearest one through both. */
  fitted(curve: Curve, a: number, b: number): Curve {
    const p = this.points[a] as Point;
    const q = this.points[b] as Point;
    if (curve.sweep === 0) return straight(p, q);
    const dx = q.x - p.x;
    const dy = q.y - p.y;
    const chord = hypot(dx, dy);
    if (Math.abs(curve.sweep) < 3 && chord * chord < 8 * FLAT * curve.radius) return straight(p, q);
    const off = ((curve.cx - (p.x + q.x) / 2) * dx + (curve.cy - (p.y + q.y) / 2) * dy) / chord;
    const wrong = Math.abs(hypot(p.x - curve.cx, p.y - curve.cy) - curve.radius);
    if (Math.abs(off) + wrong < 1e-12 * (1 + curve.radius))
      return { ...circular(p, q, { x: curve.cx, y: curve.cy }, curve.sweep > 0) };
    const centre = { x: curve.cx - (off * dx) / chord, y: curve.cy - (off * dy) / chord };
    return circular(p, q, centre, curve.sweep > 0);
  }
}

/** Vertices at which each edge has to be divided. */
function findCuts(edges: readonly GraphEdge[], vertices: Vertices): number[][] {
  const cuts: number[][] = edges.map(() => []);
  const boxes = edges.map(({ curve }) => curveBounds(curve));
  const order = edges.map((_, i) => i).sort((i, j) => (boxes[i]?.x0 ?? 0) - (boxes[j]?.x0 ?? 0) || i - j);
  order.forEach((i, rank) => {
    const box = boxes[i];
    const edge = edges[i];
    if (!box || !edge) return;
    for (let k = rank + 1; k < order.length; k++) {
      const j = order[k] ?? 0;
      const other = boxes[j];
      const neighbour = edges[j];
      if (!other || !neighbour || other.x0 > box.x1 + TOUCH) break;
      if (other.y0 > box.y1 + TOUCH || box.y0 > other.y1 + TOUCH) continue;
      cutPair(edge, neighbour, vertices, cuts[i] as number[], cuts[j] as number[]);
    }
  });
  return cuts;
}

function cutPair(e: GraphEdge, f: GraphEdge, vertices: Vertices, cutsOfE: number[], cutsOfF: number[]): void {
  for (const v of [f.a, f.b]) if (liesOn(v, e, vertices)) cutsOfE.push(v);
  for (const v of [e.a, e.b]) if (liesOn(v, f, vertices)) cutsOfF.push(v);
  for (const p of meetings(e.curve, f.curve)) {
    if (!parted(p, e, f, vertices)) continue;
    const v = vertices.at(p);
    if (v !== e.a && v !== e.b) cutsOfE.push(v);
    if (v !== f.a && v !== f.b) cutsOfF.push(v);
  }
}

/**
 * False where two curves that leave one vertex cross again before they have parted by more than TOUCH: tangent curves do so when
 * rounding has tilted one of them. They count as side by side.
 */
function parted(p: Point, e: GraphEdge, f: GraphEdge, vertices: Vertices): boolean {
  const shared = [e.a, e.b].find((v) => v === f.a || v === f.b);
  if (shared === undefined) return true;
  const from = vertices.points[shared] as Point;
  const x = (from.x + p.x) / 2;
  const y = (from.y + p.y) / 2;
  const one = nearestOn(e.curve, x, y);
  const other = nearestOn(f.curve, x, y);
  return hypot(one.x - other.x, one.y - other.y) > TOUCH;
}

function liesOn(v: number, e: GraphEdge, vertices: Vertices): boolean {
  if (v === e.a || v === e.b) return false;
  const p = vertices.points[v] as Point;
  return distanceToCurve(e.curve, p.x, p.y) <= TOUCH;
}

function divided(edge: GraphEdge, cuts: readonly number[], vertices: Vertices): GraphEdge[] {
  if (cuts.length === 0) return [edge];
  const { curve } = edge;
  const stops = [...new Set(cuts)]
    .map((v) => ({ v, s: progress(curve, vertices.points[v] as Point) }))
    .sort((p, q) => p.s - q.s || p.v - q.v)
    .map(({ v }) => v);
  const parts: GraphEdge[] = [];
  let a = edge.a;
  for (const b of [...stops, edge.b]) {
    if (a !== b) parts.push({ ...edge, a, b, curve: vertices.fitted(curve, a, b) });
    a = b;
  }
  return parts;
}

/** A measure that grows along the curve: the part along a line, the turn along an arc of at most a half turn. */
function progress(c: Curve, p: Point): number {
  if (c.sweep === 0) return (p.x - c.ax) * (c.bx - c.ax) + (p.y - c.ay) * (c.by - c.ay);
  // The direction from the arc's first point turns steadily from its tangent to its chord, by half the turn about the centre.
  const tx = c.sweep > 0 ? c.cy - c.ay : c.ay - c.cy;
  const ty = c.sweep > 0 ? c.ax - c.cx : c.cx - c.ax;
  const dx = p.x - c.ax;
  const dy = p.y - c.ay;
  return -(tx * dx + ty * dy) / (c.radius * hypot(dx, dy));
}

/** Edges between the same two vertices and on each other become one; an outline that runs there twice cancels. */
function merged(edges: readonly GraphEdge[]): GraphEdge[] {
  const byEnds = new Map<string, GraphEdge[]>();
  for (const edge of edges) {
    const key = edge.a < edge.b ? `${edge.a},${edge.b}` : `${edge.b},${edge.a}`;
    const known = byEnds.get(key) ?? [];
    byEnds.set(key, known);
    const twin = known.findIndex((other) => coincide(edge.curve, other.curve));
    const other = known[twin];
    if (other)
      known[twin] = {
        ...other,
        outlines: toggled(other.outlines, edge.outlines),
        slit: other.slit || edge.slit,
      };
    else known.push(edge);
  }
  return [...byEnds.values()].flat().filter(({ outlines, slit }) => outlines.length > 0 || slit);
}

function coincide(c: Curve, d: Curve): boolean {
  const p = pointAt(c, 0.5);
  return distanceToCurve(d, p.x, p.y) <= 2 * TOUCH;
}

/** Ascending lists: what is in one of them only. */
export function toggled(a: readonly number[], b: readonly number[]): number[] {
  return [...a.filter((n) => !b.includes(n)), ...b.filter((n) => !a.includes(n))].sort((p, q) => p - q);
}
