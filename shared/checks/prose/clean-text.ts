/**
 * Running text as its reader sees it, without markup, each character with its offset in the Markdown. Code, links, pictures, HTML,
 * inserts, formulas and addresses are no prose: one sign stands for each.
 */
import { tokenTypes } from '../../sheet/markdown/tokens.ts';
import type { Sheet } from '../../sheet/sheet.ts';

type Token = Sheet['tokens'][number];

export interface CleanText {
  readonly text: string;
  /** For each character of `text` its offset in the content. */
  readonly offsets: readonly number[];
  /** Words in quotes in inserts: captions and headings, as they lie in the content. */
  readonly captions: readonly { readonly from: number; readonly to: number }[];
}

/** Stands for what is no prose. */
export const foreign = '\ufffc';

/** Steps through tokens and content side by side; where they part for good, the rest is left out. */
export function cleanText(children: readonly Token[], content: string): CleanText {
  const walk = new Walk(content);
  let links = 0;
  for (const child of children) {
    if (child.type === 'link_close' && --links === 0) walk.closeLink();
    else if (child.type === 'link_open') {
      if (++links === 1) walk.openLink();
    } else if (links === 0) walk.take(child);
    if (walk.lost) break;
  }
  return { text: withoutForeign(walk.text), offsets: walk.offsets, captions: walk.captions };
}

class Walk {
  text = '';
  readonly offsets: number[] = [];
  readonly captions: { readonly from: number; readonly to: number }[] = [];
  lost = false;
  private at = 0;
  private readonly content: string;

  constructor(content: string) {
    this.content = content;
  }

  take(child: Token): void {
    switch (child.type) {
      case 'text':
        this.characters(child.content);
        break;
      case 'softbreak':
      case 'hardbreak':
        this.lineBreak();
        break;
      case 'code_inline':
        this.code(child.markup);
        break;
      case 'image':
        this.openLink();
        this.closeLink();
        break;
      case tokenTypes.insert:
        this.insert(child.content);
        break;
      case tokenTypes.html:
      case tokenTypes.point:
      case tokenTypes.total:
        this.foreignText(child.content);
        break;
      default:
        if (this.content.startsWith(child.markup, this.at)) this.at += child.markup.length;
    }
  }

  /** The sign for a link stands here; `closeLink` steps behind it. */
  openLink(): void {
    this.sign();
  }

  closeLink(): void {
    this.at = endOfLink(this.content, this.at);
  }

  private characters(text: string): void {
    for (let i = 0; i < text.length; i++) {
      const sign = text.charAt(i);
      if (this.content.charAt(this.at) !== sign) this.resume(text, i);
      if (this.lost) return;
      this.text += sign;
      this.offsets.push(this.at);
      const entity = this.entity();
      // An entity that Markdown does not know stays as it is written.
      if (entity === null || text.startsWith(entity, i)) this.at += 1;
      else {
        // The second half of a character of two units stands at the same place.
        if ((text.codePointAt(i) ?? 0) > 0xffff) {
          this.text += text.charAt(++i);
          this.offsets.push(this.at);
        }
        this.at += entity.length;
      }
    }
  }

  /** Behind what the text no longer shows: the stroke of an escape, a comment, markup; an entity stays where it is. */
  private resume(text: string, from: number): void {
    const { content } = this;
    const sign = text.charAt(from);
    if (content.charAt(this.at) === '\\' && content.charAt(this.at + 1) === sign) {
      this.at += 1;
      return;
    }
    if (this.entity() !== null) return;
    if (content.startsWith('<!--', this.at)) {
      const end = content.indexOf('-->', this.at);
      if (end >= 0 && content.charAt(end + 3) === sign) {
        this.at = end + 3;
        return;
      }
    }
    const found = content.indexOf(text.slice(from, from + 8), this.at);
    if (found < 0) this.lost = true;
    else this.at = found;
  }

