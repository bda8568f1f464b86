/** Walks through the text of one insert, word by word; every place it gives is an offset in the file. */
import { type Token, tokenAt } from '../../block/tokens.ts';
import { type Finding, type FindingParts, type Fix, finding } from '../../findings/finding.ts';
import type { SheetCode } from '../../findings/sheet-codes.ts';
import type { Dimension } from '../../quantity/quantity.ts';
import { readQuantity } from '../../quantity/read.ts';
import type { Span } from '../../text/span.ts';

export class InsertReader {
  readonly text: string;
  readonly findings: Finding[] = [];
  /** Offset in the text of what comes next. */
  position: number;
  private readonly end: number;
  private readonly fileSpan: (from: number, to: number) => Span;

  /** Reads from the brace on; `fileSpan` turns offsets in the text into a span of the file. */
  constructor(text: string, closed: boolean, fileSpan: (from: number, to: number) => Span) {
    this.text = closed ? text.slice(0, -1) : text;
    this.position = 2;
    this.end = text.length;
    this.fileSpan = fileSpan;
  }

  peek(): Token {
    return tokenAt(this.text, this.position);
  }

  get atEnd(): boolean {
    return this.peek().kind === 'end';
  }

  /** What is left, without space around it. */
  get rest(): string {
    return this.text.slice(this.position).trim();
  }

  span(from: number, to: number): Span {
    return this.fileSpan(from, to);
  }

  restSpan(): Span {
    const from = this.peek().from;
    return this.span(from, Math.max(from, this.text.trimEnd().length));
  }

  whole(): Span {
    return this.span(0, this.end);
  }

  /** Takes a word or sign written exactly so. */
  take(text: string): boolean {
    const token = this.peek();
    if (token.kind === 'end' || token.text !== text) return false;
    this.position = token.to;
    return true;
  }

  /** Takes several words in a row, or none. */
  takeWords(...words: readonly string[]): boolean {
    const before = this.position;
    if (words.every((word) => this.take(word))) return true;
    this.position = before;
    return false;
  }

  sees(...words: readonly string[]): boolean {
    const before = this.position;
    const seen = words.every((word) => this.take(word));
    this.position = before;
    return seen;
  }

  /** Takes what the pattern (sticky) finds here. */
  takePattern(pattern: RegExp): RegExpExecArray | null {
    pattern.lastIndex = this.peek().from;
    const match = pattern.exec(this.text);
    if (match !== null) this.position = pattern.lastIndex;
    return match;
  }

  /** The quantity that stands here in working units; null with a finding where none can be read. */
  quantity(dimension: Dimension, missing: string): number | null {
    const reading = readQuantity(this.text, this.position, dimension);
    if (reading.kind === 'read') {
      this.position = reading.span.to;
      return reading.quantity.value;
    }
    if (reading.kind === 'none') {
      return this.report('insert-form', { span: this.restSpan(), message: missing });
    }
    const { refusal } = reading;
    const fixes: readonly Fix[] = refusal.rewritings.map(({ span, text, shown, certain }) => ({
      title: `Write ${shown}`,
      edits: [{ span: this.span(span.from, span.to), text }],
      certain,
    }));
    const span = this.span(refusal.span.from, refusal.span.to);
    return this.report('insert-form', { span, message: refusal.message, fixes });
  }

  report(code: SheetCode, parts: FindingParts): null {
    this.findings.push(finding(code, parts));
    return null;
  }
}
