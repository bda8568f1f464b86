/** A probe tip as what it is, a small disc of metal: the domain is solved again with it. Exact wherever the tip stands, and slow. */
// Indices are bounded by construction throughout, hence `a[i]!`.
import type { FieldOutcome } from '../field.ts';
import { distanceToCurve, domainCurve } from '../geometry/curve.ts';
import type { Point } from '../geometry/outline.ts';
import { hypot } from '../maths.ts';
import { type Domain, type DomainEdge, INSULATING, type Loop } from '../problem.ts';

export interface Tip extends Point {
  readonly radius: number;
}

/** As far as a meter is concerned: see `PointResponse`. */
export interface TipResponse {
  readonly weights: Float64Array;
  readonly self_ohm: number;
}

/**
 * The tip becomes conductor number `domain.conductors`. A tip that touches metal is that metal; one that reaches over a straight
 * paper edge is cut off there. Null where it reaches over more than that, and where the domain with the tip cannot be solved.
 */
export function meshedTip(
  domain: Domain,
  tip: Tip,
  solve: (domain: Domain) => FieldOutcome,
): TipResponse | null {
  const touched = edgesWithin(domain, tip);
  const metal = touched.find(({ edge }) => edge.tag !== INSULATING);
  if (metal !== undefined) {
    const weights = new Float64Array(domain.conductors);
    weights[metal.edge.tag] = 1;
    return { weights, self_ohm: 0 };
  }
  const loops =
    touched.length === 0 ? [...domain.loops, discLoop(tip, domain.conductors)] : bitten(domain, tip, touched);
  if (loops === null) return null;
  const outcome = solve({ ...domain, loops, conductors: domain.conductors + 1 });
  return outcome.ok ? responseOf(outcome.field, domain.conductors) : null;
}

/** G of the tip's row: the tip at 1 V draws G_tt from itself and -G_tk from conductor k. */
function responseOf(
  field: { readonly upper_S: Float64Array; readonly lower_S: Float64Array; readonly gap: number },
  conductors: number,
): TipResponse {
  const row = conductors * (conductors + 1);
  const conductance = (k: number): number => {
    const upper = field.upper_S[row + k]!;
    return Number.isFinite(field.gap) ? (upper + field.lower_S[row + k]!) / 2 : upper;
  };
  const own = conductance(conductors);
  return {
    weights: Float64Array.from({ length: conductors }, (_, k) => -conductance(k) / own),
    self_ohm: 1 / own,
  };
}

interface TouchedEdge {
  readonly loop: number;
  readonly place: number;
  readonly edge: DomainEdge;
  readonly next: DomainEdge;
  readonly distance: number;
}

/** Narrower paper between tip and edge, as part of the radius, counts as none. */
const CLOSE = 0.02;

/** Edges that the tip reaches, nearest first. */
function edgesWithin(domain: Domain, tip: Tip): TouchedEdge[] {
  const found: TouchedEdge[] = [];
  domain.loops.forEach(({ edges }, loop) => {
    edges.forEach((edge, place) => {
      const next = edges[(place + 1) % edges.length]!;
      const distance = distanceToCurve(domainCurve(edge, next), tip.x, tip.y);
      if (distance <= tip.radius * (1 + CLOSE)) found.push({ loop, place, edge, next, distance });
    });
  });
  return found.sort((a, b) => a.distance - b.distance);
}

/** Clockwise: the paper is outside. */
function discLoop({ x, y, radius }: Tip, tag: number): Loop {
  const arc = { x, y, anticlockwise: false };
  return {
    edges: [
      { x: x + radius, y, arc, tag },
      { x: x - radius, y, arc, tag },
    ],
  };
}

/** The domain without a tip that lies across one straight edge, clear of its ends; the edge then runs around the tip. */
function bitten(domain: Domain, tip: Tip, touched: readonly TouchedEdge[]): Loop[] | null {
  const { loop, place, edge, next } = touched[0]!;
  if (touched.length > 1 || edge.arc !== null) return null;
  const length = hypot(next.x - edge.x, next.y - edge.y);
  const [ex, ey] = [(next.x - edge.x) / length, (next.y - edge.y) / length];
  const foot = (tip.x - edge.x) * ex + (tip.y - edge.y) * ey;
  const off = (tip.y - edge.y) * ex - (tip.x - edge.x) * ey;
  // Just clear of the edge: moved up to a chord of some width.
  const half = Math.sqrt(Math.max(tip.radius * tip.radius - off * off, (CLOSE * tip.radius) ** 2));
  const at = (along: number): Point => ({ x: edge.x + along * ex, y: edge.y + along * ey });
  const [from, to] = [at(foot - half), at(foot + half)];
  const radius = hypot(half, off);
  if (!(radius > 0)) return null;
  const bite: DomainEdge[] = [
    edge,
    { ...from, arc: { x: tip.x, y: tip.y, anticlockwise: false }, tag: domain.conductors },
    { ...to, arc: null, tag: edge.tag },
  ];
  return domain.loops.map((old, i) =>
    i === loop ? { edges: [...old.edges.slice(0, place), ...bite, ...old.edges.slice(place + 1)] } : old,
  );
}
