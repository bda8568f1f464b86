/** The field problem of a setup: merged electrodes as conductors, paper, holes and slits. */
import type { Outline } from '../field/geometry/outline.ts';
import type { Piece as FieldPiece, FieldProblem } from '../field/problem.ts';
import { polygon } from './plane.ts';
import type { Electrode, Paper, Setup } from './setup.ts';

/** Sheet resistance that stands in where none is given: potentials do not depend on it. */
const standIn_ohm: readonly [number, number] = [1, 1];

/** For a setup that is `solvable`; paper that is missing counts as empty. */
export function problemOf(setup: Setup): FieldProblem {
  return {
    paper: setup.paper === null ? { edges: [] } : paperOutline(setup.paper),
    holes: setup.holes.map(({ outline }) => outline),
    slits: setup.slits,
    conductors: conductorsOf(setup.electrodes),
    sheet_ohm: setup.paper?.resistance_ohm ?? standIn_ohm,
  };
}

/**
 * The same for a sheet resistance of 1 Ω where it is one along x and y: potentials are the same, conductances and currents those of the
 * setup times its `sheetScale`.
 */
export function unitProblemOf(setup: Setup): FieldProblem {
  const problem = problemOf(setup);
  const [x, y] = problem.sheet_ohm;
  return x === y ? { ...problem, sheet_ohm: [1, 1] } : problem;
}

/** Sheet resistance of the setup over that of its unit problem. */
export function sheetScale(setup: Setup): number {
  const [x, y] = setup.paper?.resistance_ohm ?? standIn_ohm;
  return x === y ? x : 1;
}

export function paperOutline({ width_mm, height_mm }: Paper): Outline {
  return polygon([
    { x: 0, y: 0 },
    { x: width_mm, y: 0 },
    { x: width_mm, y: height_mm },
    { x: 0, y: height_mm },
  ]);
}

/** Pieces of each conductor, by its number. */
function conductorsOf(electrodes: readonly Electrode[]): readonly (readonly FieldPiece[])[] {
  const conductors: FieldPiece[][] = [];
  for (const { conductor, pieces } of electrodes) {
    if (conductor === null) continue;
    while (conductors.length <= conductor) conductors.push([]);
    conductors[conductor]?.push(...pieces.map(({ geometry }) => geometry));
  }
  return conductors;
}
