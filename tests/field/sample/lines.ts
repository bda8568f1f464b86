/** Looking at traced lines. */
import type { TracedLine } from '../../../shared/field/sample/traced-line.ts';

/** Points along a line, its chords cut to at most 0.2 mm, so that what lies between its own points is looked at too. */
export function along(line: TracedLine): [number, number][] {
  const found: [number, number][] = [];
  const n = line.points.length / 2;
  for (let i = 0; i + 1 < n + (line.closed ? 1 : 0); i++) {
    const j = (i + 1) % n;
    const [ax, ay] = [line.points[2 * i]!, line.points[2 * i + 1]!];
    const [bx, by] = [line.points[2 * j]!, line.points[2 * j + 1]!];
    const parts = Math.ceil(Math.hypot(bx - ax, by - ay) / 0.2) + 1;
    for (let k = 0; k <= parts; k++) found.push([ax + (k / parts) * (bx - ax), ay + (k / parts) * (by - ay)]);
  }
  return found;
}

/** Number of places where two different open lines cross. */
export function crossings(lines: readonly TracedLine[]): number {
  let found = 0;
  lines.forEach((a, i) => {
    for (const b of lines.slice(i + 1)) found += crossingsOf(a.points, b.points);
  });
  return found;
}

function crossingsOf(a: Float64Array, b: Float64Array): number {
  let found = 0;
  for (let i = 0; i + 3 < a.length; i += 2) {
    for (let k = 0; k + 3 < b.length; k += 2) {
      const side = (x: number, y: number, p: Float64Array, at: number): number =>
        (p[at + 2]! - p[at]!) * (y - p[at + 1]!) - (p[at + 3]! - p[at + 1]!) * (x - p[at]!);
      const apart = side(a[i]!, a[i + 1]!, b, k) * side(a[i + 2]!, a[i + 3]!, b, k);
      const across = side(b[k]!, b[k + 1]!, a, i) * side(b[k + 2]!, b[k + 3]!, a, i);
      if (apart < 0 && across < 0) found++;
    }
  }
  return found;
}

export function firstPoint({ points }: TracedLine): [number, number] {
  return [points[0]!, points[1]!];
}

export function lastPoint({ points }: TracedLine): [number, number] {
  return [points[points.length - 2]!, points[points.length - 1]!];
}
