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
import { boardMargin, carbonDiameter, probeDiameter, textSize } from './pens.ts';
import type { Item } from './scene.ts';

/** What the solution adds to the key. */
export interface KeyFacts {
  readonly equipotentials: boolean;
  readonly fieldLines: boolean;
  /** Current that one field line stands for; null where it is not known. */
  readonly lineCurrent_A: number | null;
}

const ROW_mm = 5.6;
const SAMPLE_mm = 12;
const GAP_mm = 6;

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
      const hatch = Array.from({ length: 5 }, (_, i) =>
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
      ...[1, 3.5, 6, 8.5, 11].map((x) => line('row', at(p.x + x, p.y - 1), at(p.x + x, p.y + 1))),
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

/** Reserved for the fullest key this setup can have. */
export function keyHeight(page: Page): number {
  const width = page.width + 2 * boardMargin;
  const full = entries.filter(({ occurs, solved }) => solved !== undefined || occurs(page));
  const rows = laidOut(full, { equipotentials: true, fieldLines: true, lineCurrent_A: 0.00025 }, width);
  return (Math.max(0, ...rows.map(({ row }) => row)) + 1) * ROW_mm + 1;
}

export function key(page: Page, board: Bounds, facts: KeyFacts): Item[] {
  const drawn = entries.filter(
    ({ occurs, solved }) => occurs(page) && (solved === undefined || facts[solved]),
  );
  const top = board.y0 + keyHeight(page);
  const strip = line('tick', at(board.x0, top), at(board.x1, top));
  if (drawn.length === 0) return [];
  return [
    strip,
    ...laidOut(drawn, facts, board.x1 - board.x0).flatMap(({ entry, x, row }) => {
      const p = at(board.x0 + x, top - (row + 0.5) * ROW_mm - 0.5);
      const text = label(at(p.x + SAMPLE_mm + 1.5, centred(p.y, textSize.key)), upright(entry.text(facts)), {
        size_mm: textSize.key,
      });
      return [...entry.sample(p), text];
    }),
  ];
}

function laidOut(
  chosen: readonly Entry[],
  facts: KeyFacts,
  width: number,
): { entry: Entry; x: number; row: number }[] {
  let x = 4;
  let row = 0;
  return chosen.map((entry) => {
    const needed = SAMPLE_mm + 1.5 + textWidth(upright(entry.text(facts)), textSize.key);
    if (x > 4 && x + needed > width - 4) {
      x = 4;
      row++;
    }
    const here = { entry, x, row };
    x += needed + GAP_mm;
    return here;
  });
}
