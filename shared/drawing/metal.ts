/** Electrodes: hatched metal with true outlines, what hangs over the paper's edge, names and signs; holes, slits and patches of the paper. */
import { type Bounds, type Curve, curvesOf, straight } from '../field/geometry/curve.ts';
import type { Point } from '../field/geometry/outline.ts';
import type { Electrode } from '../setup/setup.ts';
import { closes, visibleChains } from './cut.ts';
import type { Desk } from './desk.ts';
import { type Candidate, centred } from './labels.ts';
import { alongCurves, at, joinedPaths, label, line, upright } from './marks.ts';
import {
  isOn,
  middleOf,
  onPaper,
  type Page,
  type PageElectrode,
  type PagePiece,
  scaled,
  scaledOutline,
  visibleBounds,
  wants,
} from './page.ts';
import { hatchSpacing, textSize } from './pens.ts';
import { type Far, farFrom } from './pointed.ts';
import { crossings, edgePoints, insidePolygons, polygonOf } from './polygon.ts';
import type { Item } from './scene.ts';
import { volts } from './values.ts';

export function metal({ page, board }: Desk): Item[] {
  if (!wants(page, 'electrodes')) return [];
  return page.electrodes.flatMap((electrode) => [
    ...electrode.pieces.map(({ curves }) =>
      joinedPaths(
        'metal-face',
        curves.map((outline) => alongCurves('metal-face', outline, true)),
      ),
    ),
    ...hatch(page, electrode),
    ...outlines(page, electrode, board),
  ]);
}

/** Metal that would take more lines than this is hatched more widely. */
const MOST_LINES = 2000;

/** Lines at 45°, the same set for the whole page, so that pieces of one electrode run into each other. */
function hatch(page: Page, electrode: PageElectrode): Item[] {
  const { pieces } = electrode;
  const b = visibleBounds(page, electrode.bounds);
  if (b === null) return [];
  const u = { x: -Math.SQRT1_2, y: Math.SQRT1_2 };
  const [low, high] = [u.x * b.x1 + u.y * b.y0, u.x * b.x0 + u.y * b.y1];
  const spacing = hatchSpacing * Math.max(1, Math.ceil((high - low) / (MOST_LINES * hatchSpacing)));
  const lines: Item[] = [];
  for (let k = Math.floor(low / spacing) - 1; k * spacing < high; k++) {
    const c = (k + 0.5) * spacing;
    const stops = [
      ...new Set([...pieces.flatMap((p) => crossings(p.polygons, u, c)), ...paperCrossings(page, u, c)]),
    ];
    stops.sort((a, b) => a - b);
    const point = (t: number): Point => at(u.x * c - u.y * t, u.y * c + u.x * t);
    let start: number | null = null;
    for (const [i, stop] of stops.entries()) {
      const next = stops[i + 1];
      const metalAhead = next !== undefined && inMetal(page, electrode, point((stop + next) / 2));
      if (metalAhead) start ??= stop;
      else if (start !== null) {
        lines.push(line('hatch', point(start), point(stop)));
        start = null;
      }
    }
  }
  return lines;
}

function paperCrossings({ width, height }: Page, u: Point, c: number): number[] {
  return crossings([[at(0, 0), at(width, 0), at(width, height), at(0, height)]], u, c);
}

function inMetal(page: Page, electrode: PageElectrode, p: Point): boolean {
  return onPaper(page, p) && isOn(electrode, p);
}

function outlines(page: Page, electrode: PageElectrode, board: Bounds): Item[] {
  const { pieces, bounds } = electrode;
  const anyPiece = (p: Point): boolean => isOn(electrode, p);
  const onBoard = (p: Point): boolean => p.x > board.x0 && p.y > board.y0 && p.x < board.x1 && p.y < board.y1;
  const past = visibleBounds(page, bounds);
  const overhangs =
    past === null || past.x0 > bounds.x0 || past.y0 > bounds.y0 || past.x1 < bounds.x1 || past.y1 < bounds.y1;
  const metalChains = pieces.flatMap(({ curves }) => curves);
  const cut = rectangle(0, 0, page.width, page.height);
  const others = [...metalChains.flat(), ...cut];
  const on = (p: Point): boolean => onPaper(page, p) && anyPiece(p);
  const drawn = [...metalChains, cut].flatMap((chain) => visibleChains(chain, others, on));
  const solid = drawn.map((chain) => alongCurves('metal', chain, closes(chain)));
  if (!overhangs) return solid;
  const rim = rectangle(board.x0, board.y0, board.x1, board.y1);
  const off = (p: Point): boolean => !onPaper(page, p) && onBoard(p) && anyPiece(p);
  const tabs = metalChains.flatMap((chain) => visibleChains(chain, [...others, ...rim], off));
  return [...solid, ...tabs.map((chain) => alongCurves('overhang', chain, closes(chain)))];
}

