/** Reads the lines for probes and rows of readings. */
import { likelyUnits } from '../quantity/units.ts';
import type { LineReader } from './line-reader.ts';
import { end, unexpected } from './parts.ts';
import { barePair, point, seesPoint, unbracketed } from './points.ts';
import type { Count, Name, ProbeStatement, RowEnd, RowStatement, RowSteps, Value } from './tree.ts';
import {
  count,
  direction,
  name,
  needsWord,
  nextToken,
  positive,
  quantity,
  rewrite,
  seesDirection,
  writeBefore,
} from './values.ts';

export function probe(line: LineReader, probeName: Name): ProbeStatement | null {
  line.skipCommas();
  if (!line.takeWord('at')) {
    const places = '`at (120, 80) mm`, `at centre of R`, or `at A 50 mm` along a row';
    const fixes = seesPoint(line) ? [writeBefore(line, 'at')] : [];
    return needsWord(line, ['at'], `Where is ${probeName.text}? ${places}.`, fixes);
  }
  const where = probePlace(line);
  end(line);
  return where === null ? null : { kind: 'probe', name: probeName, where, span: line.whole };
}

/** What follows `at` for a probe: a point, `ROW D`, or `D along ROW`, which is written `ROW D`. */
export function probePlace(line: LineReader): ProbeStatement['where'] | null {
  if (seesPoint(line)) return point(line);
  const bare = barePair(line);
  if (bare !== null) return unbracketed(line, bare);
  return line.peek().kind === 'word' ? rowThenDistance(line) : distanceAlong(line);
}

export function row(line: LineReader, rowName: Name): RowStatement | null {
  line.skipCommas();
  if (!line.takeWord('from')) {
    const says = `Where does row ${rowName.text} begin? \`from N to P every 10 mm\`.`;
    return needsWord(line, ['from'], says, line.atEnd ? [] : [writeBefore(line, 'from')]);
  }
  const ends = rowEnds(line);
  if (ends === null) return null;
  line.skipCommas();
  const steps = rowSteps(line);
  end(line);
  if (steps === null) return null;
  const [start, finish] = ends;
  if (finish.kind === 'direction' && steps.kind !== 'at') return onlyAt(line, steps);
  return { kind: 'row', name: rowName, start, end: finish, steps, span: line.whole };
}

/** What follows `from`: the first end, and the other one or a direction. */
export function rowEnds(line: LineReader): readonly [RowEnd, RowStatement['end']] | null {
  const start = rowEnd(line);
  if (start === null) return null;
  line.skipCommas();
  if (line.takeWord('to')) {
    const finish = rowEnd(line);
    return finish === null ? null : [start, finish];
  }
  if (!seesDirection(line)) return toWhere(line, start);
  const way = direction(line);
  return way === null ? null : [start, { ...way, kind: 'direction' }];
}

export function rowSteps(line: LineReader): RowSteps | null {
  const from = line.pieces.length;
  if (line.takeWord('every')) {
    const step = positive(line, 'length');
    return step === null ? null : { kind: 'every', step, span: line.spanFrom(from) };
  }
  if (line.takeWord('at')) {
    const distances = quantityList(line, 'length');
    return distances === null ? null : { kind: 'at', distances, span: line.spanFrom(from) };
  }
  const steps = line.takeWord('in');
  if (!steps && line.peek().kind !== 'number') {
    const places = '`every 10 mm`, `in 10 steps`, `11 readings`, or `at 10 mm, 20 mm`';
    return needsWord(line, ['every', 'in', 'at'], `Where along the row? ${places}.`);
  }
  const number = count(line, steps ? 'steps' : 'readings');
  if (number === null) return null;
  if (line.takeWord('steps')) {
    if (!steps) writeIn(line, from);
    return { kind: 'steps', count: number, span: line.spanFrom(from) };
  }
  if (line.takeWord('readings')) return { kind: 'readings', count: number, span: line.spanFrom(from) };
  return stepsOrReadings(line, number);
}

/** `10 mm, 20 mm, …`: each with its own unit. */
export function quantityList(line: LineReader, dimension: 'length' | 'potential'): readonly Value[] | null {
  const shared = sharedUnit(line);
  if (shared !== null) return shared;
  const values: Value[] = [];
  do {
    const value = quantity(line, dimension);
    if (value === null) return null;
    values.push(value);
    line.skipCommas();
    line.takeWord('and');
  } while (['number', 'sign'].includes(line.peek().kind) && /^[\d.+\-\u2212]/u.test(line.peek().text));
  return values;
}

/** `A 50 mm`. An electrode there was meant as a place of its own. */
function rowThenDistance(line: LineReader): ProbeStatement['where'] | null {
  const from = line.pieces.length;
  const row = name(line, 'a row');
  if (row === null) return null;
  if (line.peek().kind === 'number' || line.peek().kind === 'sign') {
    const distance = quantity(line, 'length');
    return distance === null ? null : { kind: 'along', row, distance, span: line.spanFrom(from) };
  }
  const at = { from: row.span.from - line.line.at, to: row.span.to - line.line.at };
  const centre = `centre of ${row.text}`;
  const electrode = line.context.electrodes.has(row.text);
  return line.report('part-missing', {
    span: row.span,
    message: electrode
      ? `Where on ${row.text}? \`at ${centre}\`, or a point such as \`at (120, 80) mm\`.`
      : `How far along ${row.text}? \`at ${row.text} 50 mm\`.`,
    fixes: electrode ? [rewrite(line, at, centre, centre)] : [],
  });
}

