/** Field lines where no stream function exists: along the current -σ grad V by an adaptive Runge-Kutta method. */
// Indices are bounded by construction throughout, hence `a[i]!`.
import { hypot } from '../maths.ts';
import type { Scalar } from '../solve/discrete.ts';
import { gaussRule } from '../solve/gauss.ts';
import { drawingPatches } from './contours.ts';
import { PatchScalar } from './patch-scalar.ts';
import { Spot } from './patch-shape.ts';
import { type Trail, thinned } from './polyline.ts';
import { type Sampler, sampler } from './sampler.ts';
import { type Seed, type ShoreCurrent, seedsOn } from './seeds.ts';
import { endsOfSides, type Shore, shoresOf } from './shores.ts';
import type { TracedLine } from './traced-line.ts';
import { placeOnSide } from './walk.ts';

type Sigma = readonly [xx: number, xy: number, yy: number];

/** As `fieldLines`, from the potential alone; sigma in S per square. */
export function integratedLines(
  potential: Scalar,
  sigma: Sigma,
  lines: number,
): { readonly lines: readonly TracedLine[]; readonly current: number } {
  const scalar = new PatchScalar(potential, drawingPatches(potential));
  const samples = sampler(potential);
  const currents = shoresOf(scalar.patches).map((shore) => currentAlong(scalar, shore, sigma));
  const { seeds, step } = seedsOn(currents, lines);
  const flow = currentDirection(samples, sigma);
  return { lines: seeds.map((seed) => integrate(scalar, seed, flow)), current: step };
}

/** Gauss points on a side; its current is that of a polynomial. */
const SIDE_POINTS = 4;

/** ∫ j · n along each side, the paper on its left: with ds = (dx, dy) the way out of the metal is (-dy, dx). */
function currentAlong(scalar: PatchScalar, shore: Shore, [xx, xy, yy]: Sigma): ShoreCurrent {
  const { points, weights } = gaussRule(SIDE_POINTS);
  const spot = new Spot();
  const partial = (i: number, share: number): number => {
    const [patch, side] = [shore.patch[i]!, shore.side[i]!];
    const [ua, va] = placeOnSide(scalar, patch, side, 0);
    const [ub, vb] = placeOnSide(scalar, patch, side, 1);
    let total = 0;
    for (let q = 0; q < SIDE_POINTS; q++) {
      const s = (share * (1 + points[q]!)) / 2;
      scalar.look(patch, ua + s * (ub - ua), va + s * (vb - va), spot);
      const dx = spot.xu * (ub - ua) + spot.xv * (vb - va);
      const dy = spot.yu * (ub - ua) + spot.yv * (vb - va);
      const jx = -(xx * spot.gx + xy * spot.gy);
      const jy = -(xy * spot.gx + yy * spot.gy);
      total += ((weights[q]! * share) / 2) * (jy * dx - jx * dy);
    }
    return total;
  };
  const out = Float64Array.from(shore.side, (_, i) => partial(i, 1));
  return {
    shore,
    out,
    ends: endsOfSides(scalar, shore),
    currentShare: (side, share) => (out[side] === 0 ? share : partial(side, share) / out[side]!),
  };
}

/** Unit vector of the current at a point, null off the paper or where nothing flows. */
type Flow = (x: number, y: number) => readonly [number, number] | null;

function currentDirection(samples: Sampler, [xx, xy, yy]: Sigma): Flow {
  return (x, y) => {
    const sample = samples.at(x, y);
    if (sample === null) return null;
    const [gx, gy] = sample.gradient;
    const jx = -(xx * gx + xy * gy);
    const jy = -(xy * gx + yy * gy);
    const size = hypot(jx, jy);
    return size > 0 ? [jx / size, jy / size] : null;
  };
}

/** Wanted error of a step, longest and shortest step, mm; and steps at most. */
const STEP_ERROR_MM = 1e-4;
const LONGEST_MM = 2;
const SHORTEST_MM = 1e-6;
const MOST_STEPS = 20_000;

function integrate(scalar: PatchScalar, seed: Seed, flow: Flow): TracedLine {
  const spot = new Spot();
  const patch = seed.shore.patch[seed.side]!;
  const [u, v] = placeOnSide(scalar, patch, seed.shore.side[seed.side]!, seed.share);
  scalar.shape.place(patch, u, v, spot);
  const trail: Trail = { x: [spot.x], y: [spot.y], patch: [], u: [], v: [] };
  let { x, y } = spot;
  let step = SHORTEST_MM * 100;
  for (let count = 0; count < MOST_STEPS && step > SHORTEST_MM; count++) {
    const move = rungeKuttaStep(flow, x, y, step);
    if (move === null) {
      // Over the edge: approach it by ever shorter steps.
      step /= 2;
      continue;
    }
    if (move.error > STEP_ERROR_MM) {
      step /= 2;
      continue;
    }
    x = move.x;
    y = move.y;
    trail.x.push(x);
    trail.y.push(y);
    if (move.error < STEP_ERROR_MM / 16) step = Math.min(2 * step, LONGEST_MM);
  }
  return { points: thinned(trail, 0, trail.x.length - 1, false), closed: false };
}

/** Third-order step with an embedded second-order one for its error: P. Bogacki, L. F. Shampine, Appl. Math. Lett. 2 (1989) 321. */
function rungeKuttaStep(
  flow: Flow,
  x: number,
  y: number,
  h: number,
): { readonly x: number; readonly y: number; readonly error: number } | null {
  const k1 = flow(x, y);
  if (k1 === null) return null;
  const k2 = flow(x + (h / 2) * k1[0], y + (h / 2) * k1[1]);
  if (k2 === null) return null;
  const k3 = flow(x + ((3 * h) / 4) * k2[0], y + ((3 * h) / 4) * k2[1]);
  if (k3 === null) return null;
  const nx = x + (h / 9) * (2 * k1[0] + 3 * k2[0] + 4 * k3[0]);
  const ny = y + (h / 9) * (2 * k1[1] + 3 * k2[1] + 4 * k3[1]);
  const k4 = flow(nx, ny);
  if (k4 === null) return null;
  const ex = (h / 72) * (-5 * k1[0] + 6 * k2[0] + 8 * k3[0] - 9 * k4[0]);
  const ey = (h / 72) * (-5 * k1[1] + 6 * k2[1] + 8 * k3[1] - 9 * k4[1]);
  return { x: nx, y: ny, error: hypot(ex, ey) };
}
