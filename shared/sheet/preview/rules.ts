/**
 * The plugin for a Markdown preview: reads sheets by our rules and renders what is ours in them. All other Markdown keeps the rendering
 * of the preview, and a text without a block keeps every byte. Runs in markdown-it 12 and newer; reaches no solution.
 */
import type MarkdownIt from 'markdown-it';
import type { Env, RendererRule, Token } from 'markdown-it';
import { KnownBlocks } from '../../setup/known-blocks.ts';
import { keepKnown } from '../markdown/reading.ts';
import { markdownRules } from '../markdown/rules.ts';
import { metaOf, sheetOf, type TokenMeta, tokenTypes } from '../markdown/tokens.ts';
import { type Html, html, nothing, trusted } from '../print/html.ts';
import type { PreviewSource } from './lookup.ts';
import { Meanings } from './meanings.ts';
import { type Desk, figureHtml, groupHtml, insertInLine, type Outer } from './part-html.ts';
import { answerRoom, hintMark, hintsHtml, passageEnd, passageStart, readerNote } from './passage-html.ts';
import { readerTokens, sharedWith } from './reader-tokens.ts';

type Parser = InstanceType<typeof MarkdownIt>;

/** One rendering of a sheet. */
interface Rendering extends Desk {
  /** Numbers of the pupils' hints by passage. */
  readonly hints: ReadonlyMap<number, number>;
}

const key = 'papervolt_preview';
/** Previews side by side take turns. */
const readingsKept = 8;

export function previewRules(md: Parser, source: PreviewSource): void {
  markdownRules(md);
  const known = new KnownBlocks(readingsKept);
  md.core.ruler.before('papervolt_begin', 'papervolt_known', (state) => {
    state.env ??= {};
    keepKnown(state.env, known);
  });
  const { renderer } = md;
  for (const [type, rule] of Object.entries(renderRules)) renderer.rules[type] = rule;
  const renderAll = renderer.render;
  const meanings = new Meanings(known);
  renderer.render = function render(tokens, options, env = {}) {
    const sheet = sheetOf(tokens);
    if (sheet === null) return renderAll.call(this, tokens, options, env);
    const audience = source.reader();
    const lookup = source.begin(addressIn(env));
    const wishes = meanings.wishes(sheet, audience);
    const shown = readerTokens(tokens, sheet, audience);
    const hints = new Map(shown.hints.map(({ passage }, i) => [passage, i + 1]));
    const rendering: Rendering = { meant: meanings.of(sheet), wishes, lookup, hints };
    env[key] = rendering;
    const part = (some: readonly Token[]): string => renderAll.call(this, [...some], options, env);
    const body = readerNote(audience, sheet.front).markup + part(shown.tokens);
    if (shown.hints.length === 0) return body;
    return body + hintsHtml(shown.hints.map(({ content }) => trusted(part(content)))).markup;
  };
}

/** VS Code's preview says in the environment which text it renders. */
function addressIn({ currentDocument }: Env): string | null {
  return currentDocument === undefined || currentDocument === null ? null : String(currentDocument);
}

function renderingIn(env: Env | undefined): Rendering | null {
  // Set above alone.
  return (env?.[key] as Rendering | undefined) ?? null;
}

type Made = (meta: TokenMeta, rendering: Rendering, token: Token, outer: Outer) => Html;

/** A rule for a token that carries our meta, in a sheet that is being rendered. */
function made(make: Made): RendererRule {
  return (tokens, index, _options, env, self) => {
    const token = tokens[index];
    const meta = token === undefined ? null : metaOf(token);
    const rendering = renderingIn(env);
    if (token === undefined || meta === null || rendering === null) return '';
    const outer = outerOf(token, (own) => self.renderAttrs({ attrs: own }));
    return make(meta, rendering, token, outer).markup;
  };
}

/** Attributes that the preview has given a token: its line for scrolling together. Its classes come apart, to stand behind ours. */
function outerOf(token: Token, write: (attrs: [string, string][]) => string): Outer {
  const attrs = (token.attrs ?? []).map(([name, value]): [string, string] => [name, String(value)]);
  const classes = attrs.filter(([name]) => name === 'class').map(([, value]) => ` ${value}`);
  const others = attrs.filter(([name]) => name !== 'class');
  return { classes: classes.join(''), attributes: trusted(write(others)) };
}

const renderRules: Readonly<Record<string, RendererRule>> = {
  [tokenTypes.block]: made((meta, rendering, _token, outer) => {
    const wanted = meta.kind === 'block' ? rendering.wishes.block(meta.block) : null;
    return wanted === null ? nothing : figureHtml(wanted, null, rendering, outer);
  }),
  [tokenTypes.passageOpen]: made((meta, { meant, wishes, hints }, _token, outer) => {
    const passage = meta.kind === 'passage' ? meant.sheet.passages[meta.passage] : undefined;
    if (meta.kind !== 'passage' || passage === undefined) return nothing;
    switch (sharedWith(passage, wishes.audience)) {
      case 'nothing':
        return nothing;
      case 'space':
        return answerRoom(passage, outer);
      case 'hint':
        return hintMark(hints.get(meta.passage) ?? 0, outer);
      case 'text':
        return passageStart(passage, outer);
    }
  }),
  [tokenTypes.passageClose]: () => passageEnd,
  [tokenTypes.figuresOpen]: made((meta, rendering, _token, outer) =>
    meta.kind === 'figures' ? groupHtml(meta.inserts, rendering, outer) : nothing,
  ),
  [tokenTypes.insert]: made((meta, rendering) =>
    meta.kind === 'insert' ? insertInLine(meta.insert, rendering) : nothing,
  ),
  [tokenTypes.total]: made((_meta, _rendering, { content }) => mark(content)),
  [tokenTypes.point]: (tokens, index, options) => {
    const next = tokens[index + 1];
    const broken = next?.type === 'hardbreak' || (next?.type === 'softbreak' && options.breaks === true);
    const end = broken || next === undefined ? nothing : html`<br>`;
    return html`${mark(tokens[index]?.content ?? '')}${end}`.markup;
  },
  [tokenTypes.html]: made((_meta, _rendering, { block, content }, { classes, attributes }) =>
    block ? html`<p class="papervolt-html${classes}"${attributes}>${content}</p>\n` : html`${content}`,
  ),
  [tokenTypes.newPage]: made(
    (_meta, _rendering, _token, { classes, attributes }) =>
      html`<div class="papervolt-new-page${classes}"${attributes}>new page</div>\n`,
  ),
};

const mark = (content: string): Html => html`\u00a0<span class="papervolt-mark">${content}</span>`;
