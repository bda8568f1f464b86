/**
 * Follows one level of a scalar from cell to cell. Every cell is entered by a side whose points lie one above the level, one not;
 * the third point decides by which of the other two sides the line leaves. What was decided for a point is kept on entering the next
 * cell, so that no line is lost to rounding.
 */
// Indices are bounded by construction throughout, hence `a[i]!`.
import { nextSide } from './lattice.ts';
import type { PatchScalar } from './patch-scalar.ts';

/** A line as the pieces in which it crosses cells: piece i runs in `patch[i]` from (u0, v0) to (u1, v1), at `level[i]` there. */
export interface Walk {
  readonly patch: number[];
  readonly u0: number[];
  readonly v0: number[];
  readonly u1: number[];
  readonly v1: number[];
  readonly level: number[];
  /** How it ended: at the edge of the paper, in a cell refused by `enter`, or at the limit of steps. */
  end: 'edge' | 'refused' | 'limit';
  /** Patch and side by which it left the paper. */
  lastPatch: number;
  lastSide: number;
}

export interface WalkRules {
  /** True if points left of the direction of travel lie above the level. */
  readonly leftAbove: boolean;
  /** True for a scalar whose values agree across a border only up to a constant. */
  readonly jumps: boolean;
  /** Called before each cell; false stops the walk. */
  enter(patch: number, cell: number): boolean;
}

/** No line of a drawing crosses more cells than this. */
const MOST_CELLS = 200_000;

/** Starts into the cell of `side`, from `share` of the way along that side. */
export function walkLevel(
  scalar: PatchScalar,
  start: { readonly patch: number; readonly side: number; readonly share: number },
  level: number,
  rules: WalkRules,
): Walk {
  const { patches } = scalar;
  const walk: Walk = {
    patch: [],
    u0: [],
    v0: [],
    u1: [],
    v1: [],
    level: [],
    end: 'limit',
    lastPatch: -1,
    lastSide: -1,
  };
  let { patch, side } = start;
  let here = level;
  let [u, v] = placeOnSide(scalar, patch, side, start.share);
  for (let step = 0; step < MOST_CELLS; step++) {
    const cell = Math.floor(side / 3);
    if (!rules.enter(patch, cell)) {
      walk.end = 'refused';
      return walk;
    }
    const lattice = patches.lattice(patch);
    const second = nextSide(side);
    const third = nextSide(second);
    const above = scalar.lattice(patch)[lattice.cells[third]!]! > here;
    const exit = above === rules.leftAbove ? second : third;
    const share = crossing(scalar, patch, exit, here);
    const [nu, nv] = placeOnSide(scalar, patch, exit, share);
    walk.patch.push(patch);
    walk.u0.push(u);
    walk.v0.push(v);
    walk.u1.push(nu);
    walk.v1.push(nv);
    walk.level.push(here);
    const next = patches.beyond(patch, exit);
    if (next === null) {
      walk.end = 'edge';
      walk.lastPatch = patch;
      walk.lastSide = exit;
      return walk;
    }
    if (rules.jumps && next.patch !== patch) here += jump(scalar, patch, exit, next);
    [u, v] = next.patch === patch ? [nu, nv] : placeOnSide(scalar, next.patch, next.side, 1 - share);
    patch = next.patch;
    side = next.side;
  }
  return walk;
}

/** How much more the scalar is on the far side of a border. Constant along it; taken at the point where the exit begins. */
function jump(
  scalar: PatchScalar,
  patch: number,
  side: number,
  next: { readonly patch: number; readonly side: number },
): number {
  const from = scalar.patches.lattice(patch).cells[side]!;
  const same = scalar.patches.lattice(next.patch).cells[nextSide(next.side)]!;
  return scalar.lattice(next.patch)[same]! - scalar.lattice(patch)[from]!;
}

export function placeOnSide(
  scalar: PatchScalar,
  patch: number,
  side: number,
  share: number,
): [number, number] {
  const { u, v, cells } = scalar.patches.lattice(patch);
  const a = cells[side]!;
  const b = cells[nextSide(side)]!;
  return [u[a]! + share * (u[b]! - u[a]!), v[a]! + share * (v[b]! - v[a]!)];
}

/**
 * Where along a side (0 to 1) the polynomial takes the level: Newton's iteration, held inside a shrinking bracket. The side's ends
 * lie on either side of the level, to rounding.
 */
export function crossing(scalar: PatchScalar, patch: number, side: number, level: number): number {
  const { u, v, cells } = scalar.patches.lattice(patch);
  const a = cells[side]!;
  const b = cells[nextSide(side)]!;
  const values = scalar.lattice(patch);
  const fa = values[a]! - level;
  const fb = values[b]! - level;
  const du = u[b]! - u[a]!;
  const dv = v[b]! - v[a]!;
  let low = 0;
  let high = 1;
  let share = fa === fb ? 0.5 : Math.min(1, Math.max(0, fa / (fa - fb)));
  for (let step = 0; step < 20; step++) {
    const f = scalar.value(patch, u[a]! + share * du, v[a]! + share * dv) - level;
    if (f > 0 === fa > 0) low = share;
    else high = share;
    let next = share - f / scalar.slope(du, dv);
    if (!(next >= low && next <= high)) next = (low + high) / 2;
    const moved = Math.abs(next - share);
    share = next;
    if (moved < 1e-9) break;
  }
  return share;
}
