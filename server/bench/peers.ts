/** What the engine is measured against in the same process: a calibration kernel and plain relaxation on a grid. */

/** A dense product of two 160 × 160 matrices in plain loops: the unit in which times are also given. */
export function calibrationKernel(): number {
  const n = 160;
  const a = Float64Array.from({ length: n * n }, (_, i) => ((i * 7919) % 1000) / 1000);
  const b = Float64Array.from({ length: n * n }, (_, i) => ((i * 104729) % 1000) / 1000);
  const c = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let k = 0; k < n; k++) {
      const factor = a[i * n + k] ?? 0;
      for (let j = 0; j < n; j++) c[i * n + j] = (c[i * n + j] ?? 0) + factor * (b[k * n + j] ?? 0);
    }
  }
  return c[n + 1] ?? 0;
}

export interface Relaxation {
  /** Conductance found, in units of the sheet conductance, for 1 V between the two electrodes. */
  readonly conductance: number;
  readonly sweeps: number;
}

/** Potential fixed at a place of the grid, V; null on bare paper. */
export type FixedPotential = (x: number, y: number) => number | null;

/**
 * Successive over-relaxation of the five-point equation on a grid of `step_mm`, insulated edges, until no value changes by more
 * than 1e-6 V in a sweep: what is done without a solver.
 */
export function relax(
  width_mm: number,
  height_mm: number,
  step_mm: number,
  fixed: FixedPotential,
): Relaxation {
  const columns = Math.round(width_mm / step_mm) + 1;
  const rows = Math.round(height_mm / step_mm) + 1;
  const value = new Float64Array(columns * rows).fill(0.5);
  const free = new Uint8Array(columns * rows).fill(1);
  for (let i = 0; i < columns; i++) {
    for (let j = 0; j < rows; j++) {
      const held = fixed(i * step_mm, j * step_mm);
      if (held === null) continue;
      free[i * rows + j] = 0;
      value[i * rows + j] = held;
    }
  }
  const omega = 2 / (1 + Math.sin(Math.PI / Math.max(columns, rows)));
  let sweeps = 0;
  for (let change = 1; change > 1e-6 && sweeps < 20_000; sweeps++)
    change = sweep(value, free, [columns, rows], omega);
  return { conductance: energy(value, columns, rows), sweeps };
}

function sweep(
  value: Float64Array,
  free: Uint8Array,
  [columns, rows]: readonly [number, number],
  omega: number,
): number {
  let largest = 0;
  for (let i = 0; i < columns; i++) {
    // A mirrored neighbour beyond the edge makes the edge insulating.
    const left = (i === 0 ? 1 : i - 1) * rows;
    const right = (i === columns - 1 ? columns - 2 : i + 1) * rows;
    for (let j = 0; j < rows; j++) {
      const at = i * rows + j;
      if (free[at] === 0) continue;
      const below = i * rows + (j === 0 ? 1 : j - 1);
      const above = i * rows + (j === rows - 1 ? rows - 2 : j + 1);
      const mean =
        ((value[left + j] ?? 0) + (value[right + j] ?? 0) + (value[below] ?? 0) + (value[above] ?? 0)) / 4;
      const change = mean - (value[at] ?? 0);
      value[at] = (value[at] ?? 0) + omega * change;
      largest = Math.max(largest, Math.abs(change));
    }
  }
  return largest;
}

/** Σ (difference)² over grid edges, half weight along the paper's edge: the conductance for 1 V. */
function energy(value: Float64Array, columns: number, rows: number): number {
  let sum = 0;
  for (let i = 0; i < columns; i++) {
    for (let j = 0; j < rows; j++) {
      const here = value[i * rows + j] ?? 0;
      if (i + 1 < columns)
        sum += ((value[(i + 1) * rows + j] ?? 0) - here) ** 2 * (j === 0 || j === rows - 1 ? 0.5 : 1);
      if (j + 1 < rows)
        sum += ((value[i * rows + j + 1] ?? 0) - here) ** 2 * (i === 0 || i === columns - 1 ? 0.5 : 1);
    }
  }
  return sum;
}
