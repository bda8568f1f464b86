/**
 * Multifrontal Cholesky: dense fronts meet along the tree of elements, and each unknown is eliminated as soon as no other element
 * holds it. Retained unknowns stay to the root, whose matrix is the Schur complement on them.
 *
 * Every front must leave a constant without energy. Rounding would break that, and along a thin gap, where the true stiffness is a
 * small rest of large numbers, spoil one digit for each decade of length over width squared. So each Schur complement gets its
 * diagonal back from the other entries of its rows.
 */
// Indices are bounded by construction throughout, hence `a[i]!`.
import { partialCholesky } from './dense.ts';
import type { FrontPlan } from './front-plan.ts';

/** A square matrix at work: `size` rows from place `at`, row-major, of which the lower triangle counts. */
export interface Front {
  numbers: Float64Array;
  at: number;
  size: number;
  /** Row of each unknown that this front holds. */
  place: Int32Array;
  /** Scratch: rows of the unknowns at hand, sums of rows. */
  rows: Int32Array;
  sums: Float64Array;
}

/** Adds the stiffness of element e to a front. */
export type AddElement = (e: number, front: Front) => void;

export interface Factor {
  readonly plan: FrontPlan;
  /** Schur complement on the retained unknowns, full, row-major. */
  readonly root: Float64Array;
  /** For each front its rows times its leaving columns, [L11; L21], row-major. */
  readonly columns: Float64Array;
}

/** What a factor takes in memory, and about as much again for the places of its unknowns in each element and front. */
export function factorBytes({ plan, columns, root }: Factor): number {
  return 8 * (columns.length + root.length) + 4 * plan.rows.length + 64 * plan.unknowns;
}

/** Working memory, handed on from one factorisation to the next. */
export class Workspace {
  private numbers = new Float64Array(0);

  stack(size: number): Float64Array {
    if (this.numbers.length < size) this.numbers = new Float64Array(size);
    return this.numbers;
  }
}

/** Null if the matrix is not positive definite. */
export function factorise(plan: FrontPlan, add: AddElement, workspace: Workspace): Factor | null {
  const { dissection, rowStart, rows, leaving } = plan;
  const { order, from, left, right } = dissection;
  const stack = workspace.stack(plan.stackSize);
  const columns = new Float64Array(plan.factorSize);
  const bottom = new Int32Array(leaving.length);
  const front: Front = {
    numbers: stack,
    at: 0,
    size: 0,
    place: new Int32Array(plan.unknowns),
    rows: new Int32Array(plan.largestFront),
    sums: new Float64Array(plan.largestFront),
  };
  let top = 0;
  for (let n = 0; n < leaving.length; n++) {
    const size = rowStart[n + 1]! - rowStart[n]!;
    front.at = top;
    front.size = size;
    for (let i = 0; i < size; i++) front.place[rows[rowStart[n]! + i]!] = i;
    stack.fill(0, top, top + size * size);
    if (left[n]! < 0) {
      add(order[from[n]!]!, front);
    } else {
      addComplement(plan, left[n]!, bottom[left[n]!]!, front);
      addComplement(plan, right[n]!, bottom[right[n]!]!, front);
    }
    if (!partialCholesky(stack, top, size, leaving[n]!)) return null;
    keepColumns(front, leaving[n]!, columns, plan.factorStart[n]!);
    bottom[n] = left[n]! < 0 ? top : bottom[left[n]!]!;
    moveComplement(front, leaving[n]!, bottom[n]!, jumpsIn(plan, n));
    top = bottom[n]! + (size - leaving[n]!) ** 2;
  }
  return { plan, root: mirrored(stack, plan.retained), columns };
}

/** Adds a child's Schur complement, which lies at `from` in the stack, to its parent's front. */
function addComplement(plan: FrontPlan, child: number, from: number, front: Front): void {
  const { numbers, at, size, place, rows } = front;
  const firstRow = plan.rowStart[child]! + plan.leaving[child]!;
  const count = plan.rowStart[child + 1]! - firstRow;
  for (let i = 0; i < count; i++) rows[i] = place[plan.rows[firstRow + i]!]!;
  for (let i = 0; i < count; i++) {
    const target = at + rows[i]! * size;
    const source = from + i * count;
    for (let j = 0; j <= i; j++) numbers[target + rows[j]!]! += numbers[source + j]!;
  }
}

function keepColumns(front: Front, leaving: number, columns: Float64Array, to: number): void {
  for (let i = 0; i < front.size; i++) {
    const row = front.at + i * front.size;
    const width = Math.min(i + 1, leaving);
    for (let j = 0; j < width; j++) columns[to + i * leaving + j] = front.numbers[row + j]!;
  }
}

