/** How a patch is cut into small triangles (cells): a lattice of points in the patch's own coordinates, and who is whose neighbour. */
// Indices are bounded by construction throughout, hence `a[i]!`.

/**
 * Cells have three points each, anticlockwise on the paper. Side k of cell c runs from its point k to its point k + 1; it is written
 * as 3c + k. A border is a chain of sides along one edge of the patch, the patch on its left.
 */
export interface Lattice {
  readonly u: Float64Array;
  readonly v: Float64Array;
  /** Point numbers, three a cell. */
  readonly cells: Int32Array;
  /** By side: the neighbour's side, or ~(border × BORDER + place) on a border. */
  readonly beyond: Int32Array;
  readonly borders: readonly Int32Array[];
}

/** More than any border has sides. */
export const BORDER = 4096;

/**
 * Triangle with corners (-1,-1), (1,-1), (-1,1), every side in `n` parts.
 *
 *     2
 *     | \        rows of constant v; border j runs from corner j to corner j + 1
 *     0 - 1
 */
export function triangleLattice(n: number): Lattice {
  const u: number[] = [];
  const v: number[] = [];
  const rows: number[] = [];
  for (let j = 0; j <= n; j++) {
    rows.push(u.length);
    for (let i = 0; i + j <= n; i++) {
      u.push((2 * i) / n - 1);
      v.push((2 * j) / n - 1);
    }
  }
  const at = (i: number, j: number): number => rows[j]! + i;
  const cells: number[] = [];
  for (let j = 0; j < n; j++) {
    for (let i = 0; i + j < n; i++) {
      cells.push(at(i, j), at(i + 1, j), at(i, j + 1));
      if (i + j < n - 1) cells.push(at(i + 1, j), at(i + 1, j + 1), at(i, j + 1));
    }
  }
  const steps = Array.from({ length: n + 1 }, (_, i) => i);
  return latticeOf(u, v, cells, [
    steps.map((i) => at(i, 0)),
    steps.map((i) => at(n - i, i)),
    steps.map((i) => at(0, n - i)),
  ]);
}

/**
 * One chord of one layer of a fan: u from -1 at the outer rim to 1 at the inner, v along the chord, anticlockwise about the vertex.
 * Borders: outer rim, end of the chord, inner rim, start of the chord.
 *
 *     (1,-1) ---- (1,1)
 *        \          /
 *      (-1,-1) (-1,1)    on the paper the vertex is above
 */
export function layerLattice(radial: number, n: number): Lattice {
  const u: number[] = [];
  const v: number[] = [];
  for (let a = 0; a <= radial; a++) {
    for (let b = 0; b <= n; b++) {
      u.push((2 * a) / radial - 1);
      v.push((2 * b) / n - 1);
    }
  }
  const at = (a: number, b: number): number => a * (n + 1) + b;
  const cells: number[] = [];
  for (let a = 0; a < radial; a++) {
    for (let b = 0; b < n; b++) {
      cells.push(at(a, b), at(a, b + 1), at(a + 1, b + 1));
      cells.push(at(a, b), at(a + 1, b + 1), at(a + 1, b));
    }
  }
  const along = Array.from({ length: n + 1 }, (_, b) => b);
  const across = Array.from({ length: radial + 1 }, (_, a) => a);
  return latticeOf(u, v, cells, [
    along.map((b) => at(0, b)),
    across.map((a) => at(a, n)),
    along.map((b) => at(radial, n - b)),
    across.map((a) => at(radial - a, 0)),
  ]);
}

/** What remains of a fan inside its innermost layer: cells from one chord to the vertex. Borders: outer rim, to the vertex, back. */
export function tipLattice(n: number): Lattice {
  const along = Array.from({ length: n + 1 }, (_, b) => b);
  const u = [...along.map(() => -1), 1];
  const v = [...along.map((b) => (2 * b) / n - 1), 0];
  const vertex = n + 1;
  const cells = along.slice(0, n).flatMap((b) => [b, b + 1, vertex]);
  return latticeOf(u, v, cells, [along, [n, vertex], [vertex, 0]]);
}

function latticeOf(u: number[], v: number[], cells: number[], chains: number[][]): Lattice {
  const key = (from: number, to: number): number => from * u.length + to;
  const sideOf = new Map<number, number>();
  for (let side = 0; side < cells.length; side++) sideOf.set(key(cells[side]!, cells[nextSide(side)]!), side);
  const beyond = Int32Array.from(
    cells,
    (from, side) => sideOf.get(key(cells[nextSide(side)]!, from)) ?? BORDER_UNSET,
  );
  const borders = chains.map((chain, border) =>
    Int32Array.from(chain.slice(0, -1), (from, place) => {
      const side = sideOf.get(key(from, chain[place + 1]!))!;
      beyond[side] = ~(border * BORDER + place);
      return side;
    }),
  );
  return { u: Float64Array.from(u), v: Float64Array.from(v), cells: Int32Array.from(cells), beyond, borders };
}

const BORDER_UNSET = -0x7fffffff;

/** Next side of the same cell; also the next corner of a cell, the next half-edge of a triangle. */
export function nextSide(side: number): number {
  return side % 3 === 2 ? side - 2 : side + 1;
}
