/** Shapes for the geometry and mesh tests. */
import type { Outline, Segment } from '../../../shared/field/geometry/outline.ts';
import type { Domain, FieldProblem, Loop, Piece } from '../../../shared/field/problem.ts';

export function polygon(...points: readonly (readonly [number, number])[]): Outline {
  return { edges: points.map(([x, y]) => ({ from: { x, y }, arc: null })) };
}

export function rectangle(x0: number, y0: number, x1: number, y1: number): Outline {
  return polygon([x0, y0], [x1, y0], [x1, y1], [x0, y1]);
}

/** Two half turns, anticlockwise. */
export function disc(x: number, y: number, radius: number): Outline {
  const arc = { centre: { x, y }, anticlockwise: true };
  return {
    edges: [
      { from: { x: x + radius, y }, arc },
      { from: { x: x - radius, y }, arc },
    ],
  };
}

/** The same curve the other way round. */
export function turnedRound({ edges }: Outline): Outline {
  const flipped = edges.map((edge, i) => {
    const to = (edges[i + 1] ?? edges[0] ?? edge).from;
    return { from: to, arc: edge.arc && { ...edge.arc, anticlockwise: !edge.arc.anticlockwise } };
  });
  return { edges: flipped.reverse() };
}

export function piece(outer: Outline, ...hollows: Outline[]): Piece {
  return { outer, hollows };
}

export function slit(x0: number, y0: number, x1: number, y1: number): Segment {
  return { from: { x: x0, y: y0 }, to: { x: x1, y: y1 } };
}

export function problem(
  conductors: readonly (readonly Piece[])[],
  extra: Partial<FieldProblem> = {},
): FieldProblem {
  return {
    paper: rectangle(0, 0, 240, 160),
    holes: [],
    slits: [],
    conductors,
    sheet_ohm: [1000, 1000],
    ...extra,
  };
}

/** A loop whose edges follow the outline, all with one tag; the paper must lie on its left. */
export function loop({ edges }: Outline, tag: number): Loop {
  return {
    edges: edges.map(({ from, arc }) => ({
      ...from,
      tag,
      arc: arc && { ...arc.centre, anticlockwise: arc.anticlockwise },
    })),
  };
}

/** A straight cut there and back. */
export function cut({ from, to }: Segment, tag: number): Loop {
  return {
    edges: [
      { ...from, tag, arc: null },
      { ...to, tag, arc: null },
    ],
  };
}

export function domain(loops: readonly Loop[], sheet_ohm: readonly [number, number] = [1000, 1000]): Domain {
  const tags = loops.flatMap(({ edges }) => edges.map(({ tag }) => tag));
  return { loops, conductors: Math.max(-1, ...tags) + 1, sheet_ohm };
}