function rectangle(x0: number, y0: number, x1: number, y1: number): Curve[] {
  const corners = [at(x0, y0), at(x1, y0), at(x1, y1), at(x0, y1)];
  return corners.map((a, i) => straight(a, corners[(i + 1) % 4] ?? a));
}

/** What stands beside the metal: `N −`, `P +`, `R, not connected`, `K, 1.2 V`. */
function nameOf(electrode: Electrode, connected: boolean): string {
  const { name, connection } = electrode;
  switch (connection?.kind) {
    case 'positive':
      return `${name} +`;
    case 'negative':
      return `${name} \u2212`;
    case 'held':
      return `${name}, ${volts(connection.potential_V)}`;
    case 'floating':
      return connected ? name : `${name}, not connected`;
    default:
      return name;
  }
}

export function names(desk: Desk): Item[] {
  const { page, room } = desk;
  if (!wants(page, 'electrodes')) return [];
  return page.electrodes.flatMap((placed) => {
    // Where the whole has no room the name alone may have.
    const texts = new Set([
      nameOf(placed.electrode, isConnected(page, placed.electrode)),
      placed.electrode.name,
    ]);
    for (const text of texts) {
      const near = room.place(nameCandidates(page, placed, text));
      if (near !== null) return [near.label];
      const far = room.place(placed.pieces.flatMap((piece) => farNames(desk, piece, text)));
      if (far !== null) return [line('leader', far.start, far.end), far.label];
    }
    return [];
  });
}

/** Floating metal that touches connected metal is connected. */
function isConnected(page: Page, { conductor }: Electrode): boolean {
  return page.setup.electrodes.some(
    (other) => conductor !== null && other.conductor === conductor && other.connection?.kind !== 'floating',
  );
}

/** Where all is crowded round the metal: further off, with a leader to its rim. */
function farNames(desk: Desk, piece: PagePiece, text: string): Far[] {
  const name = { runs: upright(text), size_mm: textSize.name };
  const rim = edgePoints(piece.polygons[0] ?? []).filter(({ p }) => onPaper(desk.page, p));
  const stride = Math.ceil(rim.length / MOST_LEADER_ENDS);
  return rim
    .filter((_, i) => i % stride === 0)
    .flatMap(({ p, n }) => farFrom(desk, p, { ...name, outwards: n }));
}

/** A leader may end at so many places of a rim: with many electrodes each costs its share of the whole drawing. */
const MOST_LEADER_ENDS = 8;

/** Round the metal, outwards from the middle of the paper first. */
function nameCandidates(page: Page, { pieces }: PageElectrode, text: string): Candidate[] {
  const size_mm = textSize.name;
  return pieces.flatMap((piece) => {
    const centre = middleOf(piece.bounds);
    const out = { x: centre.x - page.width / 2, y: centre.y - page.height / 2 };
    return edgePoints(piece.polygons[0] ?? []).flatMap(({ p, n, offMiddle }) => {
      if (!onPaper(page, p)) return [];
      const inward = n.x * out.x + n.y * out.y < -1 ? 4 : 0;
      return [1.6, 3.5, 6, 10].map((gap): Candidate => {
        const sideways = Math.abs(n.x) > 0.5;
        const anchor = sideways ? (n.x > 0 ? 'start' : 'end') : 'middle';
        const y = p.y + n.y * (gap + (sideways ? 1 : 0.4 * size_mm));
        const place = at(p.x + n.x * gap, centred(y, size_mm));
        const cost = gap + inward + 3 * offMiddle + (sideways ? 0 : 1);
        return { label: label(place, upright(text), { size_mm, anchor, halo: true }), cost };
      });
    });
  });
}

/** Metal that does not touch the paper: for those who prepare the practical, never for pupils. */
export function lifted({ page }: Desk): Item[] {
  if (page.look.audience === 'pupils' || !wants(page, 'electrodes')) return [];
  return patches(page, 'lifted');
}

function patches(page: Page, kind: 'lifted' | 'painted'): Item[] {
  return page.setup.unsolved.flatMap(({ kind: found, outline }) => {
    if (outline === null || found !== kind) return [];
    return [
      alongCurves(kind === 'lifted' ? 'lifted' : 'patch', curvesOf(scaledOutline(outline, page.scale)), true),
    ];
  });
}

/** Paper cut away, cuts without width, painted patches. */
export function paperWork({ page }: Desk): Item[] {
  const { slits } = page.setup;
  const holes = page.holes.flatMap((outline) =>
    visibleChains(
      curvesOf(outline),
      rectangle(0, 0, page.width, page.height),
      (p) => onPaper(page, p) && insidePolygons([polygonOf(curvesOf(outline))], p),
    ).map((chain) => alongCurves('hole', chain, closes(chain))),
  );
  return [
    ...holes,
    ...slits.map(({ from, to }) => line('cut', scaled(from, page.scale), scaled(to, page.scale))),
    ...patches(page, 'painted'),
  ];
}
