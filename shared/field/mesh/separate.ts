/** Divides the chords of arcs, there and only there where the sliver between chord and arc would meet another part of the boundary. */
import { type Curve, pointAt } from '../geometry/curve.ts';
import type { Point } from '../geometry/outline.ts';
import { cos, hypot } from '../maths.ts';

/** A straight piece of the boundary; for an arc, the chord over [start, end] of it (fractions of its length). */
export interface Chord {
  readonly from: Point;
  readonly to: Point;
  readonly side: number;
  readonly curve: Curve | null;
  readonly start: number;
  readonly end: number;
}

/** Slivers keep this much of their height between them. */
const MARGIN = 1.5;
/** Halving stops at slivers of this height, mm. */
const FLAT = 1e-9;
const ROUNDS = 24;

export function separate(chords: readonly Chord[]): readonly Chord[] {
  let now = chords;
  for (let round = 0; round < ROUNDS; round++) {
    const crowded = crowdedChords(now);
    if (crowded.size === 0) break;
    const halved: Chord[] = [];
    now.forEach((chord, i) => {
      if (crowded.has(i)) halved.push(...halves(chord));
      else halved.push(chord);
    });
    now = halved;
  }
  return now;
}

function halves(chord: Chord): Chord[] {
  const { curve, start, end } = chord;
  if (!curve) return [chord];
  const middle = (start + end) / 2;
  const point = pointAt(curve, middle);
  return [
    { ...chord, to: point, end: middle },
    { ...chord, from: point, start: middle },
  ];
}

/** Height of the arc over its chord. */
function height(chord: Chord): number {
  if (!chord.curve) return 0;
  return chord.curve.radius * (1 - cos((Math.abs(chord.curve.sweep) * (chord.end - chord.start)) / 2));
}

/** Sweeps the chords' boxes from left to right; of two that crowd each other the higher one is named. */
function crowdedChords(chords: readonly Chord[]): Set<number> {
  const heights = chords.map(height);
  const left = chords.map(({ from, to }, i) => Math.min(from.x, to.x) - MARGIN * (heights[i] ?? 0));
  const right = chords.map(({ from, to }, i) => Math.max(from.x, to.x) + MARGIN * (heights[i] ?? 0));
  const low = chords.map(({ from, to }, i) => Math.min(from.y, to.y) - MARGIN * (heights[i] ?? 0));
  const high = chords.map(({ from, to }, i) => Math.max(from.y, to.y) + MARGIN * (heights[i] ?? 0));
  const order = chords.map((_, i) => i).sort((a, b) => left[a]! - left[b]! || a - b);
  const crowded = new Set<number>();
  for (let k = 0; k < order.length; k++) {
    const i = order[k]!;
    for (let l = k + 1; l < order.length; l++) {
      const j = order[l]!;
      if (left[j]! > right[i]!) break;
      if (low[j]! > high[i]! || low[i]! > high[j]!) continue;
      const worse = heights[j]! > heights[i]! ? j : i;
      if (heights[worse]! <= FLAT || crowded.has(worse)) continue;
      const room = MARGIN * (heights[i]! + heights[j]!);
      if (!meet(chords[i]!, chords[j]!) && chordDistance(chords[i]!, chords[j]!) < room) crowded.add(worse);
    }
  }
  return crowded;
}

function meet(a: Chord, b: Chord): boolean {
  return same(a.from, b.from) || same(a.from, b.to) || same(a.to, b.from) || same(a.to, b.to);
}

function same(p: Point, q: Point): boolean {
  return Math.abs(p.x - q.x) < FLAT && Math.abs(p.y - q.y) < FLAT;
}

/** Distance between two straight pieces, 0 where they cross. */
function chordDistance(a: Chord, b: Chord): number {
  const s1 = turn(a.from, a.to, b.from);
  const s2 = turn(a.from, a.to, b.to);
  const s3 = turn(b.from, b.to, a.from);
  const s4 = turn(b.from, b.to, a.to);
  if (s1 * s2 < 0 && s3 * s4 < 0) return 0;
  return Math.min(toChord(a, b.from), toChord(a, b.to), toChord(b, a.from), toChord(b, a.to));
}

function turn(a: Point, b: Point, c: Point): number {
  return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

function toChord({ from, to }: Chord, p: Point): number {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const length2 = dx * dx + dy * dy;
  const s = length2 > 0 ? ((p.x - from.x) * dx + (p.y - from.y) * dy) / length2 : 0;
  const t = Math.max(0, Math.min(1, s));
  return hypot(p.x - from.x - t * dx, p.y - from.y - t * dy);
}
