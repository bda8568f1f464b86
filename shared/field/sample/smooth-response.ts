/** The answer at a point where the tip's own field can be taken out in closed form and only a smooth rest is left to solve for. */
// Indices are bounded by construction throughout, hence `a[i]!`.
import type { Point } from '../geometry/outline.ts';
import { hypot } from '../maths.ts';
import type { PrimalSystem, Space } from '../solve/discrete.ts';
import { gaussRule, lagrangeTable } from '../solve/gauss.ts';
import type { Place } from './locate.ts';
import type { Tip, TipResponse } from './meshed-tip.ts';
import type { BorderSide } from './neighbourhood.ts';
import { PatchScalar } from './patch-scalar.ts';
import { type PatchShape, Spot } from './patch-shape.ts';
import { TRIANGLE } from './patches.ts';
import { PointSource, type Sigma, withImages } from './point-source.ts';
import { clearPatch, isotropyOf, type TipPatch, type Tools, toolsOf } from './tip-patch.ts';
import { type Regular, rimOf, settled } from './tip-rim.ts';

/** The point current that stands for the tip is moved once to where its surroundings draw it, if by more than this part of the radius. */
const STILL = 2e-4;

/** Null where the point is not on bare paper, or where boundaries or corners are too near: there, mesh the tip. */
export function smoothResponse(primal: PrimalSystem, tip: Tip): TipResponse | null {
  const tools = toolsOf(primal);
  const place = tools.locate(tip.x, tip.y);
  if (place === null || tools.shape.patches.kind[place.patch] !== TRIANGLE) return null;
  const patch = clearPatch(primal, tools, place.patch, tip);
  if (patch === null) return null;
  const rim = rimOf(tip, isotropyOf(primal), patch.mirrors);
  const first = settled(rim, null).centre;
  const around = aroundCurrent(primal, tools, patch, first);
  if (around === null) return null;
  const { centre, potential_ohm } = settled(rim, around.w);
  const moved = hypot(centre.x - first.x, centre.y - first.y);
  if (!(moved > STILL * tip.radius)) return { weights: around.into_A, self_ohm: potential_ohm };
  const again = aroundCurrent(primal, tools, patch, centre);
  return again === null ? null : { weights: again.into_A, self_ohm: settled(rim, again.w).potential_ohm };
}

/**
 * Green's function of a point current by subtraction of its singularity s, images included. In the patch P
 *   u = w + s,
 * and for every test function v
 *   ∫_Ω\P σ∇u·∇v + ∫_P σ∇w·∇v = -∫_∂P (σ∇s·n) v.
 * The unknowns are u on and outside ∂P, w inside, so that a node of ∂P brings its s to the right-hand side. Currents into the
 * grounded conductors are the weights, by reciprocity. Null where the current would stand outside P.
 */
function aroundCurrent(
  primal: PrimalSystem,
  { shape, locate }: Tools,
  { inside, border, mirrors }: TipPatch,
  at: Point,
): { readonly w: Regular; readonly into_A: Float64Array } | null {
  const place = locate(at.x, at.y);
  if (place === null || !inside.has.has(place.patch)) return null;
  const sigma = isotropyOf(primal);
  const source = new PointSource(sigma, withImages(sigma, { x: at.x, y: at.y, amount: 1 }, mirrors) ?? []);
  const { load, onBorder } = loadOf(primal, shape, { inside, border, source });
  const { nodal, into_A } = primal.solveGrounded(load, place.patch);
  // Inside the current's own triangle: w from u where nodes lie on the border.
  const singular = onBorder.get(place.patch);
  if (singular !== undefined) for (let i = 0; i < nodal.length; i++) nodal[i]! -= singular[i]!;
  const w = { space: primal.space, triangle: () => nodal, fanLayer: () => nodal };
  return { w: regularPart(new PatchScalar(w, shape.patches), place, sigma), into_A };
}

/** Step of the difference quotient for the second derivative, in (u, v). */
const BEND_STEP = 1e-3;

/** The smooth remainder w about a place. */
function regularPart(w: PatchScalar, { patch, u, v }: Place, [sx, sy]: Sigma): Regular {
  const spot = new Spot();
  w.look(patch, u, v, spot);
  const { x, y, value, gx, gy, xu, xv, yu, yv } = spot;
  // A step along x in (u, v).
  const [du, dv] = [yv, -yu];
  const size = BEND_STEP / (Math.abs(du) + Math.abs(dv));
  w.look(patch, u + size * du, v + size * dv, spot);
  const ahead = spot.gx;
  w.look(patch, u - size * du, v - size * dv, spot);
  const dx = 2 * size * (xu * yv - xv * yu);
  const bend = (sx * (ahead - spot.gx)) / dx;
  return { x, y, value, gradX: Math.sqrt(sx) * gx, gradY: Math.sqrt(sy) * gy, bend };
}

interface Patch {
  readonly inside: TipPatch['inside'];
  readonly border: readonly BorderSide[];
  readonly source: PointSource;
}

interface PatchLoad {
  readonly load: Float64Array;
  /** By triangle of P: s at its nodes on ∂P, zero at others. */
  readonly onBorder: ReadonlyMap<number, Float64Array>;
}

