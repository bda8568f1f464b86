/** Places the pieces of all electrodes, each after those it is placed from. */
import type {
  Anchor,
  MoveStatement,
  Name,
  Place,
  Point,
  ProngShape,
  Shape,
  SpikeShape,
} from '../block/tree.ts';
import type { Bounds } from '../field/geometry/curve.ts';
import { outlineBounds } from '../field/geometry/measure.ts';
import type { Point as XY } from '../field/geometry/outline.ts';
import type { Piece as FieldPiece } from '../field/problem.ts';
import type { Span } from '../text/span.ts';
import { type End, lineBetween } from './between.ts';
import type { Names } from './names.ts';
import {
  boxAround,
  boxCentre,
  minus,
  origin,
  placedOutline,
  placedPiece,
  plus,
  shiftedBox,
  times,
  turnedBy,
  unitVector,
} from './plane.ts';
import type { Report } from './report.ts';
import { type Form, shiftedForm, solid } from './shapes/form.ts';
import { pointedOutline, standingOn } from './shapes/pointed.ts';
import { drawnPiece, formOf, isDrawn, isPointed } from './shapes/table.ts';

export interface PlacedPiece {
  readonly shape: Shape;
  readonly geometry: FieldPiece;
  readonly box: Bounds;
}

export interface PlacedElectrode {
  /** All pieces that have a place, in the order written. */
  readonly pieces: readonly PlacedPiece[];
  /** Box of the pieces but those that stand on the electrode itself. */
  readonly box: Bounds;
}

export interface Places {
  readonly electrodes: ReadonlyMap<string, PlacedElectrode>;
  /** The place of a point; null, with a finding, where its electrode has none. */
  point(point: Point): XY | null;
  /** An electrode as the end of a line: the tip of a spike or prong, otherwise its metal without what stands on it. */
  end(name: string): End | null;
}

export interface Bench {
  readonly names: Names;
  /** Pieces on another terminal than their electrode: they are left out. */
  readonly refused: ReadonlySet<Shape>;
  readonly shifts: ReadonlyMap<string, MoveStatement>;
  /** Middle of the paper; null where there is no paper. */
  readonly centre: XY | null;
  readonly report: Report;
}

export function placePieces(bench: Bench): Places {
  const placing = new Placing(bench);
  for (const name of bench.names.electrodes.keys()) placing.place(name);
  const electrodes = new Map(
    [...placing.done].flatMap(([name, at]) => (at === null ? [] : [[name, at] as const])),
  );
  return {
    electrodes,
    point: (point) => placing.point(point),
    end: (name) => placing.end(name),
  };
}

/** A spike or prong that stands on another piece of its own electrode. */
export const onItself = (shape: Shape): boolean =>
  isPointed(shape) && shape.tip.kind === 'on' && shape.tip.of.text === shape.name.text;

/** Depth-first over the electrodes; the path of those begun and not finished shows a circle. */
class Placing {
  readonly done = new Map<string, PlacedElectrode | null>();
  private readonly begun: string[] = [];
  private readonly circular = new Set<string>();
  private readonly bench: Bench;

  constructor(bench: Bench) {
    this.bench = bench;
  }

  place(name: string): PlacedElectrode | null {
    const known = this.done.get(name);
    if (known !== undefined) return known;
    const shapes = this.bench.names.electrodes.get(name)?.filter((shape) => !this.bench.refused.has(shape));
    if (shapes === undefined) return null;
    this.begun.push(name);
    const body = shapes.filter((shape) => !onItself(shape)).flatMap((shape) => this.piece(shape) ?? []);
    this.begun.pop();
    const moved = this.circular.has(name) ? [] : this.shifted(name, body);
    const electrode =
      moved.length === 0 ? null : { pieces: moved, box: boxAround(moved.map(({ box }) => box)) };
    this.done.set(name, electrode);
    if (electrode === null || !shapes.some(onItself)) return electrode;
    const added = shapes.filter(onItself).flatMap((shape) => this.piece(shape) ?? []);
    const whole = { ...electrode, pieces: [...moved, ...added] };
    this.done.set(name, whole);
    return whole;
  }

