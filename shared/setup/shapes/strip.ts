/** A bent strip along its middle line: mitred joins, square ends; a path that returns to its start is closed. */
import type { StripShape } from '../../block/tree.ts';
import type { Point } from '../../field/geometry/outline.ts';
import type { Piece as FieldPiece } from '../../field/problem.ts';
import { distance, dot, minus, plus, polygon, quarter, times } from '../plane.ts';
import type { Report } from '../report.ts';
import { areaOf, crossingEdges } from './simple.ts';

export function stripPiece(shape: StripShape, report: Report): FieldPiece | null {
  const path = shape.path
    .map(({ x, y }): Point => ({ x: x.value, y: y.value }))
    .filter((p, i, all) => i === 0 || distance(p, all[i - 1] ?? p) > 0);
  const [first] = path;
  const last = path.at(-1);
  const closed = path.length > 3 && first !== undefined && last !== undefined && distance(first, last) === 0;
  if (
    path.length < 2 ||
    (path.length === 3 && first !== undefined && last !== undefined && distance(first, last) === 0)
  ) {
    return report('outline-flat', {
      span: shape.span,
      message: 'This path has no length, or only goes there and back.',
    });
  }
  const half = shape.width.value / 2;
  const points = closed ? path.slice(0, -1) : path;
  const left = offsetPath(points, half, closed);
  const right = offsetPath(points, -half, closed);
  if (left === null || right === null) return crosses(shape, report);
  return closed ? closedStrip(left, right, shape, report) : openStrip(left, right, shape, report);
}

const crosses = (shape: StripShape, report: Report): null =>
  report('outline-crosses', {
    span: shape.span,
    message: 'The strip runs into itself: a bend is too sharp or a stretch too short for its width.',
  });

function openStrip(
  left: readonly Point[],
  right: readonly Point[],
  shape: StripShape,
  report: Report,
): FieldPiece | null {
  const corners = [...right, ...[...left].reverse()];
  if (crossingEdges(corners) !== null) return crosses(shape, report);
  return { outer: polygon(corners), hollows: [] };
}

function closedStrip(
  left: readonly Point[],
  right: readonly Point[],
  shape: StripShape,
  report: Report,
): FieldPiece | null {
  const [outer, inner] = Math.abs(areaOf(left)) > Math.abs(areaOf(right)) ? [left, right] : [right, left];
  const sameSense = areaOf(outer) > 0 === areaOf(inner) > 0;
  if (!sameSense || crossingEdges(outer) !== null || crossingEdges(inner) !== null)
    return crosses(shape, report);
  return { outer: polygon(outer), hollows: [polygon(inner)] };
}

/**
 * The path shifted to its left by `by`. At a bend between unit vectors u and v with left normals m and n the mitre lies at
 * by (m + n) / (1 + m·n). Null where the path turns straight back.
 */
function offsetPath(points: readonly Point[], by: number, closed: boolean): readonly Point[] | null {
  const count = points.length;
  const normalFrom = (i: number): Point | null => {
    const a = points[(i + count) % count];
    const b = points[(i + 1 + count) % count];
    if (a === undefined || b === undefined || (!closed && (i < 0 || i + 1 >= count))) return null;
    return quarter(times(minus(b, a), 1 / distance(a, b)));
  };
  const shifted: Point[] = [];
  for (const [i, p] of points.entries()) {
    const before = normalFrom(i - 1) ?? normalFrom(i);
    const after = normalFrom(i) ?? normalFrom(i - 1);
    if (before === null || after === null) return null;
    const cosine = dot(before, after);
    if (cosine < -0.9999) return null;
    shifted.push(plus(p, times(plus(before, after), by / (1 + cosine))));
  }
  return shifted;
}