/** Moves the Schur complement down the stack, rows closed up, with s_ii = -Σ_{j ≠ i} s_ij over all columns but the jumps. */
function moveComplement(front: Front, leaving: number, to: number, jumps: number): void {
  const { numbers, at, size, sums } = front;
  const count = size - leaving;
  const plain = count - jumps;
  for (let i = 0; i < count; i++) {
    const row = at + (leaving + i) * size + leaving;
    const target = to + i * count;
    let sum = 0;
    for (let j = 0; j < i; j++) {
      const value = numbers[row + j]!;
      numbers[target + j] = value;
      sum += value;
      sums[j]! += value;
    }
    numbers[target + i] = numbers[row + i]!;
    sums[i] = sum;
    // What the rows of jumps add to the sums is not to count.
    if (i === plain - 1) for (let k = 0; k < plain; k++) numbers[to + k * count + k] = -sums[k]!;
  }
}

/** Jumps come last in the order of elimination, so they are the last rows of a front. */
function jumpsIn({ rows, rowStart, unknowns, jumps }: FrontPlan, n: number): number {
  let place = rowStart[n + 1]!;
  while (place > rowStart[n]! && rows[place - 1]! >= unknowns - jumps) place--;
  return rowStart[n + 1]! - place;
}

/** A full matrix from the lower triangle at the start of `numbers`. */
function mirrored(numbers: Float64Array, n: number): Float64Array {
  const full = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      full[i * n + j] = numbers[i * n + j]!;
      full[j * n + i] = numbers[i * n + j]!;
    }
  }
  return full;
}

/** Is any of these rows' values not zero? */
function anyOf(rows: Int32Array, from: number, to: number, values: Float64Array | Uint8Array): boolean {
  for (let i = from; i < to; i++) if (values[rows[i]!] !== 0) return true;
  return false;
}

/** In place: b1 ← L11⁻¹ b1, b2 ← b2 - L21 b1, front by front, where there is load. The retained part becomes the load on the root. */
export function forward({ plan, columns }: Factor, b: Float64Array): void {
  const { rowStart, rows, leaving } = plan;
  for (let n = 0; n < leaving.length; n++) {
    const k = leaving[n]!;
    const start = rowStart[n]!;
    const size = rowStart[n + 1]! - start;
    if (!anyOf(rows, start, start + k, b)) continue;
    for (let i = 0; i < size; i++) {
      const l = plan.factorStart[n]! + i * k;
      const width = Math.min(i, k);
      let sum = b[rows[start + i]!]!;
      for (let j = 0; j < width; j++) sum -= columns[l + j]! * b[rows[start + j]!]!;
      b[rows[start + i]!] = i < k ? sum / columns[l + i]! : sum;
    }
  }
}

/**
 * In place: b1 ← L11⁻ᵀ (b1 - L21ᵀ x2) from the root down; the retained part holds the solution already. With `wanted`, only as far as
 * these unknowns need it.
 */
export function backward({ plan, columns }: Factor, x: Float64Array, wanted?: Int32Array): void {
  const { rowStart, rows, leaving } = plan;
  const work = new Float64Array(plan.largestFront);
  const needed = wanted === undefined ? null : frontsNeeded(plan, wanted);
  for (let n = leaving.length - 1; n >= 0; n--) {
    if (needed !== null && needed[n] === 0) continue;
    const k = leaving[n]!;
    const start = rowStart[n]!;
    const size = rowStart[n + 1]! - start;
    for (let i = 0; i < k; i++) work[i] = x[rows[start + i]!]!;
    for (let i = size - 1; i >= 0; i--) {
      const l = plan.factorStart[n]! + i * k;
      if (i < k) {
        work[i]! /= columns[l + i]!;
        x[rows[start + i]!] = work[i]!;
      }
      const value = x[rows[start + i]!]!;
      const width = Math.min(i, k);
      for (let j = 0; j < width; j++) work[j]! -= columns[l + j]! * value;
    }
  }
}

/** 1 for the fronts at which these unknowns leave, and those at which what they depend on leaves. */
function frontsNeeded({ rowStart, rows, leaving, unknowns }: FrontPlan, wanted: Int32Array): Uint8Array {
  const marked = new Uint8Array(unknowns);
  for (const unknown of wanted) if (unknown >= 0) marked[unknown] = 1;
  const needed = new Uint8Array(leaving.length);
  for (let n = 0; n < leaving.length; n++) {
    const start = rowStart[n]!;
    if (!anyOf(rows, start, start + leaving[n]!, marked)) continue;
    needed[n] = 1;
    for (let i = start; i < rowStart[n + 1]!; i++) marked[rows[i]!] = 1;
  }
  return needed;
}
