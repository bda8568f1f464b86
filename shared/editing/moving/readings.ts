/** How the lines of probes and rows read when they are moved. */
import type { MoveStatement, ProbeStatement, RowEnd, RowStatement } from '../../block/tree.ts';
import { distance, dot, quarter, times } from '../../setup/plane.ts';
import type { Probe, Row, Setup } from '../../setup/setup.ts';
import { movedCoordinates, movedLength } from './numbers.ts';
import {
  movedPoint,
  type Reworded,
  refused,
  rewording,
  straying_mm,
  type Wish,
  written,
} from './rewording.ts';

type ProbePlace = ProbeStatement['where'];

/** Where a probe stands, after `at`; null where the line that moves it has another form. */
export function probePlace(line: ProbeStatement, move: MoveStatement | null): ProbePlace | null {
  if (move === null) return line.where;
  if (move.to.kind === 'probe') return move.to.where;
  if (move.to.kind === 'place' && move.to.place.anchor.kind === 'at') return move.to.place.anchor.point;
  return null;
}

export function movedProbe(wish: Wish, where: ProbePlace, probe: Probe, setup: Setup): Reworded {
  if (where.kind !== 'along') return movedPoint(wish, where, probe.at);
  const row = setup.rows.find(({ name }) => name === where.row.text);
  if (row === undefined) return refused(`${wish.label} waits for row ${where.row.text}.`);
  return movedAlong(wish, where, probe, row);
}

/** Along its row by whole mm; away from it, or past its ends, it gets a place of its own. */
function movedAlong(
  { source, label, by }: Wish,
  where: Extract<ProbePlace, { kind: 'along' }>,
  probe: Probe,
  row: Row,
): Reworded {
  const step = Math.round(dot(by, row.direction));
  const to = where.distance.value + step;
  const length = row.end === null ? Number.POSITIVE_INFINITY : distance(row.start, row.end);
  const astray = Math.abs(dot(by, quarter(row.direction)));
  if (astray > straying_mm || to < 0 || to > length) return written(source, where.span, probe.at, by);
  if (step === 0) {
    return refused(
      `${label} keeps to row ${row.name}: moved by more than ${straying_mm} mm it gets a place of its own.`,
    );
  }
  const edit = movedLength(source, where.distance, step);
  return rewording(source, where.span, [edit], times(row.direction, step));
}

interface RowLine {
  readonly start: RowEnd;
  readonly end: RowStatement['end'];
}

/** From where to where a row runs; null where the line that moves it has another form. */
export function rowLine(line: RowStatement, move: MoveStatement | null): RowLine | null {
  if (move === null) return line;
  return move.to.kind === 'row' ? move.to : null;
}

/** One end of a row: an electrode or a centre becomes a point. */
export function movedEnd(wish: Wish, { start, end }: RowLine, row: Row, which: 'first' | 'last'): Reworded {
  const place = which === 'first' ? start : end;
  const at = which === 'first' ? row.start : row.end;
  if (at === null || place.kind === 'direction') return refused(`Row ${row.name} has no last end.`);
  if (place.kind !== 'coordinates') return written(wish.source, place.span, at, wish.by);
  const edits = movedCoordinates(wish.source, [place], wish.by);
  return rewording(wish.source, place.span, edits, wish.by);
}

/** `from … to …` with one end written anew; the other as it stands in the text. */
export function rowText(
  source: string,
  { start, end }: RowLine,
  which: 'first' | 'last',
  becomes: string,
): string {
  const textOf = ({ span }: { readonly span: { readonly from: number; readonly to: number } }): string =>
    source.slice(span.from, span.to);
  const from = which === 'first' ? becomes : textOf(start);
  if (end.kind === 'direction') return `from ${from} ${textOf(end)}`;
  return `from ${from} to ${which === 'last' ? becomes : textOf(end)}`;
}
