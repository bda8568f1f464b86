/** An outline: any simple polygon in paper coordinates. */
import type { Coordinates, Node } from '../../block/tree.ts';
import type { Outline, Point } from '../../field/geometry/outline.ts';
import { polygon } from '../plane.ts';
import type { Report } from '../report.ts';
import { crossingEdges, onOneLine, withoutRepeats } from './simple.ts';

/** The polygon through corners; null, with a finding at `node`, where it crosses itself or encloses nothing. */
export function simplePolygon(corners: readonly Coordinates[], node: Node, report: Report): Outline | null {
  const points = withoutRepeats(corners.map(({ x, y }): Point => ({ x: x.value, y: y.value })));
  if (points.length < 3 || onOneLine(points)) {
    return report('outline-flat', { span: node.span, message: 'These corners enclose no area.' });
  }
  const crossing = crossingEdges(points);
  if (crossing !== null) {
    const [a, b] = crossing;
    return report('outline-crosses', {
      span: node.span,
      message: `The outline crosses itself: its side from corner ${a + 1} meets the side from corner ${b + 1}.`,
    });
  }
  return polygon(points);
}
