/** Times of many runs, and tables of them. */
import { performance } from 'node:perf_hooks';

export interface Timing {
  readonly min: number;
  readonly median: number;
  readonly p95: number;
}

/** The first run only warms up. */
export function measure(work: () => unknown, times: number): Timing {
  const taken: number[] = [];
  for (let run = 0; run < times; run++) {
    const started = performance.now();
    work();
    taken.push(performance.now() - started);
  }
  return timing(taken.slice(1));
}

export function timing(taken: readonly number[]): Timing {
  const sorted = [...taken].sort((a, b) => a - b);
  const at = (part: number): number => sorted[Math.ceil(part * sorted.length) - 1] ?? Number.NaN;
  return { min: sorted[0] ?? Number.NaN, median: sorted[sorted.length >> 1] ?? Number.NaN, p95: at(0.95) };
}

/** In columns; the first row is the head. */
export function printTable(cells: readonly (readonly string[])[]): void {
  const widths = (cells[0] ?? []).map((_, column) =>
    Math.max(...cells.map((row) => (row[column] ?? '').length)),
  );
  for (const row of cells)
    console.log(
      row
        .map((cell, column) => cell.padEnd(widths[column] ?? 0))
        .join('  ')
        .trimEnd(),
    );
}
