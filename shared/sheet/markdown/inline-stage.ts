/**
 * After inline parsing: inserts are parsed, blocks cut out, comments dropped, points found, and each gets the readers of the passages
 * round it.
 */
import type { StateCore, Token } from 'markdown-it';
import { isFigure } from '../inserts/parse-insert.ts';
import type { Readers } from '../sheet.ts';
import { reportHiddenColons } from './block-stage.ts';
import { checkFenceWord, excerptOf, isBlockFence } from './fences.ts';
import { InlinePlaces } from './inline-places.ts';
import { MarkBook } from './marks.ts';
import { everyone } from './passage-line.ts';
import { placesOfLines } from './places.ts';
import type { Reading } from './reading.ts';
import { RunningText } from './running-text.ts';
import { metaOf, setMeta, tokenTypes } from './tokens.ts';

export function inlineStage(state: StateCore, reading: Reading): void {
  const walk = new Walk(state, reading);
  for (const [i, token] of state.tokens.entries()) walk.take(token, i);
  walk.finish();
}

interface OpenPassage {
  readonly readers: Readers;
  readonly answer: boolean;
}

class Walk {
  private readonly state: StateCore;
  private readonly reading: Reading;
  private readonly inlines: InlinePlaces;
  private readonly book: MarkBook;
  private readonly passages: OpenPassage[] = [];
  private readonly items: Token[] = [];
  /** Inserts told to all, by the list item or paragraph that they stand in; and which of those have marks. */
  private readonly told: { readonly insert: number; readonly question: Token }[] = [];
  private readonly marked = new Set<Token>();

  constructor(state: StateCore, reading: Reading) {
    this.state = state;
    this.reading = reading;
    this.inlines = new InlinePlaces(reading, state.tokens);
    this.book = new MarkBook(reading.totals);
  }

  take(token: Token, index: number): void {
    this.inlines.follow(token, index);
    switch (token.type) {
      case 'list_item_open':
        this.items.push(token);
        break;
      case 'list_item_close':
        this.items.pop();
        break;
      case 'heading_open':
        this.book.heading();
        break;
      case tokenTypes.passageOpen:
        this.openPassage(token);
        break;
      case tokenTypes.passageClose:
        if (this.passages.pop()?.answer === true) this.book.closeAnswer();
        break;
      case 'paragraph_open':
      case 'paragraph_close':
        // In a passage, even one in a tight list, paragraphs are set apart.
        if (this.passages.length > 0) token.hidden = false;
        break;
      case 'fence':
        this.fence(token);
        break;
      case 'code_block':
        this.codeBlock(token);
        break;
      case 'inline':
        this.inline(token, index);
    }
  }

  finish(): void {
    this.reading.findings.push(...this.book.finish());
    for (const { insert, question } of this.told) {
      const told = this.reading.inserts[insert];
      if (told === undefined || !this.marked.has(question)) continue;
      const asked = `?${told.written.slice(1)}`;
      this.reading.report('told-in-question', {
        span: told.span,
        message: 'This prints the value for pupils, in a question with a mark.',
        fixes: [{ title: `Write ${asked}`, edits: [{ span: told.span, text: asked }], certain: false }],
      });
    }
  }

  private get readers(): Readers {
    return this.passages.at(-1)?.readers ?? everyone;
  }

  private get inAnswer(): boolean {
    return this.passages.some((passage) => passage.answer);
  }

  private openPassage(token: Token): void {
    const meta = metaOf(token);
    const passage = meta?.kind === 'passage' ? this.reading.passages[meta.passage] : undefined;
    const answer = passage?.kind === 'answer' && !this.inAnswer;
    this.passages.push({ readers: passage?.readers ?? [], answer });
    if (answer) this.book.openAnswer(passage.opening, this.items);
  }

  private fence(token: Token): void {
    if (!isBlockFence(token)) {
      checkFenceWord(this.reading, token);
      this.openFence(token);
      return;
    }
    const block = this.reading.known.block(excerptOf(this.reading, token));
    const meta = { kind: 'block' as const, block: this.reading.blocks.length, readers: this.readers };
    this.reading.blocks.push({ block, readers: this.readers });
    token.type = tokenTypes.block;
    setMeta(token, meta);
    const [from, to] = token.map ?? [0, 0];
    if (to > from + block.excerpt.lines.length + 1) return;
    const { span } = block.excerpt;
    const opening = { from: span.from, to: span.from + token.markup.length };
    this.reading.report('fence-unclosed', {
      span: opening,
      message: `This block has no closing \`${token.markup}\`, so that it takes in all that follows it here.`,
    });
  }

