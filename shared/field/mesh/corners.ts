/**
 * The corners of the paper, and which of them make the field singular.
 *
 * Near a corner of angle w the potential goes like r^λ sin(λθ), with λ = π/w between boundaries of one kind and λ = π/(2w) between
 * metal and a bare edge. Whole λ gives a smooth field; every other corner gets a fan.
 */
import { type Curve, curveLength, domainCurve, pointAt, tangentAt } from '../geometry/curve.ts';
import { atan2, hypot } from '../maths.ts';
import type { Domain } from '../problem.ts';

/** Boundary of the paper, edge by edge; the paper is on the left of every curve. */
export interface Boundary {
  readonly curves: readonly Curve[];
  readonly tags: readonly number[];
  /** Edges that leave one and the same point share the lowest of their numbers. */
  readonly places: readonly number[];
  /** For each edge, the one that arrives where it leaves and bounds the same corner. */
  readonly previous: readonly number[];
}

/** A corner is named by the edge that leaves it. */
export interface Corner {
  readonly edge: number;
  /** Angle that the paper fills, rad, by the tangents. */
  readonly angle: number;
  /** Leading exponent λ of the potential. */
  readonly exponent: number;
  readonly place: number;
}

/** Fans reach this far towards the nearest other thing; two facing each other leave room for a triangle. */
export const REACH = 0.42;
/** A bend below this (rad) does no harm that the polynomials do not take. */
const NEARLY_STRAIGHT = 1e-3;
export const EXACT = 1e-9;
/** What a cusp's angle of nothing counts as, rad. */
const CUSP_ANGLE = 1e-7;
const FULL_TURN = 2 * Math.PI;

export function boundaryOf(domain: Domain): Boundary {
  const curves: Curve[] = [];
  const tags: number[] = [];
  const previous: number[] = [];
  for (const { edges } of domain.loops) {
    const first = curves.length;
    edges.forEach((edge, i) => {
      curves.push(domainCurve(edge, edges[i + 1] ?? edges[0] ?? edge));
      tags.push(edge.tag);
      previous.push(first + ((i + edges.length - 1) % edges.length));
    });
  }
  const places = cornerPlaces(curves);
  return { curves, tags, places, previous: linkedByCorner(curves, places, previous) };
}

/**
 * Where several corners share a point, each leaving edge belongs with the arriving edge that comes next anticlockwise, whichever loops
 * the two are listed in.
 */
function linkedByCorner(
  curves: readonly Curve[],
  places: readonly number[],
  listed: readonly number[],
): readonly number[] {
  const members = new Map<number, number[]>();
  places.forEach((place, edge) => {
    members.set(place, [...(members.get(place) ?? []), edge]);
  });
  const linked = [...listed];
  for (const leaving of members.values()) {
    if (leaving.length === 1) continue;
    const arriving = leaving.map((edge) => listed[edge] ?? edge);
    const best = leaving.map((edge) => {
      const turns = arriving.map((other) => turnBetween(curves[edge] as Curve, curves[other] as Curve, 1));
      return arriving[turns.indexOf(Math.min(...turns))] ?? edge;
    });
    if (new Set(best).size < best.length) continue;
    leaving.forEach((edge, i) => {
      linked[edge] = best[i] ?? edge;
    });
  }
  return linked;
}

/** All corners that need a fan. Where one corner at a point needs one, all corners at that point get one. */
export function singularCorners(boundary: Boundary, sheet_ohm: readonly [number, number]): Corner[] {
  const corners = boundary.curves.map((_, edge) => cornerOf(boundary, edge, sheet_ohm));
  const wanted = new Set<number>();
  for (const corner of corners) if (isSingular(corner, boundary, sheet_ohm)) wanted.add(corner.place);
  return corners.filter((corner) => wanted.has(corner.place));
}

