/** What lies where: the arranged plane of a problem, each face bare paper, metal or nothing. */
import type { FieldProblem } from '../problem.ts';
import { arrange, type Graph, type SourceCurve } from './arrangement.ts';
import { type Curve, curvesOf, straight } from './curve.ts';
import { type Faces, facesOf } from './faces.ts';
import type { Outline } from './outline.ts';

export interface Region {
  readonly graph: Graph;
  readonly faces: Faces;
  /** What each cycle's face is. */
  readonly cover: readonly Cover[];
}

/** The cover of a face. Metal counts as on the paper where there is paper below it. */
export interface Cover {
  readonly insidePaper: boolean;
  readonly inHole: boolean;
  /** Conductors with a piece here, ascending, and those pieces. */
  readonly conductors: readonly number[];
  readonly pieces: readonly PieceNumber[];
}

export interface PieceNumber {
  readonly conductor: number;
  readonly piece: number;
}

type Role =
  | { readonly kind: 'paper' }
  | { readonly kind: 'hole' }
  | { readonly kind: 'outer' | 'hollow'; readonly of: PieceNumber };

export function isBare({ insidePaper, inHole, conductors }: Cover): boolean {
  return insidePaper && !inHole && conductors.length === 0;
}

export function regionOf(problem: FieldProblem): Region {
  const outlines: (readonly Curve[])[] = [];
  const roles: Role[] = [];
  const add = (outline: Outline, role: Role) => {
    outlines.push(curvesOf(outline));
    roles.push(role);
  };
  add(problem.paper, { kind: 'paper' });
  for (const hole of problem.holes) add(hole, { kind: 'hole' });
  problem.conductors.forEach((pieces, conductor) => {
    pieces.forEach(({ outer, hollows }, piece) => {
      const of = { conductor, piece };
      add(outer, { kind: 'outer', of });
      for (const hollow of hollows) add(hollow, { kind: 'hollow', of });
    });
  });
  const sources: SourceCurve[] = outlines.flatMap((curves, outline) =>
    curves.map((curve) => ({ curve, outline })),
  );
  for (const { from, to } of problem.slits) sources.push({ curve: straight(from, to), outline: null });
  const graph = arrange(sources.filter(({ curve }) => hasPlace(curve)));
  const faces = facesOf(graph, outlines);
  return { graph, faces, cover: faces.holding.map((holding) => coverOf(holding, roles)) };
}

function hasPlace(c: Curve): boolean {
  return Number.isFinite(c.ax + c.ay + c.bx + c.by + c.cx + c.cy);
}

function coverOf(holding: readonly number[], roles: readonly Role[]): Cover {
  let insidePaper = false;
  let inHole = false;
  const pieces: PieceNumber[] = [];
  const hollows: PieceNumber[] = [];
  for (const outline of holding) {
    const role = roles[outline];
    if (role?.kind === 'paper') insidePaper = true;
    else if (role?.kind === 'hole') inHole = true;
    else if (role?.kind === 'outer') pieces.push(role.of);
    else if (role) hollows.push(role.of);
  }
  const solid = pieces.filter((p) => !hollows.includes(p));
  const conductors = [...new Set(solid.map(({ conductor }) => conductor))].sort((a, b) => a - b);
  return { insidePaper, inHole, conductors, pieces: solid };
}