  /** A code fence that is never closed swallows passages. */
  private openFence(token: Token): void {
    const [from, to] = token.map ?? [0, 0];
    const lines = token.content.split('\n').length - (token.content.endsWith('\n') ? 1 : 0);
    if (to > from + 1 + lines || !token.content.includes(':::')) return;
    const places = placesOfLines(this.reading, [from + 1, to], token.content);
    reportHiddenColons(this.reading, places, token.content, 0);
  }

  private codeBlock(token: Token): void {
    if (!token.content.includes(':::')) return;
    const places = placesOfLines(this.reading, token.map ?? [0, 0], token.content);
    reportHiddenColons(this.reading, places, token.content, 0);
  }

  private inline(token: Token, index: number): void {
    const cut = this.reading.cuts.get(token);
    const before = this.reading.inserts.length;
    const { content } = token;
    const places = this.inlines.places(token, index);
    this.reading.running.push({ token, content, at: (offset) => places().at(offset) });
    const text = new RunningText(this.state, this.reading, {
      places,
      content,
      readers: this.readers,
      inAnswer: this.inAnswer,
      columnUnit: this.inlines.columnUnit(token),
    });
    const children = text.sort(token.children ?? []);
    if (this.inAnswer) for (const points of text.findPoints(children)) this.book.point(points);
    const question = this.items.at(-1) ?? token;
    for (const insert of text.toldValues()) this.told.push({ insert, question: this.items.at(-1) ?? token });
    if (cut !== undefined) {
      this.book.total(cut.marks, cut.span, [...this.items]);
      if (!this.inAnswer) this.marked.add(question);
      trimEnd(children);
      children.push(this.total(cut.marks));
    }
    token.children = children;
    // Nothing is printed from the content, but titles are made of it.
    if (token.content.includes('<!--')) token.content = token.content.replace(/<!--[\s\S]*?-->/gu, '').trim();
    if (this.reading.inserts.length > before) this.figures(token, index, children);
  }

  private total(marks: number): Token {
    const token = new this.state.Token(tokenTypes.total, '', 0);
    token.content = `[${marks}]`;
    setMeta(token, { kind: 'marks', marks });
    return token;
  }

  /** A paragraph of figures alone, perhaps with marks behind them. */
  private figures(token: Token, index: number, children: readonly Token[]): void {
    const numbers = children.flatMap((child) => {
      const meta = metaOf(child);
      return meta?.kind === 'insert' ? [meta.insert] : [];
    });
    const { tokens } = this.state;
    const open = tokens[index - 1];
    const close = tokens[index + 1];
    const onlyInserts = open?.type === 'paragraph_open' && children.every(belongsToFigures);
    const { inserts } = this.reading;
    for (const number of numbers) {
      const insert = inserts[number];
      if (insert === undefined) continue;
      if (onlyInserts) inserts[number] = { ...insert, alone: true };
      else if (isFigure(insert.head)) this.reportNotAlone(number);
    }
    const anyFigure = numbers.some((number) =>
      isFigure(inserts[number]?.head ?? { kind: 'broken', message: '' }),
    );
    if (!onlyInserts || !anyFigure || open === undefined || close === undefined) return;
    token.children = children.filter((child) => metaOf(child) !== null);
    open.type = tokenTypes.figuresOpen;
    close.type = tokenTypes.figuresClose;
    for (const end of [open, close]) {
      end.tag = 'div';
      end.hidden = false;
      setMeta(end, { kind: 'figures', inserts: numbers });
    }
  }

  private reportNotAlone(number: number): void {
    const insert = this.reading.inserts[number];
    if (insert === undefined) return;
    const what = insert.head.kind === 'readings' ? 'A table' : 'A figure';
    this.reading.report('insert-alone', {
      span: insert.span,
      message: `${what} stands in a paragraph of its own, with an empty line before and after it.`,
    });
  }
}

function belongsToFigures(child: Token): boolean {
  const kind = metaOf(child)?.kind;
  if (kind === 'insert' || kind === 'marks' || child.type === 'softbreak' || child.type === 'hardbreak')
    return true;
  return child.type === 'text' && child.content.trim() === '';
}

/** Space that the marks have left. */
function trimEnd(children: Token[]): void {
  for (let last = children.at(-1); last?.type === 'text'; last = children.at(-1)) {
    last.content = last.content.trimEnd();
    if (last.content !== '') return;
    children.pop();
  }
}
