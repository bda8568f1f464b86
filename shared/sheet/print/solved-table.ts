/** Tables of readings filled from the solutions: for teachers, and for everyone where the sheet tells them. */
import { log } from '../../field/maths.ts';
import type { PointReading } from '../../setup/readings.ts';
import { readingDecimals, readingStep, toStep } from '../../setup/shown-reading.ts';
import type { Html } from './html.ts';
import type { Solutions } from './solved-values.ts';
import {
  type Cell,
  type Column,
  emptyCell,
  givenCells,
  type Line,
  numberCells,
  radiusAt,
  renderTable,
  type TableLayout,
  textCell,
} from './table-layout.ts';

export function solvedTable(layout: TableLayout, solutions: Solutions, caption: string | null): Html {
  const readings = layout.rows.map(
    ({ setup, index }) => solutions.get(setup.block)?.readings.rows[index]?.points ?? null,
  );
  return renderTable(
    layout,
    layout.columns.map((column) => columnCells(layout, column, readings)),
    caption,
  );
}

/** For each row of the layout what is read at its points; null without a solution. */
type Readings = readonly (readonly PointReading[] | null)[];

function columnCells(layout: TableLayout, column: Column, readings: Readings): readonly Cell[] {
  const given = givenCells(layout, column.kind);
  if (given !== null) return given;
  switch (column.kind) {
    case 'V':
      return readingCells(layout, [column.of], readings);
    case 'mean':
      return readingCells(
        layout,
        layout.rows.map((_, i) => i),
        readings,
      );
    case 'ln r':
      return radiusCells(layout, (r) => log(r), 2);
    default:
      return radiusCells(layout, (r) => 1 / r, 4);
  }
}

/** Mean of the readings of the given rows; `?` where a reading should stand and the setup has no solution. */
function readingCells(layout: TableLayout, rows: readonly number[], readings: Readings): readonly Cell[] {
  const means = layout.lines.map((line) => meanAt(line, rows, readings));
  const worst = Math.max(0, ...means.map((mean) => (typeof mean === 'object' ? mean.uncertainty_V : 0)));
  const steps = rows.flatMap((i) => {
    const setup = layout.rows[i]?.setup;
    return setup === undefined ? [] : [readingStep(setup)];
  });
  const step = steps.length === 0 ? 0.01 : Math.min(...steps);
  const decimals = readingDecimals(step, worst);
  return means.map((mean): Cell => {
    if (mean === 'no reading') return emptyCell;
    if (mean === 'unsolved') return textCell('?');
    return numberCells([toStep(mean.value_V, step)], decimals)[0] ?? emptyCell;
  });
}

type Mean = { readonly value_V: number; readonly uncertainty_V: number } | 'no reading' | 'unsolved';

function meanAt(line: Line, rows: readonly number[], readings: Readings): Mean {
  const found = rows.flatMap((i) => {
    const at = line.points[i] ?? null;
    return at === null ? [] : [readings[i]?.[at] ?? null];
  });
  if (found.length === 0) return 'no reading';
  const values = found.map((reading) => reading?.reading_V ?? null).filter((value) => value !== null);
  if (values.length < found.length) return 'unsolved';
  return {
    value_V: values.reduce((sum, value) => sum + value, 0) / values.length,
    uncertainty_V: Math.max(...found.map((reading) => reading?.uncertainty_V ?? 0)),
  };
}

/** A function of the radius; empty at the centre itself. */
function radiusCells(layout: TableLayout, of: (r: number) => number, decimals: number): readonly Cell[] {
  const values = layout.lines.map((line) => {
    const r = radiusAt(layout, line);
    return r > 0 ? of(r) : null;
  });
  return numberCells(values, decimals);
}
