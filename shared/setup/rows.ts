/** Rows of readings: their ends on electrodes or points, and the places between. */
import type { Name, RowEnd, RowStatement, Value } from '../block/tree.ts';
import type { Point } from '../field/geometry/outline.ts';
import { type End, lineBetween } from './between.ts';
import type { Names } from './names.ts';
import type { Places } from './places.ts';
import { distance, minus, plus, times, unitVector } from './plane.ts';
import { fixBy, type Report, rewrite } from './report.ts';
import type { Row, RowPoint } from './setup.ts';
import { shown } from './shown.ts';

export interface RowTools {
  readonly names: Names;
  readonly places: Places;
  readonly report: Report;
}

/** More readings than this no one takes. */
const mostReadings = 1000;

export function readRow(statement: RowStatement, tools: RowTools): Row | null {
  const line = rowLine(statement, tools);
  if (line === null) return null;
  const distances = readingDistances(
    statement,
    line.to === null ? null : distance(line.from, line.to),
    tools.report,
  );
  if (distances === null) return null;
  return {
    name: statement.name.text,
    span: statement.name.span,
    start: line.from,
    end: line.to,
    direction: line.direction,
    points: distances.map((distance_mm): RowPoint => {
      const at = plus(line.from, times(line.direction, distance_mm));
      return { distance_mm, at: { x: nanometres(at.x), y: nanometres(at.y) } };
    }),
    startRadius_mm: line.startRadius_mm,
  };
}

/** Positions to 1e-9 mm: crossings are computed and carry rounding. */
const nanometres = (mm: number): number => Math.round(mm * 1e9) / 1e9;

interface Line {
  readonly from: Point;
  readonly to: Point | null;
  readonly direction: Point;
  readonly startRadius_mm: number;
}

function rowLine(statement: RowStatement, tools: RowTools): Line | null {
  const start = endOf(statement.start, tools);
  if (start === null) return null;
  if (statement.end.kind === 'direction') return directedLine(start, statement.end.angle_deg);
  const end = endOf(statement.end, tools);
  if (end === null) return null;
  const line = lineBetween(start, end);
  if (line === null) return concentric(statement, tools.report);
  const length = distance(line.from, line.to);
  if (length < 1e-6) {
    return tools.report('row-flat', {
      span: statement.span,
      message: `Row ${statement.name.text} starts where it ends.`,
    });
  }
  return {
    ...line,
    direction: times(minus(line.to, line.from), 1 / length),
    startRadius_mm: startsFromElectrode(statement.start) ? distance(line.from, start.centre) : 0,
  };
}

const startsFromElectrode = (end: RowEnd): boolean => end.kind !== 'coordinates';

/** From a point, or from where the line in that direction leaves the electrode. */
function directedLine(start: End, angle_deg: number): Line {
  const direction = unitVector(angle_deg);
  if (start.metal === null) return { from: start.centre, to: null, direction, startRadius_mm: 0 };
  const far: End = { centre: plus(start.centre, times(direction, 1e5)), metal: null };
  const from = lineBetween(start, far)?.from ?? start.centre;
  return { from, to: null, direction, startRadius_mm: distance(from, start.centre) };
}

function endOf(end: RowEnd, { names, places }: RowTools): End | null {
  if (end.kind === 'electrode') {
    return names.electrode(end.name, 'Rows run between electrodes and points.')
      ? places.end(end.name.text)
      : null;
  }
  const centre = places.point(end);
  return centre === null ? null : { centre, metal: null };
}

function concentric(statement: RowStatement, report: Report): null {
  const { start, end } = statement;
  const name = nameIn(start);
  const from = name === null ? '' : `from centre of ${name.text} `;
  const stretch = { from: start.span.from, to: end.span.to };
  return report('line-concentric', {
    span: stretch,
    message: 'Both ends have one centre: in which direction does the row run?',
    hints: ['A row with a direction takes its distances after `at`, counted from its first point.'],
    fixes:
      name === null
        ? []
        : [
            fixBy(`Write ${from}right at 10 mm, 20 mm`, [
              {
                span: { from: stretch.from, to: statement.steps.span.to },
                text: `centre of ${name.text} right at 10 mm, 20 mm`,
              },
            ]),
          ],
  });
}