function distanceAlong(line: LineReader): ProbeStatement['where'] | null {
  const from = line.pieces.length;
  const distance = quantity(line, 'length');
  if (distance === null) return null;
  if (!line.takeWord('along')) {
    return needsWord(line, ['along'], 'Along which row? `at A 50 mm`.');
  }
  const rowName = name(line, 'a row');
  if (rowName === null) return null;
  writeRowFirst(line, from);
  return { kind: 'along', row: rowName, distance, span: line.spanFrom(from) };
}

/** The formatter writes `at 50 mm along A` as `at A 50 mm`: pieces D… `along` A become A D…. */
function writeRowFirst(line: LineReader, from: number): void {
  const taken = line.pieces.splice(from);
  const last = taken.pop();
  taken.pop();
  const first = taken[0];
  if (last === undefined || first === undefined) return;
  // Offsets stay in order: the pieces share the place that they all came from.
  line.pieces.push({ ...last, from: first.from, to: first.from });
  for (const piece of taken) line.pieces.push(piece);
  const end = line.pieces.at(-1);
  if (end !== undefined) line.pieces[line.pieces.length - 1] = { ...end, to: last.to };
}

function rowEnd(line: LineReader): RowEnd | null {
  if (seesPoint(line)) return point(line);
  if (line.peek().kind === 'word') {
    const of = name(line, 'an electrode');
    return of === null ? null : { kind: 'electrode', name: of, span: of.span };
  }
  const bare = barePair(line);
  if (bare !== null) return unbracketed(line, bare);
  return line.report('part-missing', {
    span: nextToken(line),
    message: 'Here stands an electrode, `centre of` one, or a point such as `(60, 80) mm`.',
  });
}

function toWhere(line: LineReader, start: RowEnd): null {
  const at = { from: line.offset, to: line.offset };
  const own =
    start.kind === 'electrode' ? start.name.text : start.kind === 'centre' ? start.of?.text : undefined;
  const other = otherThan(own, line.context.electrodes);
  const left = line.text.slice(at.from).trim();
  const next = line.peek();
  const places = 'right at 10 mm, 20 mm';
  // A direction takes only `at`: what else stands there gives way.
  const rest = { from: next.from, to: line.text.length };
  const right = line.sees('at') ? rewrite(line, at, ' right', 'right') : rewrite(line, rest, places, places);
  const to = other === undefined ? [] : [rewrite(line, at, ` to ${other}`, `to ${other}`)];
  const after = left === '' ? [rewrite(line, at, ` ${places}`, places)] : [right];
  return line.report('part-missing', {
    span: line.span(start.span.from - line.line.at, start.span.to - line.line.at),
    message: 'To where?',
    hints: [
      'A row goes `to` its other end, or `left`, `right`, `up`, `down` with the places `at` which it is read.',
    ],
    fixes: [...after, ...to],
  });
}

function otherThan(own: string | undefined, names: ReadonlySet<string>): string | undefined {
  for (const name of names) if (name !== own) return name;
  return undefined;
}

function onlyAt(line: LineReader, steps: RowSteps): null {
  const at = { from: steps.span.from - line.line.at, to: steps.span.to - line.line.at };
  return line.report('part-missing', {
    span: steps.span,
    message: 'A row with a direction has no other end: say `at` which distances it is read.',
    fixes: [rewrite(line, at, 'at 10 mm, 20 mm', 'at 10 mm, 20 mm')],
  });
}

/** `10 steps` is written `in 10 steps`. */
function writeIn(line: LineReader, from: number): void {
  const at = line.pieces[from]?.from ?? line.offset;
  line.pieces.splice(from, 0, { kind: 'word', from: at, to: at, text: 'in' });
}

function stepsOrReadings(line: LineReader, number: Count): null {
  if (line.peek().kind === 'word') return unexpected(line, ['steps', 'readings']);
  const from = number.span.from - line.line.at;
  const before = /(?:in\s+)?$/iu.exec(line.text.slice(Math.max(0, from - 8), from))?.[0].length ?? 0;
  const at = { from: from - before, to: line.offset };
  return line.report('part-missing', {
    span: number.span,
    message: `${number.value} what? 10 steps are 11 readings.`,
    fixes: [`in ${number.value} steps`, `${number.value} readings`].map((text) =>
      rewrite(line, at, text, text),
    ),
  });
}

/** `10, 15, 20 mm`: only the last has a unit. */
const sharedPattern =
  /\s*((?:[+\-\u2212]?(?:\d+(?:\.\d+)?|\.\d+)\s*,\s*)+[+\-\u2212]?(?:\d+(?:\.\d+)?|\.\d+))\s*(\p{L}{1,12})/uy;

function sharedUnit(line: LineReader): null | readonly Value[] {
  sharedPattern.lastIndex = line.offset;
  const [all, list, unit] = sharedPattern.exec(line.text) ?? [];
  if (all === undefined || list === undefined || unit === undefined) return null;
  if (likelyUnits(unit, null).length === 0) return null;
  // One comma without a space, between two numbers: that is a decimal comma.
  if (/^[+\-\u2212]?\d+,\d+$/u.test(list)) return null;
  const from = line.peek().from;
  const each = list.split(',').map((digits) => `${digits.trim()} ${unit}`);
  const written = each.join(', ');
  const shown = each.length > 4 ? `each with ${unit}` : written;
  const at = { from, to: line.offset + all.length };
  line.report('unit-shared', {
    span: line.span(at.from, at.to),
    message: 'Each number of a list has its own unit: a comma could be a decimal comma.',
    fixes: [rewrite(line, at, written, shown, true)],
  });
  line.take('number', at.from, at.to);
  return [{ value: 1, dimension: 'length', span: line.span(at.from, at.to) }];
}
