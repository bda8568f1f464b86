/**
 * Between block and inline parsing: comments and HTML are sorted out, passages paired, marks taken from the ends of paragraphs. Blocks
 * wait for the inline stage, which knows their readers.
 */
import type { StateCore, Token } from 'markdown-it';
import { readComment, splitComments } from './comments.ts';
import { cutMarks } from './marks.ts';
import { pairPassages } from './passages.ts';
import { placesOfLines, spanIn } from './places.ts';
import type { Reading } from './reading.ts';
import { setMeta, tokenTypes } from './tokens.ts';

export function blockStage(state: StateCore, reading: Reading): void {
  const tokens: Token[] = [];
  for (const token of state.tokens) {
    if (token.type === 'html_block') tokens.push(...sortHtml(state, reading, token));
    else tokens.push(token);
  }
  state.tokens = tokens;
  pairPassages(state, reading);
  cutMarks(state, reading);
}

/** An HTML block without its comments, as text; a comment may ask for a new page. */
function sortHtml(state: StateCore, reading: Reading, token: Token): readonly Token[] {
  const [from, to] = token.map ?? [0, 0];
  const places = placesOfLines(reading, [from, to], token.content);
  const kept: Token[] = [];
  for (const piece of splitComments(token.content)) {
    const text = token.content.slice(piece.from, piece.to);
    const span = spanIn(places, piece.from, piece.to);
    if (piece.kind === 'html') kept.push(plainToken(state, token, text.trim()));
    else if (readComment(reading, text, span) === 'new page') kept.push(newPage(state, token));
    if (piece.kind === 'html') reportHtml(reading, text, piece.from, places);
    if (!piece.closed) reportUnclosed(reading, piece.from, places);
  }
  return kept;
}

function reportUnclosed(reading: Reading, from: number, places: ReturnType<typeof placesOfLines>): void {
  reading.report('comment-unclosed', {
    span: spanIn(places, from, from + '<!--'.length),
    message: 'This comment is never closed: all that follows it here is left out.',
    hints: ['Close it with `-->`.'],
  });
}

function reportHtml(
  reading: Reading,
  text: string,
  from: number,
  places: ReturnType<typeof placesOfLines>,
): void {
  const start = from + text.length - text.trimStart().length;
  const [firstLine = ''] = text.trim().split('\n');
  reading.report('html-escaped', {
    span: spanIn(places, start, start + firstLine.trimEnd().length),
    message: 'HTML is not carried out: it is printed as it stands here.',
    hints: ['A comment, `<!-- … -->`, is left out.'],
  });
  reportHiddenColons(reading, places, text, from);
}

/** Colons inside HTML open and close nothing; the text that they were to hide would be printed. */
export function reportHiddenColons(
  reading: Reading,
  places: ReturnType<typeof placesOfLines>,
  text: string,
  from: number,
): void {
  for (const match of text.matchAll(/^[ \t]*(:{3,}.*)$/gmu)) {
    const written = match[1] ?? '';
    const at = from + match.index + match[0].length - written.length;
    reading.report('passage-hidden', {
      span: spanIn(places, at, at + written.trimEnd().length),
      message: 'Markdown does not see these colons as a line of their own, so that they hide nothing.',
      hints: ['Put an empty line before them, and begin them where the text around them begins.'],
    });
  }
}

function plainToken(state: StateCore, from: Token, content: string): Token {
  const token = new state.Token(tokenTypes.html, '', 0);
  token.block = true;
  token.content = content;
  token.map = from.map;
  token.level = from.level;
  setMeta(token, { kind: 'html' });
  return token;
}

function newPage(state: StateCore, from: Token): Token {
  const token = new state.Token(tokenTypes.newPage, '', 0);
  token.block = true;
  token.map = from.map;
  token.level = from.level;
  setMeta(token, { kind: 'new page' });
  return token;
}
