/** Passages in a preview: each named by a word, room to answer in, where hints are found. */
import type { Audience } from '../../block/tree.ts';
import { type Html, html } from '../print/html.ts';
import { answerSpace, tierMarks } from '../print/passages.ts';
import type { FrontMatter, Passage, PassageKind } from '../sheet.ts';
import type { Outer } from './part-html.ts';
import { isTier } from './reader-tokens.ts';

/** The opening tag and the name; its content and `</section>` follow. */
export function passageStart({ kind }: Passage, { classes, attributes }: Outer): Html {
  return html`<section class="papervolt-passage papervolt-${kind}${classes}"${attributes}>\n<p class="papervolt-name">${nameOf(kind)}</p>\n`;
}

export const passageEnd = '</section>\n';

export function answerRoom(passage: Passage, { classes, attributes }: Outer): Html {
  return html`<div class="papervolt-space${classes}"${attributes}>\n${answerSpace(passage)}</div>\n`;
}

export function hintMark(number: number, { classes, attributes }: Outer): Html {
  return html`<p class="papervolt-hint-mark${classes}"${attributes}>Hint ${number} is on the last page.</p>\n`;
}

/** `hints`: rendered. */
export function hintsHtml(hints: readonly Html[]): Html {
  return html`<section class="papervolt-hints">\n<h2>Hints</h2>\n<ol>\n${hints.map((hint) => html`<li>\n${hint}</li>\n`)}</ol>\n</section>\n`;
}

/** Who sees the sheet so, at its head. */
export function readerNote(audience: Audience, { audience: only }: FrontMatter): Html {
  const excluded =
    only === null || only === audience
      ? null
      : html` The sheet is for ${only} alone: ${audience} get no print.`;
  return html`<p class="papervolt-reader">As ${audience} see it.${excluded}</p>\n`;
}

function nameOf(kind: PassageKind): string {
  if (isTier(kind)) return `${tierMarks[kind]} in that copy`;
  return kind === 'broken' ? 'not closed or not known: pupils do not get it' : kind;
}