function loadOf(primal: PrimalSystem, shape: PatchShape, patch: Patch): PatchLoad {
  const { reference } = primal.space;
  const load = primal.newLoad();
  const onBorder = singularOnBorder(primal, shape, patch);
  for (const [triangle, values] of onBorder) {
    const stiffness = primal.stiffness(triangle);
    const local = new Float64Array(reference.count);
    for (let j = 0; j < local.length; j++) {
      if (values[j] === 0) continue;
      for (let i = 0; i < local.length; i++) local[i]! += stiffness[i * local.length + j]! * values[j]!;
    }
    primal.addToTriangle(load, triangle, local);
  }
  const rule = sideRule(primal.space);
  for (const side of patch.border) {
    const flux =
      side.beyond === 'metal'
        ? fluxIntoMetal(primal.space, shape, side, patch.source)
        : fluxThrough(rule, shape, side, patch.source);
    primal.addToTriangle(load, side.triangle, flux);
  }
  return { load, onBorder };
}

/** Quadrature along a side, and the test functions there. */
interface SideRule {
  readonly space: Space;
  readonly points: Float64Array;
  readonly weights: Float64Array;
  /** Values of the side's nodes' functions, point by point. */
  readonly values: Float64Array;
}

function sideRule(space: Space): SideRule {
  const { points, weights } = gaussRule(space.reference.order + 12);
  return { space, points, weights, values: lagrangeTable(space.edgeNodes, points).values };
}

/**
 * s at the nodes of ∂P, in every triangle of P that has some. Nodes on the paper's insulating edge stay w; they belong to no triangle
 * outside P, unless they are also corners of a side with paper beyond.
 */
function singularOnBorder(
  primal: PrimalSystem,
  shape: PatchShape,
  { inside, border, source }: Patch,
): Map<number, Float64Array> {
  const { mesh, reference } = primal.space;
  const shared = new Set<number>();
  const values = new Map<number, Float64Array>();
  const spot = new Spot();
  const set = (triangle: number, node: number): void => {
    let own = values.get(triangle);
    if (own === undefined) {
      own = new Float64Array(reference.count);
      values.set(triangle, own);
    }
    shape.place(triangle, reference.r[node]!, reference.s[node]!, spot);
    own[node] = source.value(spot.x, spot.y);
  };
  for (const { triangle, from, beyond } of border) {
    if (beyond === 'edge') continue;
    for (const node of nodesOfSide(reference.order, from)) set(triangle, node);
    shared.add(mesh.corners[3 * triangle + from]!);
    shared.add(mesh.corners[3 * triangle + ((from + 1) % 3)]!);
  }
  // Triangles that touch ∂P in a corner only.
  for (const triangle of inside.triangles) {
    for (let j = 0; j < 3; j++) if (shared.has(mesh.corners[3 * triangle + j]!)) set(triangle, j);
  }
  return values;
}

/** Local numbers of the nodes from corner `from` to the next, both included. */
function nodesOfSide(order: number, from: number): number[] {
  const inner = Array.from({ length: order - 1 }, (_, i) => 3 + from * (order - 1) + i);
  return [from, ...inner, (from + 1) % 3];
}

/** -∫ (σ∇s·n) v along a side, n ds = (dy, -dx). */
function fluxThrough(
  { space: { reference }, points, weights, values }: SideRule,
  shape: PatchShape,
  side: BorderSide,
  source: PointSource,
): Float64Array {
  const nodes = nodesOfSide(reference.order, side.from);
  const local = new Float64Array(reference.count);
  const spot = new Spot();
  const [[au, av], [bu, bv]] = [CORNERS[side.from]!, CORNERS[(side.from + 1) % 3]!];
  for (let q = 0; q < points.length; q++) {
    const t = (1 + points[q]!) / 2;
    shape.place(side.triangle, au + t * (bu - au), av + t * (bv - av), spot);
    const dx = spot.xu * (bu - au) + spot.xv * (bv - av);
    const dy = spot.yu * (bu - au) + spot.yv * (bv - av);
    const [jx, jy] = source.density(spot.x, spot.y);
    const flux = jx * dy - jy * dx;
    nodes.forEach((node, i) => {
      local[node]! += (weights[q]! / 2) * flux * values[q * nodes.length + i]!;
    });
  }
  return local;
}

/** Parts of a side, each nearly straight. */
const PARTS = 24;

/** -∫ σ∇s·n along metal, which is all of one potential: by angles, so that the current may stand close by. */
function fluxIntoMetal(
  { reference }: Space,
  shape: PatchShape,
  side: BorderSide,
  source: PointSource,
): Float64Array {
  const spot = new Spot();
  const [[au, av], [bu, bv]] = [CORNERS[side.from]!, CORNERS[(side.from + 1) % 3]!];
  const points = Array.from({ length: PARTS + 1 }, (_, i) => {
    const t = i / PARTS;
    shape.place(side.triangle, au + t * (bu - au), av + t * (bv - av), spot);
    return { x: spot.x, y: spot.y };
  });
  const local = new Float64Array(reference.count);
  for (let i = 0; i < PARTS; i++) local[side.from]! += source.through(points[i]!, points[i + 1]!);
  return local;
}

const CORNERS = [
  [-1, -1],
  [1, -1],
  [-1, 1],
] as const;
