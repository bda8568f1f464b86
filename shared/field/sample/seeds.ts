/** Where field lines start: at equal steps of current along the metal from which current flows. */
// Indices are bounded by construction throughout, hence `a[i]!`.
import { hypot } from '../maths.ts';
import type { Shore, SideEnds } from './shores.ts';

/** Current out of each side of a shore, A; negative where it flows in. */
export interface ShoreCurrent {
  readonly shore: Shore;
  readonly out: Float64Array;
  /** The side's ends on the paper. */
  readonly ends: readonly SideEnds[];
  /** Share of the side's current that flows before `share` of its length. */
  currentShare(side: number, share: number): number;
}

/** A start: `share` of the current of side `side` (number within its shore) flows before it. */
export interface Seed {
  readonly shore: Shore;
  readonly side: number;
  readonly share: number;
}

/** A stretch of a shore from which current flows, from cumulative current `from` to `from + current`; wraps on a closed shore. */
interface Source {
  readonly current: ShoreCurrent;
  readonly from: number;
  readonly firstSide: number;
  readonly lastSide: number;
  readonly amount: number;
}

export interface Seeding {
  readonly seeds: readonly Seed[];
  /** Current between neighbouring lines, A. */
  readonly step: number;
}

/**
 * `lines` seeds on the conductors whose net current is outwards, as many as fit the same step on all others. On every stretch the
 * seeds are one step apart and lie in its middle; where the stretch carries n steps exactly, the first is half a step in.
 */
export function seedsOn(currents: readonly ShoreCurrent[], lines: number): Seeding {
  const net = new Map<number, number>();
  for (const { shore, out } of currents) net.set(shore.conductor, (net.get(shore.conductor) ?? 0) + sum(out));
  const largest = Math.max(0, ...[...net.values()].map(Math.abs));
  const gives = ({ shore }: ShoreCurrent): boolean => net.get(shore.conductor)! > NET_NOISE * largest;
  const roughly = currents
    .filter(gives)
    .reduce((total, { out }) => total + sum(out.map((i) => Math.max(i, 0))), 0);
  if (!(roughly > 0) || lines < 1) return { seeds: [], step: 0 };
  const sources = currents.flatMap((current) => sourcesOf(current, (SLACK * roughly) / lines));
  const givers = sources.filter((source) => gives(source.current));
  const step = givers.reduce((total, source) => total + source.amount, 0) / lines;
  const shares = sharedOut(givers, lines, step);
  const seeds = sources.flatMap((source) =>
    seedsOf(source, shares.get(source) ?? Math.floor(source.amount / step + 0.5 - TIE), step),
  );
  return { seeds, step };
}

/** A net current below this part of the largest is that of a floating conductor. */
const NET_NOISE = 1e-5;
/** Counter-currents below this part of a line's current do not end a stretch. */
const SLACK = 0.02;
/** What is this near to half a line counts as less than half, whatever the last bits. */
const TIE = 1e-6;

/** Whole numbers of lines by largest remainder, so that all are given out. */
function sharedOut(givers: readonly Source[], lines: number, step: number): Map<Source, number> {
  const shares = new Map<Source, number>();
  let left = lines;
  for (const giver of givers) {
    const whole = Math.floor(giver.amount / step + TIE);
    shares.set(giver, whole);
    left -= whole;
  }
  const remainder = (giver: Source): number => giver.amount / step - shares.get(giver)!;
  const byRemainder = [...givers].sort((a, b) => {
    const difference = remainder(b) - remainder(a);
    return Math.abs(difference) < TIE ? 0 : difference;
  });
  for (const giver of byRemainder.slice(0, Math.max(left, 0))) shares.set(giver, shares.get(giver)! + 1);
  return shares;
}

