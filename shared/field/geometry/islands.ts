/** Connected pieces of bare paper that border no conductor: their potential is not determined. */
import { hypot } from '../maths.ts';
import type { Domain } from '../problem.ts';
import { type Curve, distanceToCurve, domainCurve, pointAt, tangentAt } from './curve.ts';
import { insideCurves, signedArea } from './measure.ts';
import type { Point } from './outline.ts';

export interface Island {
  readonly at: Point;
  readonly area_mm2: number;
}

/** One connected piece: its outer loop and the loops in it. */
interface Sheet {
  readonly outer: readonly Curve[];
  readonly curves: Curve[];
  area: number;
  borders: boolean;
}

export function islandsOf(domain: Domain): Island[] {
  const loops = domain.loops.map(({ edges }) => {
    const curves = edges.map((edge, i) => domainCurve(edge, edges[i + 1] ?? edges[0] ?? edge));
    return { curves, area: signedArea(curves), borders: edges.some(({ tag }) => tag >= 0) };
  });
  const sheets: Sheet[] = loops
    .filter(({ curves, area }) => area > roundingOf(curves))
    .map(({ curves, area, borders }) => ({ outer: curves, curves: [...curves], area, borders }));
  for (const { curves, area, borders } of loops) {
    if (area > roundingOf(curves)) continue;
    const home = smallestAround(sheets, curves[0]);
    if (!home) continue;
    home.curves.push(...curves);
    home.area += area;
    home.borders ||= borders;
  }
  return sheets
    .filter(({ borders }) => !borders)
    .map((sheet) => ({ at: pointInside(sheet.curves), area_mm2: sheet.area }));
}

/** A slit by itself is a loop without area, up to rounding. */
function roundingOf(curves: readonly Curve[]): number {
  return (
    1e-12 * curves.reduce((sum, c) => sum + (c.bx - c.ax) * (c.bx - c.ax) + (c.by - c.ay) * (c.by - c.ay), 0)
  );
}

function smallestAround(sheets: readonly Sheet[], curve: Curve | undefined): Sheet | null {
  if (!curve) return null;
  const at = { x: curve.ax, y: curve.ay };
  let best: Sheet | null = null;
  for (const sheet of sheets) {
    if (best && signedArea(best.outer) <= signedArea(sheet.outer)) continue;
    if (insideCurves(sheet.outer, at)) best = sheet;
  }
  return best;
}

/** A point well inside: from the middle of a long edge to the left, as far as the nearest other edge allows. */
function pointInside(curves: readonly Curve[]): Point {
  const length = (c: Curve) => hypot(c.bx - c.ax, c.by - c.ay);
  const longest = curves.reduce((best, c) => (length(c) > length(best) ? c : best));
  const middle = pointAt(longest, 0.5);
  const along = tangentAt({ ...longest, ax: middle.x, ay: middle.y }, 0);
  const scale = hypot(along.x, along.y);
  for (let step = length(longest); step > 1e-9; step /= 2) {
    const p = { x: middle.x - (step * along.y) / scale, y: middle.y + (step * along.x) / scale };
    const clear = curves.every((c) => distanceToCurve(c, p.x, p.y) > step / 4);
    if (clear && insideCurves(curves, p)) return p;
  }
  return middle;
}
