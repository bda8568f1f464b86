/** Dimensions: sizes of the pieces as the sheet gives them and gaps between facing edges; few, each value once, where there is room. */
import type { Bounds } from '../field/geometry/curve.ts';
import type { Point } from '../field/geometry/outline.ts';
import { hypot } from '../field/maths.ts';
import type { Desk } from './desk.ts';
import { boxOf, centred, padded } from './labels.ts';
import { at, label, line, polyline, upright } from './marks.ts';
import { type Measure, type Note, sayings } from './measures.ts';
import { isMetal, onPaper, type Page, wants } from './page.ts';
import { textSize } from './pens.ts';
import { aroundPoint } from './pointed.ts';
import { between } from './polygon.ts';
import type { Item, Label } from './scene.ts';

export function dimensions(desk: Desk): Item[] {
  if (!wants(desk.page, 'dimensions')) return [];
  return sayings(desk.page).flatMap(({ measures, note }) => {
    const best = bestPlacement(desk, measures);
    if (best !== null) return draw(desk, best);
    return note === null ? [] : noted(desk, note);
  });
}

interface Placed {
  readonly measure: Measure;
  readonly a: Point;
  readonly b: Point;
  readonly text: Label;
  readonly cost: number;
}

function bestPlacement(desk: Desk, measures: readonly Measure[]): Placed | null {
  let best: Placed | null = null;
  for (const measure of measures) {
    for (const [i, offset] of measure.offsets.entries()) {
      for (const placed of placements(measure, offset)) {
        const known = measure.cost + placed.cost + 2 * i;
        if (best !== null && known >= best.cost) continue;
        const disturbed = disturbance(desk, placed);
        if (disturbed === null || (best !== null && known + disturbed >= best.cost)) continue;
        best = { ...placed, cost: known + disturbed };
      }
    }
  }
  return best;
}

/** Arrows stand inside where there is room between, else they point from outside. */
const arrowsInside = ({ a, b, text }: Placed): boolean =>
  text.anchor === 'middle' && hypot(b.x - a.x, b.y - a.y) >= SHORT_mm;

function draw({ room }: Desk, placed: Placed): Item[] {
  const { a, b, text } = placed;
  const inside = arrowsInside(placed);
  const tail = (p: Point, q: Point): Item[] =>
    inside ? [] : [line('dimension', shifted(p, q, -2 * ARROW_mm), p)];
  room.keepLabel(text);
  room.keepSolid(between(a, b, 0.5));
  return [
    ...extensions(placed),
    ...tail(a, b),
    ...tail(b, a),
    line('dimension', a, b),
    arrow(a, b, inside),
    arrow(b, a, inside),
    text,
  ];
}

/** In words, with a leader to the rim. */
function noted({ room }: Desk, { text, points }: Note): Item[] {
  const candidates = points.flatMap((p) => aroundPoint(p, upright(text), textSize.value));
  const best = room.place(candidates.map((each) => ({ ...each, leader: each.leader.slice(2) })));
  return best === null ? [] : [line('leader', best.start, best.end), best.label];
}

const ARROW_mm = 2;
const SHORT_mm = 6;

/** The dimension line at this offset, its value in the middle or beyond either end. */
function placements(measure: Measure, offset: number): Placed[] {
  const { from, to, value, normal } = measure;
  const size_mm = textSize.value;
  const a = at(from.x + normal.x * offset, from.y + normal.y * offset);
  const b = at(to.x + normal.x * offset, to.y + normal.y * offset);
  const runs = upright(value);
  const length = hypot(b.x - a.x, b.y - a.y);
  const u = at((b.x - a.x) / length, (b.y - a.y) / length);
  const put = (p: Point, anchor: Label['anchor'], cost: number): Placed => ({
    measure,
    a,
    b,
    cost,
    text: label(at(p.x, centred(p.y, size_mm)), runs, { size_mm, anchor, halo: true }),
  });
  const box = boxOf(put(a, 'middle', 0).text);
  const reach = Math.abs(u.x) * (box.x1 - box.x0) + Math.abs(u.y) * (box.y1 - box.y0);
  const beyond = 2 * ARROW_mm + 1 + reach / 2;
  const within =
    length < reach + 2 * ARROW_mm + 2
      ? []
      : [0.5, 0.35, 0.65, 0.2, 0.8].map((s) =>
          put(at(a.x + s * (b.x - a.x), a.y + s * (b.y - a.y)), 'middle', Math.abs(s - 0.5) * 4),
        );
  const anchor = (side: 1 | -1): Label['anchor'] =>
    Math.abs(u.x) < 0.3 ? 'middle' : u.x * side > 0 ? 'start' : 'end';
  const past = (p: Point, side: 1 | -1): Placed => {
    const by = anchor(side) === 'middle' ? beyond : 2 * ARROW_mm + 0.6;
    return { ...put(at(p.x + side * u.x * by, p.y + side * u.y * by), anchor(side), 5) };
  };
  return [...within, past(b, 1), past(a, -1)];
}

