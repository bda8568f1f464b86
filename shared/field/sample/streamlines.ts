/** Field lines that each stand for the same current: levels of the stream function, or, where there is none, integrated. */
// Indices are bounded by construction throughout, hence `a[i]!`.
import type { Field } from '../field.ts';
import type { Scalar } from '../solve/discrete.ts';
import { drawingPatches } from './contours.ts';
import { withHalfWay } from './half-way.ts';
import { integratedLines } from './integrated-lines.ts';
import { nextSide } from './lattice.ts';
import { PatchScalar } from './patch-scalar.ts';
import { bentTrail, thinned } from './polyline.ts';
import { sampler } from './sampler.ts';
import { type Seed, type ShoreCurrent, seedsOn } from './seeds.ts';
import { endsOfSides, type Shore, shoresOf } from './shores.ts';
import type { FieldLine, TracedLine } from './traced-line.ts';
import { crossing, placeOnSide, type Walk, walkLevel } from './walk.ts';

export interface FieldLines {
  /** From high to low potential, from metal to metal. */
  readonly lines: readonly FieldLine[];
  /** Current between neighbouring lines, A. */
  readonly current: number;
}

/**
 * `lines` of them leave the conductors that feed current into the paper; floating ones send on what they take in, in lines of the
 * same current. Potentials in V.
 */
export function fieldLines(field: Field, conductors_V: Float64Array, lines: number): FieldLines {
  const stream = field.stream(conductors_V);
  const potential = field.primal.potential(conductors_V);
  const traced =
    stream === null
      ? integratedLines(potential, field.primal.sigma, lines)
      : streamLines(stream, conductors_V, lines);
  const samples = sampler(potential);
  return {
    lines: traced.lines.map((line) => withHalfWay(line, samples, conductors_V)),
    current: traced.current,
  };
}

function streamLines(
  stream: Scalar,
  conductors_V: Float64Array,
  lines: number,
): { readonly lines: readonly TracedLine[]; readonly current: number } {
  const scalar = new PatchScalar(stream, drawingPatches(stream));
  const drops = shoresOf(scalar.patches).map((shore) => dropsAlong(scalar, shore));
  // Power is positive: that fixes the sign of the stream function.
  let power = 0;
  for (const { shore, out } of drops) for (const drop of out) power += drop * conductors_V[shore.conductor]!;
  const sign = power < 0 ? -1 : 1;
  const currents = drops.map((drop) => ({ ...drop, out: drop.out.map((i) => sign * i) }));
  const { seeds, step } = seedsOn(currents, lines);
  const traced: TracedLine[] = [];
  for (const seed of seeds) {
    const walk = walkToMetal(scalar, seed, step);
    if (walk === null) continue;
    const trail = bentTrail(scalar, walk);
    traced.push({ points: thinned(trail, 0, trail.x.length - 1, false), closed: false });
  }
  return { lines: traced, current: step };
}

/** Stream function at the start minus that at the end of every side. */
function dropsAlong(scalar: PatchScalar, shore: Shore): ShoreCurrent {
  const drop = (i: number, share: number): number => {
    const [patch, side] = [shore.patch[i]!, shore.side[i]!];
    const start = scalar.lattice(patch)[scalar.patches.lattice(patch).cells[side]!]!;
    const [u, v] = placeOnSide(scalar, patch, side, share);
    return start - scalar.value(patch, u, v);
  };
  const out = Float64Array.from(shore.side, (_, i) => drop(i, 1));
  return {
    shore,
    out,
    ends: endsOfSides(scalar, shore),
    currentShare: (side, share) => (out[side] === 0 ? share : drop(side, share) / out[side]!),
  };
}

/** Shifts of a level, in steps, tried in turn where it is exactly that of an insulating edge on its way. */
const NUDGES = [0, 1e-6, -1e-6, 1e-5, -1e-5];

function walkToMetal(scalar: PatchScalar, seed: Seed, step: number): Walk | null {
  const patch = seed.shore.patch[seed.side]!;
  const side = seed.shore.side[seed.side]!;
  const values = scalar.lattice(patch);
  const { cells } = scalar.patches.lattice(patch);
  const start = values[cells[side]!]!;
  const end = values[cells[nextSide(side)]!]!;
  for (const nudge of NUDGES) {
    const level = start + seed.share * (end - start) + nudge * step;
    const share = crossing(scalar, patch, side, level);
    const rules = { leftAbove: start > end, jumps: true, enter: () => true };
    const walk = walkLevel(scalar, { patch, side, share }, level, rules);
    if (walk.end === 'edge' && endsOnMetal(scalar, walk)) return walk;
  }
  return null;
}

function endsOnMetal(scalar: PatchScalar, walk: Walk): boolean {
  const { patches } = scalar;
  const borders = patches.lattice(walk.lastPatch).borders;
  const border = borders.findIndex((sides) => sides.includes(walk.lastSide));
  return (patches.tag(walk.lastPatch, border) ?? -1) >= 0;
}
