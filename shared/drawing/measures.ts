/** Which lengths a drawing shows: gaps between facing edges, then the sizes that the sheet gives. Lengths said alike need saying once. */
import type { Shape } from '../block/tree.ts';
import type { Point } from '../field/geometry/outline.ts';
import { cos, hypot, sin } from '../field/maths.ts';
import { at } from './marks.ts';
import { middleOf, type Page, type PagePiece, visibleBounds } from './page.ts';
import { crossings, edgePoints } from './polygon.ts';
import { millimetres } from './values.ts';

export interface Measure {
  readonly from: Point;
  readonly to: Point;
  /** Unit vector across, along which the dimension line may be set off. */
  readonly normal: Point;
  /** Offsets to try, in order of liking. */
  readonly offsets: readonly number[];
  readonly value: string;
  /** How much it is liked less than another that says the same. */
  readonly cost: number;
}

/** What stands where there is no room for a dimension line: words with a leader to one of these points. */
export interface Note {
  readonly text: string;
  readonly points: readonly Point[];
}

/** Ways to say one length. */
export interface Saying {
  readonly measures: readonly Measure[];
  readonly note: Note | null;
}

const MOST_GAPS = 4;
const MOST_SIZES = 8;
/** Among more pieces than this no gap stands out. */
const MOST_PIECES = 16;

export function sayings(page: Page): Saying[] {
  return [...gaps(page).slice(0, MOST_GAPS), ...sizes(page).slice(0, MOST_SIZES)];
}

/** Lengths of this fineness are meant; others come about, as by turning. */
const MEANT_mm = 0.5;
const isMeant = (length_mm: number): boolean =>
  Math.abs(length_mm / MEANT_mm - Math.round(length_mm / MEANT_mm)) < 1e-6;

/** Between pieces of different electrodes that face each other along x or y with nothing between; the widest first. */
function gaps(page: Page): Saying[] {
  const found = new Map<string, { gap: number; measures: Measure[] }>();
  const pieces = page.electrodes.flatMap(({ pieces: own, electrode }) =>
    own.filter(({ bounds }) => visibleBounds(page, bounds) !== null).map((piece) => ({ piece, electrode })),
  );
  if (pieces.length > MOST_PIECES) return [];
  for (const [i, a] of pieces.entries()) {
    for (const b of pieces.slice(i + 1)) {
      if (a.electrode === b.electrode) continue;
      for (const flip of [false, true]) {
        const measure = gapMeasure(page, [a.piece, b.piece], flip);
        if (measure === null) continue;
        const gap = hypot(measure.to.x - measure.from.x, measure.to.y - measure.from.y);
        const said = `${measure.value} ${flip}`;
        const known = found.get(said);
        if (known === undefined) found.set(said, { gap, measures: [measure] });
        else known.measures.push(measure);
      }
    }
  }
  return [...found.values()].sort((p, q) => q.gap - p.gap).map(({ measures }) => ({ measures, note: null }));
}

/** Along x, or along y with `flip`, at levels where both edges come as close as their boxes do, or aside with extension lines. */
function gapMeasure(page: Page, pair: readonly [PagePiece, PagePiece], flip: boolean): Measure | null {
  const [left, right] = pair.map((piece) => new Silhouette(piece, flip)).sort((a, b) => a.from - b.from);
  if (left === undefined || right === undefined || right.from - left.to < 0.5) return null;
  if (!isMeant((right.from - left.to) / page.scale)) return null;
  const others = page.electrodes
    .flatMap(({ pieces }) => pieces)
    .filter((piece) => !pair.includes(piece))
    .map((piece) => new Silhouette(piece, flip));
  const free = (level: number): boolean => others.every((o) => !o.between(left.to, right.from, level));
  const levels = [...left.levels(), ...right.levels()]
    .filter((level) => left.endsAt(level) && right.startsAt(level) && free(level))
    .filter((level, i, all) => all.indexOf(level) === i);
  const first = levels[0];
  if (first === undefined) return null;
  const aside = [8, -8, 12, -12, 17, -17].filter((d) => free(first + d));
  const point = (x: number): Point => (flip ? at(first, x) : at(x, first));
  return {
    from: point(left.to),
    to: point(right.from),
    normal: flip ? at(1, 0) : at(0, 1),
    offsets: [...levels.map((level) => level - first), ...aside],
    value: millimetres((right.from - left.to) / page.scale),
    cost: 0,
  };
}

/** A piece as seen along x, or along y with `flip`: where it begins and ends at each level. */
class Silhouette {
  readonly from: number;
  readonly to: number;
  private readonly low: number;
  private readonly high: number;
  private readonly piece: PagePiece;
  private readonly flip: boolean;

  constructor(piece: PagePiece, flip: boolean) {
    const { x0, x1, y0, y1 } = piece.bounds;
    this.piece = piece;
    this.flip = flip;
    [this.from, this.to, this.low, this.high] = flip ? [y0, y1, x0, x1] : [x0, x1, y0, y1];
  }

  /** Levels to try: off the middle first, where probes and rows stand; the middle, where round and pointed pieces reach out. */
  levels(): number[] {
    return [0.1, 0.9, 0.2, 0.8, 0.3, 0.7, 0.5].map((s) => this.low + s * (this.high - this.low));
  }
  startsAt(level: number): boolean {
    return Math.abs((this.at(level)[0] ?? Number.NaN) - this.from) < 0.01;
  }
  endsAt(level: number): boolean {
    return Math.abs((this.at(level).at(-1) ?? Number.NaN) - this.to) < 0.01;
  }
  /** Does it, or room it needs, stand between two positions at this level? */
  between(from: number, to: number, level: number): boolean {
    return level > this.low - 2 && level < this.high + 2 && this.from < to && this.to > from;
  }

