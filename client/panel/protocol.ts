/**
 * What the panel's page and the extension say to each other, and the one place where either side looks at what the other has sent:
 * nothing that does not have the form is acted upon.
 */
import type { editing } from '../../shared/index.ts';
import { anyText, either, type Form, fields, listOf, number, orNull, pair, truth, word } from './forms.ts';

type PanelDrawing = editing.PanelDrawing;

/** Where the panel looks, kept by the page so that a reload of the window brings it back. */
export interface Lookout {
  readonly uri: string;
  readonly line: number;
}

/** From the extension to the page. `ask` is the number of the page's question. */
export type ToPage =
  | { readonly kind: 'drawing'; readonly lookout: Lookout; readonly drawing: PanelDrawing }
  /** There is nothing to draw, and why. */
  | { readonly kind: 'nothing'; readonly text: string }
  | { readonly kind: 'slip'; readonly ask: number; readonly slip: editing.Slip | null }
  /** Null: there is no answer, since a newer question has taken its place or the text has changed. */
  | { readonly kind: 'moved'; readonly ask: number; readonly moved: Shown | null }
  /** The text has been changed as asked, or not, and why. */
  | { readonly kind: 'applied'; readonly ask: number; readonly outcome: Applied };

/** A move as the page sees it: the edits stay with the extension. */
export type Shown =
  | { readonly drawing: PanelDrawing | null; readonly handle: string; readonly said: string }
  | { readonly refusal: string };
export type Applied = { readonly handle: string; readonly said: string } | { readonly refusal: string };

/** From the page to the extension. */
export type ToExtension =
  | { readonly kind: 'ready' }
  | ({ readonly kind: 'slip'; readonly ask: number } & AtPoint)
  | ({ readonly kind: 'move'; readonly ask: number } & OfHandle)
  /** Makes the move in the text. */
  | ({ readonly kind: 'drop'; readonly ask: number } & OfHandle)
  | ({ readonly kind: 'addProbe'; readonly ask: number } & AtPoint)
  /** Whatever `move` is under way is not wanted any more. */
  | { readonly kind: 'cancel' }
  | { readonly kind: 'goTo'; readonly line: number; readonly character: number };

export interface AtPoint {
  readonly block: number;
  readonly x_mm: number;
  readonly y_mm: number;
}
export interface OfHandle {
  readonly block: number;
  readonly handle: string;
  readonly by_mm: readonly [number, number];
}

const place = fields({ line: number, character: number });

const drawing: Form<PanelDrawing> = fields({
  version: number,
  block: number,
  name: anyText,
  svg: anyText,
  title: anyText,
  description: anyText,
  frame: fields({ left: number, top: number, scale: number }),
  paper: fields({ width_mm: number, height_mm: number }),
  handles: listOf(
    fields({
      id: anyText,
      kind: either(word('electrode'), word('probe'), word('row-end')),
      label: anyText,
      x_mm: number,
      y_mm: number,
      path: orNull(anyText),
      place,
    }),
  ),
  stale: truth,
  message: orNull(anyText),
});

const slip: Form<editing.Slip> = fields({ text: anyText, direction_deg: orNull(number) });
const refusal = fields({ refusal: anyText });
const range = fields({ start: place, end: place });

/** Answers of the language server. */
export const answers = {
  panel: orNull(drawing),
  slip: orNull(slip),
  moved: orNull(
    either<editing.Moved>(
      refusal,
      fields({
        edits: listOf(fields({ range, newText: anyText })),
        version: number,
        drawing: orNull(drawing),
        handle: anyText,
        said: anyText,
      }),
    ),
  ),
} as const;

export const toPage: Form<ToPage> = either<ToPage>(
  fields({ kind: word('drawing'), lookout: fields({ uri: anyText, line: number }), drawing }),
  fields({ kind: word('nothing'), text: anyText }),
  fields({ kind: word('slip'), ask: number, slip: orNull(slip) }),
  fields({
    kind: word('moved'),
    ask: number,
    moved: orNull(
      either<Shown>(refusal, fields({ drawing: orNull(drawing), handle: anyText, said: anyText })),
    ),
  }),
  fields({
    kind: word('applied'),
    ask: number,
    outcome: either<Applied>(refusal, fields({ handle: anyText, said: anyText })),
  }),
);

const atPoint = { ask: number, block: number, x_mm: number, y_mm: number };
const ofHandle = { ask: number, block: number, handle: anyText, by_mm: pair };

export const toExtension: Form<ToExtension> = either<ToExtension>(
  fields({ kind: word('ready') }),
  fields({ kind: word('slip'), ...atPoint }),
  fields({ kind: word('move'), ...ofHandle }),
  fields({ kind: word('drop'), ...ofHandle }),
  fields({ kind: word('addProbe'), ...atPoint }),
  fields({ kind: word('cancel') }),
  fields({ kind: word('goTo'), ...{ line: number, character: number } }),
);

/** What the page remembers from before a reload. */
export const lookoutForm: Form<Lookout> = fields({ uri: anyText, line: number });
