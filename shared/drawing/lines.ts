/**
 * What the solution adds: equipotentials with carbon dots, where pupils would prick them; field lines with one barb each on the
 * half-way equipotential; values as on a ruler, and readings at the probes.
 */
import type { Point } from '../field/geometry/outline.ts';
import { hypot } from '../field/maths.ts';
import type { SolvedSetup } from '../setup/readings.ts';
import { barb } from './barb.ts';
import type { Desk } from './desk.ts';
import { boxOf, type Candidate, centred } from './labels.ts';
import { at, dot, label, line, polyline, upright } from './marks.ts';
import { BESIDE_EDGE_mm, onPaper, type Page, scaled, wants } from './page.ts';
import { carbonDiameter, textSize } from './pens.ts';
import { aroundProbe, farFrom } from './pointed.ts';
import { readingText } from './reading-text.ts';
import type { Item, Label } from './scene.ts';
import { pagePoints, stations, thinned } from './traces.ts';
import { decimalsOf, volts } from './values.ts';

/** One equipotential on the page. */
interface PageLine {
  readonly value_V: number;
  readonly text: string;
  readonly points: readonly Point[];
  readonly closed: boolean;
}

const DOT_EVERY_mm = 10;

function pageLines(page: Page, { traces }: SolvedSetup): PageLine[] {
  const decimals = decimalsOf(traces.equipotentials.map(({ value_V }) => value_V));
  return traces.equipotentials.flatMap(({ value_V, lines }) =>
    lines.map((traced) => ({
      value_V,
      text: volts(value_V, decimals),
      points: pagePoints(traced, page.scale),
      closed: traced.closed,
    })),
  );
}

/** Lines take their room before labels are placed. */
export function keepLines({ page, room }: Desk, solved: SolvedSetup): void {
  const keep = (points: readonly Point[]): void => room.keepLine(stations(points, 0.6).map(({ p }) => p));
  if (wants(page, 'equipotentials')) for (const { points } of pageLines(page, solved)) keep(points);
  if (wants(page, 'field-lines')) {
    for (const traced of solved.traces.fieldLines) {
      const points = pagePoints(traced, page.scale);
      keep(points);
      const tip = points[traced.half];
      if (tip !== undefined) room.keepSolid([tip]);
    }
  }
}

export function equipotentials({ page }: Desk, solved: SolvedSetup): Item[] {
  if (!wants(page, 'equipotentials')) return [];
  return pageLines(page, solved).map(({ points, closed }) =>
    closed
      ? polyline('equipotential', thinned(points).slice(0, -1), true)
      : polyline('equipotential', thinned(points)),
  );
}

/** About every 10 mm of the paper, left out where a label stands. */
export function carbonDots({ page, room }: Desk, solved: SolvedSetup): Item[] {
  if (!wants(page, 'equipotentials')) return [];
  return pageLines(page, solved)
    .flatMap(({ points }) => stations(points, DOT_EVERY_mm * page.scale))
    .filter(({ p }) => room.isFreeAt(p))
    .map(({ p }) => dot('carbon-dot', p, carbonDiameter));
}

export function fieldLines({ page }: Desk, { traces }: SolvedSetup): Item[] {
  if (!wants(page, 'field-lines')) return [];
  return traces.fieldLines.map((traced) => polyline('field-line', thinned(pagePoints(traced, page.scale))));
}

export function barbs({ page }: Desk, { traces }: SolvedSetup): Item[] {
  if (!wants(page, 'field-lines')) return [];
  return traces.fieldLines.flatMap((traced) => {
    const points = pagePoints(traced, page.scale);
    const p = points[traced.half];
    const before = points[Math.max(0, traced.half - 1)];
    const after = points[Math.min(points.length - 1, traced.half + 1)];
    if (p === undefined || before === undefined || after === undefined) return [];
    const length = hypot(after.x - before.x, after.y - before.y);
    return length === 0 ? [] : [barb(p, at((after.x - before.x) / length, (after.y - before.y) / length))];
  });
}

