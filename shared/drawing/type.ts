/** Widths of letters, estimated for the widest usual sans serif, so that what is kept free suffices on every machine. */
import type { TextRun } from './scene.ts';

/** Part of the letter size that one character takes. Tabular figures all take the same. */
const narrow = 0.36;
const figure = 0.64;
const lower = 0.63;
const wide = 0.98;
const capital = 0.72;

const groups: readonly (readonly [string, number])[] = [
  ["iljtfrI1|.,:;'!()[]/ \u00a0\u202f", narrow],
  ['0123456789\u2212+=×±', figure],
  ['mwMW%@Ω\u2192', wide],
];
const widths = new Map(groups.flatMap(([letters, width]) => [...letters].map((c) => [c, width] as const)));
for (const c of '0123456789') widths.set(c, figure);

export const SUBSCRIPT_SIZE = 0.7;

export function advance({ text, form }: TextRun): number {
  let sum = 0;
  for (const c of text) sum += widths.get(c) ?? usual(c);
  return form === 'subscript' ? sum * SUBSCRIPT_SIZE : sum;
}

function usual(c: string): number {
  if (c > '\u2e7f') return 1;
  return c === c.toLowerCase() && c !== c.toUpperCase() ? lower : capital;
}
