/** Reads where a piece is, how it is connected, and where a spike or prong stands. */
import { numberAt } from '../quantity/read.ts';
import type { LineReader } from './line-reader.ts';
import { after, type Part } from './parts.ts';
import { point } from './points.ts';
import type { Anchor, Place, Point, Side, Size, Terminal, Tip, Value } from './tree.ts';
import { direction, name, needsWord, nextToken, quantity, rewrite, seesSize, size } from './values.ts';

/** A size where no other part begins with a number, or only such as are asked for first. */
export const sizePart: Part<Size> = {
  words: [],
  starts: (line) => numberAt(line.text, line.offset) !== null,
  read: size,
};

/** A size where other numbers may stand. */
export const sizeAmongPart: Part<Size> = { words: [], starts: seesSize, read: size };

export const turnedPart: Part<Value> = after('turned', (line) => quantity(line, 'angle'));

export const pointingPart = after('pointing', direction);

/** `at POINT`, `D right of NAME`, `midway between NAME and NAME`; a turn is a part of its own. */
export const anchorPart: Part<Anchor> = {
  words: ['at', 'midway between', 'right of', 'left of', 'above', 'below'],
  starts: seesAnchor,
  read: anchor,
};

/** `at POINT` where nothing else may stand. */
export const atPointPart: Part<Point> = after('at', point);

export const terminalWords = ['positive', 'negative', 'floating', 'held at', 'joined to'] as const;

export const terminalPart: Part<Terminal> = {
  words: terminalWords,
  starts: (line) => line.seen(terminalWords) !== null,
  read: terminal,
};

/** `tip at POINT`, `tip at centre of R`. */
export const tipPart: Part<Point> = after('tip at', point);

/** `at D` along the side that a spike or prong stands on. */
export const alongSidePart: Part<Value> = {
  words: ['at'],
  starts: (line) => line.sees('at'),
  read(line) {
    line.takeWord('at');
    return quantity(line, 'length');
  },
};

export const onPart = after('on', (line) => name(line, 'the electrode that it stands on'));

export function placeOf(at: Anchor, turned: Value | null): Place {
  const to = Math.max(at.span.to, turned?.span.to ?? 0);
  const from = Math.min(at.span.from, turned?.span.from ?? at.span.from);
  return { anchor: at, turned, span: { from, to } };
}

export function tipAt(at: Point): Tip {
  return { kind: 'tip', point: at, span: at.span };
}

function terminal(line: LineReader): Terminal | null {
  const from = line.pieces.length;
  const read = terminalHere(line, from);
  line.terminal = { from, to: line.pieces.length };
  return read;
}

function terminalHere(line: LineReader, from: number): Terminal | null {
  const word = line.seen(terminalWords);
  if (word === null) return null;
  line.takeWord(word);
  if (word === 'held at') {
    const potential = quantity(line, 'potential');
    return potential === null ? null : { kind: 'held', potential, span: line.spanFrom(from) };
  }
  if (word === 'joined to') {
    const to = name(line, 'the electrode that it is joined to');
    return to === null ? null : { kind: 'joined', to, span: line.spanFrom(from) };
  }
  return { kind: word, span: line.spanFrom(from) };
}

/** One terminal where nothing else will do. */
export function neededTerminal(line: LineReader): Terminal | null {
  if (terminalPart.starts(line)) return terminal(line);
  const words = terminalWords.map((word) => `\`${word}\``).join(', ');
  return needsWord(line, terminalWords, `Here stands one of ${words}.`);
}

const sides = { 'right of': 'right', 'left of': 'left', above: 'above', below: 'below' } as const;
const sideWords = ['right of', 'left of', 'above', 'below'] as const;

function seesAnchor(line: LineReader): boolean {
  if (line.sees('at') || line.sees('midway between')) return true;
  if (line.peek().kind !== 'number' && line.peek().kind !== 'sign') return line.seen(sideWords) !== null;
  return line.lookAhead(() => {
    quantity(line, 'length');
    return line.seen(sideWords) !== null;
  });
}

function anchor(line: LineReader): Anchor | null {
  const from = line.pieces.length;
  if (line.takeWord('midway between')) return midway(line, from);
  if (line.takeWord('at')) {
    const at = point(line);
    return at === null ? null : { kind: 'at', point: at, span: line.spanFrom(from) };
  }
  return beside(line, from);
}

function midway(line: LineReader, from: number): Anchor | null {
  const first = name(line, 'an electrode');
  if (first === null) return null;
  if (!line.takeWord('and')) {
    const asks = `Between ${first.text} and which other electrode? \`midway between ${first.text} and …\``;
    return needsWord(line, ['and'], asks);
  }
  const second = name(line, 'an electrode');
  return second === null ? null : { kind: 'midway', between: [first, second], span: line.spanFrom(from) };
}

function beside(line: LineReader, from: number): Anchor | null {
  const gap = line.seen(sideWords) === null ? quantity(line, 'length') : noGap(line);
  const word = line.seen(sideWords);
  if (gap === null || word === null) return null;
  line.takeWord(word);
  const side: Side = sides[word];
  const of = name(line, 'the electrode that it is placed by');
  return of === null ? null : { kind: 'beside', side, gap, of, span: line.spanFrom(from) };
}

function noGap(line: LineReader): null {
  const { from } = line.peek();
  return line.report('part-missing', {
    span: nextToken(line),
    message: 'How far, from edge to edge? `100 mm right of N`.',
    fixes: [rewrite(line, { from, to: from }, '100 mm ', '100 mm before it')],
  });
}
