/** Comments and other HTML: comments are dropped, but for those that speak to Papervolt; all other HTML is kept as text. */
import type { Span } from '../../text/span.ts';
import type { Reading } from './reading.ts';

export interface HtmlPiece {
  readonly kind: 'comment' | 'html';
  readonly from: number;
  readonly to: number;
  /** False for a comment that runs to the end. */
  readonly closed: boolean;
}

/** A run of HTML cut into comments and the rest, in order. */
export function splitComments(text: string): readonly HtmlPiece[] {
  const pieces: HtmlPiece[] = [];
  const html = (from: number, to: number): void => {
    if (text.slice(from, to).trim() !== '') pieces.push({ kind: 'html', from, to, closed: true });
  };
  let at = 0;
  for (let open = text.indexOf('<!--'); open >= 0; open = text.indexOf('<!--', at)) {
    html(at, open);
    const end = endOfComment(text, open);
    at = end ?? text.length;
    pieces.push({ kind: 'comment', from: open, to: at, closed: end !== null });
  }
  html(at, text.length);
  return pieces;
}

/** What a comment says to Papervolt. Allowances are kept in the reading; a comment to nobody here is dropped in silence. */
export function readComment(reading: Reading, comment: string, span: Span): 'new page' | null {
  const words = /^<!--\s*papervolt\s*:\s*([\s\S]*?)\s*-->$/u.exec(comment)?.[1];
  if (words === undefined) return null;
  if (/^new\s+page$/u.test(words)) return 'new page';
  const [begin, code = '', rest = ''] = /^allow(?:\s+(\S+))?(?:\s+([\s\S]*))?$/u.exec(words) ?? [];
  const reason = /^because\s+(\S[\s\S]*)$/u.exec(rest)?.[1];
  if (begin === undefined) {
    reading.report('comment-unknown', {
      span,
      message: `Papervolt knows no comment “${words}”.`,
      hints: ['It knows `papervolt: new page` and `papervolt: allow CODE because REASON`.'],
    });
  } else if (code === '' || reason === undefined) {
    reading.report('comment-unknown', {
      span,
      message: `Say ${code === '' ? 'which finding, and why' : 'why'}: \`papervolt: allow ${code || 'CODE'} because …\`.`,
    });
  } else {
    reading.allowances.push({
      code,
      reason: reason.replace(/\s+/gu, ' '),
      span,
      covers: nextLine(reading, span),
    });
  }
  return null;
}

function endOfComment(text: string, open: number): number | null {
  if (text.startsWith('>', open + 4)) return open + 5;
  if (text.startsWith('->', open + 4)) return open + 6;
  const end = text.indexOf('-->', open + 4);
  return end < 0 ? null : end + 3;
}

/** The next line with something on it; allowances may stand one above the other. */
function nextLine(reading: Reading, span: Span): Span {
  const { index } = reading;
  let line = index.placeOf(Math.max(span.from, span.to - 1)).line + 1;
  while (line < index.lineCount - 1 && skipped.test(reading.line(line))) line++;
  return { from: index.startOf(line), to: index.endOf(line) };
}

const skipped = /^[\s>]*(?:<!--\s*papervolt\s*:\s*allow\s[^\n]*-->\s*)?$/u;
