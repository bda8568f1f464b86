/** Labels that point at a place: beside it with a short leader, or further off where it is crowded in. */
import type { Bounds } from '../field/geometry/curve.ts';
import type { Point } from '../field/geometry/outline.ts';
import { cos, hypot, sin } from '../field/maths.ts';
import type { Desk } from './desk.ts';
import { boxOf, centred } from './labels.ts';
import { at, label } from './marks.ts';
import { middleOf, type Page, scaled } from './page.ts';
import { probeDiameter } from './pens.ts';
import { between } from './polygon.ts';
import type { Label, TextRun } from './scene.ts';

/** A label and the ends of its leader. */
interface Aimed {
  readonly label: Label;
  readonly cost: number;
  readonly start: Point;
  readonly end: Point;
}

export interface Pointed extends Aimed {
  readonly leader: readonly Point[];
}

/** Round a probe, but not nearer to another one, whose the label would seem to be. */
export function aroundProbe({ page }: Desk, p: Point, runs: readonly TextRun[], size_mm: number): Pointed[] {
  const others = otherProbes(page, p);
  return aroundPoint(p, runs, size_mm).filter(({ label: placed }) => {
    const middle = middleOf(boxOf(placed));
    const own = hypot(middle.x - p.x, middle.y - p.y);
    return others.every((q) => hypot(middle.x - q.x, middle.y - q.y) > own);
  });
}

const otherProbes = (page: Page, p: Point): Point[] =>
  page.setup.probes
    .map(({ at: place }) => scaled(place, page.scale))
    .filter((q) => hypot(q.x - p.x, q.y - p.y) > 0.1);

/** A place further off: its leader is drawn by whoever takes it. */
export interface Far extends Aimed {
  /** Whether its leader crosses no letters and no other probe. */
  readonly holds: () => boolean;
}

export interface FarText {
  readonly runs: readonly TextRun[];
  readonly size_mm: number;
  /** Unit normal of the edge that the point lies on: leaders keep to its side. */
  readonly outwards?: Point;
}

/** Where a point is crowded in: places further off, the leader over metal if need be, but over no letters and no other probe. */
export function farFrom({ page, room, board }: Desk, p: Point, { runs, size_mm, outwards }: FarText): Far[] {
  const others = otherProbes(page, p);
  const isClear = (q: Point): boolean =>
    !room.isWrittenAt(q) && others.every((other) => hypot(other.x - q.x, other.y - q.y) > 1.4);
  const directions = allRound.filter((degrees) => outwards === undefined || faces(degrees, outwards));
  return aimed(p, { runs, size_mm, reaches: farReaches, directions })
    .filter(({ label: placed }) => within(boxOf(placed), board))
    .map((each) => ({ ...each, holds: () => between(each.start, each.end, 0.4).every(isClear) }));
}

const farReaches = [6, 9, 12, 15, 18, 22, 26, 30, 35, 40];

/** Within 45° of a normal. */
function faces(degrees: number, n: Point): boolean {
  const u = unit(degrees);
  return u.x * n.x + u.y * n.y > 0.7;
}

const within = (a: Bounds, b: Bounds): boolean => a.x0 > b.x0 && a.y0 > b.y0 && a.x1 < b.x1 && a.y1 < b.y1;

const allRound = Array.from({ length: 24 }, (_, i) => 15 * i);

const directions = [45, 135, -45, -135, 20, 160, -20, -160, 90, -90, 0, 180, 70, 110, -70, -110];

/** Labels round a point with short leaders, the upper right first. */
export function aroundPoint(p: Point, runs: readonly TextRun[], size_mm: number): Pointed[] {
  return aimed(p, { runs, size_mm, reaches: [3.6, 5.5, 8, 11], directions }).map((each) => ({
    ...each,
    leader: between(each.start, each.end, 0.4).slice(1),
  }));
}

interface Aiming {
  readonly runs: readonly TextRun[];
  readonly size_mm: number;
  /** Lengths of leaders and their directions in degrees, in order of liking. */
  readonly reaches: readonly number[];
  readonly directions: readonly number[];
}

function aimed(p: Point, { runs, size_mm, reaches, directions }: Aiming): Aimed[] {
  const found: Aimed[] = [];
  for (const [j, reach] of reaches.entries()) {
    for (const [i, degrees] of directions.entries()) {
      const u = unit(degrees);
      const start = at(p.x + u.x * (probeDiameter / 2 + 0.6), p.y + u.y * (probeDiameter / 2 + 0.6));
      const end = at(p.x + u.x * reach, p.y + u.y * reach);
      const anchor = u.x > 0.1 ? 'start' : u.x < -0.1 ? 'end' : 'middle';
      const shift = anchor === 'start' ? 0.6 : anchor === 'end' ? -0.6 : 0;
      const y = centred(end.y + u.y * (anchor === 'middle' ? 0.5 * size_mm : 1), size_mm);
      found.push({
        label: label(at(end.x + shift, y), runs, { size_mm, anchor, halo: true }),
        cost: (i * 10) / directions.length + j * 5,
        start,
        end,
      });
    }
  }
  return found;
}

const unit = (degrees: number): Point => at(cos((degrees * Math.PI) / 180), sin((degrees * Math.PI) / 180));
