/** How the lines of an electrode read when it is moved. */
import type {
  Anchor,
  Point as BlockPoint,
  MoveStatement,
  ProngShape,
  Shape,
  SpikeShape,
  Tip,
} from '../../block/tree.ts';
import type { Point } from '../../field/geometry/outline.ts';
import { boxCentre, dot, minus, plus, quarter, times, unitVector } from '../../setup/plane.ts';
import type { Electrode, Piece, Setup } from '../../setup/setup.ts';
import { standingOn } from '../../setup/shapes/pointed.ts';
import { formOf, isDrawn, isPointed } from '../../setup/shapes/table.ts';
import { movedCoordinates, movedLength, newCoordinate } from './numbers.ts';
import {
  movedAnchor,
  movedPoint,
  type Reworded,
  type Rewording,
  refused,
  rewording,
  straying_mm,
  type Wish,
  written,
} from './rewording.ts';

/** Where the electrode is now, and in what setup. */
export interface Metal {
  readonly setup: Setup;
  readonly electrode: Electrode;
}

/** The line of an electrode of one piece; what it says after its name. */
export function movedPiece(wish: Wish, shape: Shape, metal: Metal): Reworded {
  if (isDrawn(shape)) return movedDrawn(wish, shape);
  if (isPointed(shape)) {
    const behind = Math.max(shape.tip.span.to, shape.pointing.span.to);
    return movedTip(wish, { tip: shape.tip, shape, behind }, metal);
  }
  return movedAnchor(wish, shape.place.anchor, boxCentre(metal.electrode.box), true);
}

/** All lines of an electrode of several pieces: every piece moves exactly as far. */
export function movedPieces(wish: Wish, shapes: readonly Shape[], metal: Metal): Reworded {
  const parts: Rewording[] = [];
  for (const shape of shapes) {
    const piece = metal.electrode.pieces.find((one) => one.shape === shape);
    if (piece === undefined) return refused(`A line of ${wish.label} has an error.`);
    const part = movedPart(wish, shape, piece, metal);
    if (part?.kind === 'refused') return part;
    if (part !== null) parts.push(part);
  }
  return { kind: 'reworded', edits: parts.flatMap(({ edits }) => edits), was: '', becomes: '', by: wish.by };
}

/** What a `move` line says after the name, moved. */
export function movedMove(wish: Wish, { to }: MoveStatement, metal: Metal): Reworded {
  const { electrode } = metal;
  if (to.kind === 'place') return movedAnchor(wish, to.place.anchor, goalOf(to.place.anchor, metal), true);
  const shape = electrode.pieces[0]?.shape;
  if (to.kind !== 'tip' || shape === undefined || !isPointed(shape)) {
    return refused(`The line that moves ${wish.label} has an error.`);
  }
  return movedTip(wish, { tip: to.tip, shape, behind: to.tip.span.to }, metal);
}

/** What a new `move` line would say after the name: from `at`, `tip at` or `on`. */
export function newMove(
  wish: Wish,
  shapes: readonly Shape[],
  metal: Metal,
  move: MoveStatement | null,
): Reworded {
  const { electrode } = metal;
  const [shape] = shapes;
  const effective = electrode.pieces[0]?.shape;
  if (shape === undefined || effective === undefined) return refused(`${wish.label} has no place.`);
  const centre = boxCentre(electrode.box);
  if (shapes.length > 1 || isDrawn(shape)) {
    if (move?.to.kind === 'place') {
      const { anchor } = move.to.place;
      return movedAnchor(wish, anchor, goalOf(anchor, metal), true);
    }
    return { ...written(wish.source, shape.name.span, centre, wish.by, 'at '), was: 'where it stood' };
  }
  // A move that is inherited has put its place into the shape.
  if (!isPointed(effective)) {
    return isDrawn(effective)
      ? refused(`${wish.label} has no place.`)
      : movedAnchor(wish, effective.place.anchor, centre, true);
  }
  const { tip } = effective;
  return movedTip(wish, { tip, shape: effective, behind: tip.span.to }, metal);
}

function movedPart(wish: Wish, shape: Shape, piece: Piece, metal: Metal): Reworded | null {
  if (isDrawn(shape)) return movedDrawn(wish, shape);
  if (isPointed(shape)) {
    // What stands on the electrode itself goes along.
    if (shape.tip.kind === 'on' && shape.tip.of.text === metal.electrode.name) return null;
    if (shape.tip.kind === 'on') {
      return refused(`A piece of ${wish.label} stands on ${shape.tip.of.text}: move that.`);
    }
    return movedTip(wish, { tip: shape.tip, shape, behind: shape.tip.span.to }, metal);
  }
  const form = formOf(shape, () => null);
  const from = form?.geometry.outer.edges[0]?.from;
  const to = piece.geometry.outer.edges[0]?.from;
  if (form === null || from === undefined || to === undefined) return refused(`${wish.label} has no place.`);
  return movedAnchor(wish, shape.place.anchor, plus(boxCentre(form.box), minus(to, from)), false);
}

