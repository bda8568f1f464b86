/** Marks: the total of a question, `[2]` at its end, and the points in its answer, `(1)` at the ends of lines. */
import type { StateCore, Token } from 'markdown-it';
import { type Finding, finding } from '../../findings/finding.ts';
import { type Span, span } from '../../text/span.ts';
import type { MarkTotal } from '../sheet.ts';
import { placesOfLines, spanIn } from './places.ts';
import type { Reading } from './reading.ts';

/**
 * Takes `[2]` from the ends of paragraphs, so that no link definition can claim it. Space of the same length stays, and with it all
 * places in the content.
 */
export function cutMarks(state: StateCore, reading: Reading): void {
  for (const [i, token] of state.tokens.entries()) {
    if (token.type !== 'inline' || state.tokens[i - 1]?.type !== 'paragraph_open') continue;
    if (!/[\])>]$/u.test(token.content)) continue;
    const found = totalPattern.exec(token.content);
    if (found === null) {
      reportWords(reading, token);
      continue;
    }
    const [, before = '', marks = ''] = found;
    if (isLinkText(state, before, marks)) continue;
    const places = placesOfLines(reading, token.map ?? [0, 0], token.content);
    const from = before.length;
    const to = from + marks.length + 2;
    reading.cuts.set(token, { marks: Number(marks), span: spanIn(places, from, to), places });
    token.content = before + ' '.repeat(to - from) + token.content.slice(to);
  }
}

/** Comments may follow the marks. */
const totalPattern = /^([\s\S]*?)(?<!\\)\[(\d{1,3})\](?:\s|<!--(?:(?!-->)[\s\S])*-->)*$/u;

/** `[text][2]` is a link where `[2]:` is defined. */
function isLinkText(state: StateCore, before: string, marks: string): boolean {
  return before.endsWith(']') && state.env.references?.[marks] !== undefined;
}

/** `[2 marks]` is read by people and counted by nobody. */
function reportWords(reading: Reading, token: Token): void {
  const [all, marks] = /[[(](\d{1,3})\s+marks?[\])]$/iu.exec(token.content) ?? [];
  if (all === undefined || marks === undefined) return;
  const places = placesOfLines(reading, token.map ?? [0, 0], token.content);
  const where = spanIn(places, token.content.length - all.length, token.content.length);
  reading.report('mark-form', {
    span: where,
    message: `Marks are counted where they are written \`[${marks}]\`.`,
    fixes: [{ title: `Write [${marks}]`, edits: [{ span: where, text: `[${marks}]` }], certain: false }],
  });
}

interface Question {
  readonly index: number;
  readonly total: MarkTotal;
  /** The list items that it stands in, the outermost first. */
  readonly items: readonly Token[];
}

interface Answer {
  readonly opening: Span;
  points: number;
  readonly questions: readonly Question[];
}

/** Follows a sheet and finds for each answer the questions that it answers. */
export class MarkBook {
  private readonly waiting: Question[] = [];
  private readonly answers: Answer[] = [];
  private readonly totals: MarkTotal[];
  private current: Answer | null = null;
  /** What a further answer adds to. */
  private last: Answer | null = null;

  constructor(totals: MarkTotal[]) {
    this.totals = totals;
  }

  total(marks: number, where: Span, items: readonly Token[]): void {
    const total = { marks, span: where, points: null };
    this.totals.push(total);
    if (this.current === null) this.waiting.push({ index: this.totals.length - 1, total, items });
  }

  /** An answer to a question of the same list item, or else to those before it; a second one adds to the first. */
  openAnswer(opening: Span, items: readonly Token[]): void {
    const item = items.at(-1);
    const inItem = item === undefined ? [] : this.waiting.filter((question) => question.items.includes(item));
    const questions = inItem.length > 0 ? inItem : [...this.waiting];
    this.waiting.length = 0;
    if (questions.length === 0 && this.last !== null) this.current = this.last;
    else {
      this.current = { opening, points: 0, questions };
      this.answers.push(this.current);
    }
    this.last = this.current;
  }

  closeAnswer(): void {
    this.current = null;
  }

  point(points: number): void {
    if (this.current !== null) this.current.points += points;
  }

  /** A heading ends what an answer may belong to. */
  heading(): void {
    if (this.current !== null) return;
    this.waiting.length = 0;
    this.last = null;
  }

  /** Writes the points into the totals and says where they disagree. */
  finish(): readonly Finding[] {
    return this.answers.flatMap((answer) => {
      const last = answer.questions.at(-1);
      if (last === undefined) return [];
      const sum = answer.questions.reduce((marks, question) => marks + question.total.marks, 0);
      // An answer behind several questions may answer the last of them, or all.
      const agrees = answer.points === sum || answer.points === last.total.marks;
      this.totals[last.index] = { ...last.total, points: answer.points };
      return agrees ? [] : [disagreement(answer, last.total)];
    });
  }
}

function disagreement({ opening, points, questions }: Answer, { marks, span: where }: MarkTotal): Finding {
  const related = [{ span: opening, message: 'The answer begins here.' }];
  if (points === 0) {
    const message = `The question has [${marks}]; its answer does not say what the marks are for.`;
    const hints = ['End a line of the answer with (1) for each mark.'];
    return finding('marks-no-points', { span: where, message, hints, related });
  }
  return finding('marks-disagree', {
    span: where,
    message: `The question has [${marks}], the points in its answer add up to ${points}.`,
    related,
    fixes:
      questions.length === 1
        ? [
            {
              title: `Write [${points}]`,
              edits: [{ span: span(where.from, where.to), text: `[${points}]` }],
              certain: false,
            },
          ]
        : [],
  });
}
