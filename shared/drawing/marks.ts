/** Small makers of scene items: lines, boxes, circles, paths along true arcs, labels. */
import { type Curve, pointAt } from '../field/geometry/curve.ts';
import type { Point } from '../field/geometry/outline.ts';
import type { Dot, Label, Path, PathPart, Style, TextRun } from './scene.ts';

export const at = (x: number, y: number): Point => ({ x, y });

export function line(style: Style, a: Point, b: Point): Path {
  return polyline(style, [a, b]);
}

export function polyline(style: Style, points: readonly Point[], closed = false): Path {
  const parts: PathPart[] = points.map(({ x, y }, i) => ({ to: i === 0 ? 'move' : 'line', x, y }));
  return { kind: 'path', style, parts: closed ? [...parts, { to: 'close' }] : parts };
}

export function box(style: Style, x0: number, y0: number, x1: number, y1: number): Path {
  return polyline(style, [at(x0, y0), at(x1, y0), at(x1, y1), at(x0, y1)], true);
}

export function circle(style: Style, centre: Point, radius: number): Path {
  const left = at(centre.x - radius, centre.y);
  const right = at(centre.x + radius, centre.y);
  const half = (p: Point): PathPart => ({ to: 'arc', ...p, radius, large: false, anticlockwise: true });
  return {
    kind: 'path',
    style,
    parts: [{ to: 'move', ...right }, half(left), half(right), { to: 'close' }],
  };
}

export function dot(style: Style, { x, y }: Point, diameter: number): Dot {
  return { kind: 'dot', style, x, y, diameter };
}

/** One path along curves that follow each other. */
export function alongCurves(style: Style, curves: readonly Curve[], closed: boolean): Path {
  const first = curves[0];
  if (first === undefined) return { kind: 'path', style, parts: [] };
  const parts: PathPart[] = [{ to: 'move', x: first.ax, y: first.ay }, ...curves.flatMap(curveParts)];
  return { kind: 'path', style, parts: closed ? [...parts, { to: 'close' }] : parts };
}

/** One path of several closed curves, filled by the even-odd rule. */
export function joinedPaths(style: Style, paths: readonly Path[]): Path {
  return { kind: 'path', style, parts: paths.flatMap((path) => path.parts) };
}

/** An arc over half a turn or more is written as two: a whole circle has no other form. */
function curveParts(c: Curve): PathPart[] {
  if (c.sweep === 0) return [{ to: 'line', x: c.bx, y: c.by }];
  const arc = (x: number, y: number): PathPart => ({
    to: 'arc',
    x,
    y,
    radius: c.radius,
    large: false,
    anticlockwise: c.sweep > 0,
  });
  if (Math.abs(c.sweep) < Math.PI) return [arc(c.bx, c.by)];
  const middle = pointAt(c, 0.5);
  return [arc(middle.x, middle.y), arc(c.bx, c.by)];
}

export const upright = (text: string): TextRun[] => [{ text, form: 'upright' }];

interface LabelLook {
  readonly size_mm: number;
  readonly anchor?: Label['anchor'];
  readonly halo?: boolean;
}

export function label(point: Point, runs: readonly TextRun[], look: LabelLook): Label {
  const { size_mm, anchor = 'start', halo = false } = look;
  return { kind: 'label', x: point.x, y: point.y, runs, size_mm, anchor, halo };
}
