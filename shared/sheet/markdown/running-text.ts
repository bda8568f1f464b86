/** Sorts out the tokens of one piece of running text: inserts are parsed, comments dropped, HTML kept as text, points found. */
import type { StateCore, Token } from 'markdown-it';
import { isFigure, parseInsert } from '../inserts/parse-insert.ts';
import type { Insert, Readers } from '../sheet.ts';
import { reportHiddenColons } from './block-stage.ts';
import { readComment } from './comments.ts';
import { spanIn } from './places.ts';
import { findPoints } from './points.ts';
import type { Places, Reading } from './reading.ts';
import { setMeta, tokenTypes } from './tokens.ts';

export interface TextContext {
  /** Computed when first asked for. */
  readonly places: () => Places;
  readonly content: string;
  readonly readers: Readers;
  readonly inAnswer: boolean;
  readonly columnUnit: string | null;
}

export class RunningText {
  private readonly state: StateCore;
  private readonly reading: Reading;
  private readonly context: TextContext;
  private readonly told: number[] = [];
  private known: Places | null = null;

  constructor(state: StateCore, reading: Reading, context: TextContext) {
    this.state = state;
    this.reading = reading;
    this.context = context;
  }

  /** The tokens that stay, in order. */
  sort(children: readonly Token[]): Token[] {
    const { content } = this.context;
    const tags = this.reading.tags.get(children) ?? [];
    const kept: Token[] = [];
    let tag = 0;
    for (const child of children) {
      if (child.type === 'html_inline') {
        while (tag < tags.length && !content.startsWith(child.content, tags[tag])) this.textTag(tags[tag++]);
        kept.push(...this.html(child, tags[tag++] ?? 0));
      } else if (child.type === tokenTypes.insert) {
        this.insert(child);
        kept.push(child);
      } else {
        if (child.type === 'image') this.image(child);
        kept.push(child);
      }
    }
    while (tag < tags.length) this.textTag(tags[tag++]);
    if (content.includes(':::')) reportHiddenColons(this.reading, this.places, content, 0);
    return kept;
  }

  /** Splits points off the ends of lines, in place; returns the marks of each. */
  findPoints(children: Token[]): readonly number[] {
    const found = findPoints(this.state, children, this.context.content);
    for (const { from, to } of found.inside) {
      this.reading.report('mark-inside', {
        span: spanIn(this.places, from, to),
        message: 'Is this a point for a mark? Points stand at the end of a line.',
      });
    }
    return found.marks;
  }

  /** Values that everyone is told, by number. */
  toldValues(): readonly number[] {
    return this.told;
  }

  private get places(): Places {
    this.known ??= this.context.places();
    return this.known;
  }

  private html(child: Token, at: number): readonly Token[] {
    const span = spanIn(this.places, at, at + child.content.length);
    if (child.content.startsWith('<!--')) {
      if (readComment(this.reading, child.content, span) !== 'new page') return [];
      this.reading.report('comment-unknown', {
        span,
        message:
          'A new page begins between paragraphs: give this comment a line of its own, with empty lines round it.',
      });
      return [];
    }
    if (!child.content.startsWith('</')) {
      this.reading.report('html-escaped', {
        span,
        message: 'HTML is not carried out: it is printed as it stands here.',
      });
    }
    const token = new this.state.Token(tokenTypes.html, '', 0);
    token.content = child.content;
    setMeta(token, { kind: 'html' });
    return [token];
  }

  /** A `<` that began no HTML: but a comment may have been meant. */
  private textTag(at: number | undefined): void {
    if (at === undefined || !this.context.content.startsWith('<!--', at)) return;
    this.reading.report('comment-open', {
      span: spanIn(this.places, at, at + '<!--'.length),
      message:
        'This comment does not end in its paragraph, so that Markdown takes it for text and prints it.',
      hints: ['Begin the comment on a line of its own if it has empty lines in it.'],
    });
  }

  private insert(child: Token): void {
    const { from, closed } = this.reading.found.get(child) ?? { from: 0, closed: true };
    const written = child.content;
    const number = this.reading.inserts.length;
    const parsed = parseInsert(written, closed, (a, b) => spanIn(this.places, from + a, from + b));
    this.reading.findings.push(...parsed.findings);
    const insert: Insert = {
      told: written.startsWith('!'),
      head: parsed.head,
      span: spanIn(this.places, from, from + written.length),
      written,
      alone: false,
      readers: this.context.readers,
      number,
      bareNumber: parsed.noUnit || this.context.columnUnit !== null,
      columnUnit: this.context.columnUnit,
    };
    this.reading.inserts.push(insert);
    setMeta(child, { kind: 'insert', insert: number });
    this.look(insert);
  }

  private look({ head, told, readers, number, span }: Insert): void {
    if (head.kind === 'later') {
      this.reading.report('insert-later', {
        span,
        message: `\`${head.word}\` is not printed yet: teachers see a box where it will stand, pupils nothing.`,
      });
    }
    const value = !isFigure(head) && head.kind !== 'broken' && head.kind !== 'blank';
    if (told && value && readers.includes('pupils')) this.told.push(number);
  }

  /** The description of a picture is plain text. */
  private image(image: Token): void {
    const children = (image.children ?? []).filter(
      (child) => child.type !== 'html_inline' || !child.content.startsWith('<!--'),
    );
    for (const child of children) {
      if (child.type === 'image') this.image(child);
      if (child.type === 'html_inline') child.type = 'text';
      if (child.type !== tokenTypes.insert) continue;
      child.type = 'text';
      this.reading.report('insert-place', {
        span: spanIn(this.places, 0, this.context.content.length),
        message: `\`${child.content}\` stands in the description of a picture, where nothing is filled in.`,
      });
    }
    image.children = children;
  }
}
