/** The one way between spans of a text and the places of the protocol: lines and UTF-16 columns from 0. */
import type { Position, TextEdit as ProtocolEdit, Range } from 'vscode-languageserver';
import type { LineIndex, Span, TextEdit } from '../../shared/index.ts';

export function positionOf(lines: LineIndex, offset: number): Position {
  const { line, column } = lines.placeOf(offset);
  return { line, character: column };
}

export function offsetOf(lines: LineIndex, { line, character }: Position): number {
  return lines.offsetOf({ line, column: character });
}

export function rangeOf(lines: LineIndex, { from, to }: Span): Range {
  return { start: positionOf(lines, from), end: positionOf(lines, to) };
}

export function spanOf(lines: LineIndex, { start, end }: Range): Span {
  return { from: offsetOf(lines, start), to: offsetOf(lines, end) };
}

export function editsOf(lines: LineIndex, edits: readonly TextEdit[]): ProtocolEdit[] {
  return edits.map(({ span, text }) => ({ range: rangeOf(lines, span), newText: text }));
}
