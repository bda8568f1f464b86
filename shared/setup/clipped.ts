/** Metal past the edge of the paper: what is left, and whether it looks meant. */
import type { Bounds } from '../field/geometry/curve.ts';
import { outlineBounds } from '../field/geometry/measure.ts';
import type { Survey } from '../field/geometry/survey.ts';
import type { Fix } from '../findings/finding.ts';
import { boxCentre } from './plane.ts';
import { type Report, rewrite } from './report.ts';
import type { Electrode, Piece } from './setup.ts';
import { shown, written } from './shown.ts';

type SurveyedConductor = Survey['conductors'][number];
type SurveyedPiece = SurveyedConductor['pieces'][number];

/** Electrodes nearer than this count as touching, mm. */
const nearest_mm = 0.05;
/** Metal left beyond the edge for a clip is no longer than this; common practice, no source. */
const clipTab_mm = 20;
/** A bar so much longer than high, sticking out by more than a clip tab, was likely meant to stand. */
const lyingRatio = 3;

/**
 * False, with an error, where nothing of the electrode lies on the paper; a warning for each piece that is more than half gone, and
 * for a bar that lies across the edge of the paper.
 */
export function clippedMetal(
  electrode: Electrode,
  surveyed: SurveyedConductor | undefined,
  report: Report,
): boolean {
  if (surveyed === undefined) return false;
  if (!(surveyed.areaOnPaper_mm2 > 0)) {
    report('off-paper', {
      span: electrode.span,
      message: `No part of ${electrode.name} lies on the paper.`,
      fixes: electrode.pieces.flatMap(uprightFixes),
    });
    return false;
  }
  for (const [i, piece] of electrode.pieces.entries()) {
    const found = surveyed.pieces[i];
    if (found === undefined) continue;
    if (found.areaOnPaper_mm2 >= found.area_mm2 / 2 && !liesAcrossEdge(piece, found)) continue;
    const fixes = uprightFixes(piece);
    report('mostly-off-paper', {
      span: piece.span,
      message: `${remains(electrode.name, found.bounds, found.boundsOnPaper)}${fixes.length > 0 ? ' Stand it upright?' : ''}`,
      fixes,
    });
  }
  return true;
}

function liesAcrossEdge({ shape }: Piece, { bounds, boundsOnPaper }: SurveyedPiece): boolean {
  if (shape.shape !== 'bar' || boundsOnPaper === null) return false;
  if (shape.size.width.value < lyingRatio * shape.size.height.value) return false;
  return Math.max(boundsOnPaper.x0 - bounds.x0, bounds.x1 - boundsOnPaper.x1) > clipTab_mm;
}

function remains(name: string, whole: Bounds, left: Bounds | null): string {
  if (left === null) return `No part of this piece of ${name} lies on the paper.`;
  const range = (axis: string, a: number, b: number): string =>
    `${axis} from ${shown(a, 'length').replace(' mm', '')} to ${shown(b, 'length')}`;
  const cut = [
    ...(left.x0 > whole.x0 || left.x1 < whole.x1 ? [range('x', left.x0, left.x1)] : []),
    ...(left.y0 > whole.y0 || left.y1 < whole.y1 ? [range('y', left.y0, left.y1)] : []),
  ];
  return `Only part of ${name} (${cut.join(', ')}) lies on the paper.`;
}

/** Fixes that stand a piece upright, where that takes it out of another electrode; unknown for a turned bar, which is offered too. */
export function uprightClearOf(piece: Piece, other: Electrode): readonly Fix[] {
  const { shape } = piece;
  if (shape.shape !== 'bar') return [];
  const { anchor, turned } = shape.place;
  // Placed from the other one, it keeps its gap.
  if (anchor.kind === 'beside' && anchor.of.text === other.name) return [];
  const { x, y } = boxCentre(outlineBounds(piece.geometry.outer));
  const [halfWidth, halfHeight] = [shape.size.height.value / 2, shape.size.width.value / 2];
  const clear = other.pieces.every(({ geometry }) => {
    const box = outlineBounds(geometry.outer);
    const beside = Math.max(box.x0 - x - halfWidth, x - halfWidth - box.x1);
    return Math.max(beside, box.y0 - y - halfHeight, y - halfHeight - box.y1) > nearest_mm;
  });
  return clear || turned !== null ? uprightFixes(piece) : [];
}

/** The fix for a bar lying down: its long side was written first. */
function uprightFixes({ shape }: Piece): readonly Fix[] {
  if (shape.shape !== 'bar' || shape.size.width.value <= shape.size.height.value) return [];
  const { width, height, span } = shape.size;
  const upright = `${written(height.value, 'length')} × ${written(width.value, 'length')}`;
  return [{ ...rewrite(span, upright), title: `Stand ${shape.name.text} upright: ${upright}` }];
}
