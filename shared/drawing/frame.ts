/** The paper on its board: outlines, clip marks, ticks as on a ruler, the corner marked 0, ruling, grain. */
import type { Desk } from './desk.ts';
import { at, box, label, line, polyline, upright } from './marks.ts';
import { type Page, wants } from './page.ts';
import { textSize } from './pens.ts';
import type { Item } from './scene.ts';

const TICK_EVERY_mm = 10;
/** A longer edge goes without ticks and ruling: its length is a slip. */
const MOST_TICKS = 1000;

const isRuled = ({ width, height, scale }: Page): boolean =>
  Math.max(width, height) <= MOST_TICKS * TICK_EVERY_mm * scale;

export function board({ page, board: b }: Desk): Item[] {
  return [box('board', b.x0, b.y0, b.x1, b.y1), box('paper', 0, 0, page.width, page.height)];
}

export function clips({ page }: Desk): Item[] {
  return page.paperClips.flatMap(({ x0, y0, x1, y1 }) => {
    const above = y0 > 0;
    const grip = above ? y0 : y1;
    const back = above ? y1 : y0;
    const rule = above ? grip + 1.2 : grip - 1.2;
    return [
      polyline('paper-clip', [at(x0, grip), at(x1, grip), at(x1 - 1.2, back), at(x0 + 1.2, back)], true),
      line('paper-clip', at(x0, rule), at(x1, rule)),
    ];
  });
}

/** Outside the paper; every fifth and every tenth are longer. */
export function ticks({ page, room }: Desk): Item[] {
  const marks: Item[] = [];
  const edge = (length: number, tick: (along: number, size: number) => Item): void => {
    for (let i = 0; i * TICK_EVERY_mm * page.scale <= length + 1e-6; i++) {
      const size = i % 10 === 0 ? 2.6 : i % 5 === 0 ? 1.9 : 1.2;
      marks.push(tick(i * TICK_EVERY_mm * page.scale, page.compact ? 0.75 * size : size));
    }
  };
  if (isRuled(page)) {
    edge(page.width, (x, size) => line('tick', at(x, 0), at(x, -size)));
    edge(page.width, (x, size) => line('tick', at(x, page.height), at(x, page.height + size)));
    edge(page.height, (y, size) => line('tick', at(0, y), at(-size, y)));
    edge(page.height, (y, size) => line('tick', at(page.width, y), at(page.width + size, y)));
  }
  const corner = label(at(-1.2, -4), upright('0'), { size_mm: textSize.corner, anchor: 'end' });
  room.keepLabel(corner);
  return [...marks, corner];
}

export function ruling({ page }: Desk): Item[] {
  if (!wants(page, 'ruling') || !isRuled(page)) return [];
  const step = TICK_EVERY_mm * page.scale;
  const lines: Item[] = [];
  for (let i = 1; i * step < page.width - 1e-6; i++) {
    lines.push(line('ruling', at(i * step, 0), at(i * step, page.height)));
  }
  for (let i = 1; i * step < page.height - 1e-6; i++) {
    lines.push(line('ruling', at(0, i * step), at(page.width, i * step)));
  }
  return lines;
}

const hasGrain = ({ setup }: Page): boolean => {
  const resistance = setup.paper?.resistance_ohm ?? null;
  return resistance !== null && resistance[0] !== resistance[1];
};

/** An arrow with two heads along the direction in which the paper conducts better. */
export function grain({ page, room }: Desk): Item[] {
  const resistance = page.setup.paper?.resistance_ohm ?? null;
  if (resistance === null || !hasGrain(page)) return [];
  const alongX = resistance[0] < resistance[1];
  const half = 6;
  const places = cornersFor(page, alongX ? half : 5).map(([x, y]) => {
    const area = alongX
      ? { x0: x - half, x1: x + half, y0: y - 1.4, y1: y + 4.4 }
      : { x0: x - 5, x1: x + 5, y0: y - half - 5, y1: y + half };
    return { x, y, area };
  });
  const free = places.filter(({ area }) => room.isFree(area));
  const best = free.find(({ area }) => room.linesUnder(area) === 0) ?? free[0];
  if (best === undefined) return [];
  const { x, y, area } = best;
  room.keepBox(area);
  const below = at(x, alongX ? y + 1.6 : y - half - 4.4);
  return [
    ...doubleArrow(x, y, alongX, half),
    label(below, upright('grain'), { size_mm: textSize.value, anchor: 'middle' }),
  ];
}

function cornersFor({ width, height }: Page, inset: number): (readonly [number, number])[] {
  const xs = [width - inset - 6, inset + 6, width / 2];
  const ys = [16, height - 20, height / 2];
  return ys.flatMap((y) => xs.map((x) => [x, y] as const));
}

function doubleArrow(x: number, y: number, alongX: boolean, half: number): Item[] {
  const p = (along: number, across: number) =>
    alongX ? at(x + along, y + across) : at(x + across, y + along);
  const head = (end: number, back: number) => polyline('grain', [p(back, 1.1), p(end, 0), p(back, -1.1)]);
  return [line('grain', p(-half, 0), p(half, 0)), head(half, half - 2), head(-half, -half + 2)];
}
