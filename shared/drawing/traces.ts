/** Traced lines brought to the page: scaled, thinned to what can be seen, measured along. */
import type { Point } from '../field/geometry/outline.ts';
import { hypot } from '../field/maths.ts';
import type { TracedLine } from '../field/sample/traced-line.ts';

/** No point that is left out lies further from the line that is drawn. */
const THINNED_mm = 0.015;

export function pagePoints(line: TracedLine, scale: number): Point[] {
  const points: Point[] = [];
  for (let i = 0; i + 1 < line.points.length; i += 2) {
    points.push({ x: (line.points[i] ?? 0) * scale, y: (line.points[i + 1] ?? 0) * scale });
  }
  const first = points[0];
  const last = points[points.length - 1];
  if (line.closed && first && last && (first.x !== last.x || first.y !== last.y)) points.push(first);
  return points;
}

/** Fewer points on the same line: the farthest from each chord is kept until none is far. */
export function thinned(points: readonly Point[]): Point[] {
  const kept = new Set([0, points.length - 1]);
  const spans: [number, number][] = [[0, points.length - 1]];
  for (let span = spans.pop(); span !== undefined; span = spans.pop()) {
    const [i, j] = span;
    const far = farthest(points, i, j);
    if (far === null) continue;
    kept.add(far);
    spans.push([i, far], [far, j]);
  }
  return points.filter((_, i) => kept.has(i));
}

function farthest(points: readonly Point[], i: number, j: number): number | null {
  const a = points[i];
  const b = points[j];
  if (a === undefined || b === undefined) return null;
  const length = hypot(b.x - a.x, b.y - a.y);
  let far: number | null = null;
  let most = THINNED_mm;
  for (let k = i + 1; k < j; k++) {
    const p = points[k] ?? a;
    const off =
      length < 1e-9
        ? hypot(p.x - a.x, p.y - a.y)
        : Math.abs((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x)) / length;
    if (off <= most) continue;
    far = k;
    most = off;
  }
  return far;
}

export interface Station {
  readonly p: Point;
  /** Unit vector along the line. */
  readonly u: Point;
}

/** Places along a line at equal distances of about `step`: half a step from its ends, or once round. */
export function stations(points: readonly Point[], step: number): Station[] {
  const total = lengthOf(points);
  const count = Math.max(1, Math.round(total / step));
  const wanted = Array.from({ length: count }, (_, i) => ((i + 0.5) * total) / count);
  const found: Station[] = [];
  let passed = 0;
  for (let i = 0; i + 1 < points.length; i++) {
    const a = points[i];
    const b = points[i + 1];
    if (a === undefined || b === undefined) continue;
    const length = hypot(b.x - a.x, b.y - a.y);
    while (length > 0 && found.length < count && (wanted[found.length] ?? 0) <= passed + length) {
      const s = ((wanted[found.length] ?? 0) - passed) / length;
      found.push({
        p: { x: a.x + s * (b.x - a.x), y: a.y + s * (b.y - a.y) },
        u: { x: (b.x - a.x) / length, y: (b.y - a.y) / length },
      });
    }
    passed += length;
  }
  return found;
}

export function lengthOf(points: readonly Point[]): number {
  return points.reduce((sum, p, i) => {
    const before = points[i - 1];
    return before === undefined ? 0 : sum + hypot(p.x - before.x, p.y - before.y);
  }, 0);
}
