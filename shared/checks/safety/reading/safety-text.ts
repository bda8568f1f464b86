/**
 * A sheet as a reader looks for dangers in it: one long text of all its prose, in pieces that know who reads them and where they stand.
 * Characters are plain and small so that patterns stay short; each still has its place in the file.
 */
import type { Audience } from '../../../block/tree.ts';
import { metaOf, tokenTypes } from '../../../sheet/markdown/tokens.ts';
import type { Readers, Sheet } from '../../../sheet/sheet.ts';
import type { Span } from '../../../text/span.ts';
import type { Run } from '../../prose/run.ts';
import { runsOf } from '../../prose/runs.ts';
import { kitPieces } from './kit-pieces.ts';
import { type Matches, matchesIn } from './matches.ts';

type Token = Sheet['tokens'][number];

export interface Piece {
  /** In the whole text. */
  readonly from: number;
  readonly to: number;
  readonly kind: 'paragraph' | 'item' | 'row' | 'heading' | 'caption';
  readonly readers: Readers;
  /** In a passage or under a heading that is about safety. */
  readonly safety: boolean;
  /** In a list of what is needed. */
  readonly apparatus: boolean;
  /** Asked of pupils, with marks. */
  readonly question: boolean;
  readonly answer: boolean;
  /** Index of its token in the sheet; −1 for front matter. */
  readonly token: number;
}

export interface SafetyText {
  readonly whole: string;
  readonly matches: Matches;
  readonly pieces: readonly Piece[];
  /** Headings, and paragraphs beginning in bold type, that open a part about safety: index of the token. */
  readonly openings: readonly number[];
  pieceAt(index: number): Piece;
  /** The sentence round a place, in the whole text. */
  sentenceAt(index: number): { readonly from: number; readonly to: number };
  /** In the file. */
  spanOf(from: number, to: number): Span;
}

/** A run in the whole text. */
interface Part {
  readonly from: number;
  readonly run: Run;
}

export function readSafetyText(sheet: Sheet): SafetyText {
  const collector = new Collector(sheet);
  collector.kit();
  for (const [index, token] of sheet.tokens.entries()) collector.take(token, index);
  return collector.finish();
}

