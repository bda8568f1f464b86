/** Places in text: half-open spans of UTF-16 offsets in the file. */

export interface Span {
  readonly from: number;
  readonly to: number;
}

export const span = (from: number, to: number): Span => ({ from, to });

export const covering = (a: Span, b: Span): Span => ({
  from: Math.min(a.from, b.from),
  to: Math.max(a.to, b.to),
});