/** Stretches of rising cumulative current, small dips of less than `slack` ignored. */
function sourcesOf(current: ShoreCurrent, slack: number): Source[] {
  const { shore, out } = current;
  const inwards = sum(out.map((i) => Math.max(-i, 0)));
  if (shore.closed && inwards <= slack) return [roundSource(current)];
  const first = shore.closed ? leastDense(current) : 0;
  const sources: Source[] = [];
  const n = out.length;
  let [sofar, low, high] = [0, 0, 0];
  let [lowAt, highAt] = [first, first];
  let rising = false;
  const close = (): void => {
    if (rising) sources.push({ current, from: low, firstSide: lowAt, lastSide: highAt, amount: high - low });
  };
  // Cumulative current counts from 0 at `first`; a source's own count starts at its first side.
  for (let i = first; i < first + n; i++) {
    sofar += out[i % n]!;
    if (rising ? sofar > high : sofar - low > slack) {
      rising = true;
      high = sofar;
      highAt = i + 1;
    } else if (rising ? high - sofar > slack : sofar < low) {
      close();
      rising = false;
      low = sofar;
      lowAt = i + 1;
    }
  }
  close();
  return sources.map((source) => ({ ...source, from: 0 }));
}

/** A closed shore that gives current all around: counted from its place of symmetry. */
function roundSource(current: ShoreCurrent): Source {
  const n = current.out.length;
  const { side, share } = symmetryStart(current);
  return {
    current,
    from: share * current.out[side]!,
    firstSide: side,
    lastSide: side + n + 1,
    amount: sum(current.out),
  };
}

/** The side into which most current flows for its length. */
function leastDense(current: ShoreCurrent): number {
  let best = 0;
  let least = Infinity;
  for (let i = 0; i < current.out.length; i++) {
    const dense = current.out[i]! / lengthOf(current.ends[i]!);
    if (dense < least) {
      least = dense;
      best = i;
    }
  }
  return best;
}

/** Centres nearer than this part of the shore's length count as one. */
const CENTRED = 1e-3;

/**
 * Where a shore's axis leaves it on the side of the weaker field. The axis runs from the outline's centre to that of the current; if
 * the setup is mirrored in a line, it is that line. With the two centres in one place: to the left.
 */
function symmetryStart(current: ShoreCurrent): { readonly side: number; readonly share: number } {
  const { ends, out } = current;
  const lengths = Float64Array.from(ends, lengthOf);
  const [cx, cy] = centreOf(ends, lengths);
  const [jx, jy] = centreOf(ends, out);
  let [ax, ay] = [jx - cx, jy - cy];
  if (Math.abs(ax) + Math.abs(ay) < CENTRED * sum(lengths)) [ax, ay] = [1, 0];
  let best = { side: 0, share: 0 };
  let least = Infinity;
  ends.forEach((end, side) => {
    const a = ax * (end.ay - cy) - ay * (end.ax - cx);
    const b = ax * (end.by - cy) - ay * (end.bx - cx);
    if (a > 0 === b > 0) return;
    const share = a / (a - b);
    const x = end.ax + share * (end.bx - end.ax) - cx;
    const y = end.ay + share * (end.by - end.ay) - cy;
    const ahead = ax * x + ay * y;
    if (ahead < least) {
      least = ahead;
      best = { side, share: current.currentShare(side, share) };
    }
  });
  return best;
}

/** Mean place of the sides, weighted. */
function centreOf(ends: readonly SideEnds[], weights: Float64Array): [number, number] {
  const total = sum(weights);
  const { ax: x0, ay: y0 } = ends[0]!;
  let [x, y] = [0, 0];
  ends.forEach(({ ax, ay, bx, by }, i) => {
    x += weights[i]! * ((ax + bx) / 2 - x0);
    y += weights[i]! * ((ay + by) / 2 - y0);
  });
  return [x0 + x / total, y0 + y / total];
}

function lengthOf({ ax, ay, bx, by }: SideEnds): number {
  return hypot(bx - ax, by - ay);
}

function seedsOf(source: Source, count: number, step: number): Seed[] {
  const { out, shore } = source.current;
  const n = out.length;
  const seeds: Seed[] = [];
  const first = source.from + (source.amount - (count - 1) * step) / 2;
  let side = source.firstSide;
  let before = 0;
  for (let j = 0; j < count; j++) {
    const wanted = first + j * step;
    while (side < source.lastSide - 1 && before + out[side % n]! < wanted) before += out[side++ % n]!;
    const share = (wanted - before) / out[side % n]!;
    seeds.push({ shore, side: side % n, share: Math.min(1, Math.max(0, share)) });
  }
  return seeds;
}

function sum(values: Float64Array): number {
  let total = 0;
  for (const value of values) total += value;
  return total;
}
