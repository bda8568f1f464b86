/** The way between the paper, in mm with y up, and the units of the drawing's view box, with y down. */

export interface Point {
  readonly x: number;
  readonly y: number;
}
/** Of a drawing: `left + scale · x` and `top − scale · y`. */
export interface Frame {
  readonly left: number;
  readonly top: number;
  readonly scale: number;
}
export interface Paper {
  readonly width_mm: number;
  readonly height_mm: number;
}

export const inView = ({ left, top, scale }: Frame, { x, y }: Point): Point => ({
  x: left + scale * x,
  y: top - scale * y,
});

export const onPaper = ({ left, top, scale }: Frame, { x, y }: Point): Point => ({
  x: (x - left) / scale,
  y: (top - y) / scale,
});

/** `transform` that puts what is given in mm on the paper into the view box. */
export const viewTransform = ({ left, top, scale }: Frame): string =>
  `matrix(${scale} 0 0 ${-scale} ${left} ${top})`;

/** To the nearest whole millimetre, never minus zero. */
export const whole = ({ x, y }: Point): Point => ({ x: Math.round(x) + 0, y: Math.round(y) + 0 });

export const holds = ({ width_mm, height_mm }: Paper, { x, y }: Point): boolean =>
  x >= 0 && y >= 0 && x <= width_mm && y <= height_mm;

/** The nearest place of the paper. */
export const held = ({ width_mm, height_mm }: Paper, { x, y }: Point): Point => ({
  x: Math.min(width_mm, Math.max(0, x)),
  y: Math.min(height_mm, Math.max(0, y)),
});

export const plus = (a: Point, b: Point): Point => ({ x: a.x + b.x, y: a.y + b.y });
export const minus = (a: Point, b: Point): Point => ({ x: a.x - b.x, y: a.y - b.y });