function cornerPlaces(curves: readonly Curve[]): number[] {
  const seen = new Map<string, number>();
  return curves.map((curve, edge) => {
    const key = `${Math.round(curve.ax * 1e9)},${Math.round(curve.ay * 1e9)}`;
    const place = seen.get(key) ?? edge;
    seen.set(key, place);
    return place;
  });
}

function cornerOf(boundary: Boundary, edge: number, sheet_ohm: readonly [number, number]): Corner {
  const stretched = cornerAngle(boundary, edge, stretchOf(sheet_ohm));
  return {
    edge,
    place: boundary.places[edge] ?? edge,
    angle: cornerAngle(boundary, edge, 1),
    exponent: Math.PI / (sameKind(boundary, edge) ? stretched : 2 * stretched),
  };
}

export function sameKind(boundary: Boundary, edge: number): boolean {
  const before = boundary.tags[boundary.previous[edge] ?? edge] ?? -1;
  return before >= 0 === (boundary.tags[edge] ?? -1) >= 0;
}

function isSingular(corner: Corner, boundary: Boundary, sheet_ohm: readonly [number, number]): boolean {
  if (isShort(boundary, corner.edge)) return true;
  const angle = cornerAngle(boundary, corner.edge, stretchOf(sheet_ohm));
  if (Math.abs(angle - Math.PI / 2) < EXACT) return false;
  return !(sameKind(boundary, corner.edge) && Math.abs(angle - Math.PI) < NEARLY_STRAIGHT);
}

/** Two conductors meet: the fan's tags show it, whatever the angle. */
function isShort({ tags, previous }: Boundary, edge: number): boolean {
  const before = tags[previous[edge] ?? edge] ?? -1;
  const tag = tags[edge] ?? -1;
  return before >= 0 && tag >= 0 && before !== tag;
}

/** Corners are judged in the plane where the sheet conducts alike in all directions: x stretched against y by this. */
function stretchOf([rx, ry]: readonly [number, number]): number {
  return rx === ry ? 1 : Math.sqrt(rx / ry);
}

function cornerAngle(boundary: Boundary, edge: number, stretch: number): number {
  const leaving = boundary.curves[edge] as Curve;
  const arriving = boundary.curves[boundary.previous[edge] ?? edge] as Curve;
  return turnBetween(leaving, arriving, stretch);
}

/** Angle from the leaving edge anticlockwise to the arriving one, in (0, 2π]. */
function turnBetween(leaving: Curve, arriving: Curve, stretch: number): number {
  const out = tangentAt(leaving, 0);
  const back = tangentAt(arriving, 1);
  const ax = out.x * stretch;
  const bx = -back.x * stretch;
  const angle = atan2(-ax * back.y - out.y * bx, ax * bx - out.y * back.y);
  if (Math.abs(angle) >= NEARLY_STRAIGHT) return angle < 0 ? angle + FULL_TURN : angle;
  const bent = leaving.sweep !== 0 || arriving.sweep !== 0;
  const open = bent ? cuspIsOpen(leaving, arriving) : angle > 0;
  return open ? Math.max(angle, CUSP_ANGLE) : FULL_TURN + Math.min(0, angle);
}

/**
 * Two edges leave in nearly one direction, one of them an arc, and rounding decides nothing: paper lies between them if at some
 * distance the arriving one, seen from the corner, has kept to the left.
 */
function cuspIsOpen(leaving: Curve, arriving: Curve): boolean {
  const reach = REACH * Math.min(reachOf(leaving), reachOf(arriving));
  const p = pointAt(leaving, reach / curveLength(leaving));
  const q = pointAt(arriving, 1 - reach / curveLength(arriving));
  const { ax: x, ay: y } = leaving;
  return (p.x - x) * (q.y - y) - (p.y - y) * (q.x - x) > 0;
}

/** How far from its ends a curve is a fair picture of its direction there. */
export function reachOf(curve: Curve): number {
  if (curve.sweep === 0) return curveLength(curve);
  const chord = hypot(curve.bx - curve.ax, curve.by - curve.ay);
  return chord > 0 ? Math.min(curve.radius, chord) : curve.radius;
}