function nameIn(end: RowEnd): Name | null {
  if (end.kind === 'electrode') return end.name;
  return end.kind === 'centre' ? end.of : null;
}

function readingDistances(
  statement: RowStatement,
  length: number | null,
  report: Report,
): readonly number[] | null {
  const { steps } = statement;
  if (steps.kind === 'at') return listed(steps.distances, length, report);
  if (length === null) {
    return report('row-direction', {
      span: steps.span,
      message: 'A row with a direction takes the distances of its readings.',
      fixes: [rewrite(steps.span, 'at 10 mm, 20 mm')],
    });
  }
  if (steps.kind === 'every') return everyStep(steps.step, length, report);
  const intervals = steps.kind === 'steps' ? steps.count.value : steps.count.value - 1;
  if (!Number.isInteger(intervals) || intervals < 1 || intervals >= mostReadings) {
    return report('row-readings', {
      span: steps.count.span,
      message: `A row takes from 2 to ${mostReadings} readings.`,
    });
  }
  crookedCount(steps.kind, steps.count, intervals, length, report);
  return Array.from({ length: intervals + 1 }, (_, i) =>
    i === intervals ? length : (length * i) / intervals,
  );
}

function listed(distances: readonly Value[], length: number | null, report: Report): readonly number[] {
  const beyond = distances.find(({ value }) => value < 0 || (length !== null && value > length + 1e-6));
  if (beyond !== undefined) {
    report('row-readings', {
      span: beyond.span,
      message:
        beyond.value < 0
          ? 'Distances are counted from the first point of the row.'
          : `The row is ${shown(length ?? 0, 'length')} long.`,
    });
  }
  return distances
    .filter((d) => d !== beyond && d.value >= 0 && (length === null || d.value <= length + 1e-6))
    .map((d) => d.value);
}

/** Readings at 0, step, 2 step … and at the end. */
function everyStep(step: Value, length: number, report: Report): readonly number[] | null {
  const whole = Math.floor(length / step.value + 1e-6);
  if (!(step.value > 0) || whole >= mostReadings) {
    return report('row-readings', {
      span: step.span,
      message: `Every ${shown(step.value, 'length')} on ${shown(length, 'length')}: more than ${mostReadings} readings.`,
    });
  }
  const distances = Array.from({ length: whole + 1 }, (_, i) => i * step.value);
  const rest = length - whole * step.value;
  if (Math.abs(rest) < 1e-6 * Math.max(1, length)) return [...distances.slice(0, -1), length];
  report('row-uneven', {
    span: step.span,
    message: `${shown(step.value, 'length')} does not divide ${shown(length, 'length')}: the last step is ${shown(rest, 'length')}.`,
    hints: ['Both ends are read.'],
  });
  return [...distances, length];
}

/** `10 readings` on 100 mm are meant to be 11, `in 11 steps` to be 10. */
function crookedCount(
  kind: 'steps' | 'readings',
  count: { readonly value: number; readonly span: Value['span'] },
  intervals: number,
  length: number,
  report: Report,
): void {
  const neat = (n: number): boolean => {
    const halves = (2 * length) / n;
    return n > 0 && Math.abs(halves - Math.round(halves)) < 1e-5 && halves >= 1;
  };
  if (neat(intervals)) return;
  const candidates = kind === 'readings' ? [intervals + 1, intervals - 1] : [intervals - 1, intervals + 1];
  const better = candidates.find(neat);
  if (better === undefined) return;
  const apart = (n: number): string => shown(Number((length / n).toPrecision(3)), 'length');
  const say = kind === 'readings' ? better + 1 : better;
  report('row-count', {
    span: count.span,
    message: `${count.value} ${kind} stand ${apart(intervals)} apart. ${say} ${kind} stand ${apart(better)} apart.`,
    fixes: [rewrite(count.span, String(say))],
  });
}
