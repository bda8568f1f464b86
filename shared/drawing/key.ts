/**
 * The key: one strip along the lower board edge, fixed order, drawn with the real line styles; only what occurs. Its height is the
 * same with and without a solution, so that a blank and a solved drawing lie on each other.
 */
import type { Bounds } from '../field/geometry/curve.ts';
import type { Point } from '../field/geometry/outline.ts';
import { printQuantity } from '../quantity/print.ts';
import { barb } from './barb.ts';
import { centred, textWidth } from './labels.ts';
import { at, box, dot, label, line, upright } from './marks.ts';
import { type Page, wants } from './page.ts';
import { carbonDiameter, probeDiameter, textSize } from './pens.ts';
import type { Item } from './scene.ts';

/** What the solution adds to the key. */
export interface KeyFacts {
  readonly equipotentials: boolean;
  readonly fieldLines: boolean;
  /** Current that one field line stands for; null where it is not known. */
  readonly lineCurrent_A: number | null;
}

const ROW_mm = 5.2;
const SAMPLE_mm = 10;
const GAP_mm = 5;
/** From the board's edge to the first entry. */
const INSET_mm = 3;

interface Entry {
  readonly occurs: (page: Page) => boolean;
  readonly solved?: 'equipotentials' | 'fieldLines';
  readonly text: (facts: KeyFacts) => string;
  /** Drawn from p to SAMPLE_mm right of it. */
  readonly sample: (p: Point) => Item[];
}

const entries: readonly Entry[] = [
  {
    occurs: (page) => wants(page, 'electrodes') && page.electrodes.length > 0,
    text: () => 'metal',
    sample: (p) => {
      const hatch = Array.from({ length: 4 }, (_, i) =>
        line('hatch', at(p.x + 0.5 + i * 1.7 + 0.6, p.y - 1.5), at(p.x + 3.5 + i * 1.7 + 0.6, p.y + 1.5)),
      );
      return [...hatch, box('metal', p.x + 0.5, p.y - 1.5, p.x + SAMPLE_mm - 0.5, p.y + 1.5)];
    },
  },
  {
    occurs: (page) =>
      wants(page, 'electrodes') &&
      page.electrodes.some(({ electrode }) => electrode.connection?.kind !== 'floating'),
    text: () => 'lead',
    sample: (p) => [line('lead', p, at(p.x + SAMPLE_mm, p.y))],
  },
  {
    occurs: (page) => wants(page, 'equipotentials'),
    solved: 'equipotentials',
    text: () => 'equipotential',
    sample: (p) => [
      line('equipotential', p, at(p.x + SAMPLE_mm, p.y)),
      dot('carbon-dot', at(p.x + SAMPLE_mm / 2, p.y), carbonDiameter),
    ],
  },
  {
    occurs: (page) => wants(page, 'field-lines'),
    solved: 'fieldLines',
    text: ({ lineCurrent_A }) =>
      lineCurrent_A === null
        ? 'field line'
        : `field line, each ${printQuantity(lineCurrent_A, 'current', { digits: 2 })}`,
    sample: (p) => [
      line('field-line', p, at(p.x + SAMPLE_mm, p.y)),
      barb(at(p.x + SAMPLE_mm / 2 + 1, p.y), at(1, 0)),
    ],
  },
  {
    occurs: (page) => wants(page, 'probes') && page.setup.probes.length > 0,
    text: () => 'place of a reading',
    sample: (p) => [dot('probe', at(p.x + SAMPLE_mm / 2, p.y), probeDiameter)],
  },
  {
    occurs: (page) => wants(page, 'probes') && page.setup.rows.length > 0,
    text: () => 'row of readings',
    sample: (p) => [
      line('row', p, at(p.x + SAMPLE_mm, p.y)),
      ...[1, 3, 5, 7, 9].map((x) => line('row', at(p.x + x, p.y - 1), at(p.x + x, p.y + 1))),
    ],
  },
  {
    occurs: (page) => page.setup.holes.length > 0,
    text: () => 'paper cut away',
    sample: (p) => [box('hole', p.x + 0.5, p.y - 1.5, p.x + SAMPLE_mm - 0.5, p.y + 1.5)],
  },
  {
    occurs: (page) => page.setup.slits.length > 0,
    text: () => 'cut in the paper',
    sample: (p) => [line('cut', at(p.x + 0.5, p.y), at(p.x + SAMPLE_mm - 0.5, p.y))],
  },
  {
    occurs: (page) => page.setup.unsolved.some(({ kind }) => kind === 'painted'),
    text: () => 'painted patch',
    sample: (p) => [box('patch', p.x + 0.5, p.y - 1.5, p.x + SAMPLE_mm - 0.5, p.y + 1.5)],
  },
  {
    occurs: (page) =>
      page.look.audience !== 'pupils' && page.setup.unsolved.some(({ kind }) => kind === 'lifted'),
    text: () => 'lifted metal',
    sample: (p) => [box('lifted', p.x + 0.5, p.y - 1.5, p.x + SAMPLE_mm - 0.5, p.y + 1.5)],
  },
];

/** Rows are those of the fullest key that this setup can have; a row of which nothing is drawn closes up. */
export function keyHeight(page: Page): number {
  return Math.max(1, ...rowsOf(page).values()) * ROW_mm + 1;
}

export function key(page: Page, board: Bounds, facts: KeyFacts): Item[] {
  const drawn = entries.filter(
    ({ occurs, solved }) => occurs(page) && (solved === undefined || facts[solved]),
  );
  if (drawn.length === 0) return [];
  const top = board.y0 + keyHeight(page);
  const rowOf = rowsOf(page);
  const rows = [...new Set(drawn.map((entry) => rowOf.get(entry)))].map((row) =>
    drawn.filter((entry) => rowOf.get(entry) === row),
  );
  const middle = (board.y0 + top) / 2;
  return [
    line('tick', at(board.x0, top), at(board.x1, top)),
    ...rows.flatMap((row, i) =>
      rowItems(row, facts, at(board.x0 + INSET_mm, middle + ((rows.length - 1) / 2 - i) * ROW_mm)),
    ),
  ];
}

/** Side by side from p, which is level with their middles. */
function rowItems(row: readonly Entry[], facts: KeyFacts, p: Point): Item[] {
  let x = p.x;
  return row.flatMap((entry) => {
    const here = at(x, p.y);
    const text = upright(entry.text(facts));
    x += widthOf(entry, facts) + GAP_mm;
    const place = at(here.x + SAMPLE_mm + 1.5, centred(here.y, textSize.key));
    return [...entry.sample(here), label(place, text, { size_mm: textSize.key })];
  });
}

const widthOf = (entry: Entry, facts: KeyFacts): number =>
  SAMPLE_mm + 1.5 + textWidth(upright(entry.text(facts)), textSize.key);

/** Row of each entry, from 1, in the fullest key: the same with and without a solution. */
function rowsOf(page: Page): ReadonlyMap<Entry, number> {
  const room = page.width + 2 * page.margin.side - 2 * INSET_mm;
  const facts = { equipotentials: true, fieldLines: true, lineCurrent_A: 0.00025 };
  const rows = new Map<Entry, number>();
  let taken = 0;
  let row = 1;
  for (const entry of entries) {
    if (entry.solved === undefined && !entry.occurs(page)) continue;
    const needed = widthOf(entry, facts);
    if (taken > 0 && taken + needed > room) {
      taken = 0;
      row++;
    }
    rows.set(entry, row);
    taken += needed + GAP_mm;
  }
  return rows;
}
