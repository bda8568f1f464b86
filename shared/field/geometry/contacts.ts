/** Conductors that overlap, touch or all but touch on the paper. */
import type { Domain } from '../problem.ts';
import { type Bounds, curveBounds, domainCurve } from './curve.ts';
import { gapBetween } from './distance.ts';
import type { Point } from './outline.ts';
import type { Region } from './region.ts';

export interface Contact {
  readonly a: number;
  readonly b: number;
  /** 0 where they touch or overlap. */
  readonly gap_mm: number;
  readonly at: Point;
}

/** Conductors nearer than this (mm) count as a contact: common practice, no source. */
const NEAR = 0.05;

export function contactsOf(region: Region, domain: Domain): Contact[] {
  const contacts = new Map<string, Contact>();
  const note = (one: number, other: number, gap_mm: number, at: Point) => {
    const a = Math.min(one, other);
    const b = Math.max(one, other);
    const known = contacts.get(`${a},${b}`);
    if (!known || gap_mm < known.gap_mm) contacts.set(`${a},${b}`, { a, b, gap_mm, at });
  };
  noteTouches(region, note);
  noteNearEdges(domain, note);
  return [...contacts.values()].sort((p, q) => p.a - q.a || p.b - q.b);
}

type Note = (one: number, other: number, gap_mm: number, at: Point) => void;

/** Conductors on faces that share a vertex touch there; where two overlap, every vertex of that face says so. */
function noteTouches({ graph, faces, cover }: Region, note: Note): void {
  const around: Set<number>[] = graph.points.map(() => new Set());
  faces.cycle.forEach((cycle, h) => {
    const here = cover[cycle];
    if (!here?.insidePaper) return;
    for (const conductor of here.conductors) around[faces.origin[h] ?? 0]?.add(conductor);
  });
  around.forEach((conductors, v) => {
    if (conductors.size < 2) return;
    const list = [...conductors].sort((a, b) => a - b);
    for (const [i, a] of list.entries()) {
      for (const b of list.slice(i + 1)) note(a, b, 0, graph.points[v] as Point);
    }
  });
}

function noteNearEdges(domain: Domain, note: Note): void {
  const rims = domain.loops.flatMap(({ edges }) =>
    edges.flatMap((edge, i) => {
      if (edge.tag < 0) return [];
      const curve = domainCurve(edge, edges[i + 1] ?? edges[0] ?? edge);
      return [{ tag: edge.tag, curve, box: curveBounds(curve) }];
    }),
  );
  rims.sort((p, q) => p.box.x0 - q.box.x0 || p.box.y0 - q.box.y0);
  rims.forEach((rim, i) => {
    for (let j = i + 1; j < rims.length; j++) {
      const other = rims[j];
      if (!other || other.box.x0 > rim.box.x1 + NEAR) break;
      if (other.tag === rim.tag || apartInY(rim.box, other.box)) continue;
      const { gap, at } = gapBetween(rim.curve, other.curve);
      if (gap < NEAR) note(rim.tag, other.tag, gap, at);
    }
  });
}

function apartInY(a: Bounds, b: Bounds): boolean {
  return a.y0 > b.y1 + NEAR || b.y0 > a.y1 + NEAR;
}