/** Values of equipotentials: outside the paper's edge where a line meets it, else on the line, which breaks. */
export function lineValues(desk: Desk, solved: SolvedSetup): Item[] {
  const { page, room } = desk;
  if (!wants(page, 'values') || !wants(page, 'equipotentials')) return [];
  const drawn: Item[] = [];
  const keep = (placed: Edged | null): boolean => {
    if (placed === null) return false;
    drawn.push(placed.label, ...(placed.pointer === null ? [] : [placed.pointer]));
    return true;
  };
  const second: (readonly Edged[])[] = [];
  for (const each of pageLines(page, solved)) {
    const ends = each.closed ? [] : [each.points[0], each.points[each.points.length - 1]];
    const sides = ends.flatMap((p) => (p === undefined ? [] : [edgeLabels(page, p, each.text)]));
    const [a = [], b = []] = sides.filter((candidates) => candidates.length > 0);
    if (keep(room.place(a))) second.push(b);
    else if (!keep(room.place(b))) {
      const broken = room.place(breakLabels(each));
      if (broken !== null) drawn.push(broken.label);
    }
  }
  for (const candidates of second) keep(room.place(candidates.filter(({ pointer }) => pointer === null)));
  return drawn;
}

interface Edged extends Candidate {
  /** A short line from the edge where the value had to step aside. */
  readonly pointer: Item | null;
}

/** Where the paper's edge is met; looser than the tracing. */
const AT_EDGE_mm = 0.3;
const OFF_EDGE_mm = 3.3;

function edgeLabels(page: Page, p: Point, text: string): Edged[] {
  const size_mm = textSize.value;
  const { width, height } = page;
  const found: Edged[] = [];
  const offer = (x: number, y: number, anchor: Label['anchor'], shift: number): void => {
    const halo = anchor !== 'middle';
    const placed = label(at(x, y), upright(text), { size_mm, anchor, halo });
    const box = boxOf(placed);
    const target = at(
      Math.max(box.x0, Math.min(box.x1, p.x)),
      p.y <= AT_EDGE_mm ? box.y1 : p.y >= height - AT_EDGE_mm ? box.y0 : centred(y, -size_mm),
    );
    const far = shift > 2.6;
    found.push({ label: placed, cost: shift, pointer: far ? line('leader', p, target) : null });
  };
  for (const row of [0, 1]) {
    for (const shift of [0, 1.2, -1.2, 2.4, -2.4, 4, -4, 6, -6]) {
      const cost = Math.abs(shift) + row * 5;
      const out = OFF_EDGE_mm + row * 4;
      if (p.y >= height - AT_EDGE_mm) offer(p.x + shift, height + out + 0.1, 'middle', cost);
      else if (p.y <= AT_EDGE_mm) offer(p.x + shift, -out - 0.76 * size_mm, 'middle', cost);
      else if (row > 0) continue;
      else if (p.x <= AT_EDGE_mm) offer(-BESIDE_EDGE_mm, centred(p.y + shift, size_mm), 'end', cost);
      else if (p.x >= width - AT_EDGE_mm)
        offer(width + BESIDE_EDGE_mm, centred(p.y + shift, size_mm), 'start', cost);
    }
  }
  return found;
}

/** Along the line, best where it runs up and down, so that the letters break it at once. */
function breakLabels({ points, text }: PageLine): Candidate[] {
  const size_mm = textSize.value;
  return stations(points, 2.5).map(({ p, u }) => ({
    label: label(at(p.x, centred(p.y, size_mm)), upright(text), { size_mm, anchor: 'middle', halo: true }),
    cost: 12 * Math.abs(u.x),
  }));
}

/** Readings at probes, beside their dots. */
export function probeReadings(desk: Desk, { readings }: SolvedSetup): Item[] {
  const { page, room } = desk;
  if (!wants(page, 'values') || !wants(page, 'probes')) return [];
  return readings.probes.flatMap((probe) => {
    const text = readingText(probe, page.setup);
    const place = scaled(at(probe.x_mm, probe.y_mm), page.scale);
    if (text === null || !onPaper(page, place)) return [];
    const size_mm = textSize.value;
    const best =
      room.place(aroundProbe(desk, place, upright(text), size_mm)) ??
      room.place(farFrom(desk, place, { runs: upright(`${probe.name}: ${text}`), size_mm }));
    return best === null ? [] : [line('leader', best.start, best.end), best.label];
  });
}
