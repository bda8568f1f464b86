/** Probes, and what stands where nothing can be read. */
import type { ProbeStatement } from '../block/tree.ts';
import type { Point } from '../field/geometry/outline.ts';
import { metalAt, unreadable } from './metal.ts';
import { plus, times } from './plane.ts';
import type { Report } from './report.ts';
import type { RowTools } from './rows.ts';
import type { Electrode, Hole, Paper, Probe, Row } from './setup.ts';
import { shown } from './shown.ts';

export interface Readable {
  readonly paper: Paper | null;
  readonly holes: readonly Hole[];
  readonly electrodes: readonly Electrode[];
}

/** Null, with a finding, where its place cannot be found; beside the paper or in a hole it stays, with an error. */
export function readProbe(
  { name, where, span }: ProbeStatement,
  rows: readonly Row[],
  bench: Readable,
  tools: RowTools,
): Probe | null {
  const at =
    where.kind === 'along' ? alongRow(where.row, where.distance, rows, tools) : tools.places.point(where);
  if (at === null) return null;
  const trouble = unreadable(bench, at);
  if (trouble !== null) {
    tools.report('reading-off-paper', {
      span: where.kind === 'along' ? span : where.span,
      message: `${name.text} stands ${trouble}.`,
    });
  }
  return {
    name: name.text,
    span: name.span,
    at,
    on: trouble === null ? (metalAt(bench, at)?.name ?? null) : null,
  };
}

type Along = Extract<ProbeStatement['where'], { kind: 'along' }>;

function alongRow(
  name: Along['row'],
  far: Along['distance'],
  rows: readonly Row[],
  tools: RowTools,
): Point | null {
  if (tools.names.row(name) === null) return null;
  const row = rows.find((r) => r.name === name.text);
  if (row === undefined) {
    return tools.report('waits-for-line', {
      span: name.span,
      message: `This waits for row ${name.text}, which has no place yet.`,
    });
  }
  const length = row.end === null ? null : lengthOf(row);
  if (far.value < 0 || (length !== null && far.value > length + 1e-6)) {
    return tools.report('row-readings', {
      span: far.span,
      message: `Row ${row.name} is ${shown(length ?? 0, 'length')} long and counts from its first point.`,
    });
  }
  const at = plus(row.start, times(row.direction, far.value));
  return { x: Math.round(at.x * 1e9) / 1e9, y: Math.round(at.y * 1e9) / 1e9 };
}

const lengthOf = ({ start, end }: Row): number =>
  end === null ? 0 : Math.sqrt((end.x - start.x) ** 2 + (end.y - start.y) ** 2);

/** One error a row for its places that cannot be read. */
export function checkRow(row: Row, bench: Readable, report: Report): void {
  const lost = row.points.filter(({ at }) => unreadable(bench, at) !== null);
  const [first] = lost;
  if (first === undefined) return;
  const more = lost.length === 1 ? '' : ` (and ${lost.length - 1} more)`;
  report('reading-off-paper', {
    span: row.span,
    message: `The reading at ${shown(first.distance_mm, 'length')}${more} of row ${row.name} lies ${unreadable(bench, first.at)}.`,
  });
}
