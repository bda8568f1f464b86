/** Reads the lines that give pieces of electrodes. */
import type { LineReader } from './line-reader.ts';
import { after, type Found, missing, type Part, type Parts, readParts } from './parts.ts';
import {
  alongSidePart,
  anchorPart,
  onPart,
  placeOf,
  pointingPart,
  sizePart,
  terminalPart,
  tipAt,
  tipPart,
  turnedPart,
} from './places.ts';
import { corners, seesPair } from './points.ts';
import type {
  Anchor,
  Coordinates,
  Direction,
  Name,
  Opening,
  Place,
  Point,
  Shape,
  Size,
  Terminal,
  Tip,
  Value,
} from './tree.ts';
import { direction, needsWord, positive, rewrite } from './values.ts';

export type ShapeWord = Shape['shape'];

/** What follows the name, for each shape. The span is that of the whole line. */
export const shapeReaders: Readonly<Record<ShapeWord, (line: LineReader, name: Name) => Shape | null>> = {
  bar,
  disc,
  ring,
  box,
  spike,
  prong,
  outline,
  strip,
};

interface Placed {
  readonly anchor: Anchor;
  readonly turned: Value;
  readonly terminal: Terminal;
}

const placed: Parts<Placed> = { anchor: anchorPart, turned: turnedPart, terminal: terminalPart };
const length = (line: LineReader): Value | null => positive(line, 'length');
const diameterPart = after('diameter', length);
const radiusPart = after('radius', length);
const wallPart = after('wall', length);
const insidePart = after('inside diameter', length);
const openingPart: Part<Opening> = after('opening', opening);
export const cornersPart: Part<readonly Coordinates[]> = { words: [], starts: seesPair, read: corners };

function bar(line: LineReader, name: Name): Shape | null {
  const found = readParts<Placed & { size: Size }>(line, { ...placed, size: sizePart });
  const size = found.size ?? noSize(line, name);
  const place = placeFrom(line, name, found);
  if (size === null || place === null) return null;
  return { kind: 'shape', shape: 'bar', name, size, place, terminal: found.terminal, span: line.whole };
}

function disc(line: LineReader, name: Name): Shape | null {
  const found = readParts<Placed & { diameter: Value; radius: Value }>(line, {
    diameter: diameterPart,
    radius: radiusPart,
    ...placed,
  });
  const diameter = acrossFrom(line, found);
  if (diameter === null) missing(line, `How large is ${name.text}? \`diameter 20 mm\`.`);
  const place = placeFrom(line, name, found);
  if (diameter === null || place === null) return null;
  return { kind: 'shape', shape: 'disc', name, diameter, place, terminal: found.terminal, span: line.whole };
}

interface RingParts extends Placed {
  readonly diameter: Value;
  readonly radius: Value;
  readonly inside: Value;
  readonly wall: Value;
  readonly opening: Opening;
}

function ring(line: LineReader, name: Name): Shape | null {
  const found = readParts<RingParts>(line, {
    inside: insidePart,
    diameter: diameterPart,
    radius: radiusPart,
    wall: wallPart,
    opening: openingPart,
    ...placed,
  });
  const diameter = acrossFrom(line, found);
  const { inside, wall } = found;
  const given = [diameter, inside, wall].filter((value) => value !== null).length;
  if (given < 2) missing(line, ringNeeds(name, diameter));
  if (given > 2 && wall !== null) {
    line.report('part-twice', {
      span: wall.span,
      message: 'Two of `diameter`, `inside diameter` and `wall` are enough: the third follows from them.',
    });
  }
  const place = placeFrom(line, name, found);
  if (place === null) return null;
  const { terminal, opening: gap } = found;
  const sizes = { diameter, inside, wall, opening: gap };
  return { kind: 'shape', shape: 'ring', name, ...sizes, place, terminal, span: line.whole };
}

function ringNeeds(name: Name, diameter: Value | null): string {
  return diameter === null
    ? `How large is ${name.text}? \`diameter 50 mm, wall 4 mm\`.`
    : `How thick is the metal of ${name.text}? \`wall 4 mm\`, or \`inside diameter 42 mm\`.`;
}

function box(line: LineReader, name: Name): Shape | null {
  const found = readParts<Placed & { size: Size; wall: Value; opening: Opening }>(line, {
    ...placed,
    wall: wallPart,
    opening: openingPart,
    size: sizePart,
  });
  const size = found.size ?? noSize(line, name);
  if (found.wall === null) missing(line, `How thick is the metal of ${name.text}? \`wall 4 mm\`.`);
  const place = placeFrom(line, name, found);
  const { wall, terminal, opening: gap } = found;
  if (size === null || wall === null || place === null) return null;
  return { kind: 'shape', shape: 'box', name, size, wall, opening: gap, place, terminal, span: line.whole };
}

interface Standing {
  readonly tip: Point;
  readonly on: Name;
  readonly pointing: Direction;
  readonly along: Value;
  readonly terminal: Terminal;
}

const standing: Parts<Standing> = {
  tip: tipPart,
  on: onPart,
  pointing: pointingPart,
  along: alongSidePart,
  terminal: terminalPart,
};

function spike(line: LineReader, name: Name): Shape | null {
  const found = readParts<Standing & { base: Value; length: Value; radius: Value }>(line, {
    base: after('base', length),
    length: after('length', length),
    radius: after('tip radius', length),
    ...standing,
  });
  if (found.base === null) missing(line, `How wide is ${name.text} where it begins? \`base 20 mm\`.`);
  if (found.length === null) missing(line, `How long is ${name.text}? \`length 40 mm\`.`);
  const stand = standFrom(line, name, found);
  const { base, length: along, radius: tipRadius, terminal } = found;
  if (base === null || along === null || stand === null) return null;
  const sizes = { base, length: along, tipRadius };
  return { kind: 'shape', shape: 'spike', name, ...sizes, ...stand, terminal, span: line.whole };
}

