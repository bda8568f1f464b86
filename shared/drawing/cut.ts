/**
 * The visible outline of metal: where pieces overlap only the edge of their union is drawn, and the paper's edge cuts it off. Each
 * curve is split where it meets another; a part is kept when exactly one side of it is inside.
 */
import { arcFaces, type Curve, curveLength, pointAt, tangentAt } from '../field/geometry/curve.ts';
import { meetings } from '../field/geometry/intersect.ts';
import type { Point } from '../field/geometry/outline.ts';
import { atan2, hypot } from '../field/maths.ts';

/** Distance from a curve at which its two sides are asked. Wider than the error of fine polygons. */
const ASIDE_mm = 0.01;
const NEAR_mm = 1e-6;

/** Parts of `curves` (a closed chain) that bound the set told by `inside`, as chains of curves that follow each other. */
export function visibleChains(
  curves: readonly Curve[],
  others: readonly Curve[],
  inside: (p: Point) => boolean,
): Curve[][] {
  const chains: Curve[][] = [];
  let open = false;
  for (const curve of curves) {
    for (const part of split(curve, others)) {
      const kept = bounds(part, inside);
      const chain = chains[chains.length - 1];
      if (kept && open && chain !== undefined) chain.push(part);
      else if (kept) chains.push([part]);
      open = kept;
    }
  }
  return joinedEnds(chains);
}

export const closes = (chain: readonly Curve[]): boolean => {
  const first = chain[0];
  const last = chain[chain.length - 1];
  return first !== undefined && last !== undefined && hypot(first.ax - last.bx, first.ay - last.by) < 1e-4;
};

/** A chain over the starting point of the outline comes in two: put them together. */
function joinedEnds(chains: readonly Curve[][]): Curve[][] {
  const first = chains[0];
  const last = chains[chains.length - 1];
  if (first === undefined || last === undefined || first === last) return [...chains];
  const a = first[0];
  const b = last[last.length - 1];
  if (a === undefined || b === undefined || hypot(a.ax - b.bx, a.ay - b.by) > 1e-4) return [...chains];
  return [...chains.slice(1, -1), [...last, ...first]];
}

function bounds(part: Curve, inside: (p: Point) => boolean): boolean {
  const p = pointAt(part, 0.5);
  const ahead = tangentAt(halved(part), 1);
  const length = hypot(ahead.x, ahead.y);
  if (length === 0) return false;
  const nx = (-ahead.y / length) * ASIDE_mm;
  const ny = (ahead.x / length) * ASIDE_mm;
  return inside({ x: p.x + nx, y: p.y + ny }) !== inside({ x: p.x - nx, y: p.y - ny });
}

const halved = (c: Curve): Curve => partOf(c, 0, 0.5);

function partOf(c: Curve, s: number, t: number): Curve {
  const a = s === 0 ? { x: c.ax, y: c.ay } : pointAt(c, s);
  const b = t === 1 ? { x: c.bx, y: c.by } : pointAt(c, t);
  return { ...c, ax: a.x, ay: a.y, bx: b.x, by: b.y, sweep: c.sweep * (t - s) };
}

function split(curve: Curve, others: readonly Curve[]): Curve[] {
  const length = curveLength(curve);
  if (length === 0) return [];
  const places = others
    .flatMap((other) => [...meetings(curve, other), { x: other.ax, y: other.ay }])
    .flatMap((p) => fractionAt(curve, p) ?? [])
    .filter((s) => s * length > NEAR_mm && (1 - s) * length > NEAR_mm)
    .sort((a, b) => a - b);
  const stops = [0, ...places.filter((s, i) => i === 0 || (s - (places[i - 1] ?? 0)) * length > NEAR_mm), 1];
  return stops.slice(1).map((t, i) => partOf(curve, stops[i] ?? 0, t));
}

/** Fraction of the curve at a point that lies on it; null for any other. */
function fractionAt(c: Curve, p: Point): number | null {
  if (c.sweep === 0) {
    const dx = c.bx - c.ax;
    const dy = c.by - c.ay;
    const s = ((p.x - c.ax) * dx + (p.y - c.ay) * dy) / (dx * dx + dy * dy);
    const off = Math.abs(dx * (p.y - c.ay) - dy * (p.x - c.ax)) / hypot(dx, dy);
    return s >= 0 && s <= 1 && off < NEAR_mm ? s : null;
  }
  if (Math.abs(hypot(p.x - c.cx, p.y - c.cy) - c.radius) > NEAR_mm || !arcFaces(c, p.x, p.y)) return null;
  const ux = c.ax - c.cx;
  const uy = c.ay - c.cy;
  const turned = atan2(ux * (p.y - c.cy) - uy * (p.x - c.cx), ux * (p.x - c.cx) + uy * (p.y - c.cy));
  const along = c.sweep > 0 ? turned : -turned;
  return (along < 0 ? along + 2 * Math.PI : along) / Math.abs(c.sweep);
}
