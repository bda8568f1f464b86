/** A lead drawn straight from point to point; over metal that it only crosses it hops in an arc, as crossing is not touching. */
import type { Point } from '../field/geometry/outline.ts';
import { hypot } from '../field/maths.ts';
import { at, line, polyline } from './marks.ts';
import { isMetal, type Page } from './page.ts';
import { between } from './polygon.ts';
import type { Item, PathPart } from './scene.ts';

/** An arc from p to q that stands off to the left by `height`. */
interface Hop {
  readonly p: Point;
  readonly q: Point;
  readonly height: number;
}

const STEP_mm = 0.25;
/** A hop begins and ends this far from the metal. */
const BEFORE_mm = 0.9;
const MOST_HEIGHT_mm = 2.4;
/** The metal's outline is left whole; the hatch inside it is wiped beside the arc. */
const INSIDE_mm = 0.7;

export function wire(page: Page, from: Point, to: Point): Item[] {
  const hops = hopsOf(page, from, to);
  if (hops.length === 0) return [line('lead', from, to)];
  const parts: PathPart[] = [{ to: 'move', x: from.x, y: from.y }];
  for (const { p, q, height } of hops) {
    parts.push({ to: 'line', x: p.x, y: p.y });
    parts.push({
      to: 'arc',
      x: q.x,
      y: q.y,
      radius: radiusOf(hypot(q.x - p.x, q.y - p.y), height),
      large: false,
      anticlockwise: false,
    });
  }
  parts.push({ to: 'line', x: to.x, y: to.y });
  return [...hops.flatMap((hop) => casings(page, hop)), { kind: 'path', style: 'lead', parts }];
}

/** Of the circle through both ends of a chord that stands off by `height`. */
const radiusOf = (chord: number, height: number): number => (chord * chord) / (8 * height) + height / 2;

function hopsOf(page: Page, from: Point, to: Point): Hop[] {
  const length = hypot(to.x - from.x, to.y - from.y);
  const place = (s: number): Point =>
    at(from.x + ((to.x - from.x) * s) / length, from.y + ((to.y - from.y) * s) / length);
  const way = between(from, to, STEP_mm);
  const step = length / way.length;
  const spans: { start: number; end: number }[] = [];
  for (const [i, p] of way.entries()) {
    const last = spans[spans.length - 1];
    if (!isMetal(page, p)) continue;
    const start = Math.max(0, i * step - BEFORE_mm);
    const end = Math.min(length, i * step + BEFORE_mm);
    if (last !== undefined && start <= last.end + step) last.end = end;
    else spans.push({ start, end });
  }
  return spans.map(({ start, end }) => ({
    p: place(start),
    q: place(end),
    height: Math.min(MOST_HEIGHT_mm, (end - start) / 2),
  }));
}

function casings(page: Page, { p, q, height }: Hop): Item[] {
  const chord = hypot(q.x - p.x, q.y - p.y);
  const radius = radiusOf(chord, height);
  const u = at((q.x - p.x) / chord, (q.y - p.y) / chord);
  const arc = between(at(-chord / 2, 0), at(chord / 2, 0), STEP_mm).map(({ x }) => {
    const along = x + chord / 2;
    const off = Math.sqrt(Math.max(0, radius * radius - x * x)) - (radius - height);
    return at(p.x + u.x * along - u.y * off, p.y + u.y * along + u.x * off);
  });
  const inside = arc.filter((r) =>
    [-INSIDE_mm, INSIDE_mm].every((by) => isMetal(page, at(r.x + u.x * by, r.y + u.y * by))),
  );
  return inside.length < 2 ? [] : [polyline('casing', inside)];
}
