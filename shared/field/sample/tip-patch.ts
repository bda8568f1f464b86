/** The part of the mesh around a probe tip in which the logarithm of its current is taken out, and the images that go with it. */
// Indices are bounded by construction throughout, hence `a[i]!`.
import { hypot } from '../maths.ts';
import type { Mesh } from '../mesh/mesh.ts';
import type { PrimalSystem } from '../solve/discrete.ts';
import { type Locator, locator } from './locate.ts';
import type { Tip } from './meshed-tip.ts';
import {
  type BorderSide,
  borderOf,
  clearance,
  distance,
  grown,
  mirrorsOf,
  type Neighbourhood,
} from './neighbourhood.ts';
import { PatchShape } from './patch-shape.ts';
import { Patches, TRIANGLE } from './patches.ts';
import { type Mirror, perpendicular, type Sigma, withImages } from './point-source.ts';

/** Sides on the border of P must be this far from the point and its images, in their own lengths; boundaries, if no mirror is put there. */
const CLEARANCE = 0.75;
const BOUNDARY_CLEARANCE = 2;
const MOST_RINGS = 5;
/** Nearer than this, in its own radii, a tip must have a boundary as its mirror, and no other boundary or corner. */
const TIP_CLEARANCE = 8;
/** Nearer than this to a mirror, in its own radii, the charge of a tip varies too fast for the points on its rim. */
const MIRROR_CLEARANCE = 1.1;

export interface TipPatch {
  readonly inside: Neighbourhood;
  readonly border: readonly BorderSide[];
  readonly mirrors: readonly Mirror[];
}

/** The smallest neighbourhood whose border is far enough; null where boundaries are too near and no images help. */
export function clearPatch(primal: PrimalSystem, tools: Tools, triangle: number, tip: Tip): TipPatch | null {
  const { mesh } = primal.space;
  const sigma = isotropyOf(primal);
  let triangles: readonly number[] = [triangle];
  for (let ring = 0; ring < MOST_RINGS; ring++) {
    const inside = grown(mesh, triangles);
    triangles = inside.triangles;
    const border = borderOf(mesh, inside);
    const near = border.filter(
      (side) =>
        side.beyond !== 'paper' &&
        (clearance(mesh, [side], tip.x, tip.y) < BOUNDARY_CLEARANCE || within(mesh, side, tip)),
    );
    if (isCramped(mesh, near, sigma, tip)) return null;
    const mirrors = mirrorsOf(mesh, near);
    const charges = withImages(sigma, { ...tip, amount: 1 }, mirrors);
    if (charges === null) return null;
    const open = border.filter((side) => side.beyond === 'paper');
    if (open.some((side) => mesh.twins[3 * side.triangle + side.from]! >= 0 && within(mesh, side, tip)))
      continue;
    if (charges.some(({ x, y }) => clearance(mesh, open, x, y) < CLEARANCE)) continue;
    if (charges.slice(1).some(({ x, y }) => isInside(tools, inside, x, y))) return null;
    return { inside, border, mirrors };
  }
  return null;
}

/** Is the tip within reach of a corner or of two boundaries that are no mirrors of each other, or all but on a boundary? */
function isCramped(mesh: Mesh, near: readonly BorderSide[], sigma: Sigma, tip: Tip): boolean {
  if (!isClearOfCorners(mesh, tip)) return true;
  if (near.some((side) => distance(mesh, side, tip.x, tip.y) < MIRROR_CLEARANCE * tip.radius)) return true;
  const reached = near.filter((side) => within(mesh, side, tip));
  const [first, second, ...others] = mirrorsOf(mesh, reached);
  if (first === undefined || second === undefined) return false;
  return others.length > 0 || !perpendicular(sigma, first, second);
}

export function isClearOfCorners({ fans }: Mesh, tip: Tip): boolean {
  return fans.every(({ x, y }) => hypot(x - tip.x, y - tip.y) >= TIP_CLEARANCE * tip.radius);
}

function within(mesh: Mesh, side: BorderSide, tip: Tip): boolean {
  return distance(mesh, side, tip.x, tip.y) < TIP_CLEARANCE * tip.radius;
}

function isInside({ locate, shape }: Tools, { has }: Neighbourhood, x: number, y: number): boolean {
  const place = locate(x, y);
  return place !== null && shape.patches.kind[place.patch] === TRIANGLE && has.has(place.patch);
}

/** σ along x and along y. */
export function isotropyOf({ sigma }: PrimalSystem): Sigma {
  return [sigma[0], sigma[2]];
}

export interface Tools {
  readonly shape: PatchShape;
  readonly locate: Locator;
}

const kept = new WeakMap<PrimalSystem, Tools>();

/** Search structures, made once for a solved system. */
export function toolsOf(primal: PrimalSystem): Tools {
  let tools = kept.get(primal);
  if (tools === undefined) {
    const shape = new PatchShape(new Patches(primal.space, 1e-8, 1));
    tools = { shape, locate: locator(shape) };
    kept.set(primal, tools);
  }
  return tools;
}
