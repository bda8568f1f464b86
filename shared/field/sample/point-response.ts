/**
 * How the paper answers at a point: the potential there for any potentials of the conductors, and the resistance that a meter's probe
 * tip sees. Both from one more right-hand side on the factorised system.
 */
// Indices are bounded by construction throughout, hence `a[i]!`.
import type { Field } from '../field.ts';
import { log } from '../maths.ts';
import type { PrimalSystem } from '../solve/discrete.ts';
import { gaussRule, lagrangeTable } from '../solve/gauss.ts';
import { solveDomain } from '../solve/solve-domain.ts';
import { type Locator, locator, type Place } from './locate.ts';
import { meshedTip, type Tip, type TipResponse } from './meshed-tip.ts';
import {
  type BorderSide,
  borderOf,
  clearance,
  distance,
  grown,
  mirrorsOf,
  type Neighbourhood,
} from './neighbourhood.ts';
import { PatchScalar } from './patch-scalar.ts';
import { PatchShape, Spot } from './patch-shape.ts';
import { Patches, TRIANGLE } from './patches.ts';
import { PointSource, type Sigma, withImages } from './point-source.ts';

export interface PointResponse {
  /** Potential at the point, V, for 1 V on each conductor in turn and 0 V on the others; they sum to 1. */
  readonly weights: Float64Array;
  /** Rise, V, of an ideal disc tip that feeds 1 A into the paper, all conductors at 0 V; Ω. */
  readonly self_ohm: number;
  /** By the weights: more accurate than the potential sampled at the point; the difference of the two is an estimate of its error. */
  potentialOf(conductors_V: Float64Array): number;
}

/** How closely the conductances are bounded where the tip is meshed, and the work allowed. */
const MESHED = { gap: 1e-5, maxUnknowns: 60_000 };

/**
 * The answer at a point (mm) to a tip of the given radius. Null off the bare paper, at a corner of the paper, and where the paper has
 * no conductor.
 */
export function pointResponse(
  field: Field,
  x: number,
  y: number,
  tipRadius_mm: number,
): PointResponse | null {
  if (toolsOf(field.primal).locate(x, y) === null) return null;
  const smooth = smoothResponse(field, x, y, tipRadius_mm);
  // Not a number on paper without a conductor: nothing fixes its potential.
  if (smooth !== null && Number.isNaN(smooth.self_ohm)) return null;
  const response =
    smooth ??
    meshedTip(field.domain, { x, y, radius: tipRadius_mm }, (domain) => solveDomain(domain, MESHED));
  return response === null ? null : { ...response, potentialOf: (v) => weighted(response.weights, v) };
}

function weighted(weights: Float64Array, conductors_V: Float64Array): number {
  let sum = 0;
  for (let k = 0; k < weights.length; k++) sum += weights[k]! * conductors_V[k]!;
  return sum;
}

/**
 * Green's function by subtraction of its singularity s, images in near boundaries included. In a neighbourhood P of the point
 *   u = w + s,
 * and for every test function v
 *   ∫_Ω\P σ∇u·∇v + ∫_P σ∇w·∇v = -∫_∂P (σ∇s·n) v.
 * The unknowns are u on and outside ∂P, w inside, so that a node of ∂P brings its s to the right-hand side. Currents into the
 * grounded conductors are the weights, by reciprocity.
 *
 * Null where the point is not on bare paper, or where boundaries or corners are too near for this: there, mesh the tip.
 */
export function smoothResponse(field: Field, x: number, y: number, tipRadius_mm: number): TipResponse | null {
  const { primal } = field;
  const tools = toolsOf(primal);
  const place = tools.locate(x, y);
  if (place === null || tools.shape.patches.kind[place.patch] !== TRIANGLE) return null;
  const patch = clearPatch(primal, tools, place.patch, { x, y, radius: tipRadius_mm });
  if (patch === null) return null;
  const { source } = patch;
  const sigma = isotropyOf(primal);
  const { load, onBorder } = loadOf(primal, tools.shape, patch);
  const { potential, into_A } = primal.solveGrounded(load);
  // Inside the point's own triangle: w from u where nodes lie on the border.
  const nodal = potential.triangle(place.patch).slice();
  const singular = onBorder.get(place.patch);
  if (singular !== undefined) for (let i = 0; i < nodal.length; i++) nodal[i]! -= singular[i]!;
  const w = { space: potential.space, triangle: () => nodal, fanLayer: () => nodal };
  const around = regularPart(new PatchScalar(w, tools.shape.patches), place, source, sigma);
  return { weights: into_A, self_ohm: around.value + ofDisc(tipRadius_mm, source, sigma, around) };
}

function isotropyOf({ sigma }: PrimalSystem): Sigma {
  return [sigma[0], sigma[2]];
}

/** All but the point current's own potential, at the point: value, gradient and ∂²/∂X², in isotropic coordinates (X, Y). */
interface Regular {
  readonly value: number;
  readonly gradX: number;
  readonly gradY: number;
  readonly bend: number;
}

