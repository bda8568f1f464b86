/** Lines of equal potential on the bare paper. */
// Indices are bounded by construction throughout, hence `a[i]!`.
import { INSULATING } from '../problem.ts';
import type { Scalar } from '../solve/discrete.ts';
import { nextSide } from './lattice.ts';
import { MetalTouch, ON_METAL_MM } from './metal-touch.ts';
import { PatchScalar } from './patch-scalar.ts';
import { Patches } from './patches.ts';
import { bentTrail, type Trail, thinned } from './polyline.ts';
import type { TracedLine } from './traced-line.ts';
import { crossing, walkLevel } from './walk.ts';

/** Fans are drawn down to this radius, mm. */
export const DRAWN_TIP_MM = 0.005;

/** Lattice for drawing: finer than the nodes, so that a cell holds no more than one piece of a line. */
export function drawingPatches(scalar: Scalar): Patches {
  return new Patches(scalar.space, DRAWN_TIP_MM, 2 * Math.ceil(scalar.space.reference.order / 2) + 2);
}

/**
 * For each level (V, any order) its lines: open ones from edge to edge of the bare paper, closed ones, the higher potential on their
 * left. Smooth to 0.02 mm. Where a level is that of a metal, its lines end on the metal and do not run along it.
 */
export function equipotentialLines(potential: Scalar, levels: readonly number[]): TracedLine[][] {
  const scalar = new PatchScalar(potential, drawingPatches(potential));
  const survey = surveyRanges(scalar);
  if (!(survey.span > FLAT * survey.largest)) return levels.map(() => []);
  const shifted = levels.map((level) => level + SHIFT * survey.span);
  const crossed = crossedCells(scalar, shifted);
  const visited = new Int32Array(survey.cells).fill(-1);
  const touch = new MetalTouch(scalar);
  return shifted.map((level, i) => {
    const nearMetal = survey.metal.some((value) => Math.abs(value - level) < NEAR * survey.span);
    const task = { scalar, visited, firstCell: survey.firstCell, level, mark: i };
    return linesOf({ ...task, touch: nearMetal ? touch : null }, crossed[i]!);
  });
}

/** Levels are raised by this part of the potentials' range, so that none is exactly that of a metal or a point of the lattice. */
const SHIFT = 1e-9;

/** A range below this part of the largest potential is rounding: the paper is all at one potential. */
const FLAT = 1e-10;

/** A level this near to that of a metal, as part of the range, is taken to be meant as its own. */
const NEAR = 1e-5;

interface Survey {
  readonly span: number;
  /** Largest potential without its sign. */
  readonly largest: number;
  /** Potentials of the metals. */
  readonly metal: readonly number[];
  /** Cells in all, and the first of each patch when they are numbered through. */
  readonly cells: number;
  readonly firstCell: Int32Array;
}

/** Potentials are largest and smallest on the boundary, and fans lie within the values of their rims: the triangles tell all. */
function surveyRanges(scalar: PatchScalar): Survey {
  const { patches } = scalar;
  const firstCell = new Int32Array(patches.count);
  const metal = new Map<number, number>();
  let [low, high, cells] = [Infinity, -Infinity, 0];
  for (let patch = 0; patch < patches.count; patch++) {
    firstCell[patch] = cells;
    cells += patches.lattice(patch).cells.length / 3;
  }
  for (let triangle = 0; triangle < patches.triangles; triangle++) {
    const [least, most] = scalar.range(triangle);
    // No comparison holds on paper where the potential is not a number.
    if (least < low) low = least;
    if (most > high) high = most;
    for (let border = 0; border < 3; border++) {
      const tag = patches.tag(triangle, border);
      if (tag !== null && tag > INSULATING) metal.set(tag, scalar.scalar.triangle(triangle)[border]!);
    }
  }
  const largest = Math.max(Math.abs(low), Math.abs(high));
  return { span: Math.max(high - low, 0), largest, metal: [...metal.values()], cells, firstCell };
}

/** Cells (patch, cell alternating) that each level crosses. */
function crossedCells(scalar: PatchScalar, levels: readonly number[]): number[][] {
  const { patches } = scalar;
  const crossed: number[][] = levels.map(() => []);
  const search = (patch: number): void => {
    const near = levelsNear(scalar.range(patch), levels);
    if (near.length > 0) crossedInPatch(scalar, patch, levels, near, crossed);
  };
  for (let triangle = 0; triangle < patches.triangles; triangle++) search(triangle);
  patches.space.mesh.fans.forEach(({ rim }, fan) => {
    for (let layer = 0; layer <= patches.layers[fan]!; layer++) {
      const tip = layer === patches.layers[fan];
      // What no level crosses on one layer none crosses on the layers within it.
      if (!tip && levelsNear(scalar.layerRange(fan, layer), levels).length === 0) break;
      for (let chord = 0; chord < rim.length; chord++) search(patches.fanPatch(fan, layer, chord));
    }
  });
  return crossed;
}

