/** What lies at a point of the bench: metal, paper, a hole, nothing. */

import { distanceToOutline, insideOutline } from '../field/geometry/measure.ts';
import type { Outline, Point } from '../field/geometry/outline.ts';
import type { Piece as FieldPiece } from '../field/problem.ts';
import type { Electrode, Hole, Paper } from './setup.ts';

/** Closer than this a point stands on the edge, mm: twice the grid of the engine. */
const onEdge_mm = 2e-6;

type Bench = {
  readonly paper: Paper | null;
  readonly holes: readonly Hole[];
  readonly electrodes: readonly Electrode[];
};

/** The electrode at a point of the paper, its edge included; null on bare paper. */
export function metalAt({ electrodes }: Pick<Bench, 'electrodes'>, at: Point): Electrode | null {
  const here = electrodes.filter(({ conductor }) => conductor !== null);
  return here.find(({ pieces }) => pieces.some(({ geometry }) => pieceCovers(geometry, at))) ?? null;
}

/** Why nothing can be read at a point; null on paper and on metal that lies on the paper. */
export function unreadable(bench: Bench, at: Point): 'beside the paper' | 'in a hole' | null {
  const { paper } = bench;
  if (paper === null) return null;
  const within = (value: number, size: number): boolean => value >= -onEdge_mm && value <= size + onEdge_mm;
  if (!within(at.x, paper.width_mm) || !within(at.y, paper.height_mm)) return 'beside the paper';
  if (metalAt(bench, at) !== null) return null;
  return bench.holes.some(({ outline }) => insideOutline(outline, at) && !atEdge(outline, at))
    ? 'in a hole'
    : null;
}

function pieceCovers({ outer, hollows }: FieldPiece, at: Point): boolean {
  if (!insideOutline(outer, at) && !atEdge(outer, at)) return false;
  return !hollows.some((hollow) => insideOutline(hollow, at) && !atEdge(hollow, at));
}

const atEdge = (outline: Outline, at: Point): boolean => distanceToOutline(outline, at) <= onEdge_mm;