  /** The electrode that a place counts from; null, with a finding, where it has no place. */
  private referred(name: Name, use = 'Relative places count from electrodes.'): PlacedElectrode | null {
    if (!this.bench.names.electrode(name, use)) return null;
    if (this.begun.includes(name.text)) return this.circle(name);
    const placed = this.place(name.text);
    if (placed === null && !this.circular.has(this.begun.at(-1) ?? '')) {
      this.bench.report('waits-for-line', {
        span: name.span,
        message: `This waits for ${name.text}, which has no place yet.`,
      });
    }
    return placed;
  }

  private circle(last: Name): null {
    const circle = this.begun.slice(this.begun.indexOf(last.text));
    const spans = circle.flatMap((name) => this.bench.names.electrodes.get(name)?.[0] ?? []);
    const fresh = circle.some((name) => !this.circular.has(name));
    for (const name of circle) this.circular.add(name);
    if (!fresh) return null;
    const waiting = circle.map((name, i) => `${name} waits for ${circle[(i + 1) % circle.length] ?? name}`);
    return this.bench.report('places-circular', {
      span: spans[0]?.span ?? last.span,
      message: `${shortened(waiting).join(', ')}.`,
      hints: ['Give one of them a place of its own, at (X, Y) mm.'],
      related: spans
        .slice(1)
        .map((shape) => ({ span: shape.span, message: `${shape.name.text} is in the circle.` })),
    });
  }

  private piece(shape: Shape): PlacedPiece | null {
    const { report } = this.bench;
    if (isDrawn(shape)) {
      const geometry = drawnPiece(shape, report);
      return geometry === null ? null : { shape, geometry, box: outlineBounds(geometry.outer) };
    }
    if (isPointed(shape)) return this.pointed(shape);
    const form = formOf(shape, report);
    if (form === null) return null;
    const centre = this.boxPlace(shape.place.anchor, form.box);
    return centre === null ? null : { shape, ...shiftedForm(form, minus(centre, boxCentre(form.box))) };
  }

  private pointed(shape: SpikeShape | ProngShape): PlacedPiece | null {
    const { report } = this.bench;
    const angle = shape.pointing.angle_deg;
    let tip: XY | null;
    let root_mm = 0;
    if (shape.tip.kind === 'on') {
      const base = this.referred(shape.tip.of, 'A spike or prong stands on an electrode.');
      if (base === null) return null;
      const stand = standingOn(
        shape,
        base.pieces.filter((p) => !onItself(p.shape)).map((p) => p.geometry),
        report,
      );
      if (stand === null) return null;
      tip = stand.tip;
      root_mm = stand.root_mm;
    } else tip = this.point(shape.tip.point);
    const outline = pointedOutline(shape, root_mm, report);
    const shown = root_mm === 0 ? outline : pointedOutline(shape, 0, report);
    if (tip === null || outline === null || shown === null) return null;
    const u = unitVector(angle);
    // The root is metal within metal: it is no part of the size.
    return {
      shape,
      geometry: placedPiece(solid(outline), u, tip),
      box: outlineBounds(placedOutline(shown, u, tip)),
    };
  }

  /** Where the centre of a box goes. */
  private boxPlace(anchor: Anchor, box: Bounds): XY | null {
    switch (anchor.kind) {
      case 'at':
        return this.point(anchor.point);
      case 'beside': {
        const other = this.referred(anchor.of)?.box;
        return other === undefined ? null : besideBox(other, box, anchor.side, anchor.gap.value);
      }
      case 'midway':
        return this.midway(anchor.between, anchor.span);
    }
  }

  private midway([first, second]: readonly [Name, Name], at: Span): XY | null {
    const known = [this.referred(first), this.referred(second)];
    if (known.includes(null)) return null;
    const a = this.end(first.text);
    const b = this.end(second.text);
    const line = a === null || b === null ? null : lineBetween(a, b);
    if (line !== null) return times(plus(line.from, line.to), 0.5);
    return this.bench.report('line-concentric', {
      span: at,
      message: `${first.text} and ${second.text} have one centre: nothing lies midway between them.`,
    });
  }

