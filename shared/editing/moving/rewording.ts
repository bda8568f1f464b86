/** Places written anew: points, and where a piece stands in relation to others. */
import type { Anchor, Point as BlockPoint } from '../../block/tree.ts';
import type { Point } from '../../field/geometry/outline.ts';
import type { TextEdit } from '../../findings/finding.ts';
import { minus } from '../../setup/plane.ts';
import type { Span } from '../../text/span.ts';
import { movedCoordinates, movedLength, newCoordinate, pairText } from './numbers.ts';
import { editedText } from './supposed.ts';

/** How a place reads after a move. */
export interface Rewording {
  readonly kind: 'reworded';
  readonly edits: readonly TextEdit[];
  /** The place before and after, in the words of the language. */
  readonly was: string;
  readonly becomes: string;
  /** How far the thing then moves, mm: less than was asked where it keeps to a line. */
  readonly by: Point;
}
interface Refused {
  readonly kind: 'refused';
  readonly refusal: string;
}
export type Reworded = Rewording | Refused;

export const refused = (refusal: string): Refused => ({ kind: 'refused', refusal });

/** A hand that means to keep to a line strays from it by no more, mm. */
export const straying_mm = 3;

/** What is to be moved, and how far. */
export interface Wish {
  /** The file. */
  readonly source: string;
  /** For messages: `bar P`. */
  readonly label: string;
  /** Whole mm. */
  readonly by: Point;
}

/** `at` is where the point lies now. */
export function movedPoint({ source, by }: Wish, point: BlockPoint, at: Point): Rewording {
  if (point.kind === 'centre') return written(source, point.span, at, by);
  return rewording(source, point.span, movedCoordinates(source, [point], by), by);
}

/** Writes coordinates over a span. */
export function written(source: string, span: Span, at: Point, by: Point, before = ''): Rewording {
  const to = { x: newCoordinate(at.x + by.x), y: newCoordinate(at.y + by.y) };
  const edit = { span, text: `${before}${pairText(to.x, to.y)}` };
  return rewording(source, span, [edit], minus(to, at));
}

export function rewording(source: string, span: Span, edits: readonly TextEdit[], by: Point): Rewording {
  const was = source.slice(span.from, span.to);
  const local = edits.map((edit) => ({
    span: { from: edit.span.from - span.from, to: edit.span.to - span.from },
    text: edit.text,
  }));
  return { kind: 'reworded', edits, was, becomes: editedText(was, local), by };
}

/**
 * The place of a piece whose box has its middle at `centre`. `loose`: a piece that stands beside another one and is moved along that
 * line stays in it, however the hand strays.
 */
export function movedAnchor(wish: Wish, anchor: Anchor, centre: Point, loose: boolean): Reworded {
  const { source } = wish;
  switch (anchor.kind) {
    case 'at': {
      const { edits, by } = movedPoint(wish, anchor.point, centre);
      return rewording(source, anchor.span, edits, by);
    }
    case 'midway':
      return written(source, anchor.span, centre, wish.by, 'at ');
    case 'beside':
      return movedBeside(wish, anchor, centre, loose);
  }
}

type Beside = Extract<Anchor, { kind: 'beside' }>;

/** Away from the other piece. */
const outward: Readonly<Record<Beside['side'], Point>> = {
  right: { x: 1, y: 0 },
  left: { x: -1, y: 0 },
  above: { x: 0, y: 1 },
  below: { x: 0, y: -1 },
};

function movedBeside(wish: Wish, anchor: Beside, centre: Point, loose: boolean): Reworded {
  const { source, label, by } = wish;
  const out = outward[anchor.side];
  const farther = by.x * out.x + by.y * out.y;
  const astray = Math.abs(by.x * out.y) + Math.abs(by.y * out.x);
  if (astray > (loose ? straying_mm : 0)) return written(source, anchor.span, centre, by, 'at ');
  if (farther === 0) {
    return refused(
      `${label} keeps in line with ${anchor.of.text}: moved by more than ${straying_mm} mm it gets a place of its own.`,
    );
  }
  if (anchor.gap.value + farther < 0) {
    return refused(
      `${label} stands ${anchor.side}${anchor.side === 'right' || anchor.side === 'left' ? ' of' : ''} ${anchor.of.text}: the gap cannot be less than 0 mm.`,
    );
  }
  const edit = movedLength(source, anchor.gap, farther);
  return rewording(source, anchor.span, [edit], { x: out.x * farther + 0, y: out.y * farther + 0 });
}
