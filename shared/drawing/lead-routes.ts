/** The ways of leads: from the clip on its conductor a lead leaves the board straight up, left, right or down, as it crosses least. */
import type { Bounds } from '../field/geometry/curve.ts';
import type { Point } from '../field/geometry/outline.ts';
import type { Electrode } from '../setup/setup.ts';
import { boxAround, crossingCost } from './crossing.ts';
import { isOn, middleOf, onPaper, type Page, type PageElectrode, type PagePiece, wants } from './page.ts';
import { between, edgePoints } from './polygon.ts';

export type Polarity = 'positive' | 'negative' | 'held' | 'black lead';

export interface Lead {
  readonly electrode: Electrode;
  readonly polarity: Polarity;
  /** On the edge of the metal. */
  readonly clip: Point;
  /** Outwards, along an axis. */
  readonly direction: Point;
  /** Beyond the board. */
  readonly end: Point;
}

/** How far a lead runs beyond the board, upwards or downwards and sideways, where figures need their width. */
const BEYOND_mm = 4.5;
const ASIDE_mm = 2.5;

const directions: readonly { readonly d: Point; readonly cost: number }[] = [
  { d: { x: 0, y: 1 }, cost: 0 },
  { d: { x: -1, y: 0 }, cost: 6 },
  { d: { x: 1, y: 0 }, cost: 6 },
  // The key stands below.
  { d: { x: 0, y: -1 }, cost: 300 },
];

/** One lead for each connected conductor, and one for a black lead on metal that has none. */
export function chooseLeads(page: Page, board: Bounds): Lead[] {
  const leads: Lead[] = [];
  const conductors = new Set<number>();
  const add = (placed: PageElectrode, polarity: Polarity): void => {
    const { conductor } = placed.electrode;
    if (conductor !== null && conductors.has(conductor)) return;
    const lead = bestLead(page, board, placed, polarity, leads);
    if (lead === null) return;
    leads.push(lead);
    if (conductor !== null) conductors.add(conductor);
  };
  for (const placed of page.electrodes) {
    const { connection, joinedTo, partOf } = placed.electrode;
    if (connection === null || connection.kind === 'floating' || joinedTo !== null || partOf !== null)
      continue;
    add(placed, connection.kind);
  }
  const black = page.electrodes.find(({ electrode }) => electrode.name === page.setup.meter?.blackLead);
  if (
    wants(page, 'circuit') &&
    black !== undefined &&
    !leads.some(({ electrode }) => electrode === black.electrode)
  ) {
    add(black, 'black lead');
  }
  return leads;
}

function bestLead(
  page: Page,
  board: Bounds,
  placed: PageElectrode,
  polarity: Polarity,
  others: readonly Lead[],
): Lead | null {
  let best: Lead | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const piece of placed.pieces) {
    for (const { p, n } of edgePoints(piece.polygons[0] ?? [])) {
      if (!onPaper(page, p, -8)) continue;
      for (const { d, cost } of directions) {
        if (n.x * d.x + n.y * d.y < 0.7) continue;
        const lead = {
          electrode: placed.electrode,
          polarity,
          clip: p,
          direction: d,
          end: beyond(board, p, d),
        };
        const known = cost + offMiddle(piece, lead) + besideCost(page, lead, others);
        if (known >= least) continue;
        const total = known + wayCost(page, placed, lead, least - known);
        if (total >= least - 1e-6) continue;
        best = lead;
        least = total;
      }
    }
  }
  return best;
}

function beyond(board: Bounds, p: Point, d: Point): Point {
  if (d.y > 0) return { x: p.x, y: board.y1 + BEYOND_mm };
  if (d.y < 0) return { x: p.x, y: board.y0 - BEYOND_mm };
  return { x: d.x < 0 ? board.x0 - ASIDE_mm : board.x1 + ASIDE_mm, y: p.y };
}

/** Length on the paper, and much more for all that the lead would cross or come close to; above `limit` not counted further. */
function wayCost(page: Page, own: PageElectrode, lead: Lead, limit: number): number {
  const { clip, direction: d, end } = lead;
  const start = { x: clip.x + d.x * 0.4, y: clip.y + d.y * 0.4 };
  const crossed = crossingCost(page, [own], boxAround(start, end));
  let cost = 0;
  for (const p of between(start, end, 1)) {
    if (onPaper(page, p)) cost += 1;
    if (isOn(own, p)) return Number.POSITIVE_INFINITY;
    cost += crossed(p);
    if (cost >= limit) return cost;
    if (page.paperClips.some((b) => p.x > b.x0 - 2 && p.x < b.x1 + 2 && p.y > b.y0 && p.y < b.y1)) cost += 20;
  }
  return cost;
}

/** Leads that leave close to each other, or to the side where the circuit stands above. */
function besideCost(page: Page, { direction: d, end }: Lead, others: readonly Lead[]): number {
  const close = others.filter((other) => {
    const apart = Math.abs(d.x === 0 ? other.end.x - end.x : other.end.y - end.y);
    return other.direction.x === d.x && other.direction.y === d.y && apart < 14;
  });
  return 60 * close.length + (wants(page, 'circuit') && d.y <= 0 ? 12 : 0);
}

function offMiddle(piece: PagePiece, { clip, direction }: Lead): number {
  const centre = middleOf(piece.bounds);
  return 0.15 * Math.abs(direction.x === 0 ? clip.x - centre.x : clip.y - centre.y);
}
