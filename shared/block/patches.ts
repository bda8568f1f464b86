/** Reads the lines for what is done to paper and metal: clips, contacts, holes, slits, patches, the sheet of copper. */
import { notNegative } from './apparatus.ts';
import type { LineReader } from './line-reader.ts';
import { after, end, type Found, missing, type Part, readParts } from './parts.ts';
import { atPointPart, sizeAmongPart, sizePart, turnedPart } from './places.ts';
import { point, seesPoint } from './points.ts';
import { cornersPart, enoughCorners } from './shapes.ts';
import { perSquare } from './sheet-resistance.ts';
import type {
  ClipStatement,
  ContactStatement,
  Coordinates,
  CopperStatement,
  HoleStatement,
  LiftedStatement,
  Name,
  PaintedStatement,
  Patch,
  Point,
  Size,
  SlitStatement,
  Value,
} from './tree.ts';
import { unlikely } from './unlikely.ts';
import { needsWord, nextToken, positive, writeBefore } from './values.ts';

export function clip(line: LineReader, name: Name): ClipStatement | null {
  line.skipCommas();
  const resistance = notNegative(line, 'resistance');
  end(line);
  return resistance === null ? null : { kind: 'clip', name, resistance, span: line.whole };
}

export function contact(line: LineReader, name: Name): ContactStatement | null {
  line.skipCommas();
  const resistance = notNegative(line, 'contact');
  end(line);
  return resistance === null ? null : { kind: 'contact', name, resistance, span: line.whole };
}

export function copper(line: LineReader): CopperStatement | null {
  const thickness = positive(line, 'length');
  end(line);
  return thickness === null ? null : { kind: 'copper', thickness, span: line.whole };
}

export function lifted(line: LineReader, name: Name): LiftedStatement | null {
  const patch = patchFrom(line, readParts<PatchParts>(line, patchParts), `The lifted patch of ${name.text}`);
  return patch === null ? null : { kind: 'lifted', name, ...patch, span: line.whole };
}

export function painted(line: LineReader): PaintedStatement | null {
  const resistancePart: Part<Value> = {
    words: [],
    starts: (l) => l.peek().kind === 'number',
    read: (l) => unlikely(l, perSquare(l), 'paper'),
  };
  const found = readParts<PatchParts & { resistance: Value }>(line, {
    ...patchParts,
    size: sizeAmongPart,
    resistance: resistancePart,
  });
  const patch = patchFrom(line, found, 'The painted patch');
  const { resistance } = found;
  if (resistance === null)
    return missing(line, 'What is the sheet resistance of the paint? `1 kΩ per square`.');
  return patch === null ? null : { kind: 'painted', ...patch, resistance, span: line.whole };
}

export function hole(line: LineReader): HoleStatement | null {
  if (line.takeWord('disc')) return discHole(line);
  if (line.takeWord('outline')) return outlineHole(line);
  if (line.seen(['diameter', 'radius']) !== null) {
    const fixes = [writeBefore(line, 'disc')];
    return line.report('part-missing', {
      span: nextToken(line),
      message: 'A round hole is a `disc`.',
      fixes,
    });
  }
  line.takeWord('bar');
  const patch = patchFrom(line, readParts<PatchParts>(line, patchParts), 'The hole');
  return patch === null ? null : { kind: 'hole', form: 'box', ...patch, span: line.whole };
}

export function slit(line: LineReader): SlitStatement | null {
  if (!line.takeWord('from')) return slitNeeds(line);
  const start = point(line);
  if (start === null) return null;
  line.skipCommas();
  if (!line.takeWord('to')) return slitNeeds(line);
  const finish = point(line);
  end(line);
  return finish === null ? null : { kind: 'slit', start, end: finish, span: line.whole };
}

function slitNeeds(line: LineReader): null {
  const message = 'A slit runs from one point to another: `slit from (100, 20) mm to (100, 60) mm`.';
  const word = line.pieces.length > 1 ? 'to' : 'from';
  return needsWord(line, [word], message, seesPoint(line) ? [writeBefore(line, word)] : []);
}

interface PatchParts {
  readonly size: Size;
  readonly at: Point;
  readonly turned: Value;
}
const patchParts = { size: sizePart, at: atPointPart, turned: turnedPart };

function patchFrom(line: LineReader, found: Found<PatchParts>, what: string): Patch | null {
  const { size, at, turned } = found;
  if (size === null) return missing(line, `${what} needs its size: \`10 mm × 30 mm\`.`);
  if (at === null) return missing(line, `${what} needs its place: \`at (60, 40) mm\`.`);
  return { size, at, turned };
}

function discHole(line: LineReader): HoleStatement | null {
  const found = readParts<{ diameter: Value; radius: Value; at: Point }>(line, {
    diameter: after('diameter', (l) => positive(l, 'length')),
    radius: after('radius', (l) => positive(l, 'length')),
    at: atPointPart,
  });
  const { radius, at } = found;
  const diameter = found.diameter ?? (radius === null ? null : { ...radius, value: 2 * radius.value });
  if (diameter === null) return missing(line, 'How large is the hole? `diameter 20 mm`.');
  if (at === null) return missing(line, 'Where is the hole? `at (120, 80) mm`.');
  return { kind: 'hole', form: 'disc', diameter, at, span: line.whole };
}

function outlineHole(line: LineReader): HoleStatement | null {
  const found = readParts<{ corners: readonly Coordinates[] }>(line, { corners: cornersPart });
  const shape = enoughCorners(line, found.corners, 3);
  return shape === null ? null : { kind: 'hole', form: 'outline', corners: shape, span: line.whole };
}