  private entity(): string | null {
    if (this.content.charAt(this.at) !== '&') return null;
    entityPattern.lastIndex = this.at;
    return entityPattern.exec(this.content)?.[0] ?? null;
  }

  private lineBreak(): void {
    const end = this.content.indexOf('\n', this.at);
    if (end < 0) {
      this.lost = true;
      return;
    }
    this.text += '\n';
    this.offsets.push(end);
    this.at = end + 1;
    while (/[ \t]/u.test(this.content.charAt(this.at))) this.at += 1;
  }

  private code(markup: string): void {
    this.at = Math.max(this.at, this.content.indexOf(markup, this.at));
    this.sign();
    this.at = endOfCode(this.content, this.at);
  }

  private insert(written: string): void {
    const from = this.content.indexOf(written, this.at);
    if (from < 0) {
      this.lost = true;
      return;
    }
    for (const match of written.matchAll(/"([^"]*)"|[“„]([^”“]*)[”“]/gu)) {
      const inside = match[1] ?? match[2] ?? '';
      const start = from + match.index + 1;
      this.captions.push({ from: start, to: start + inside.length });
    }
    this.at = from;
    this.sign();
    this.at = from + written.length;
  }

  private foreignText(written: string): void {
    const from = this.content.indexOf(written, this.at);
    if (from < 0) return;
    this.at = from;
    this.sign();
    this.at = from + written.length;
  }

  private sign(): void {
    this.text += foreign;
    this.offsets.push(this.at);
  }
}

const entityPattern = /&(?:#[xX][0-9a-fA-F]{1,6}|#\d{1,7}|[A-Za-z][A-Za-z0-9]{1,31});/uy;

/** Addresses of pages and mail, formulas between dollar signs. */
const notProse =
  /(?:\p{L}{2,10}:\/\/|www\.)\S*|[\p{L}\p{N}._-]{1,64}@[\p{L}\p{N}.-]{1,64}|\$[^\s$](?:[^$\n]{0,200}[^\s$])?\$/gu;

function withoutForeign(text: string): string {
  if (!/[$@]|:\/\/|www\./u.test(text)) return text;
  return text.replace(notProse, (found) => foreign.repeat(found.length));
}

/** Behind the backticks that close the code beginning at `from`. */
function endOfCode(content: string, from: number): number {
  const run = /`+/uy;
  run.lastIndex = from;
  const width = run.exec(content)?.[0].length ?? 0;
  const closing = /`+/gu;
  closing.lastIndex = from + width;
  for (let match = closing.exec(content); match !== null; match = closing.exec(content))
    if (match[0].length === width) return match.index + width;
  return from + width;
}

/** Behind a link or picture that begins at `from`: `<…>`, `[…]`, `[…](…)`, `[…][…]`. */
function endOfLink(content: string, from: number): number {
  if (content.charAt(from) === '<') return behind(content, content.indexOf('>', from));
  const label = endOfBrackets(content, content.indexOf('[', from), '[', ']');
  const next = content.charAt(label);
  if (next === '(') return endOfBrackets(content, label, '(', ')');
  // `[a][]` and `[a][b]` are links to a reference; after `[a]` alone text may go on in brackets, which is then left out.
  return next === '[' ? endOfBrackets(content, label, '[', ']') : label;
}

/** Behind the bracket that closes the one at `from`; escapes, code and quotes of titles are stepped over. */
function endOfBrackets(content: string, from: number, open: string, close: string): number {
  let depth = 0;
  for (let i = Math.max(0, from); i < content.length; i++) {
    const sign = content.charAt(i);
    if (sign === '\\') i += 1;
    else if (sign === '`' && open === '[') i = endOfCode(content, i) - 1;
    else if (sign === '"' && open === '(') {
      const end = content.indexOf('"', i + 1);
      if (end > 0) i = end;
    } else if (sign === open) depth += 1;
    else if (sign === close && --depth === 0) return i + 1;
  }
  return content.length;
}

function behind(content: string, at: number): number {
  return at < 0 ? content.length : at + 1;
}