function prong(line: LineReader, name: Name): Shape | null {
  const found = readParts<Standing & { size: Size }>(line, { ...standing, size: sizePart });
  const size = found.size ?? noSize(line, name);
  const stand = standFrom(line, name, found);
  if (size === null || stand === null) return null;
  if (!line.failed) noteLengthFirst(line, name, size);
  return { kind: 'shape', shape: 'prong', name, size, ...stand, terminal: found.terminal, span: line.whole };
}

function outline(line: LineReader, name: Name): Shape | null {
  const found = readParts<{ corners: readonly Coordinates[]; terminal: Terminal }>(line, {
    corners: cornersPart,
    terminal: terminalPart,
  });
  const shape = enoughCorners(line, found.corners, 3);
  if (shape === null) return null;
  return {
    kind: 'shape',
    shape: 'outline',
    name,
    corners: shape,
    terminal: found.terminal,
    span: line.whole,
  };
}

function strip(line: LineReader, name: Name): Shape | null {
  const found = readParts<{ path: readonly Coordinates[]; width: Value; terminal: Terminal }>(line, {
    path: cornersPart,
    width: after('width', length),
    terminal: terminalPart,
  });
  const path = enoughCorners(line, found.path, 2);
  if (found.width === null) missing(line, `How wide is the strip ${name.text}? \`width 5 mm\`.`);
  if (path === null || found.width === null) return null;
  const { width, terminal } = found;
  return { kind: 'shape', shape: 'strip', name, path, width, terminal, span: line.whole };
}

/** Corners of a polygon or a path; too few are reported. */
export function enoughCorners(
  line: LineReader,
  found: readonly Coordinates[] | null,
  least: 2 | 3,
): readonly Coordinates[] | null {
  if (found !== null && found.length >= least) return found;
  const example = least === 2 ? '(20, 20) (20, 80) mm' : '(20, 20) (40, 20) (30, 60) mm';
  return missing(
    line,
    `At least ${least === 2 ? 'two points' : 'three corners'} are needed: \`${example}\`.`,
  );
}

function opening(line: LineReader): Opening | null {
  const from = line.pieces.length;
  const width = length(line);
  if (width === null) return null;
  line.skipCommas();
  if (!line.takeWord('facing')) {
    return needsWord(line, ['facing'], 'Which way does the opening look? `opening 10 mm facing left`.');
  }
  const facing = direction(line);
  return facing === null ? null : { width, facing, span: line.spanFrom(from) };
}

function noSize(line: LineReader, name: Name): null {
  return missing(line, `How large is ${name.text}? Width × height, such as \`10 mm × 120 mm\`.`);
}

function placeFrom(
  line: LineReader,
  name: Name,
  found: Found<Pick<Placed, 'anchor' | 'turned'>>,
): Place | null {
  if (found.anchor !== null) return placeOf(found.anchor, found.turned);
  return missing(
    line,
    `Where is ${name.text}? \`at (60, 80) mm\`, \`at centre\`, or \`100 mm right of\` another.`,
  );
}

/** A diameter, or twice a radius. */
function acrossFrom(line: LineReader, found: Found<{ diameter: Value; radius: Value }>): Value | null {
  const { diameter, radius } = found;
  if (radius === null) return diameter;
  if (diameter !== null) {
    line.report('part-twice', {
      span: radius.span,
      message: 'Diameter and radius are both given. Which one holds?',
    });
  }
  return { ...radius, value: 2 * radius.value };
}

function standFrom(
  line: LineReader,
  name: Name,
  found: Found<Omit<Standing, 'terminal'>>,
): { readonly tip: Tip; readonly pointing: Direction } | null {
  const { tip, on, pointing, along } = found;
  if (tip === null && on === null) {
    return missing(line, `Where is ${name.text}? \`tip at (90, 80) mm\`, or \`on\` an electrode.`);
  }
  if (pointing === null) return missing(line, `Which way does ${name.text} point? \`pointing left\`.`);
  if (tip !== null && on !== null) {
    line.report('part-twice', {
      span: on.span,
      message: '`tip at` and `on` both say where it is. Which one holds?',
    });
  }
  if (on === null && along !== null) {
    line.report('word-unexpected', {
      span: along.span,
      message: 'A place along the side goes with `on` only.',
    });
  }
  if (tip !== null) return { tip: tipAt(tip), pointing };
  if (on === null) return null;
  const to = Math.max(on.span.to, along?.span.to ?? 0);
  return { tip: { kind: 'on', of: on, along, span: { from: on.span.from, to } }, pointing };
}

function noteLengthFirst(line: LineReader, name: Name, size: Size): void {
  if (size.width.value <= size.height.value) return;
  const text = (value: Value): string =>
    line.text.slice(value.span.from - line.line.at, value.span.to - line.line.at);
  const at = { from: size.span.from - line.line.at, to: size.span.to - line.line.at };
  const unit = /[\d.]\s*$/u.test(text(size.width)) ? text(size.height).replace(/^[\d.]+\s*/u, ' ') : '';
  const turned = `${text(size.height)} × ${text(size.width)}${unit}`;
  line.report('prong-sizes', {
    span: size.span,
    message: `${name.text} is ${size.width.value} mm wide and stands out ${size.height.value} mm. Turn the sizes round?`,
    fixes: [rewrite(line, at, turned, turned)],
  });
}
