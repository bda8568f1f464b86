/** Reads the lines that vary another setup. */
import type { LineReader } from './line-reader.ts';
import { end, missing, readParts } from './parts.ts';
import {
  alongSidePart,
  anchorPart,
  neededTerminal,
  onPart,
  placeOf,
  pointingPart,
  tipAt,
  tipPart,
  turnedPart,
} from './places.ts';
import { seesPoint } from './points.ts';
import { probePlace, rowEnds, rowSteps } from './rows.ts';
import type {
  Anchor,
  ChangeStatement,
  Direction,
  MoveStatement,
  Name,
  Point,
  ReverseStatement,
  Value,
  WithoutStatement,
} from './tree.ts';
import { needsWord } from './values.ts';

export function change(line: LineReader, name: Name): ChangeStatement | null {
  line.skipCommas();
  line.takeWord('to');
  const terminal = neededTerminal(line);
  end(line);
  return terminal === null ? null : { kind: 'change', name, terminal, span: line.whole };
}

export function without(line: LineReader, name: Name): WithoutStatement {
  end(line);
  return { kind: 'without', name, span: line.whole };
}

export function reverse(line: LineReader): ReverseStatement | null {
  if (!line.takeWord('supply')) {
    return needsWord(line, ['supply'], 'Only the supply is reversed: `reverse supply`.');
  }
  end(line);
  return { kind: 'reverse', span: line.whole };
}

/** Keeps the form that the thing was given in: place, tip, along a row, from and to. */
export function move(line: LineReader, name: Name): MoveStatement | null {
  line.skipCommas();
  line.takeWord('to');
  const to = line.sees('from') ? movedRow(line) : seesAlong(line) ? movedAlong(line) : movedPiece(line, name);
  if (to === null) return null;
  end(line);
  return { kind: 'move', name, to, span: line.whole };
}

type Target = MoveStatement['to'];

function movedRow(line: LineReader): Target | null {
  const from = line.pieces.length;
  line.takeWord('from');
  const ends = rowEnds(line);
  if (ends === null) return null;
  line.skipCommas();
  const steps = line.atEnd ? null : rowSteps(line);
  return { kind: 'row', start: ends[0], end: ends[1], steps, span: line.spanFrom(from) };
}

/** `at A 50 mm` and `at 50 mm along A`; a point is a place. */
function seesAlong(line: LineReader): boolean {
  return line.lookAhead(() => line.takeWord('at') && !seesPoint(line) && !line.atEnd);
}

function movedAlong(line: LineReader): Target | null {
  const from = line.pieces.length;
  line.takeWord('at');
  const where = probePlace(line);
  return where === null ? null : { kind: 'probe', where, span: line.spanFrom(from) };
}

interface MoveParts {
  readonly tip: Point;
  readonly on: Name;
  readonly pointing: Direction;
  readonly anchor: Anchor;
  readonly turned: Value;
}

function movedPiece(line: LineReader, name: Name): Target | null {
  const from = line.pieces.length;
  if (line.sees('tip at') || line.sees('on')) return movedTip(line);
  const found = readParts<Omit<MoveParts, 'tip' | 'on' | 'pointing'>>(line, {
    anchor: anchorPart,
    turned: turnedPart,
  });
  if (found.anchor === null) {
    return missing(line, `Where to? \`move ${name.text} at (60, 80) mm\`, or \`100 mm right of\` another.`);
  }
  const place = placeOf(found.anchor, found.turned);
  return { kind: 'place', place, span: line.spanFrom(from) };
}

function movedTip(line: LineReader): Target | null {
  const from = line.pieces.length;
  const found = readParts<Omit<MoveParts, 'anchor' | 'turned'> & { along: Value }>(line, {
    tip: tipPart,
    on: onPart,
    pointing: pointingPart,
    along: alongSidePart,
  });
  const { tip, on, along, pointing } = found;
  if (line.failed) return null;
  const span = line.spanFrom(from);
  if (tip !== null) return { kind: 'tip', tip: tipAt(tip), pointing, span };
  if (on === null) return null;
  const to = Math.max(on.span.to, along?.span.to ?? 0);
  return {
    kind: 'tip',
    tip: { kind: 'on', of: on, along, span: { from: on.span.from, to } },
    pointing,
    span,
  };
}
