/** Places of readings: a carbon dot with a letter and a short leader; rows as a thin rule with ticks. */
import type { Point } from '../field/geometry/outline.ts';
import { hypot } from '../field/maths.ts';
import type { Desk } from './desk.ts';
import { centred } from './labels.ts';
import { at, dot, label, line, upright } from './marks.ts';
import { type Page, rowEnds, scaled, wants } from './page.ts';
import { probeDiameter, textSize } from './pens.ts';
import { aroundProbe, farFrom } from './pointed.ts';
import type { Item, Label, TextRun } from './scene.ts';

export function rows({ page, room }: Desk): Item[] {
  if (!wants(page, 'probes')) return [];
  return page.setup.rows.flatMap((row) => {
    const [first, last] = rowEnds(page, row);
    if (first === null || last === null) return [];
    const { direction } = row;
    const half = 1;
    const tick = (place: Point): Item => {
      const { x, y } = scaled(place, page.scale);
      return line(
        'row',
        at(x - direction.y * half, y + direction.x * half),
        at(x + direction.y * half, y - direction.x * half),
      );
    };
    const name = room.place(
      rowNames(first, last, direction, upright(row.name)).map((each) => ({
        ...each,
        cost: each.cost + nearProbe(page, each.label),
      })),
    );
    return [
      line('row', first, last),
      ...row.points.map((p) => tick(p.at)),
      ...(name === null ? [] : [name.label]),
    ];
  });
}

/** A row's name beside a dot would be taken for the dot's. */
const nearProbe = (page: Page, { x, y }: Label): number =>
  page.setup.probes.some(({ at: place }) => {
    const p = scaled(place, page.scale);
    return hypot(p.x - x, p.y - y) < 9;
  })
    ? 15
    : 0;

/** Beyond the ends of the row, then beside it. */
function rowNames(
  first: Point,
  last: Point,
  u: Point,
  runs: readonly TextRun[],
): { label: Label; cost: number }[] {
  const size_mm = textSize.name;
  const found: { label: Label; cost: number }[] = [];
  const offer = (p: Point, cost: number): void => {
    found.push({
      label: label(at(p.x, centred(p.y, size_mm)), runs, { size_mm, anchor: 'middle', halo: true }),
      cost,
    });
  };
  const length = hypot(last.x - first.x, last.y - first.y);
  for (const off of [3.6, -3.6, 5, -5]) {
    for (const [i, s] of [0.04, 0.96, 0.12, 0.88, 0.25, 0.75, 0.5].entries()) {
      const x = first.x + u.x * s * length - u.y * off;
      offer(at(x, first.y + u.y * s * length + u.x * off), i + Math.abs(off));
    }
  }
  for (const beyond of [3.2, 5, 8]) {
    offer(at(last.x + u.x * beyond, last.y + u.y * beyond), 2 + beyond);
    offer(at(first.x - u.x * beyond, first.y - u.y * beyond), 2 + beyond);
  }
  return found;
}

export function probes(desk: Desk): Item[] {
  const { page, room } = desk;
  if (!wants(page, 'probes')) return [];
  return page.setup.probes.flatMap((probe) => {
    const p = scaled(probe.at, page.scale);
    const mark = dot('probe', p, probeDiameter);
    const text = upright(probe.name);
    const best =
      room.place(aroundProbe(desk, p, text, textSize.name)) ??
      room.place(farFrom(desk, p, { runs: text, size_mm: textSize.name }));
    if (best === null) return [mark];
    if ('leader' in best) room.keepLine(best.leader);
    return [line('leader', best.start, best.end), mark, best.label];
  });
}
