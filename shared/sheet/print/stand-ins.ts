/** Print of values, boxes for what is not known, placeholders for what comes later. No solution. */
import type { InsertHead } from '../sheet.ts';
import { type Html, html, withCode } from './html.ts';

/** A box in the findings colour: a name that means nothing here, or a value that cannot be had. */
export function troubleBox(written: string, trouble: string): Html {
  return html`<span class="unknown">${written}: ${withCode(trouble)}</span>`;
}

const laterNames: Readonly<Record<(InsertHead & { kind: 'later' })['word'], string>> = {
  graph: 'Graph',
  plot: 'Plot at full size',
  placement: 'Outlines to lay under the paper, at full size',
  'cut-outs': 'Pieces to cut out, at full size',
  circuit: 'Circuit diagram',
  kit: 'Kit list',
  stack: 'Order of the layers',
  marks: 'Table of marks',
};

/** In the place of a figure that this version does not print. */
export function laterBox(head: InsertHead & { readonly kind: 'later' }): Html {
  const caption = head.caption === null ? null : html` “${head.caption}”`;
  return html`<div class="later">${laterNames[head.word]}${caption}: not printed by this version.</div>\n`;
}