/** Null where it has no room; else how much it disturbs. */
function disturbance({ page, room }: Desk, placed: Placed): number | null {
  const { measure, a, b, text } = placed;
  const box = padded(boxOf(text), 0.5);
  if (!insidePaper(box, page.width, page.height) || !room.isFree(box)) return null;
  const over = arrowsInside(placed) ? 0 : -2 * ARROW_mm;
  const way = between(shifted(a, b, over), shifted(b, a, over), 0.8).filter((p) => !inBox(p, box));
  const atEnd = (p: Point): boolean => [a, b].some((q) => hypot(q.x - p.x, q.y - p.y) < NEAR_END_mm);
  if (way.some((p) => !onPaper(page, p, 1) || (!atEnd(p) && !room.isFreeAt(p)))) return null;
  const legs = [...between(measure.from, a, 0.8).slice(2), ...between(measure.to, b, 0.8).slice(2)];
  // A leg may run along the edge it measures from, not over metal.
  const u = at((b.x - a.x) / hypot(b.x - a.x, b.y - a.y), (b.y - a.y) / hypot(b.x - a.x, b.y - a.y));
  if (legs.some((p) => deepInMetal(page, p, u) || !onPaper(page, p, 0.5))) return null;
  return room.linesUnder(box) + way.reduce((sum, p) => sum + room.linesUnder(around(p)), 0) * 0.4;
}

/** At its ends a dimension line meets the metal. */
const NEAR_END_mm = 1;

const deepInMetal = (page: Page, p: Point, u: Point): boolean =>
  isMetal(page, at(p.x + u.x * 0.3, p.y + u.y * 0.3)) && isMetal(page, at(p.x - u.x * 0.3, p.y - u.y * 0.3));

const around = (p: Point): Bounds => ({ x0: p.x - 0.4, x1: p.x + 0.4, y0: p.y - 0.4, y1: p.y + 0.4 });
const inBox = (p: Point, b: Bounds): boolean => p.x > b.x0 && p.x < b.x1 && p.y > b.y0 && p.y < b.y1;
const insidePaper = (b: Bounds, width: number, height: number): boolean =>
  b.x0 > 1 && b.y0 > 1 && b.x1 < width - 1 && b.y1 < height - 1;

/** From the metal to a little past the dimension line. */
function extensions({ measure: { from, to, normal }, a, b }: Placed): Item[] {
  return (
    [
      [from, a],
      [to, b],
    ] as const
  ).flatMap(([p, q]) => {
    const length = (q.x - p.x) * normal.x + (q.y - p.y) * normal.y;
    if (Math.abs(length) < 1) return [];
    const s = Math.sign(length);
    return [
      line(
        'dimension',
        at(p.x + normal.x * s * 0.8, p.y + normal.y * s * 0.8),
        at(q.x + normal.x * s * 1.2, q.y + normal.y * s * 1.2),
      ),
    ];
  });
}

/** p moved by `distance` towards q. */
function shifted(p: Point, q: Point, distance: number): Point {
  const length = hypot(q.x - p.x, q.y - p.y);
  return length === 0
    ? p
    : at(p.x + ((q.x - p.x) * distance) / length, p.y + ((q.y - p.y) * distance) / length);
}

/** A slim arrow head with its tip at p; from inside towards p, or from outside where there is no room between. */
function arrow(p: Point, q: Point, inside: boolean): Item {
  const back = shifted(p, q, inside ? ARROW_mm : -ARROW_mm);
  const across = at((p.y - back.y) * 0.17, (back.x - p.x) * 0.17);
  return polyline(
    'dimension-end',
    [p, at(back.x + across.x, back.y + across.y), at(back.x - across.x, back.y - across.y)],
    true,
  );
}
