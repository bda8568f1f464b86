/** Layout of a table of readings: which columns and lines it has, and what stands in it before anything is measured. From setups alone. */
import { printNumber } from '../../quantity/print.ts';
import type { HeadedRow } from '../inserts/bound.ts';
import { type Html, html } from './html.ts';

export const columnKinds = ['distance', 'r', 'V', 'mean', 'ln r', '1/r'] as const;
export type ColumnKind = (typeof columnKinds)[number];

export interface Column {
  readonly kind: ColumnKind;
  readonly head: Html;
  /** For `V`: number of the row whose reading stands here. */
  readonly of: number;
}

export interface Line {
  readonly distance_mm: number;
  /** For each row the number of its point at this distance; null where it has none. */
  readonly points: readonly (number | null)[];
}

export interface TableLayout {
  readonly rows: readonly HeadedRow[];
  readonly columns: readonly Column[];
  /** By rising distance, those of all rows together. */
  readonly lines: readonly Line[];
}

/** A cell: text, room to write in, or empty because the row has no reading there. */
export type Cell =
  | { readonly kind: 'text'; readonly text: string }
  | { readonly kind: 'write' }
  | { readonly kind: 'empty' };

export const textCell = (text: string): Cell => ({ kind: 'text', text });
export const writeCell: Cell = { kind: 'write' };
export const emptyCell: Cell = { kind: 'empty' };

/** `columns` in the words of the insert, none for the usual ones; words that are no columns are left out. */
export function layoutTable(rows: readonly HeadedRow[], columns: readonly string[]): TableLayout {
  const asked = columns.length === 0 ? ['distance', 'V'] : columns;
  const kinds = asked.flatMap((word) => columnKinds.filter((kind) => kind === word));
  return { rows, columns: columnsOf(kinds, rows), lines: linesOf(rows) };
}

/** What stands in a column before anything is measured: distances and radii. Null for a column that is measured or calculated. */
export function givenCells(layout: TableLayout, kind: ColumnKind): readonly Cell[] | null {
  if (kind !== 'distance' && kind !== 'r') return null;
  const lengths = layout.lines.map((line) => (kind === 'r' ? radiusAt(layout, line) : line.distance_mm));
  return numberCells(lengths, lengthDecimals(lengths));
}

/** Distance from the centre that the row starts from: the first row that has a reading there. */
export function radiusAt({ rows }: TableLayout, line: Line): number {
  const number = Math.max(
    0,
    line.points.findIndex((point) => point !== null),
  );
  return line.distance_mm + (rows[number]?.row.startRadius_mm ?? 0);
}

/** The pupils' cells: given columns filled, the others to write in. */
export function blankCells(layout: TableLayout): readonly (readonly Cell[])[] {
  return layout.columns.map(
    ({ kind, of }) =>
      givenCells(layout, kind) ??
      layout.lines.map((line) =>
        kind === 'V' && (line.points[of] ?? null) === null ? emptyCell : writeCell,
      ),
  );
}

/** Numbers of one column with one number of decimals; an empty cell where there is none. */
export function numberCells(values: readonly (number | null)[], decimals: number): readonly Cell[] {
  return values.map((value) => (value === null ? emptyCell : textCell(printNumber(value, { decimals }))));
}

/** A table of so many lines is not divided between pages. */
const shortTable = 14;

/** `cells` by columns. */
export function renderTable(
  layout: TableLayout,
  cells: readonly (readonly Cell[])[],
  caption: string | null,
): Html {
  const heads = layout.columns.map(({ head }) => html`<th scope="col">${head}</th>`);
  const lines = layout.lines.map((_, i) => {
    const row = layout.columns.map((_column, j) => renderCell(cells[j]?.[i] ?? emptyCell));
    return html`<tr>${row}</tr>\n`;
  });
  const written = cells.some((column) => column.some(({ kind }) => kind === 'write'));
  const title = caption === null ? null : html`<caption>${caption}</caption>\n`;
  const classes = [
    'readings',
    ...(written ? ['to-write'] : []),
    ...(layout.lines.length <= shortTable ? ['short'] : []),
  ];
  return html`<table class="${classes.join(' ')}">
${title}<thead><tr>${heads}</tr></thead>
<tbody>
${lines}</tbody>
</table>
`;
}

function renderCell(cell: Cell): Html {
  if (cell.kind === 'text') return html`<td>${cell.text}</td>`;
  return cell.kind === 'write' ? html`<td class="write"></td>` : html`<td class="unread"></td>`;
}

/** A `V` column stands for each row in turn, for one row for each trial; a single one is repeated for every row. */
function columnsOf(kinds: readonly ColumnKind[], rows: readonly HeadedRow[]): readonly Column[] {
  const trials = kinds.filter((kind) => kind === 'V').length;
  let reading = 0;
  return kinds.flatMap((kind): Column[] => {
    if (kind !== 'V') return [{ kind, head: plainHead(kind), of: 0 }];
    if (trials === 1 && rows.length > 1) {
      return rows.map(({ heading }, of) => ({ kind, head: rowHead(heading), of }));
    }
    const count = reading++;
    if (rows.length > 1) {
      const of = count % rows.length;
      return [{ kind, head: rowHead(rows[of]?.heading ?? ''), of }];
    }
    return [
      { kind, head: trials === 1 ? html`<i>V</i> / V` : html`<i>V</i><sub>${count + 1}</sub> / V`, of: 0 },
    ];
  });
}

const rowHead = (heading: string): Html => html`${heading}: <i>V</i> / V`;

function plainHead(kind: Exclude<ColumnKind, 'V'>): Html {
  switch (kind) {
    case 'distance':
      return html`distance <i>d</i> / mm`;
    case 'r':
      return html`<i>r</i> / mm`;
    case 'mean':
      return html`mean <i>V</i> / V`;
    case 'ln r':
      return html`ln (<i>r</i> / mm)`;
    case '1/r':
      return html`(1/<i>r</i>) / mm⁻¹`;
  }
}

/** Distances closer than this are one line, mm. */
const sameDistance_mm = 1e-6;

function linesOf(rows: readonly HeadedRow[]): readonly Line[] {
  const distances: number[] = [];
  for (const value of rows.flatMap(({ row }) => row.points.map((p) => p.distance_mm)).sort((a, b) => a - b)) {
    const last = distances.at(-1);
    if (last === undefined || value - last > sameDistance_mm) distances.push(value);
  }
  return distances.map((distance_mm) => ({
    distance_mm,
    points: rows.map(({ row }) => {
      const at = row.points.findIndex((p) => Math.abs(p.distance_mm - distance_mm) <= sameDistance_mm);
      return at < 0 ? null : at;
    }),
  }));
}

/** 0 where all are whole millimetres, else 1. */
function lengthDecimals(lengths: readonly number[]): number {
  return lengths.every((length) => Math.abs(length - Math.round(length)) < 0.005) ? 0 : 1;
}
