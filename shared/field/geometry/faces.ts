/**
 * The faces of the plane graph. Half-edge 2i runs along edge i, 2i + 1 against it; each has a face on its left and follows that
 * face's rim by `next`. Crossing an edge changes the inside of its outlines, so the outlines that hold a face spread from the
 * outermost cycle of each connected part inwards.
 */
import { atan2, hypot } from '../maths.ts';
import { type Graph, type GraphEdge, toggled } from './arrangement.ts';
import { areaUnder, type Curve, curveLength, pointAt, reversed } from './curve.ts';
import { insideCurves } from './measure.ts';
import type { Point } from './outline.ts';

export interface Faces {
  /** The curve of each half-edge, in its direction. */
  readonly curves: readonly Curve[];
  /** Start vertex of each half-edge. */
  readonly origin: readonly number[];
  readonly next: readonly number[];
  /** Rim cycle of each half-edge. */
  readonly cycle: readonly number[];
  /** Outlines that hold the face on the left of each cycle, ascending. */
  readonly holding: readonly (readonly number[])[];
  /** Area under each cycle, mm²: a face's area is the sum over all its cycles. */
  readonly areas: readonly number[];
}

export function facesOf(graph: Graph, outlines: readonly (readonly Curve[])[]): Faces {
  const { edges, points } = graph;
  const curves = edges.flatMap(({ curve }) => [curve, reversed(curve)]);
  const origin = edges.flatMap(({ a, b }) => [a, b]);
  const next = nextAround(points, curves, origin);
  const { cycle, count } = cyclesOf(next);
  const areas = new Array<number>(count).fill(0);
  cycle.forEach((c, h) => {
    const { x, y } = points[0] as Point;
    areas[c] = (areas[c] ?? 0) + areaUnder(curves[h] as Curve, x, y);
  });
  const holding = holdingOf(graph, cycle, areas, outlines);
  return { curves, origin, next, cycle, holding, areas };
}

/** After arriving at a vertex, the rim goes on along the half-edge that lies clockwise next to the way back. */
function nextAround(points: readonly Point[], curves: readonly Curve[], origin: readonly number[]): number[] {
  const leaving: number[][] = points.map(() => []);
  origin.forEach((v, h) => {
    leaving[v]?.push(h);
  });
  const next = new Array<number>(origin.length).fill(-1);
  for (const star of leaving) {
    const sorted = anticlockwise(star, curves);
    sorted.forEach((h, i) => {
      next[h ^ 1] = sorted[(i + sorted.length - 1) % sorted.length] ?? h;
    });
  }
  return next;
}

/** Bearings that differ by less than this (rad) are taken again pair by pair. */
const CLOSE = 1e-3;

/**
 * Sorts the half-edges that leave a vertex by bearing. Tangent curves agree in direction at the vertex itself, so the bearing is
 * that of a point a little way along, the same way for all; where two are still close, half the shorter one's length.
 */
function anticlockwise(star: readonly number[], curves: readonly Curve[]): number[] {
  const curveOf = (h: number) => curves[h] as Curve;
  const reach = Math.min(...star.map((h) => chord(curveOf(h)))) / 2;
  const bearings = new Map(star.map((h) => [h, bearing(curveOf(h), reach)]));
  const sorted = [...star].sort((g, h) => (bearings.get(g) ?? 0) - (bearings.get(h) ?? 0) || g - h);
  for (let round = 1; round < sorted.length; round++) {
    for (let i = 0; i + 1 < sorted.length; i++) {
      const g = sorted[i] as number;
      const h = sorted[i + 1] as number;
      if ((bearings.get(h) ?? 0) - (bearings.get(g) ?? 0) > CLOSE) continue;
      const further = Math.min(chord(curveOf(g)), chord(curveOf(h))) / 2;
      if (turnFrom(bearing(curveOf(g), further), bearing(curveOf(h), further)) >= 0) continue;
      sorted[i] = h;
      sorted[i + 1] = g;
    }
  }
  return sorted;
}

function chord(c: Curve): number {
  return hypot(c.bx - c.ax, c.by - c.ay);
}

/** Direction from the curve's first point to its point at a straight distance of about `reach`. */
function bearing(c: Curve, reach: number): number {
  const p = pointAt(c, Math.min(1, reach / curveLength(c)));
  return atan2(p.y - c.ay, p.x - c.ax);
}

function turnFrom(a: number, b: number): number {
  const turn = b - a;
  return turn > Math.PI ? turn - 2 * Math.PI : turn < -Math.PI ? turn + 2 * Math.PI : turn;
}

function cyclesOf(next: readonly number[]): { cycle: number[]; count: number } {
  const cycle = new Array<number>(next.length).fill(-1);
  let count = 0;
  for (let first = 0; first < next.length; first++) {
    if (cycle[first] !== -1) continue;
    for (let h = first; cycle[h] === -1; h = next[h] ?? first) cycle[h] = count;
    count++;
  }
  return { cycle, count };
}

function holdingOf(
  graph: Graph,
  cycle: readonly number[],
  areas: readonly number[],
  outlines: readonly (readonly Curve[])[],
): (readonly number[])[] {
  const halfEdges: number[][] = areas.map(() => []);
  cycle.forEach((c, h) => {
    halfEdges[c]?.push(h);
  });
  const holding = new Array<readonly number[] | undefined>(areas.length);
  for (const part of connectedParts(graph, cycle, areas.length)) {
    const outermost = part.reduce((best, c) => ((areas[c] ?? 0) < (areas[best] ?? 0) ? c : best));
    holding[outermost] = outlinesAround(graph, part, halfEdges, outlines);
    const open = [outermost];
    for (let c = open.pop(); c !== undefined; c = open.pop()) {
      for (const h of halfEdges[c] ?? []) {
        const beyond = cycle[h ^ 1] ?? 0;
        if (holding[beyond]) continue;
        holding[beyond] = toggled(holding[c] ?? [], graph.edges[h >> 1]?.outlines ?? []);
        open.push(beyond);
      }
    }
  }
  return holding.map((list) => list ?? []);
}

/** Cycles grouped by connected part of the graph, in order of their first. */
function connectedParts(graph: Graph, cycle: readonly number[], count: number): number[][] {
  const partOf = graph.points.map((_, v) => v);
  const root = (v: number): number => {
    let r = v;
    while (partOf[r] !== r) {
      partOf[r] = partOf[partOf[r] ?? r] ?? r;
      r = partOf[r] ?? r;
    }
    return r;
  };
  for (const { a, b } of graph.edges) partOf[root(a)] = root(b);
  const parts = new Map<number, number[]>();
  const seen = new Array<boolean>(count).fill(false);
  cycle.forEach((c, h) => {
    if (seen[c]) return;
    seen[c] = true;
    const r = root((graph.edges[h >> 1] as GraphEdge).a);
    parts.set(r, [...(parts.get(r) ?? []), c]);
  });
  return [...parts.values()];
}

/** Outlines of other parts that hold this one: no point of this part is near them. */
function outlinesAround(
  graph: Graph,
  part: readonly number[],
  halfEdges: readonly (readonly number[])[],
  outlines: readonly (readonly Curve[])[],
): number[] {
  const own = new Set<number>();
  for (const c of part)
    for (const h of halfEdges[c] ?? []) for (const o of graph.edges[h >> 1]?.outlines ?? []) own.add(o);
  const some = halfEdges[part[0] ?? 0]?.[0] ?? 0;
  const at = graph.points[graph.edges[some >> 1]?.a ?? 0] as Point;
  return outlines.flatMap((curves, o) => (!own.has(o) && insideCurves(curves, at) ? [o] : []));
}
