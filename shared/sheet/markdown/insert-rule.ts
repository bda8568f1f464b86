/** The rule that finds `?{…}` and `!{…}` in running text, and the one that notes where HTML was looked for. */
import type { StateInline } from 'markdown-it';
import { readingIn } from './reading.ts';
import { tokenTypes } from './tokens.ts';

/**
 * markdown-it stops at braces but not at question marks, so that the rule begins at the brace and takes back the sign before it.
 */
export function insert(state: StateInline, silent: boolean): boolean {
  const brace = state.pos;
  if (state.src.charAt(brace) !== '{' || brace === 0) return false;
  const sign = state.src.charAt(brace - 1);
  if ((sign !== '?' && sign !== '!') || isEscaped(state.src, brace - 1)) return false;
  const reading = readingIn(state.env);
  if (reading?.state !== 'sheet') return false;
  const end = endOfInsert(state.src, brace + 1, state.posMax);
  if (!silent) {
    if (!state.pending.endsWith(sign)) return false;
    state.pending = state.pending.slice(0, -1);
    const token = state.push(tokenTypes.insert, '', 0);
    token.content = state.src.slice(brace - 1, end.to);
    reading.found.set(token, { from: brace - 1, closed: end.closed });
  }
  state.pos = end.to;
  return true;
}

/** Takes nothing: keeps the places where a tag or comment may begin, because markdown-it's tokens do not tell. */
export function noteTag(state: StateInline, silent: boolean): boolean {
  if (silent || state.src.charAt(state.pos) !== '<') return false;
  const reading = readingIn(state.env);
  if (reading === null) return false;
  const places = reading.tags.get(state.tokens);
  if (places === undefined) reading.tags.set(state.tokens, [state.pos]);
  else places.push(state.pos);
  return false;
}

function isEscaped(text: string, at: number): boolean {
  let slashes = 0;
  while (text.charAt(at - 1 - slashes) === '\\') slashes++;
  return slashes % 2 === 1;
}

/**
 * Behind the closing brace. Braces in a caption's quotes do not close, unless nothing else does. Without a closing brace before the
 * next insert, the insert ends with its line.
 */
function endOfInsert(
  text: string,
  from: number,
  max: number,
): { readonly to: number; readonly closed: boolean } {
  const next = /[?!]\{/u.exec(text.slice(from, max))?.index;
  const limit = next === undefined ? max : from + next;
  const quoted = closingBrace(text, from, max, true);
  if (quoted !== null) return { to: quoted, closed: true };
  const plain = closingBrace(text, from, limit, false);
  if (plain !== null) return { to: plain, closed: true };
  const lineEnd = text.indexOf('\n', from);
  const to = Math.min(limit, lineEnd < 0 ? max : lineEnd);
  return { to: from + text.slice(from, to).trimEnd().length, closed: false };
}

function closingBrace(text: string, from: number, to: number, quotes: boolean): number | null {
  let inside = false;
  for (let i = from; i < to; i++) {
    const sign = text.charAt(i);
    if (quotes && (sign === '"' || sign === '“' || sign === '”')) inside = !inside;
    else if (sign === '}' && !inside) return i + 1;
    else if (sign === '{' && !inside && /[?!]/u.test(text.charAt(i - 1))) return null;
  }
  return null;
}
