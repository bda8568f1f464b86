/** What a lead on the paper would disturb: metal it only crosses, probes, rows. */
import type { Bounds } from '../field/geometry/curve.ts';
import type { Point } from '../field/geometry/outline.ts';
import { hypot } from '../field/maths.ts';
import { overlap } from './labels.ts';
import { isOn, type Page, type PageElectrode, rowEnds, scaled } from './page.ts';

/** Cost of one point of a lead inside `reach` that belongs to the electrodes `own`. */
export function crossingCost(page: Page, own: readonly PageElectrode[], reach: Bounds): (p: Point) => number {
  const others = page.electrodes.filter((each) => !own.includes(each) && overlap(each.bounds, reach));
  const probes = page.setup.probes.map(({ at }) => scaled(at, page.scale));
  const rows = page.setup.rows.flatMap((row) => {
    const [first, last] = rowEnds(page, row);
    return first === null || last === null ? [] : [[first, last] as const];
  });
  return (p) =>
    15 * others.filter((other) => isOn(other, p)).length +
    8 * probes.filter((q) => hypot(q.x - p.x, q.y - p.y) < 4).length +
    6 * rows.filter(([first, last]) => distanceToSegment(first, last, p) < 2).length;
}

export function boxAround(a: Point, b: Point): Bounds {
  return {
    x0: Math.min(a.x, b.x) - 0.1,
    y0: Math.min(a.y, b.y) - 0.1,
    x1: Math.max(a.x, b.x) + 0.1,
    y1: Math.max(a.y, b.y) + 0.1,
  };
}

export function distanceToSegment(a: Point, b: Point, p: Point): number {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const length2 = dx * dx + dy * dy;
  const s = length2 === 0 ? 0 : Math.max(0, Math.min(1, ((p.x - a.x) * dx + (p.y - a.y) * dy) / length2));
  return hypot(p.x - a.x - s * dx, p.y - a.y - s * dy);
}