  private at(level: number): number[] {
    // Along (−u.y, u.x): −x for levels of y, y for levels of x.
    if (this.flip) return crossings(this.piece.polygons, at(1, 0), level);
    return crossings(this.piece.polygons, at(0, 1), level)
      .map((x) => -x)
      .reverse();
  }
}

const ASIDE = [6, -6, 10, -10, 14, -14, 19, -19, 25, -25];

/** Each size once, however many pieces have it. */
function sizes(page: Page): Saying[] {
  const found = new Map<string, { measures: Measure[]; note: Note | null }>();
  for (const { electrode, pieces } of page.electrodes) {
    for (const [i, piece] of pieces.entries()) {
      const shape = electrode.pieces[i]?.shape;
      if (shape === undefined || visibleBounds(page, piece.bounds) === null) continue;
      for (const { from, to, what, note } of shownSides(shape, piece)) {
        const length = hypot(to.x - from.x, to.y - from.y) / page.scale;
        if (!isMeant(length)) continue;
        const said = `${shape.shape} ${what} ${millimetres(length)}`;
        const known = found.get(said) ?? { measures: [], note: null };
        found.set(said, known);
        if (note !== 'only') known.measures.push(sizeMeasure(page, from, to));
        if (note !== undefined) known.note ??= { text: `${what} ${millimetres(length)}`, points: rim(piece) };
      }
    }
  }
  return [...found.values()];
}

const rim = ({ polygons }: PagePiece): Point[] =>
  edgePoints(polygons[0] ?? [])
    .filter((_, i) => i % 3 === 1)
    .map(({ p }) => p);

function sizeMeasure(page: Page, from: Point, to: Point): Measure {
  const length = hypot(to.x - from.x, to.y - from.y);
  const u = at((to.x - from.x) / length, (to.y - from.y) / length);
  const normal = at(u.y, -u.x);
  const middle = at((from.x + to.x) / 2, (from.y + to.y) / 2);
  // Away from the middle of the paper first.
  const far = (middle.x - page.width / 2) * normal.x + (middle.y - page.height / 2) * normal.y;
  const out = far >= 0 ? 1 : -1;
  return {
    from,
    to,
    normal,
    offsets: ASIDE.map((d) => d * out),
    value: millimetres(length / page.scale),
    cost: 30 - 0.2 * Math.abs(far),
  };
}

interface Side {
  readonly from: Point;
  readonly to: Point;
  readonly what: string;
  /** In words where there is no room for a line, or always. */
  readonly note?: 'also' | 'only';
}

/** The sides of a piece that its statement gives; round ones by their width through the middle. */
function shownSides(shape: Shape, piece: PagePiece): Side[] {
  const corners = piece.polygons[0] ?? [];
  const [a, b, c, d] = corners;
  if ((shape.shape === 'bar' || shape.shape === 'prong') && corners.length === 4 && a && b && c && d) {
    return [...either(a, b, d, c, 'width'), ...either(b, c, a, d, 'height')];
  }
  if (shape.shape === 'disc') return across(piece, 0, 'diameter');
  if (shape.shape === 'ring') {
    const wall = wallOf(piece);
    return [
      ...(shape.diameter === null ? [] : across(piece, 0, 'diameter')),
      ...(shape.inside === null ? [] : across(piece, 1, 'inside diameter')),
      ...(shape.wall === null || wall === null ? [] : [wall]),
    ];
  }
  if (shape.shape === 'spike') return spikeSides(shape.pointing.angle_deg, corners);
  const { x0, y0, x1, y1 } = piece.bounds;
  const wall = shape.shape === 'box' ? wallOf(piece) : null;
  return [
    ...(wall === null ? [] : [wall]),
    ...either(at(x0, y0), at(x1, y0), at(x0, y1), at(x1, y1), 'width'),
    ...either(at(x1, y0), at(x1, y1), at(x0, y0), at(x0, y1), 'height'),
  ];
}

/** The base, and the length beside either flank. */
function spikeSides(pointing_deg: number, corners: readonly Point[]): Side[] {
  const angle = (pointing_deg * Math.PI) / 180;
  const u = at(cos(angle), sin(angle));
  const along = corners.map((p) => u.x * p.x + u.y * p.y);
  const base = Math.min(...along);
  const length = Math.max(...along) - base;
  const [a, b] = corners.filter((_, i) => (along[i] ?? 0) - base < 1e-6);
  if (a === undefined || b === undefined) return [];
  const ahead = (p: Point): Point => at(p.x + u.x * length, p.y + u.y * length);
  return [...either(a, ahead(a), b, ahead(b), 'length'), { from: a, to: b, what: 'base' }];
}

/** Of the outer edge, or of the hollow; a ring with an opening has its hollow on its one edge. */
function across({ bounds, polygons }: PagePiece, which: 0 | 1, what: string): Side[] {
  const polygon = polygons[which];
  if (polygon === undefined) return [];
  const { x, y } = middleOf(bounds);
  const reach = Math.max(...polygon.map((p) => p.x)) - x;
  return [
    { from: at(x - reach, y), to: at(x + reach, y), what, note: 'also' },
    { from: at(x, y - reach), to: at(x, y + reach), what, note: 'also' },
  ];
}

function wallOf({ bounds, polygons }: PagePiece): Side | null {
  const hollow = polygons[1];
  if (hollow === undefined) return null;
  const y = middleOf(bounds).y;
  const inner = Math.max(...hollow.map((p) => p.x));
  return { from: at(inner, y), to: at(bounds.x1, y), what: 'wall', note: 'only' };
}

/** The same length on either side of a piece: the better one is taken. */
const either = (a: Point, b: Point, c: Point, d: Point, what: string): Side[] => [
  { from: a, to: b, what },
  { from: c, to: d, what },
];
