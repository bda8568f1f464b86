/**
 * Reads one line of a block from left to right. Everything taken is recorded as a piece, in order and in its canonical spelling, so
 * that the formatter can write the line again; everything wrong becomes a finding and marks the line as failed.
 */
import type { FindingCode } from '../findings/catalogue.ts';
import { type Finding, type FindingParts, finding } from '../findings/finding.ts';
import type { ExcerptLine } from '../text/excerpt.ts';
import type { Span } from '../text/span.ts';
import { remarkAt, type Token, tokenAt } from './tokens.ts';
import { formsOf } from './words.ts';

/** What a piece is, as far as spacing and columns need to know. */
export type PieceKind = 'word' | 'name' | 'number' | 'unit' | 'by' | 'comma' | 'open' | 'close' | 'sign';

export interface Piece {
  readonly kind: PieceKind;
  /** Offsets in the line. */
  readonly from: number;
  readonly to: number;
  readonly text: string;
}

/** What a line may need to know of its block. */
export interface LineContext {
  /** Names that lines of this block give to electrodes. */
  readonly electrodes: ReadonlySet<string>;
  /** Names that lines of this block give to anything. */
  readonly names: ReadonlySet<string>;
}

export class LineReader {
  readonly line: ExcerptLine;
  readonly context: LineContext;
  /** The line without its remark. */
  readonly text: string;
  readonly findings: Finding[] = [];
  readonly pieces: Piece[] = [];
  /** True once the line has an error: it is then a broken statement. */
  failed = false;
  /** Piece behind which columns begin: the name of a named line, otherwise the first word. */
  bodyPiece = 1;
  /** Pieces of the terminal, from and behind the last. */
  terminal: { readonly from: number; readonly to: number } | null = null;
  private position = 0;
  /** The token at `position`, once looked at. */
  private ahead: Token | null = null;

  constructor(line: ExcerptLine, context: LineContext) {
    this.line = line;
    this.context = context;
    this.text = line.text.slice(0, remarkAt(line.text)).trimEnd();
  }

  /** The next token, not taken. */
  peek(): Token {
    this.ahead ??= tokenAt(this.text, this.position);
    return this.ahead;
  }

  get atEnd(): boolean {
    return this.peek().kind === 'end';
  }

  /** Offset in the line behind what was taken. */
  get offset(): number {
    return this.position;
  }

  /** Span in the file of offsets in the line. */
  span(from: number, to: number): Span {
    return { from: this.line.at + from, to: this.line.at + to };
  }

  /** Span in the file from a piece to the last one taken. */
  spanFrom(piece: number): Span {
    const first = this.pieces[piece];
    const last = this.pieces.at(-1);
    if (first === undefined || last === undefined) return this.span(this.position, this.position);
    return this.span(first.from, last.to);
  }

  /** The whole line without space around it and without its remark. */
  get whole(): Span {
    const from = this.text.length - this.text.trimStart().length;
    return this.span(from, this.text.length);
  }

  /** Takes the text up to `to` as one piece. */
  take(kind: PieceKind, from: number, to: number, text?: string): void {
    this.pieces.push({ kind, from, to, text: text ?? this.text.slice(from, to) });
    this.position = to;
    this.ahead = null;
  }

  /** Takes the word of the table in any of its spellings. */
  takeWord(word: string): boolean {
    const end = this.wordEnd(word);
    if (end === null) return false;
    this.take('word', this.peek().from, end, word);
    return true;
  }

  sees(word: string): boolean {
    return this.wordEnd(word) !== null;
  }

  /** The first of some words that stands here. */
  seen<W extends string>(words: readonly W[]): W | null {
    return words.find((word) => this.sees(word)) ?? null;
  }

  takeSign(sign: string, kind: PieceKind): boolean {
    const token = this.peek();
    if (token.kind !== 'sign' || token.text !== sign) return false;
    this.take(kind, token.from, token.to);
    return true;
  }

  /** Commas between parts are free. */
  skipCommas(): void {
    while (this.takeSign(',', 'comma'));
  }

  /** Answers a question about what follows and takes nothing. */
  lookAhead<T>(question: () => T): T {
    const { position, failed, terminal } = this;
    const pieces = this.pieces.length;
    const findings = this.findings.length;
    const answer = question();
    this.position = position;
    this.ahead = null;
    this.failed = failed;
    this.terminal = terminal;
    this.pieces.length = pieces;
    this.findings.length = findings;
    return answer;
  }

  /** Reports a finding; an error fails the line. */
  report(code: FindingCode, parts: FindingParts): null {
    const made = finding(code, parts);
    this.findings.push(made);
    if (made.severity === 'error') this.failed = true;
    return null;
  }

  /** Offset behind the word where it stands here in one of its spellings. */
  private wordEnd(word: string): number | null {
    for (const form of formsOf(word)) {
      let token = this.peek();
      const fits = form.every((part, i) => {
        if (i > 0) token = tokenAt(this.text, token.to);
        return token.text.length === part.length && token.text.toLowerCase() === part;
      });
      if (fits) return token.to;
    }
    return null;
  }
}
