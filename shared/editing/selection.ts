/** What is selected step by step from a place in a block: a word or value, what it belongs to, the line, all lines, the block. */
import { readLines } from '../block/parse.ts';
import type { Sheet } from '../sheet/sheet.ts';
import type { Span } from '../text/span.ts';
import { type BlockPlace, blockPlace, holds, lineSpan } from './place.ts';
import { spansIn } from './spans.ts';

/** From the smallest to the largest, each within the next and larger; empty outside our blocks. */
export function selectionsAt(sheet: Sheet, offset: number): readonly Span[] {
  const place = blockPlace(sheet, offset);
  if (place === null) return [];
  const { excerpt, head } = place.block;
  const [first, last] = [excerpt.lines[0], excerpt.lines.at(-1)];
  const onHead = place.line === -1 ? [...spansIn(head), lineSpan(excerpt.head)] : [];
  const inside = first === undefined || last === undefined ? [] : [{ from: first.at, to: lineSpan(last).to }];
  const steps = [...onHead, ...lineSteps(place, offset), ...(place.line === -1 ? [] : inside), excerpt.span];
  return nested(steps.filter((span) => holds(span, offset)));
}

/** Every piece and every node of a line, and the line with and without its remark. */
function lineSteps({ block, line }: BlockPlace, offset: number): readonly Span[] {
  const reading = line === null || line < 0 ? undefined : readLines(block.excerpt)[line];
  if (reading === undefined) return [];
  const { reader, statement } = reading;
  const pieces = reader.pieces.map(({ from, to }) => reader.span(from, to));
  const written = reader.line.text.trim();
  const from = reader.line.text.indexOf(written);
  const whole = reader.span(from, from + written.length);
  const parts = offset <= reader.whole.to ? [...pieces, ...spansIn(statement), reader.whole] : [];
  return [...parts, whole];
}

/** In order of size, without repetitions and without those that cross a smaller one. */
function nested(spans: readonly Span[]): readonly Span[] {
  const bySize = spans.filter(({ from, to }) => to > from).sort((a, b) => a.to - a.from - (b.to - b.from));
  const steps: Span[] = [];
  for (const span of bySize) {
    const inner = steps.at(-1);
    const grows = inner === undefined || span.to - span.from > inner.to - inner.from;
    if (grows && (inner === undefined || (span.from <= inner.from && span.to >= inner.to))) steps.push(span);
  }
  return steps;
}
