/** The table of shapes: each has its builder here. Placed shapes have a centre, pointed ones a tip, drawn ones paper coordinates. */
import type {
  BarShape,
  BoxShape,
  DiscShape,
  OutlineShape,
  ProngShape,
  RingShape,
  Shape,
  SpikeShape,
  StripShape,
} from '../../block/tree.ts';
import type { Piece as FieldPiece } from '../../field/problem.ts';
import type { Report } from '../report.ts';
import { barForm } from './bar.ts';
import { boxForm } from './box.ts';
import { discForm } from './disc.ts';
import { type Form, solid } from './form.ts';
import { simplePolygon } from './outline.ts';
import { ringForm } from './ring.ts';
import { sizesFit } from './sizes.ts';
import { stripPiece } from './strip.ts';

type PlacedShape = BarShape | DiscShape | RingShape | BoxShape;
type PointedShape = SpikeShape | ProngShape;
type DrawnShape = OutlineShape | StripShape;

export const isPointed = (shape: Shape): shape is PointedShape =>
  shape.shape === 'spike' || shape.shape === 'prong';

export const isDrawn = (shape: Shape): shape is DrawnShape =>
  shape.shape === 'outline' || shape.shape === 'strip';

/** A placed shape about its centre, turned; null, with a finding, where its sizes make no metal. */
export function formOf(shape: PlacedShape, report: Report): Form | null {
  if (!sizesFit(shape, report)) return null;
  switch (shape.shape) {
    case 'bar':
      return barForm(shape);
    case 'disc':
      return discForm(shape);
    case 'ring':
      return ringForm(shape, report);
    case 'box':
      return boxForm(shape, report);
  }
}

export function drawnPiece(shape: DrawnShape, report: Report): FieldPiece | null {
  if (!sizesFit(shape, report)) return null;
  if (shape.shape === 'strip') return stripPiece(shape, report);
  const outer = simplePolygon(shape.corners, shape, report);
  return outer === null ? null : solid(outer);
}