/** Step of the difference quotient for the second derivative, in (u, v). */
const BEND_STEP = 1e-3;

function regularPart(w: PatchScalar, { patch, u, v }: Place, source: PointSource, [sx, sy]: Sigma): Regular {
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
  const [jx, jy] = source.density(x, y, 1);
  return {
    value: value + source.value(x, y, 1),
    gradX: Math.sqrt(sx) * gx - jx / Math.sqrt(sx),
    gradY: Math.sqrt(sy) * gy - jy / Math.sqrt(sy),
    bend: (sx * (ahead - spot.gx)) / dx + source.bend(x, y, 1),
  };
}

/**
 * What a disc has beyond the regular part at its centre. In isotropic coordinates it is an ellipse of semi-axes A = a/√σx, B = a/√σy:
 * its own potential -ln((A + B)/2)/(2π √det σ), the regular part w averaged over its charge and its images' charge, (A² - B²)/2 w_XX,
 * and the drop by its dipole in the field of what surrounds it, -π √det σ (A + B)(A w_X² + B w_Y²).
 */
function ofDisc(radius: number, source: PointSource, [sx, sy]: Sigma, w: Regular): number {
  const a = radius / Math.sqrt(sx);
  const b = radius / Math.sqrt(sy);
  const dipole = Math.PI * source.rootDeterminant * (a + b) * (a * w.gradX * w.gradX + b * w.gradY * w.gradY);
  return -source.strength * log((a + b) / 2) + ((a * a - b * b) / 2) * w.bend - dipole;
}

/** Sides on the border of P must be this far from the point and its images, in their own lengths; boundaries, if no mirror is put there. */
const CLEARANCE = 0.75;
const BOUNDARY_CLEARANCE = 2;
const MOST_RINGS = 4;
/** Nearer than this to a boundary, in its own radii, a tip is more than a dipole. */
const TIP_CLEARANCE = 8;

interface Patch {
  readonly inside: Neighbourhood;
  readonly border: readonly BorderSide[];
  readonly source: PointSource;
}

/** The smallest neighbourhood whose border is far enough; null where boundaries are too near and no images help. */
function clearPatch(primal: PrimalSystem, tools: Tools, triangle: number, tip: Tip): Patch | null {
  const { mesh } = primal.space;
  let triangles: readonly number[] = [triangle];
  for (let ring = 0; ring < MOST_RINGS; ring++) {
    const inside = grown(mesh, triangles);
    triangles = inside.triangles;
    const border = borderOf(mesh, inside);
    const near = border.filter(
      (side) => side.beyond !== 'paper' && clearance(mesh, [side], tip.x, tip.y) < BOUNDARY_CLEARANCE,
    );
    if (near.some((side) => distance(mesh, side, tip.x, tip.y) < TIP_CLEARANCE * tip.radius)) return null;
    const charges = withImages(isotropyOf(primal), { ...tip, amount: 1 }, mirrorsOf(mesh, near));
    if (charges === null) return null;
    const open = border.filter((side) => side.beyond === 'paper');
    if (charges.some(({ x, y }) => clearance(mesh, open, x, y) < CLEARANCE)) continue;
    if (charges.slice(1).some(({ x, y }) => isInside(tools, inside, x, y))) return null;
    return { inside, border, source: new PointSource(isotropyOf(primal), charges) };
  }
  return null;
}

function isInside({ locate, shape }: Tools, { has }: Neighbourhood, x: number, y: number): boolean {
  const place = locate(x, y);
  return place !== null && shape.patches.kind[place.patch] === TRIANGLE && has.has(place.patch);
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
    for (let i = 0; i < local.length; i++) {
      for (let j = 0; j < local.length; j++) local[i]! += stiffness[i * local.length + j]! * values[j]!;
    }
    primal.addToTriangle(load, triangle, local);
  }
  for (const side of patch.border) {
    primal.addToTriangle(load, side.triangle, fluxThrough(primal, shape, side, patch.source));
  }
  return { load, onBorder };
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
  primal: PrimalSystem,
  shape: PatchShape,
  side: BorderSide,
  source: PointSource,
): Float64Array {
  const { reference, edgeNodes } = primal.space;
  const { points, weights } = gaussRule(reference.order + 12);
  const table = lagrangeTable(edgeNodes, points);
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
      local[node]! += (weights[q]! / 2) * flux * table.values[q * nodes.length + i]!;
    });
  }
  return local;
}

const CORNERS = [
  [-1, -1],
  [1, -1],
  [-1, 1],
] as const;

interface Tools {
  readonly shape: PatchShape;
  readonly locate: Locator;
}

const kept = new WeakMap<PrimalSystem, Tools>();

/** Search structures, made once for a solved system. */
function toolsOf(primal: PrimalSystem): Tools {
  let tools = kept.get(primal);
  if (tools === undefined) {
    const shape = new PatchShape(new Patches(primal.space, 1e-8, 1));
    tools = { shape, locate: locator(shape) };
    kept.set(primal, tools);
  }
  return tools;
}
