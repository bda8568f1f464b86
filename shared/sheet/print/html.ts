/**
 * HTML by construction: text becomes markup only through the template below, which escapes everything that is not markup already.
 * So no printed sheet can carry a mark that the sheet's author or a name smuggled in.
 */
import { escapeText } from '../../text/escape.ts';

/** Finished markup. Made by `html`, `joined` and, for the one drawing room's SVG, by `trusted`. */
export interface Html {
  readonly markup: string;
}

type Part = Html | string | number | null | readonly Html[];

/** Template tag: strings and numbers are escaped, markup is taken as it is, null is nothing. */
export function html(literals: TemplateStringsArray, ...parts: readonly Part[]): Html {
  let markup = literals[0] ?? '';
  for (const [i, part] of parts.entries()) markup += markupOf(part) + (literals[i + 1] ?? '');
  return { markup };
}

export const nothing: Html = { markup: '' };

export const isNothing = (part: Html): boolean => part.markup === '';

export const joined = (parts: readonly Html[], between = ''): Html => ({
  markup: parts.map((part) => part.markup).join(between),
});

/** A message in which code stands between backticks. */
export const withCode = (message: string): Html =>
  joined(message.split('`').map((part, i) => (i % 2 === 0 ? html`${part}` : html`<code>${part}</code>`)));

/** For markup made by our own renderers alone: SVG of the drawing room, the stylesheet. */
export const trusted = (markup: string): Html => ({ markup });

function markupOf(part: Part): string {
  if (part === null) return '';
  if (typeof part === 'string') return escapeText(part);
  if (typeof part === 'number') return String(part);
  return 'markup' in part ? part.markup : joined(part).markup;
}
