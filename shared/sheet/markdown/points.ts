/** Finds the points of an answer, `(1)` at the ends of source lines, among its tokens. */
import type { StateCore, Token } from 'markdown-it';
import { setMeta, tokenTypes } from './tokens.ts';

export interface FoundPoints {
  readonly marks: readonly number[];
  /** Offsets in the content of those that stand inside a line. */
  readonly inside: readonly { readonly from: number; readonly to: number }[];
}

/** Splits points off the text tokens before line ends, in place. */
export function findPoints(state: StateCore, children: Token[], content: string): FoundPoints {
  const marks: number[] = [];
  let inside = false;
  for (let i = children.length - 1; i >= 0; i--) {
    const child = children[i];
    if (child?.type !== 'text') continue;
    const points: Token[] = [];
    for (let match = atEnd(children, i, child); match !== null; match = endPattern.exec(child.content)) {
      const [, before = '', digits = ''] = match;
      child.content = before;
      points.unshift(point(state, Number(digits)));
      marks.unshift(Number(digits));
    }
    if (insidePattern.test(child.content)) inside = true;
    children.splice(i + 1, 0, ...points);
  }
  return { marks, inside: inside ? insideLines(content) : [] };
}

const endPattern = /^([\s\S]*?)(?<![\p{L}\p{N}])\((\d{1,2})\)\s*$/u;
const insidePattern = /(?<![\p{L}\p{N}\\])\(\d{1,2}\)/u;

function atEnd(children: readonly Token[], index: number, child: Token): RegExpExecArray | null {
  let next = index + 1;
  while (children[next]?.nesting === -1) next++;
  const after = children[next];
  const ends = after === undefined || after.type === 'softbreak' || after.type === 'hardbreak';
  return ends ? endPattern.exec(child.content) : null;
}

function point(state: StateCore, marks: number): Token {
  const token = new state.Token(tokenTypes.point, '', 0);
  token.content = `(${marks})`;
  setMeta(token, { kind: 'marks', marks });
  return token;
}

/** Points in the text of a line that has more behind them than closing marks and comments; code, links and inserts do not count. */
function insideLines(content: string): readonly { readonly from: number; readonly to: number }[] {
  const blank = (text: string): string => text.replace(/[^\n]/gu, '\u0001');
  const plain = content
    .replace(/<!--[\s\S]*?-->/gu, (text) => text.replace(/[^\n]/gu, ' '))
    .replace(/(`+)(?!`)[\s\S]*?(?<!`)\1(?!`)|[?!]\{[^}]*\}|\]\([^)]*\)|<[^<>]*>/gu, blank);
  return [...plain.matchAll(new RegExp(insidePattern, 'gu'))].flatMap((match) => {
    const to = match.index + match[0].length;
    const [rest = ''] = plain.slice(to).split('\n');
    const end = /^(?:[\s*_~]|\(\d{1,2}\))*\\?$/u.test(rest);
    return end ? [] : [{ from: match.index, to }];
  });
}
