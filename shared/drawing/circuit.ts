/**
 * The circuit above the board: supply between the leads, voltmeter from its black lead to a probe that touches the paper. Crossing
 * leads do not join; joins have a dot.
 */
import type { Point } from '../field/geometry/outline.ts';
import { printQuantity } from '../quantity/print.ts';
import type { Supply } from '../setup/setup.ts';
import type { Desk } from './desk.ts';
import { centred } from './labels.ts';
import type { Lead } from './lead-routes.ts';
import { at, circle, dot, label, line, polyline, upright } from './marks.ts';
import { wants } from './page.ts';
import { textSize } from './pens.ts';
import { between } from './polygon.ts';
import type { Item } from './scene.ts';

const METER_LEVEL = 6;
const SUPPLY_LEVEL = 16;
const SECOND_LEVEL = 26;
const METER_RADIUS = 3.6;

/** A lead brought up beside the board to the circuit. */
interface Riser {
  readonly lead: Lead;
  readonly x: number;
  readonly way: readonly Point[];
}

export function circuit(desk: Desk): Item[] {
  const { page, board } = desk;
  if (!wants(page, 'circuit')) return [];
  const base = board.y1 + 5;
  const risers = risersOf(desk);
  const of = (polarity: Lead['polarity']): Riser[] => risers.filter(({ lead }) => lead.polarity === polarity);
  const drawn = [
    ...supply(page.setup.supply, of('negative'), of('positive'), base),
    ...meter(desk, risers, base),
  ];
  for (const item of drawn) if (item.kind === 'label') desk.room.keepLabel(item);
  return drawn;
}

/** Leads to the left, right or below are led round the board, side by side. */
function risersOf({ page, leads, board }: Desk): Riser[] {
  const black = page.setup.meter?.blackLead ?? null;
  let left = 0;
  let right = 0;
  return leads
    .filter(({ polarity, electrode }) => polarity !== 'held' || electrode.name === black)
    .map((lead) => {
      const { end, direction } = lead;
      if (direction.y > 0) return { lead, x: end.x, way: [end] };
      const leftwards = direction.y === 0 ? direction.x < 0 : end.x < (board.x0 + board.x1) / 2;
      const x = leftwards ? board.x0 - 5 - 4 * left++ : board.x1 + 5 + 4 * right++;
      return { lead, x, way: [end, at(x, end.y)] };
    });
}

function supply(
  source: Supply | null,
  negative: readonly Riser[],
  positive: readonly Riser[],
  base: number,
): Item[] {
  if (source === null || negative.length === 0 || positive.length === 0) return [];
  const xs = (risers: readonly Riser[]): number[] => risers.map(({ x }) => x);
  const [n0, n1] = [Math.min(...xs(negative)), Math.max(...xs(negative))];
  const [p0, p1] = [Math.min(...xs(positive)), Math.max(...xs(positive))];
  const width = symbolWidth(source);
  const y = base + SUPPLY_LEVEL;
  // One level where all negative leads stand on one side, with room for the symbol between.
  if (n1 + width + 8 < p0) return oneLevel(source, [n0, n1], [p0, p1], { negative, positive, y });
  if (p1 + width + 8 < n0) return oneLevel(source, [n1, n0], [p1, p0], { negative, positive, y });
  const high = base + SECOND_LEVEL;
  const x = Math.max(n1, p1) + width + 6;
  return [
    ...bus(negative, [Math.min(n0, n1), x - width / 2], y),
    ...bus(positive, [Math.min(p0, p1), x + width / 2], high),
    line('lead', at(x + width / 2, high), at(x + width / 2, y)),
    ...symbol(source, at(x, y), 1, -8),
    zero(at(n0, y)),
  ];
}

interface Buses {
  readonly negative: readonly Riser[];
  readonly positive: readonly Riser[];
  readonly y: number;
}

/** `ns` and `ps`: outer and inner ends of the negative and of the positive leads. */
function oneLevel(
  source: Supply,
  ns: readonly [number, number],
  ps: readonly [number, number],
  { negative, positive, y }: Buses,
): Item[] {
  const right = ps[0] > ns[0] ? 1 : -1;
  const n = right > 0 ? Math.max(...ns) : Math.min(...ns);
  const p = right > 0 ? Math.min(...ps) : Math.max(...ps);
  const middle = (n + p) / 2;
  const half = (right * symbolWidth(source)) / 2;
  return [
    ...bus(negative, [ns[0], middle - half], y),
    ...bus(positive, [ps[right > 0 ? 1 : 0], middle + half], y),
    ...symbol(source, at(middle, y), right),
    zero(at(Math.abs(middle - half - n) < ROOM_FOR_ZERO ? n - right * 5 : (n + middle - half) / 2, y)),
  ];
}

/** Risers up to a level and the lead that joins them; a dot where three ways meet. */
function bus(risers: readonly Riser[], [from, to]: readonly [number, number], y: number): Item[] {
  const low = Math.min(from, to, ...risers.map(({ x }) => x));
  const high = Math.max(from, to, ...risers.map(({ x }) => x));
  return [
    ...risers.map(({ x, way }) => polyline('lead', [...way, at(x, y)])),
    line('lead', at(low, y), at(high, y)),
    ...risers.filter(({ x }) => x > low && x < high).map(({ x }) => dot('junction', at(x, y), 1.4)),
  ];
}