/** Indices of the levels in a patch's range of nodal values; its polynomial may pass them by a little. */
function levelsNear([low, high]: readonly [number, number], levels: readonly number[]): number[] {
  const margin = (high - low) / 4;
  const near: number[] = [];
  levels.forEach((level, i) => {
    if (level >= low - margin && level <= high + margin) near.push(i);
  });
  return near;
}

function crossedInPatch(
  scalar: PatchScalar,
  patch: number,
  levels: readonly number[],
  near: readonly number[],
  crossed: readonly number[][],
): void {
  const { cells } = scalar.patches.lattice(patch);
  const values = scalar.lattice(patch);
  for (let c = 0; c < cells.length; c += 3) {
    const a = values[cells[c]!]!;
    const b = values[cells[c + 1]!]!;
    const d = values[cells[c + 2]!]!;
    const low = Math.min(a, b, d);
    const high = Math.max(a, b, d);
    for (const i of near) {
      if (levels[i]! >= low && levels[i]! < high) crossed[i]!.push(patch, c / 3);
    }
  }
}

interface LevelTask {
  readonly scalar: PatchScalar;
  /** By cell: the last level that passed it. */
  readonly visited: Int32Array;
  readonly firstCell: Int32Array;
  readonly level: number;
  readonly mark: number;
  /** Set where the level is that of a metal. */
  readonly touch: MetalTouch | null;
}

/** First the lines that come in from an edge, then the closed ones. */
function linesOf(task: LevelTask, crossed: readonly number[]): TracedLine[] {
  const { scalar, visited, firstCell, mark } = task;
  const lines: TracedLine[] = [];
  for (const openOnly of [true, false]) {
    for (let k = 0; k < crossed.length; k += 2) {
      const patch = crossed[k]!;
      if (visited[firstCell[patch]! + crossed[k + 1]!] === mark) continue;
      const side = entrySide(scalar, patch, crossed[k + 1]!, task.level);
      if (openOnly && scalar.patches.beyond(patch, side) !== null) continue;
      traceLine(task, patch, side, openOnly, lines);
    }
  }
  return lines;
}

/** The side of a crossed cell whose first point lies above the level and whose second does not. */
function entrySide(scalar: PatchScalar, patch: number, cell: number, level: number): number {
  const { cells } = scalar.patches.lattice(patch);
  const values = scalar.lattice(patch);
  let side = 3 * cell;
  while (!(values[cells[side]!]! > level && values[cells[nextSide(side)]!]! <= level)) side++;
  return side;
}

function traceLine(task: LevelTask, patch: number, side: number, open: boolean, lines: TracedLine[]): void {
  const { scalar, visited, firstCell, level, mark } = task;
  const start = { patch, side, share: crossing(scalar, patch, side, level) };
  let met = -1;
  const walk = walkLevel(scalar, start, level, {
    leftAbove: true,
    jumps: false,
    enter: (patch, cell) => {
      const number = firstCell[patch]! + cell;
      if (visited[number] === mark) {
        met = number;
        return false;
      }
      visited[number] = mark;
      return true;
    },
  });
  const closed = walk.end === 'refused' && met === firstCell[patch]! + Math.floor(side / 3);
  // What runs into another line of its own level is a scrap of rounding.
  if (!closed && walk.end !== 'edge') return;
  if (!closed && !open) return;
  const trail = bentTrail(scalar, walk);
  for (const line of task.touch ? offMetal(task.touch, trail, closed) : [wholeLine(trail, closed)]) {
    if (extent(line.points) > 2 * ON_METAL_MM) lines.push(line);
  }
}

function wholeLine(trail: Trail, closed: boolean): TracedLine {
  return { points: thinned(trail, 0, trail.x.length - 1, closed), closed };
}

/** The parts of a trail that do not run along metal. */
function offMetal(touch: MetalTouch, trail: Trail, closed: boolean): TracedLine[] {
  const last = trail.x.length - 1;
  const onMetal = trail.x.map((_, i) => touch.at(trail.patch[i]!, trail.u[i]!, trail.v[i]!));
  if (!onMetal.includes(true)) return [wholeLine(trail, closed)];
  const parts: TracedLine[] = [];
  let from = 0;
  for (let i = 1; i <= last; i++) {
    if (onMetal[i] && onMetal[i - 1]) from = i;
    else if (i === last || (onMetal[i] && onMetal[i + 1])) {
      parts.push({ points: thinned(trail, from, i, false), closed: false });
      from = i;
    }
  }
  return parts;
}

/** Larger side of the box around a line. */
function extent(points: Float64Array): number {
  let [left, right, bottom, top] = [Infinity, -Infinity, Infinity, -Infinity];
  for (let i = 0; i < points.length; i += 2) {
    left = Math.min(left, points[i]!);
    right = Math.max(right, points[i]!);
    bottom = Math.min(bottom, points[i + 1]!);
    top = Math.max(top, points[i + 1]!);
  }
  return Math.max(right - left, top - bottom);
}