  point(point: Point): XY | null {
    if (point.kind === 'coordinates') return { x: point.x.value, y: point.y.value };
    if (point.of === null) return this.bench.centre;
    const box = this.referred(point.of, 'A centre is that of an electrode.')?.box;
    return box === undefined ? null : boxCentre(box);
  }

  end(name: string): End | null {
    const placed = this.place(name);
    const first = placed?.pieces[0];
    if (placed === null || first === undefined) return null;
    const tip = isPointed(first.shape) ? first.geometry.outer : null;
    if (tip !== null && isPointed(first.shape)) {
      return { centre: outermost(first.geometry, unitVector(first.shape.pointing.angle_deg)), metal: null };
    }
    const own = placed.pieces.filter(({ shape }) => !onItself(shape));
    return { centre: boxCentre(placed.box), metal: own.map(({ geometry }) => geometry) };
  }

  /** `move` of drawn or several pieces: the box's centre goes to the place, turned about it. */
  private shifted(name: string, pieces: readonly PlacedPiece[]): readonly PlacedPiece[] {
    const move = this.bench.shifts.get(name);
    if (move?.to.kind !== 'place' || pieces.length === 0) return pieces;
    this.begun.push(name);
    const moved = this.movedTo(move.to.place, pieces);
    this.begun.pop();
    return moved;
  }

  private movedTo({ anchor, turned }: Place, pieces: readonly PlacedPiece[]): readonly PlacedPiece[] {
    const u = unitVector(turned?.value ?? 0);
    const centre = boxCentre(boxAround(pieces.map(({ box }) => box)));
    const about = times(turnedBy(u, centre), -1);
    const atOrigin = pieces.map(({ shape, geometry, box }): PlacedPiece => {
      const turnedPiece = placedPiece(geometry, u, about);
      return {
        shape,
        geometry: turnedPiece,
        box: turned === null ? shiftedBox(box, times(centre, -1)) : outlineBounds(turnedPiece.outer),
      };
    });
    const whole = boxAround(atOrigin.map(({ box }) => box));
    const goal = this.boxPlace(anchor, whole);
    if (goal === null) return [];
    return atOrigin.map(({ shape, ...form }) => ({
      shape,
      ...shiftedForm(form satisfies Form, minus(goal, origin)),
    }));
  }
}

/** The first few and the last of many. */
const shortened = (parts: readonly string[]): readonly string[] =>
  parts.length <= 5 ? parts : [...parts.slice(0, 3), '…', ...parts.slice(-1)];

/** Edge to edge at `gap`, centres level. */
function besideBox(other: Bounds, box: Bounds, side: 'right' | 'left' | 'above' | 'below', gap: number): XY {
  const level = boxCentre(other);
  const halfWidth = (box.x1 - box.x0) / 2;
  const halfHeight = (box.y1 - box.y0) / 2;
  switch (side) {
    case 'right':
      return { x: other.x1 + gap + halfWidth, y: level.y };
    case 'left':
      return { x: other.x0 - gap - halfWidth, y: level.y };
    case 'above':
      return { x: level.x, y: other.y1 + gap + halfHeight };
    case 'below':
      return { x: level.x, y: other.y0 - gap - halfHeight };
  }
}

/** Middle of the metal farthest in a direction: the tip of a spike or prong that points there. */
export function outermost(piece: FieldPiece, u: XY): XY {
  const { outer } = piece;
  const arc = outer.edges[0]?.arc ?? null;
  const [a, b] = outer.edges;
  if (a === undefined || b === undefined) return origin;
  // A rounded tip: the arc's centre, one radius on. A sharp tip is the first corner; a prong's free end lies between the first two.
  if (arc !== null)
    return plus(
      arc.centre,
      times(u, Math.sqrt((a.from.x - arc.centre.x) ** 2 + (a.from.y - arc.centre.y) ** 2)),
    );
  const reach = (p: XY): number => p.x * u.x + p.y * u.y;
  return reach(a.from) - reach(b.from) > 1e-6 ? a.from : times(plus(a.from, b.from), 0.5);
}