const safetyWords =
  /^(?:\d[\d.]*\)? )?(?:(?:[\p{L}'&-]+ ){0,3}(?:safety|hazards?|risk assessment|precautions?)\b(?! of the)|(?:hazard analysis|risks?|warnings?|dangers?|cautions?|be careful|take care|stay(?:ing)? safe|working safely)\b)/u;
const apparatusWords =
  /^(?:\d[\d.]*\)? )?(?:apparatus|equipment|kit|materials?|you (?:will )?need|what you(?:'ll| will)? need|requirements|components|per group|each group|things? (?:you|to)|for each|set-?up list|issue|tray)\b/u;

class Collector {
  private whole = '';
  private readonly pieces: Piece[] = [];
  private readonly parts: Part[] = [];
  private readonly openings: number[] = [];
  private readonly sheet: Sheet;
  private readonly running: ReadonlyMap<Token, Sheet['running'][number]>;
  private readonly everyone: Readers;
  private readonly passages: {
    readonly readers: Readers;
    readonly safety: boolean;
    readonly answer: boolean;
  }[] = [];
  /** Headings that govern, with their level and how deep in passages they stand. */
  private sections: {
    readonly level: number;
    readonly depth: number;
    readonly about: 'safety' | 'apparatus' | 'other';
  }[] = [];
  private heading = 0;
  private items = 0;
  private row: number | null = null;
  /** A paragraph in bold type opened a part about safety that lasts to the next paragraph outside lists. */
  private bold: 'safety' | 'apparatus' | null = null;

  constructor(sheet: Sheet) {
    this.sheet = sheet;
    this.running = new Map(sheet.running.map((piece) => [piece.token, piece]));
    const { audience } = sheet.front;
    const all: readonly Audience[] = ['pupils', 'teachers', 'technicians'];
    this.everyone = audience === null ? all : [audience];
  }

  kit(): void {
    // Printed for staff alone.
    const readers = this.readers().filter((reader) => reader !== 'pupils');
    for (const run of kitPieces(this.sheet)) {
      const from = this.add(run);
      const place = { safety: false, apparatus: true, question: false, answer: false, token: -1 };
      this.pieces.push({ from, to: this.whole.length, kind: 'item', readers, ...place });
    }
  }

  take(token: Token, index: number): void {
    const meta = metaOf(token);
    if (token.type === tokenTypes.passageOpen && meta?.kind === 'passage') {
      const kind = this.sheet.passages[meta.passage]?.kind;
      // A broken passage has its own error; its notes count as meant.
      const readers = kind === 'broken' ? this.readers() : meta.readers;
      this.passages.push({ readers, safety: kind === 'safety', answer: kind === 'answer' });
    } else if (token.type === tokenTypes.passageClose) {
      this.passages.pop();
      this.sections = this.sections.filter(({ depth }) => depth <= this.passages.length);
    } else if (token.type === 'heading_open') this.heading = Number(token.tag.slice(1));
    else if (token.type === 'heading_close') this.heading = 0;
    else if (token.type === 'list_item_open') this.items += 1;
    else if (token.type === 'list_item_close') this.items -= 1;
    else if (token.type === 'tr_open') this.row = this.whole.length;
    else if (token.type === 'tr_close') this.closeRow(index);
    else if (token.type === 'inline') this.inline(token, index);
  }

  finish(): SafetyText {
    const { whole, pieces, parts, openings } = this;
    const partAt = (index: number): Part | undefined => lastBefore(parts, index);
    const place = (index: number): number => {
      const part = partAt(index);
      return part === undefined ? 0 : part.run.at(Math.min(index - part.from, part.run.text.length));
    };
    const pieceAt = (index: number): Piece => {
      const piece = lastBefore(pieces, index);
      if (piece === undefined) throw new Error('there is no text');
      return piece;
    };
    return {
      whole,
      matches: matchesIn(whole),
      pieces,
      openings,
      pieceAt,
      sentenceAt: (index) => sentenceIn(whole, pieceAt(index), index),
      spanOf: (from, to) => ({ from: place(from), to: place(Math.max(from, to - 1)) + 1 }),
    };
  }

  private inline(token: Token, index: number): void {
    const piece = this.running.get(token);
    if (piece === undefined) return;
    const [main, ...captions] = runsOf(
      piece,
      this.heading > 0 ? 'heading' : this.row === null ? 'paragraph' : 'cell',
    );
    if (main === undefined) return;
    const text = plain(main.text).trim();
    if (this.heading > 0) this.openSection(text, index);
    else if (this.row === null) this.openBold(token, text, index);
    const from = this.add(main);
    if (this.row === null) {
      const kind = this.heading > 0 ? 'heading' : this.items > 0 ? 'item' : 'paragraph';
      const marked = (token.children ?? []).some(({ type }) => type === tokenTypes.total);
      this.push({ from, kind, question: marked }, index);
    }
    for (const caption of captions)
      this.push({ from: this.add(caption), kind: 'caption', question: false }, index);
  }

  private push(piece: Pick<Piece, 'from' | 'kind' | 'question'>, token: number): void {
    const { passages } = this;
    const about = this.bold ?? this.sections.at(-1)?.about ?? 'other';
    this.pieces.push({
      ...piece,
      to: this.whole.length,
      readers: this.readers(),
      safety:
        passages.some(({ safety }) => safety) ||
        about === 'safety' ||
        this.sections.some((one) => one.about === 'safety'),
      apparatus: about === 'apparatus',
      answer: passages.some(({ answer }) => answer),
      token,
    });
  }

  private closeRow(index: number): void {
    if (this.row === null) return;
    const from = this.row;
    this.row = null;
    // Captions of inserts in cells are pieces of their own already.
    if (this.pieces.every((piece) => piece.from < from))
      this.push({ from, kind: 'row', question: false }, index);
  }

  private openSection(text: string, index: number): void {
    this.bold = null;
    const about = safetyWords.test(text) ? 'safety' : apparatusWords.test(text) ? 'apparatus' : 'other';
    this.sections = this.sections.filter(({ level }) => level < this.heading);
    this.sections.push({ level: this.heading, depth: this.passages.length, about });
    if (about === 'safety') this.openings.push(index);
  }

  private openBold(token: Token, text: string, index: number): void {
    if (this.items > 0) return;
    const strong = (token.children ?? []).find(({ content, type }) => type !== 'text' || content !== '');
    const label = strong?.type === 'strong_open' || /^[\p{L} ]{4,30}:/u.test(text);
    this.bold = !label
      ? null
      : safetyWords.test(text)
        ? 'safety'
        : apparatusWords.test(text)
          ? 'apparatus'
          : null;
    if (this.bold === 'safety') this.openings.push(index);
  }

  private add(run: Run): number {
    const from = this.whole.length;
    this.parts.push({ from, run });
    this.whole += `${plain(run.text)}${this.row === null ? '\n' : ' | '}`;
    return from;
  }

  private readers(): Readers {
    const { passages, everyone } = this;
    const inner = passages.at(-1)?.readers ?? everyone;
    return inner.filter((reader) => everyone.includes(reader));
  }
}

/** Small letters, plain quotes, hyphens and spaces; as long as it was. */
export function plain(text: string): string {
  const small = text.toLowerCase();
  const same = small.length === text.length ? small : text;
  return same
    .replace(/[\n\u00a0\u202f\u2009]/gu, ' ')
    .replace(/[’‘]/gu, "'")
    .replace(/[–—‐‑−]/gu, '-');
}

/** A full stop ends no sentence in `d.c.` and behind some short words. */
const sentenceEnd = /(?<!\.[a-z])(?<!\b(?:max|min|approx|fig|nos?|ca|vs))[.!?](?=["”')]*\s)/gu;

function sentenceIn(
  whole: string,
  { from, to }: Piece,
  index: number,
): { readonly from: number; readonly to: number } {
  let start = from;
  for (const end of whole.slice(from, to).matchAll(sentenceEnd)) {
    const stop = from + end.index + end[0].length;
    if (stop > index) return { from: start, to: stop };
    start = stop;
  }
  return { from: start, to };
}

function lastBefore<T extends { readonly from: number }>(sorted: readonly T[], index: number): T | undefined {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((sorted[middle]?.from ?? 0) <= index) low = middle + 1;
    else high = middle;
  }
  return sorted[low - 1];
}
