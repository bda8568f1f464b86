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
