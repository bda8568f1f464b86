/** What is known of a quantity or a word of the language on a line of a block. */
import { readLines } from '../block/parse.ts';
import type { Value } from '../block/tree.ts';
import { printNumber } from '../quantity/print.ts';
import { type Dimension, workingUnit } from '../quantity/quantity.ts';
import type { Span } from '../text/span.ts';
import { type BlockPlace, holds } from './place.ts';
import { nodesIn } from './spans.ts';
import { wordEntry, wordHelp } from './words.ts';

export function lineHover(
  { block, line }: BlockPlace,
  offset: number,
): { readonly span: Span; readonly text: string; readonly drawing: null } | null {
  const reading = line === null ? undefined : readLines(block.excerpt)[line];
  if (reading === undefined) return null;
  const value = valuesIn(reading.statement).find(({ span }) => holds(span, offset));
  if (value !== undefined) return { span: value.span, text: siText(value), drawing: null };
  const { reader } = reading;
  const at = reader.pieces.findIndex(
    ({ kind, from, to }) => kind === 'word' && holds(reader.span(from, to), offset),
  );
  const piece = reader.pieces[at];
  if (piece === undefined) return null;
  const entry = wordEntry(piece.text, { first: at === 0, of: reader.pieces[0]?.text ?? null });
  if (entry === null) return null;
  return { span: reader.span(piece.from, piece.to), text: wordHelp(entry), drawing: null };
}

/** Quantities in a statement: of all nodes they alone have a dimension. */
export function valuesIn(statement: unknown): readonly Value[] {
  return nodesIn(statement).filter((node): node is Value => 'dimension' in node);
}

/** SI unit, and how many of it one working unit is. */
const si: Readonly<Partial<Record<Dimension, readonly [string, number]>>> = {
  length: ['m', 1e-3],
  contact: ['Ω m²', 1e-6],
  angle: ['rad', Math.PI / 180],
  time: ['s', 60],
};

function siText({ value, dimension }: Value): string {
  const [unit, one] = si[dimension] ?? [workingUnit[dimension], 1];
  // Twelve digits: none that only the conversion made.
  const number = printNumber(Number((value * one).toPrecision(12)));
  return unit === '' ? number : `${number}\u00a0${unit}`;
}
