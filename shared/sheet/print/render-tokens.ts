/**
 * From a sheet's tokens to HTML for one reader. What a reader does not get is not rendered at all: hidden text never reaches the
 * document. Knows setups and solutions only by the view.
 */
import type { Token } from 'markdown-it';
import { metaOf, type TokenMeta, tokenTypes } from '../markdown/tokens.ts';
import type { Sheet } from '../sheet.ts';
import { renderFigures } from './figures.ts';
import { type Html, html, isNothing, joined, nothing, trusted } from './html.ts';
import { allowedAddress } from './links.ts';
import { answerSpace, framedPassage, passagePrint } from './passages.ts';
import { troubleBox } from './stand-ins.ts';
import type { TokenNode } from './token-tree.ts';
import type { Figure, Printed, Tier, View } from './view.ts';

export interface Reader {
  readonly sheet: Sheet;
  readonly view: View;
  /** Whose copy this is; null for one without tiers. */
  readonly tier: Tier | null;
  /** Filled with the pupils' hints as they are met. */
  readonly hints: Html[];
}

export function renderNodes(nodes: readonly TokenNode[], reader: Reader): Html {
  return joined(nodes.map((node) => renderNode(node, reader)));
}

function renderNode(node: TokenNode, reader: Reader): Html {
  const meta = metaOf(node.token);
  if (meta !== null) return renderOurs(node, meta, reader);
  const { token } = node;
  if (token.nesting === 1) return renderPair(node, reader);
  switch (token.type) {
    case 'inline':
      return renderNodes(node.children, reader);
    case 'text':
      return html`${token.content}`;
    case 'softbreak':
      return html`\n`;
    case 'hardbreak':
      return html`<br>\n`;
    case 'code_inline':
      return html`<code>${token.content}</code>`;
    case 'code_block':
    case 'fence':
      return html`<pre><code>${token.content}</code></pre>\n`;
    case 'hr':
      return html`<hr>\n`;
    case 'image':
      return renderImage(node);
    default:
      return html`${token.content}`;
  }
}

function renderOurs(node: TokenNode, meta: TokenMeta, reader: Reader): Html {
  switch (meta.kind) {
    case 'sheet':
      return nothing;
    case 'block': {
      const figure = reader.view.block(meta.block);
      return figure === null ? nothing : renderFigures([figure]);
    }
    case 'passage':
      return renderPassage(node, meta.passage, reader);
    case 'figures':
      return renderGroup(meta.inserts.map((number) => reader.view.insert(number)));
    case 'insert':
      return inSentence(reader.view.insert(meta.insert), node.token.content);
    case 'marks':
      return marksAt(node.token);
    case 'html':
      return html`${node.token.content}`;
    case 'new page':
      return html`<div class="new-page"></div>\n`;
  }
}

function renderPassage({ children }: TokenNode, number: number, reader: Reader): Html {
  const passage = reader.sheet.passages[number];
  if (passage === undefined) return nothing;
  switch (passagePrint(passage, reader.view.audience, reader.tier)) {
    case 'nothing':
      return nothing;
    case 'space':
      return answerSpace(passage);
    case 'text':
      return framedPassage(passage, renderNodes(children, reader));
    case 'hint': {
      reader.hints.push(renderNodes(children, reader));
      return html`<p class="hint-mark">Hint ${reader.hints.length} is on the last page.</p>\n`;
    }
  }
}

/** Tables and figures that share a paragraph, side by side. */
function renderGroup(prints: readonly Printed[]): Html {
  const figures = prints.flatMap((print): Figure[] => (print.form === 'figure' ? [print.figure] : []));
  const others = prints.flatMap((print): Html[] => {
    if (print.form === 'words') return [html`<p>${print.html}</p>\n`];
    return print.form === 'block' ? [print.html] : [];
  });
  const drawn = figures.length === 0 ? nothing : renderFigures(figures);
  if (others.length < 2) return joined([...others, drawn]);
  return html`<div class="figures">\n${others.map((other) => html`<div>\n${other}</div>\n`)}</div>\n${drawn}`;
}

/** At the right; a point of an answer ends its line, so that points stand one below the other. */
function marksAt({ type, content }: Token): Html {
  return html`\u00a0<span class="mark"><span>${content}</span></span>${type === tokenTypes.point ? html`<br>` : null}`;
}

function inSentence(print: Printed, written: string): Html {
  if (print.form === 'words') return print.html;
  return print.form === 'nothing'
    ? nothing
    : troubleBox(written, 'a table or figure stands alone in a paragraph');
}

/** Elements of Markdown that enclose others, by the type of their opening token. */
const pairs: Readonly<Record<string, string>> = {
  paragraph_open: 'p',
  blockquote_open: 'blockquote',
  bullet_list_open: 'ul',
  ordered_list_open: 'ol',
  list_item_open: 'li',
  table_open: 'table',
  thead_open: 'thead',
  tbody_open: 'tbody',
  tr_open: 'tr',
  th_open: 'th',
  td_open: 'td',
  em_open: 'em',
  strong_open: 'strong',
  s_open: 's',
  link_open: 'a',
};
const inlineTags = new Set(['em', 'strong', 's', 'a', 'th', 'td']);

function renderPair({ token, children }: TokenNode, reader: Reader): Html {
  const content = renderNodes(children, reader);
  const tag = token.type === 'heading_open' ? headingTag(token) : pairs[token.type];
  if (tag === undefined) return content;
  if (tag === 'p' && token.hidden) return html`${content}\n`;
  if (tag === 'p' && isNothing(content)) return nothing;
  if (tag === 'a') return renderLink(token, content);
  const end = inlineTags.has(tag) ? '' : '\n';
  // The tag is a word of the table above.
  return html`${trusted(`<${tag}`)}${attributes(token, tag)}>${content}${trusted(`</${tag}>`)}${end}`;
}

const headingTag = (token: Token): string => (/^h[1-6]$/u.test(token.tag) ? token.tag : 'h6');

const attribute = (token: Token, name: string): string => String(token.attrGet(name) ?? '');

function attributes(token: Token, tag: string): Html {
  if (tag === 'ol') {
    const start = Number(token.attrGet('start') ?? 1);
    return Number.isInteger(start) && start !== 1 ? html` start="${start}"` : nothing;
  }
  if (tag === 'th' || tag === 'td') {
    const side = /text-align:(left|center|right)/u.exec(attribute(token, 'style'))?.[1];
    const scope = tag === 'th' ? html` scope="col"` : nothing;
    return side === undefined ? scope : html`${scope} style="text-align:${side}"`;
  }
  return nothing;
}

function renderLink(token: Token, content: Html): Html {
  const address = allowedAddress(attribute(token, 'href'));
  return address === null ? content : html`<a href="${address}">${content}</a>`;
}

/** Without an allowed address the words in its place. */
function renderImage({ token, children }: TokenNode): Html {
  const words = children.map((child) => child.token.content).join('');
  const address = allowedAddress(attribute(token, 'src'));
  return address === null ? html`${words}` : html`<img src="${address}" alt="${words}">`;
}
