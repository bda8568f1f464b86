/** The setup as it lies on the printed page: every position times the scale of the drawing, metal ready to be drawn. */
import type { Audience, DrawingPart } from '../block/tree.ts';
import { type Bounds, type Curve, curveBounds, curvesOf } from '../field/geometry/curve.ts';
import type { Outline, Point } from '../field/geometry/outline.ts';
import type { Electrode, Row, Setup } from '../setup/setup.ts';
import { textWidth } from './labels.ts';
import { upright } from './marks.ts';
import { textSize } from './pens.ts';
import { insidePolygons, polygonOf } from './polygon.ts';
import { decimalsOf, volts } from './values.ts';

/** What is asked of a drawing. */
export interface Look {
  readonly parts: readonly DrawingPart[];
  readonly audience: Audience;
  /** Printed mm for one mm of the bench; 1 unless told. Pens and letters keep their size. */
  readonly scale?: number;
}

/** Metal of one piece in printed mm, as placed. */
export interface PagePiece {
  readonly curves: readonly (readonly Curve[])[];
  /** The same as fine polygons, outer one first. */
  readonly polygons: readonly (readonly Point[])[];
  readonly bounds: Bounds;
}

export interface PageElectrode {
  readonly electrode: Electrode;
  readonly pieces: readonly PagePiece[];
  readonly bounds: Bounds;
}

export interface Page {
  readonly setup: Setup;
  readonly look: Look;
  readonly scale: number;
  /** Of the paper, printed mm. */
  readonly width: number;
  readonly height: number;
  /** Drawn so small that marks round the paper are smaller too. */
  readonly compact: boolean;
  /** Board beside the paper, and above and below it. */
  readonly margin: { readonly side: number; readonly end: number };
  readonly electrodes: readonly PageElectrode[];
  readonly holes: readonly Outline[];
  /** The clips that hold the paper on its board; none where metal lies. */
  readonly paperClips: readonly Bounds[];
}

export function pageOf(setup: Setup, look: Look): Page {
  const scale = look.scale ?? 1;
  const compact = scale < COMPACT_BELOW;
  const page = {
    setup,
    look,
    scale,
    width: (setup.paper?.width_mm ?? 0) * scale,
    height: (setup.paper?.height_mm ?? 0) * scale,
    compact,
    margin: { side: compact ? SMALL_SIDE_mm : sideMargin(setup), end: END_mm },
    electrodes: setup.electrodes.flatMap((electrode) => pageElectrode(electrode, scale)),
    holes: setup.holes.map(({ outline }) => scaledOutline(outline, scale)),
  };
  return { ...page, paperClips: paperClips(page) };
}

const COMPACT_BELOW = 0.4;
/** Two lines of values stand above and below the paper. */
const END_mm = 11;
/** Without values beside the paper: they break their lines there. */
const SMALL_SIDE_mm = 6.5;
/** From the paper's edge to a value beside it. */
export const BESIDE_EDGE_mm = 1.7;

/** Room for the widest value that the setup asks for: the same whether a solution is drawn or not. */
function sideMargin({ equipotentials: { values_V } }: Setup): number {
  const decimals = decimalsOf(values_V);
  const widths = values_V.map((value) => textWidth(upright(volts(value, decimals)), textSize.value));
  return Math.min(16, Math.max(8, BESIDE_EDGE_mm + Math.max(0, ...widths) + 0.8));
}

export const scaled = ({ x, y }: Point, scale: number): Point => ({ x: x * scale, y: y * scale });

export function scaledOutline(outline: Outline, scale: number): Outline {
  return {
    edges: outline.edges.map(({ from, arc }) => ({
      from: scaled(from, scale),
      arc: arc && { centre: scaled(arc.centre, scale), anticlockwise: arc.anticlockwise },
    })),
  };
}

export const wants = (page: Page, part: DrawingPart): boolean => page.look.parts.includes(part);

export const middleOf = (b: Bounds): Point => ({ x: (b.x0 + b.x1) / 2, y: (b.y0 + b.y1) / 2 });

export function boundsAround(all: readonly Bounds[]): Bounds {
  return {
    x0: Math.min(...all.map((b) => b.x0)),
    y0: Math.min(...all.map((b) => b.y0)),
    x1: Math.max(...all.map((b) => b.x1)),
    y1: Math.max(...all.map((b) => b.y1)),
  };
}

export const onPaper = (page: Page, { x, y }: Point, inset = 0): boolean =>
  x >= inset && y >= inset && x <= page.width - inset && y <= page.height - inset;

/** The part of a box that lies on the paper; null where nothing does. */
export function visibleBounds(page: Page, b: Bounds): Bounds | null {
  const x0 = Math.max(b.x0, 0);
  const y0 = Math.max(b.y0, 0);
  const x1 = Math.min(b.x1, page.width);
  const y1 = Math.min(b.y1, page.height);
  return x1 > x0 && y1 > y0 ? { x0, y0, x1, y1 } : null;
}

export function isMetal(page: Pick<Page, 'electrodes'>, p: Point): boolean {
  return page.electrodes.some((electrode) => isOn(electrode, p));
}

/** Is there metal of this electrode at the point? */
export function isOn({ pieces }: PageElectrode, p: Point): boolean {
  return pieces.some(
    ({ polygons, bounds: b }) =>
      p.x >= b.x0 && p.x <= b.x1 && p.y >= b.y0 && p.y <= b.y1 && insidePolygons(polygons, p),
  );
}

function paperClips(page: Omit<Page, 'paperClips'>): Bounds[] {
  const { width, height, compact } = page;
  const [half, out, over] = compact ? [2.6, 2.6, 1.2] : [3.5, 3.4, 1.6];
  const x = Math.min(compact ? 6 : 9, width / 8);
  return [x, width - x].flatMap((middle) =>
    [
      [height - over, height + out],
      [-out, over],
    ].flatMap(([y0 = 0, y1 = 0]) => {
      const box = { x0: middle - half, x1: middle + half, y0, y1 };
      return touchesMetal(page, box) ? [] : [box];
    }),
  );
}

function touchesMetal(page: Pick<Page, 'electrodes'>, { x0, y0, x1, y1 }: Bounds): boolean {
  const steps = [0, 0.25, 0.5, 0.75, 1];
  return steps.some((s) =>
    steps.some((t) => isMetal(page, { x: x0 + s * (x1 - x0), y: y0 + t * (y1 - y0) })),
  );
}

/** First and last place of a row, printed mm. */
export function rowEnds(page: Page, row: Row): readonly [Point | null, Point | null] {
  const first = row.end === null ? row.points[0]?.at : row.start;
  const last = row.end === null ? row.points[row.points.length - 1]?.at : row.end;
  return [first ? scaled(first, page.scale) : null, last ? scaled(last, page.scale) : null];
}

function pageElectrode(electrode: Electrode, scale: number): PageElectrode[] {
  const pieces = electrode.pieces.map(({ geometry }): PagePiece => {
    const outlines = [geometry.outer, ...geometry.hollows].map((outline) => scaledOutline(outline, scale));
    const curves = outlines.map(curvesOf);
    return {
      curves,
      polygons: curves.map(polygonOf),
      bounds: boundsAround((curves[0] ?? []).map(curveBounds)),
    };
  });
  if (pieces.length === 0) return [];
  return [{ electrode, pieces, bounds: boundsAround(pieces.map((piece) => piece.bounds)) }];
}
