/**
 * Where labels go. Greedy and deterministic: each label comes with candidate places in order of liking; the cheapest free one is
 * taken and kept. Never over another label, metal or a probe; over lines only where nothing else is left.
 */
import type { Bounds } from '../field/geometry/curve.ts';
import type { Point } from '../field/geometry/outline.ts';
import type { Label, TextRun } from './scene.ts';
import { advance } from './type.ts';

/** Room round a label. */
const CLEAR_mm = 0.5;

export interface Candidate {
  readonly label: Label;
  /** Added to the cost: how much less it is liked than the first. */
  readonly cost?: number;
  /** Further points that must stay free, as those of a leader. */
  readonly leader?: readonly Point[];
  /** What else must hold; asked last, since it may cost much. */
  readonly holds?: () => boolean;
}

/** What the page already holds. */
export class Occupancy {
  private readonly boxes: Bounds[] = [];
  private readonly solid = new PointGrid();
  private readonly lines = new PointGrid();
  private readonly within: (p: Point) => boolean;

  /** `within`: is there metal at this point? */
  constructor(within: (p: Point) => boolean) {
    this.within = within;
  }

  /** Nothing may be written here. */
  keepBox(box: Bounds): void {
    this.boxes.push(box);
  }
  keepLabel(label: Label): void {
    this.boxes.push(boxOf(label));
  }
  keepSolid(points: readonly Point[]): void {
    for (const p of points) this.solid.add(p);
  }
  /** Better not written over. */
  keepLine(points: readonly Point[]): void {
    for (const p of points) this.lines.add(p);
  }

  isFree(box: Bounds): boolean {
    return !this.isKept(box) && !corners(box).some(this.within);
  }
  /** Is there room for a line through this point? */
  isFreeAt(p: Point): boolean {
    return !this.isKept(padded({ x0: p.x, y0: p.y, x1: p.x, y1: p.y }, 0.3)) && !this.within(p);
  }
  /** Is a label here, or another box that is kept? Leaders may cross metal and lines, no letters. */
  isWrittenAt({ x, y }: Point): boolean {
    return this.boxes.some((box) => overlap(box, padded({ x0: x, y0: y, x1: x, y1: y }, 0.3)));
  }
  private isKept(box: Bounds): boolean {
    return this.boxes.some((other) => overlap(box, other)) || this.solid.count(box) > 0;
  }
  /** Points of lines under a box. */
  linesUnder(box: Bounds): number {
    return this.lines.count(box);
  }

  /** The best free candidate, kept; null if none is free. */
  place<C extends Candidate>(candidates: readonly C[]): C | null {
    let best: C | null = null;
    let least = Number.POSITIVE_INFINITY;
    for (const candidate of candidates) {
      const box = padded(boxOf(candidate.label), CLEAR_mm);
      const cost = (candidate.cost ?? 0) + this.linesUnder(box);
      if (cost >= least || !this.isFree(box)) continue;
      if (candidate.leader?.some((p) => !this.isFreeAt(p))) continue;
      if (candidate.holds?.() === false) continue;
      best = candidate;
      least = cost;
    }
    if (best !== null) this.keepLabel(best.label);
    return best;
  }
}

export function textWidth(runs: readonly TextRun[], size_mm: number): number {
  return runs.reduce((sum, run) => sum + advance(run) * size_mm, 0);
}

/** Box that a label covers, from below its descenders to the top of its capitals; or with a part of its width. */
export function boxOf(label: Label, part = 1): Bounds {
  const width = part * textWidth(label.runs, label.size_mm);
  const x0 =
    label.anchor === 'start' ? label.x : label.anchor === 'end' ? label.x - width : label.x - width / 2;
  return { x0, x1: x0 + width, y0: label.y - 0.22 * label.size_mm, y1: label.y + 0.76 * label.size_mm };
}

/** Base line that centres letters of this size on y. */
export const centred = (y: number, size_mm: number): number => y - 0.36 * size_mm;

export const padded = (b: Bounds, by: number): Bounds => ({
  x0: b.x0 - by,
  y0: b.y0 - by,
  x1: b.x1 + by,
  y1: b.y1 + by,
});

export const overlap = (a: Bounds, b: Bounds): boolean =>
  a.x0 < b.x1 && b.x0 < a.x1 && a.y0 < b.y1 && b.y0 < a.y1;

/** Corners and middles of a box, dense enough for metal that has its own points along its edge. */
function corners(b: Bounds): Point[] {
  const xs = [b.x0, (b.x0 + b.x1) / 2, b.x1];
  const ys = [b.y0, (b.y0 + b.y1) / 2, b.y1];
  return xs.flatMap((x) => ys.map((y) => ({ x, y })));
}

/** Points sorted into cells, to count those in a box. */
class PointGrid {
  private readonly cells = new Map<string, Point[]>();

  add(p: Point): void {
    const key = `${Math.floor(p.x / 8)} ${Math.floor(p.y / 8)}`;
    const cell = this.cells.get(key);
    if (cell === undefined) this.cells.set(key, [p]);
    else cell.push(p);
  }

  count(b: Bounds): number {
    let found = 0;
    for (let i = Math.floor(b.x0 / 8); i <= Math.floor(b.x1 / 8); i++) {
      for (let j = Math.floor(b.y0 / 8); j <= Math.floor(b.y1 / 8); j++) {
        for (const { x, y } of this.cells.get(`${i} ${j}`) ?? []) {
          if (x > b.x0 && x < b.x1 && y > b.y0 && y < b.y1) found++;
        }
      }
    }
    return found;
  }
}