function movedDrawn({ source, by }: Wish, shape: Extract<Shape, { shape: 'outline' | 'strip' }>): Rewording {
  const pairs = shape.shape === 'outline' ? shape.corners : shape.path;
  return { kind: 'reworded', edits: movedCoordinates(source, pairs, by), was: '', becomes: '', by };
}

interface Standing {
  readonly tip: Tip;
  readonly shape: SpikeShape | ProngShape;
  /** Where `at D` may be added. */
  readonly behind: number;
}

function movedTip(wish: Wish, standing: Standing, metal: Metal): Reworded {
  const { tip } = standing;
  if (tip.kind === 'on') return slid(wish, { ...standing, tip }, metal);
  const at = pointNow(tip.point, metal.setup);
  if (at === null) return refused(`${wish.label} has no place.`);
  const reworded = movedPoint(wish, tip.point, at);
  return { ...reworded, was: `tip at ${reworded.was}`, becomes: `tip at ${reworded.becomes}` };
}

/** Along the side that a spike or prong stands on, by whole mm. */
function slid(
  { source, label, by }: Wish,
  { tip, shape, behind }: Standing & { readonly tip: Extract<Tip, { kind: 'on' }> },
  { setup }: Metal,
): Reworded {
  const u = unitVector(shape.pointing.angle_deg);
  const v = upOrRight(quarter(u));
  const step = Math.round(dot(by, v));
  if (Math.abs(dot(by, u)) > straying_mm || step === 0) {
    return refused(`${label} stands on ${tip.of.text} and slides along that side only.`);
  }
  const base = setup.electrodes.find(({ name }) => name === tip.of.text);
  const here = base === undefined ? null : middleOf(shape, tip, base, v);
  if (tip.along !== null) {
    return rewording(source, tip.span, [movedLength(source, tip.along, step)], times(v, step));
  }
  if (here === null)
    return refused(`${label} stands on ${tip.of.text}, whose side is too short to slide on.`);
  const distance = newCoordinate(here + step);
  const edit = { span: { from: behind, to: behind }, text: ` at ${distance} mm` };
  return {
    kind: 'reworded',
    edits: [edit],
    was: `on ${tip.of.text}`,
    becomes: `on ${tip.of.text} at ${distance} mm`,
    by: times(v, distance - here),
  };
}

const upOrRight = (v: Point): Point => (v.y < 0 || (v.y === 0 && v.x < 0) ? times(v, -1) : v);

/** Distance from the lower or left end of a side to its middle, found by standing there and at 1 mm. */
function middleOf(
  shape: SpikeShape | ProngShape,
  tip: Extract<Tip, { kind: 'on' }>,
  base: Electrode,
  v: Point,
): number | null {
  const metal = base.pieces.filter((piece) => !standsOn(piece.shape, base.name)).map((p) => p.geometry);
  const first = { value: 1, dimension: 'length' as const, span: tip.span };
  const middle = standingOn({ ...shape, tip: { ...tip, along: null } }, metal, () => null);
  const end = standingOn({ ...shape, tip: { ...tip, along: first } }, metal, () => null);
  return middle === null || end === null ? null : dot(middle.tip, v) - dot(end.tip, v) + first.value;
}

const standsOn = (shape: Shape, name: string): boolean =>
  isPointed(shape) && shape.tip.kind === 'on' && shape.tip.of.text === name;

/** What was turned as a whole need not have its box around the place it was moved to. */
function goalOf(anchor: Anchor, { setup, electrode }: Metal): Point {
  const named = anchor.kind === 'at' ? pointNow(anchor.point, setup) : null;
  return named ?? boxCentre(electrode.box);
}

/** Where a point of the language lies in a setup. */
function pointNow(point: BlockPoint, { paper, electrodes }: Setup): Point | null {
  if (point.kind === 'coordinates') return { x: point.x.value, y: point.y.value };
  const { of } = point;
  if (of === null) return paper === null ? null : { x: paper.width_mm / 2, y: paper.height_mm / 2 };
  const electrode = electrodes.find(({ name }) => name === of.text);
  return electrode === undefined ? null : boxCentre(electrode.box);
}
