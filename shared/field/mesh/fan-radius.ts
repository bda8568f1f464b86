/** How large a fan each singular corner can bear. */
import { type Curve, curveLength, distanceToCurve, pointAt, straight } from '../geometry/curve.ts';
import { gapBetween } from '../geometry/distance.ts';
import { exp, hypot, log } from '../maths.ts';
import { type Boundary, type Corner, EXACT, REACH, reachOf, sameKind } from './corners.ts';

/** Corners below this (rad) are wedges. */
const NARROW = 0.3;

/**
 * Allowed relative change of the energy around one corner where a fan's straight ray stands in for the first piece of an arc.
 * With distance n(r) = r (ρ - r)/2R between chord and arc, the change is ∫ |grad V|² n dr; against the energy within the corner's
 * surroundings ℓ that makes λ/(2π (2λ + 1)) (ρ/ℓ)^2λ ρ/R for each ray.
 */
export const CHORD_ALLOWANCE = 1e-9;

/** Rim radius for every corner, mm: one for all corners of a place. */
export function fanRadii(boundary: Boundary, corners: readonly Corner[], size_mm: number): number[] {
  const smallest = new Map<number, number>();
  const members = new Map<number, Set<number>>();
  for (const { edge, place } of corners) {
    const set = members.get(place) ?? new Set<number>();
    members.set(place, set.add(edge).add(boundary.previous[edge] ?? edge));
  }
  for (const corner of corners) {
    const incident = members.get(corner.place) as Set<number>;
    const clear = corner.angle < NARROW ? narrowClearance : clearance;
    const radius = arcLimit(boundary, corner, clear(boundary, corner, incident, size_mm));
    smallest.set(corner.place, Math.min(radius, smallest.get(corner.place) ?? Infinity));
  }
  return corners.map(({ place }) => smallest.get(place) as number);
}

function clearance(
  boundary: Boundary,
  corner: Corner,
  incident: ReadonlySet<number>,
  size_mm: number,
): number {
  const { ax: x, ay: y } = boundary.curves[corner.edge] as Curve;
  let radius = 0.6 * size_mm;
  boundary.curves.forEach((curve, i) => {
    if (incident.has(i)) {
      radius = Math.min(radius, REACH * reachOf(curve));
      return;
    }
    if (boxDistance(curve, x, y) * REACH >= radius) return;
    const distance = distanceToCurve(curve, x, y);
    if (distance > EXACT) radius = Math.min(radius, REACH * distance);
  });
  return radius;
}

/**
 * A narrow corner looks into a slender wedge, and what lies behind the wedge's sides does not matter: other things need only stay
 * farther from the wedge's middle line than the wedge is wide.
 */
function narrowClearance(
  boundary: Boundary,
  corner: Corner,
  incident: ReadonlySet<number>,
  size_mm: number,
): number {
  const leaving = boundary.curves[corner.edge] as Curve;
  const arriving = boundary.curves[boundary.previous[corner.edge] ?? corner.edge] as Curve;
  const around = clearance(boundary, corner, incident, size_mm);
  let radius = Math.min(0.6 * size_mm, REACH * reachOf(leaving), REACH * reachOf(arriving));
  for (; radius > around; radius /= 2) {
    const p = pointAt(leaving, radius / curveLength(leaving));
    const q = pointAt(arriving, 1 - radius / curveLength(arriving));
    const width = hypot(p.x - q.x, p.y - q.y);
    const middle = straight({ x: leaving.ax, y: leaving.ay }, { x: (p.x + q.x) / 2, y: (p.y + q.y) / 2 });
    const free = boundary.curves.every(
      (curve, i) => incident.has(i) || gapBetween(middle, curve).gap > width,
    );
    if (free && width < NARROW * radius) return radius;
  }
  return around;
}

/** A lower bound of the distance, cheap. */
function boxDistance(c: Curve, x: number, y: number): number {
  if (c.sweep !== 0) return Math.abs(hypot(x - c.cx, y - c.cy) - c.radius);
  const dx = Math.max(Math.min(c.ax, c.bx) - x, x - Math.max(c.ax, c.bx), 0);
  const dy = Math.max(Math.min(c.ay, c.by) - y, y - Math.max(c.ay, c.by), 0);
  return Math.max(dx, dy);
}

/**
 * The radius at which straight rays in place of the corner's arcs stay within CHORD_ALLOWANCE. Between edges that leave in nearly one
 * direction the gap grows like w = κx²/2, where κ is the curvature between them, and the field dies out inwards like
 * exp(-∫ π/w dx), between metal and a bare edge like exp(-∫ π/2w dx): as soon as its energy is within the allowance, any shape will do.
 */
function arcLimit(boundary: Boundary, corner: Corner, radius: number): number {
  const { edge, angle, exponent: l } = corner;
  const leaving = curvature(boundary.curves[edge] as Curve);
  const arriving = -curvature(boundary.curves[boundary.previous[edge] ?? edge] as Curve);
  const bend = Math.abs(leaving) + Math.abs(arriving);
  if (bend === 0) return radius;
  const opening = arriving - leaving;
  const rate = sameKind(boundary, edge) ? 4 * Math.PI : 2 * Math.PI;
  const dying = 1 / (1 / radius - (log(CHORD_ALLOWANCE) * opening) / rate);
  if (opening > 0 && dying * opening > 2 * angle) return dying;
  const surroundings = radius / REACH;
  const share = (l * bend) / (2 * Math.PI * (2 * l + 1));
  const slight = exp((log(CHORD_ALLOWANCE / share) + 2 * l * log(surroundings)) / (2 * l + 1));
  return Math.min(slight, angle / (2 * bend));
}

/** Positive for an anticlockwise arc, 0 for a straight edge, 1/mm. */
function curvature(c: Curve): number {
  return c.sweep === 0 ? 0 : Math.sign(c.sweep) / c.radius;
}
