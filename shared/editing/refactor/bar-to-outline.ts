/** Writes a bar as the outline through its corners. */
import type { BarShape } from '../../block/tree.ts';
import type { TextEdit } from '../../findings/finding.ts';
import { inTheirColumns } from '../moving/columns.ts';
import type { Refactoring } from './refactoring.ts';
import { exact_mm, keepsMeaning } from './same-meaning.ts';
import type { Site } from './site.ts';

/** Corners of a turned bar are rounded to this, mm. */
const grid_mm = 0.001;

export function barToOutline(site: Site): readonly Refactoring[] {
  const [bar] = site.statements;
  if (bar?.kind !== 'shape' || bar.shape !== 'bar' || site.statements.length > 1) return [];
  const electrode = site.setup.electrodes.find(({ name }) => name === bar.name.text);
  const piece = electrode?.pieces.find(({ shape }) => shape === bar);
  if (piece === undefined) return [];
  const corners = piece.geometry.outer.edges.map(({ from }) => from);
  const rounded = corners.map(({ x, y }) => ({ x: onGrid(x), y: onGrid(y) }));
  const exact = corners.every(({ x, y }, i) => {
    const corner = rounded[i];
    return corner !== undefined && Math.abs(corner.x - x) < exact_mm && Math.abs(corner.y - y) < exact_mm;
  });
  const pairs = rounded.map(({ x, y }) => `(${x}, ${y})`).join(' ');
  const edits = inTheirColumns(site.block, rewritten(site.source, bar, `${pairs} mm`));
  if (!keepsMeaning(site, edits, exact ? exact_mm : grid_mm)) return [];
  const title = `Write bar ${bar.name.text} as an outline${exact ? '' : `, its corners to ${grid_mm} mm`}`;
  return [{ title, kind: 'rewrite', edits }];
}

const onGrid = (mm: number): number => Math.round(mm / grid_mm) / (1 / grid_mm) + 0;

/** The word, and all between the name and the terminal; a terminal that does not come last goes there. */
function rewritten(source: string, { name, terminal, span }: BarShape, corners: string): readonly TextEdit[] {
  const gap = source.slice(span.from, name.span.from).replace(/^\S+/u, '');
  const column = name.span.from - span.from;
  const spaces = gap.includes('\t') ? gap : ' '.repeat(Math.max(1, column - 'outline'.length));
  const word = { span: { from: span.from, to: name.span.from }, text: `outline${spaces}` };
  const afterName = /^[\s,]*/u.exec(source.slice(name.span.to, span.to))?.[0].length ?? 0;
  const from = name.span.to + afterName;
  if (terminal === null) return [word, { span: { from, to: span.to }, text: corners }];
  if (terminal.span.to === span.to) {
    const body = source.slice(from, terminal.span.from).replace(/[\s,]+$/u, '');
    return [word, { span: { from, to: from + body.length }, text: corners }];
  }
  const last = source.slice(terminal.span.from, terminal.span.to);
  return [word, { span: { from, to: span.to }, text: `${corners} ${last}` }];
}
