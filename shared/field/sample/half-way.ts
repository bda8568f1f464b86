/** Puts a point at the half-way potential into a field line, for its barb. */
// Indices are bounded by construction throughout, hence `a[i]!`.
import type { Sampler } from './sampler.ts';
import type { FieldLine, TracedLine } from './traced-line.ts';

/** Part of a line's own drop within which the setup's half-way potential must lie to be used for it. */
const INNER = 0.1;

/**
 * The half-way potential is the middle between the highest and the lowest conductor, so that all barbs stand on one equipotential; a
 * line that does not cross it, or only at an end, takes the middle of its own drop.
 */
export function withHalfWay(line: TracedLine, potential: Sampler, conductors_V: Float64Array): FieldLine {
  const { points } = line;
  const last = points.length / 2 - 1;
  const at = (x: number, y: number): number | null => potential.at(x, y)?.value ?? null;
  const atPoint = (i: number): number => at(points[2 * i]!, points[2 * i + 1]!) ?? NaN;
  // The line's ends lie on metal, to rounding; they are told by the nearest conductor potential.
  const high = nearest(conductors_V, atPoint(0), 'highest');
  const low = nearest(conductors_V, atPoint(last), 'lowest');
  const common = (Math.max(...conductors_V) + Math.min(...conductors_V)) / 2;
  const inner = INNER * (high - low);
  const wanted = common < high - inner && common > low + inner ? common : (high + low) / 2;
  let [from, to] = [0, last];
  while (to - from > 1) {
    const middle = Math.floor((from + to) / 2);
    if (atPoint(middle) >= wanted) from = middle;
    else to = middle;
  }
  const share = shareOfChord(line, at, from, wanted);
  const x = points[2 * from]! + share * (points[2 * to]! - points[2 * from]!);
  const y = points[2 * from + 1]! + share * (points[2 * to + 1]! - points[2 * from + 1]!);
  const longer = new Float64Array(points.length + 2);
  longer.set(points.subarray(0, 2 * to));
  longer.set([x, y], 2 * to);
  longer.set(points.subarray(2 * to), 2 * to + 2);
  return { points: longer, closed: false, half: to };
}

/** Bisection along the chord from point `from` to the next: the potential falls along a field line. */
function shareOfChord(
  { points }: TracedLine,
  at: (x: number, y: number) => number | null,
  from: number,
  wanted: number,
): number {
  const [ax, ay] = [points[2 * from]!, points[2 * from + 1]!];
  const [bx, by] = [points[2 * from + 2]!, points[2 * from + 3]!];
  let [low, high] = [0, 1];
  for (let step = 0; step < 24; step++) {
    const middle = (low + high) / 2;
    const value = at(ax + middle * (bx - ax), ay + middle * (by - ay));
    if (value === null) break;
    if (value >= wanted) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

function nearest(potentials: Float64Array, value: number, otherwise: 'highest' | 'lowest'): number {
  if (Number.isNaN(value)) return otherwise === 'highest' ? Math.max(...potentials) : Math.min(...potentials);
  let best = potentials[0]!;
  for (const potential of potentials)
    if (Math.abs(potential - value) < Math.abs(best - value)) best = potential;
  return best;
}
