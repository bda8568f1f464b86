/** Print of what the solutions say, for one reader: values, tables, drawings. */
import type { Audience } from '../../block/tree.ts';
import type { Setup } from '../../setup/setup.ts';
import type { BoundInsert } from '../inserts/bound.ts';
import type { Insert } from '../sheet.ts';
import { freeBlank } from './blanks.ts';
import { partsAsked } from './figures.ts';
import { type Html, html } from './html.ts';
import { solvedFigure } from './solved-figure.ts';
import { solvedTable } from './solved-table.ts';
import { type Solutions, solvedValue } from './solved-values.ts';
import { laterBox, troubleBox } from './stand-ins.ts';
import { layoutTable } from './table-layout.ts';
import { type Amount, amountIn } from './values.ts';
import { block, type Figure, type FigurePlan, noPrint, type Printed, words } from './view.ts';

/** What one reader's solved print is made from. */
export interface SolvedSource {
  readonly setups: readonly Setup[];
  readonly solutions: Solutions;
  readonly audience: Audience;
  readonly plan: FigurePlan;
}

/** An insert with its value, its filled table, its drawing with equipotentials and field lines. */
export function solvedInsert(bound: BoundInsert, source: SolvedSource): Printed {
  const { insert, target } = bound;
  const { solutions, audience, plan } = source;
  if (target === null) return words(troubleBox(insert.written, bound.trouble));
  switch (target.kind) {
    case 'blank':
      return words(freeBlank(target.unit, target.length_mm));
    case 'readings':
      return block(solvedTable(layoutTable(target.rows, target.columns), solutions, target.caption));
    case 'drawing': {
      const parts = partsAsked(target.parts, audience);
      const figure = solvedFigure({ ...target, parts, solutions, audience }, plan.ofInsert(insert.number));
      return figure === null ? noPrint : { form: 'figure', figure };
    }
    case 'later':
      return audience === 'pupils' ? noPrint : block(laterBox(target.head));
    default: {
      const value = solvedValue(target, solutions);
      return words(value === null ? troubleBox(insert.written, 'no value') : valueText(value, insert));
    }
  }
}

/** The drawing of a block by its `draw` lines; null where it draws nothing for this reader. */
export function solvedBlock(
  number: number,
  { setups, solutions, audience, plan }: SolvedSource,
): Figure | null {
  const setup = setups[number];
  if (setup === undefined) return null;
  const drawing = { setup, parts: setup.draw[audience], solutions, audience, caption: null };
  return solvedFigure(drawing, plan.ofBlock(number));
}

function valueText(value: Amount | readonly [Amount, Amount], insert: Insert): Html {
  if ('number' in value) return html`<span class="together">${amountText(value, insert)}</span>`;
  const [low, high] = value;
  return html`<span class="together">${amountText(low, insert)} to ${amountText(high, insert)}</span>`;
}

/** Bare in a column headed with a unit of its kind, in that unit; under any other heading the unit stays with the number. */
function amountText(amount: Amount, { bareNumber, columnUnit }: Insert): string {
  const wanted = columnUnit === null ? amount : amountIn(amount, columnUnit);
  if (wanted === null || !bareNumber) return withUnit(wanted ?? amount);
  return wanted.number;
}

const withUnit = ({ number, unit }: Amount): string => (unit === '' ? number : `${number}\u00a0${unit}`);