/** Along the lead between the negative riser and the symbol's own sign. */
const ROOM_FOR_ZERO = 16;

const zero = (p: Point): Item =>
  label(at(p.x, p.y + 1.4), upright('0\u00a0V'), { size_mm: textSize.value, anchor: 'middle' });

const CELL_STEP = 4.4;
const drawnCells = ({ source, cells }: Supply): number => (source === 'cell' ? Math.min(cells, 4) : 0);
const symbolWidth = (source: Supply): number =>
  source.source === 'cell' ? 1.8 + CELL_STEP * (drawnCells(source) - 1) : 12;

/** Cells: long thin line plus, short thick line minus. Other supplies: two open terminals. `right` 1: plus on the right. */
function symbol(source: Supply, p: Point, right: number, saidAt = 5.6): Item[] {
  const half = symbolWidth(source) / 2;
  const x = (along: number): number => p.x + right * along;
  const said = label(at(p.x, p.y + saidAt), upright(supplyText(source)), {
    size_mm: textSize.value,
    anchor: 'middle',
  });
  const signs = [
    label(at(x(half + 2.6), p.y + 1.6), upright('+'), { size_mm: textSize.value, anchor: 'middle' }),
    label(at(x(-half - 2.6), p.y + 1.6), upright('\u2212'), { size_mm: textSize.value, anchor: 'middle' }),
  ];
  if (source.source !== 'cell') {
    return [
      circle('terminal', at(x(-half), p.y), 0.9),
      circle('terminal', at(x(half), p.y), 0.9),
      said,
      ...signs,
    ];
  }
  const cells = Array.from({ length: drawnCells(source) }, (_, i) => {
    const minus = -half + CELL_STEP * i;
    const link = i === 0 ? [] : [line('lead', at(x(minus - CELL_STEP + 1.8), p.y), at(x(minus), p.y))];
    return [
      ...link,
      line('circuit-thick', at(x(minus), p.y - 1.9), at(x(minus), p.y + 1.9)),
      line('circuit', at(x(minus + 1.8), p.y - 4), at(x(minus + 1.8), p.y + 4)),
    ];
  });
  return [...cells.flat(), said, ...signs];
}

function supplyText({ source, cells, emf_V, ac }: Supply): string {
  const value = `${printQuantity(emf_V, 'potential')}${ac ? ' a.c.' : ''}`;
  if (source === 'cell') return cells === 1 ? value : `${cells} cells, ${value}`;
  const words = { 'power-pack': 'power pack', eht: 'EHT supply', ht: 'HT supply' } as const;
  return `${words[source]}, ${value}`;
}

/** From a dot on the lead that carries the black lead, by the voltmeter, to an arrow on the paper. */
function meter(desk: Desk, risers: readonly Riser[], base: number): Item[] {
  const { page, room, board } = desk;
  if (page.setup.meter === null) return [];
  const start = blackLead(desk, risers);
  if (start === null) return [];
  const y = base + METER_LEVEL;
  const towards = start.x < (board.x0 + board.x1) / 2 ? 1 : -1;
  const v = at(start.x + towards * 12, y);
  const tip = probeTip(desk, start.x + towards * 26, towards);
  const alone = start.lead.polarity === 'black lead' || start.lead.polarity === 'held';
  room.keepSolid(between(at(tip.x, base), tip, 0.5));
  const size_mm = textSize.value;
  return [
    ...(alone ? [polyline('lead', [...start.way, at(start.x, y)])] : [dot('junction', at(start.x, y), 1.4)]),
    polyline('lead', [at(start.x, y), v]),
    polyline('lead', [v, at(tip.x, y), tip]),
    polyline('lead', [at(tip.x - 1.1, tip.y + 2.2), tip, at(tip.x + 1.1, tip.y + 2.2)]),
    circle('circuit', v, METER_RADIUS),
    label(at(v.x, centred(v.y, textSize.name)), upright('V'), { size_mm: textSize.name, anchor: 'middle' }),
    label(at(tip.x + 1.4, base + 0.8), upright('probe'), { size_mm }),
  ];
}

function blackLead({ page }: Desk, risers: readonly Riser[]): Riser | null {
  const name = page.setup.meter?.blackLead ?? null;
  const metal = page.setup.electrodes.find((electrode) => electrode.name === name);
  const found = risers.find(
    ({ lead }) =>
      lead.electrode.name === name ||
      (metal !== undefined && metal.conductor !== null && lead.electrode.conductor === metal.conductor),
  );
  return found ?? risers.find(({ lead }) => lead.polarity === 'negative') ?? null;
}

/** A free place near the upper edge of the paper. */
function probeTip({ page, room }: Desk, x: number, towards: number): Point {
  for (const shift of [0, 4, -4, 8, -8, 14, 20, 28]) {
    const p = at(Math.max(6, Math.min(page.width - 6, x + towards * shift)), page.height - 5);
    const way = between(p, at(p.x, page.height + 12), 1);
    const wide = { x0: p.x - 2.5, x1: p.x + 2.5, y0: p.y - 1.5, y1: page.height - 0.8 };
    const clear = way.every((q) => Math.abs(q.y - page.height) < 1 || room.isFreeAt(q));
    if (clear && room.isFree(wide)) return p;
  }
  return at(x, page.height - 5);
}
