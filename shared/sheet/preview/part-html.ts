/** The HTML of our own parts in a preview, each in its own element. Reaches no solution: what is solved comes ready from the lookup. */
import type { Setup } from '../../setup/setup.ts';
import type { BoundInsert } from '../inserts/bound.ts';
import { freeBlank } from '../print/blanks.ts';
import { type Html, html, nothing, trusted, withCode } from '../print/html.ts';
import { pupilsView } from '../print/pupils.ts';
import { laterBox, troubleBox } from '../print/stand-ins.ts';
import { blankCells, layoutTable, renderTable, type TableLayout, textCell } from '../print/table-layout.ts';
import { block, noPrint, type Printed, words } from '../print/view.ts';
import type { Lookup } from './lookup.ts';
import type { Meant } from './screen-plan.ts';
import { renderSketch } from './sketch.ts';
import type { Wanted, Wishes } from './wishes.ts';

/** What a rendering of one sheet knows. */
export interface Desk {
  readonly meant: Meant;
  readonly wishes: Wishes;
  readonly lookup: Lookup;
}

/** What stands for something that is made elsewhere: ready, or what was ready last, or what can be had at once. */
interface Standing {
  readonly html: Html;
  /** `waiting`: it will be replaced; `stale`: it is that of an earlier text, which could be solved. */
  readonly state: 'ready' | 'waiting' | 'stale';
  readonly message: string | null;
}

function standing(wanted: Wanted, { lookup }: Desk, atOnce: () => Html): Standing {
  const piece = lookup.piece(wanted);
  if (piece !== null && piece.message === null) {
    return { html: trusted(piece.html), state: 'ready', message: null };
  }
  const last = lookup.lastGood(wanted);
  const message = piece?.message ?? null;
  const waiting = piece === null;
  if (last !== null) return { html: trusted(last), state: waiting ? 'waiting' : 'stale', message };
  return { html: waiting ? atOnce() : trusted(piece.html), state: waiting ? 'waiting' : 'ready', message };
}

/** `attributes`: further ones of the element, with their leading space; `classes` likewise. */
export interface Outer {
  readonly classes: string;
  readonly attributes: Html;
}
export const plain: Outer = { classes: '', attributes: nothing };

/** The same size whatever is shown: a message takes the line of the caption. */
export function figureHtml(
  wanted: Wanted,
  caption: string | null,
  desk: Desk,
  { classes, attributes }: Outer = plain,
): Html {
  const setup = desk.meant.setups[wanted.setups[0] ?? -1];
  const shown = standing(wanted, desk, () => sketchOf(setup, wanted));
  const below =
    shown.message === null
      ? html`<figcaption>${caption}</figcaption>`
      : html`<figcaption class="papervolt-message" title="${shown.message}">${withCode(shown.message)}</figcaption>`;
  const id = wanted.placing.id;
  return html`<figure class="papervolt-figure${classes}" id="${id}"${attributes}><div class="papervolt-drawing${stateClass(shown)}">${shown.html}</div>${below}</figure>\n`;
}

const sketchOf = (setup: Setup | undefined, { placing }: Wanted): Html =>
  setup === undefined ? nothing : trusted(renderSketch(setup, placing));

const stateClass = ({ state }: Standing): string => (state === 'ready' ? '' : ` papervolt-${state}`);

/** An insert in a sentence. */
export function insertInLine(number: number, desk: Desk): Html {
  const { meant, wishes } = desk;
  const bound = meant.bound[number];
  if (bound === undefined) return nothing;
  const wanted = wishes.insert(number);
  if (wanted === null) return inLine(atHand(bound, desk), bound);
  if (wanted.form !== 'value') return alone(bound);
  const shown = standing(wanted, desk, () => html`…`);
  const title = shown.message === null ? nothing : html` title="${shown.message}"`;
  return html`<span class="papervolt-value${stateClass(shown)}"${title}>${shown.html}</span>`;
}

function inLine(printed: Printed, bound: BoundInsert): Html {
  switch (printed.form) {
    case 'words':
      return html`<span class="${bound.target === null ? 'papervolt-trouble' : 'papervolt-blank'}">${printed.html}</span>`;
    case 'nothing':
      return nothing;
    default:
      return alone(bound);
  }
}

const alone = ({ insert }: BoundInsert): Html =>
  html`<span class="papervolt-trouble">${troubleBox(insert.written, 'a table or figure stands alone in a paragraph')}</span>`;

/** Tables and figures that share a paragraph. */
export function groupHtml(numbers: readonly number[], desk: Desk, { classes, attributes }: Outer): Html {
  const parts = numbers.map((number) => insertAlone(number, desk));
  return html`<div class="papervolt-figures${classes}"${attributes}>\n${parts}</div>\n`;
}

function insertAlone(number: number, desk: Desk): Html {
  const bound = desk.meant.bound[number];
  const target = bound?.target ?? null;
  const wanted = desk.wishes.insert(number);
  if (bound === undefined) return nothing;
  if (wanted?.form === 'figure') {
    return figureHtml(wanted, target?.kind === 'drawing' ? target.caption : null, desk);
  }
  if (wanted?.form === 'table' && target?.kind === 'readings') {
    const shown = standing(wanted, desk, () => waitingTable(target));
    const title = shown.message === null ? nothing : html` title="${shown.message}"`;
    return html`<div class="papervolt-table${stateClass(shown)}"${title}>\n${shown.html}</div>\n`;
  }
  if (wanted !== null) return html`<p>${insertInLine(number, desk)}</p>\n`;
  const printed = atHand(bound, desk);
  if (printed.form === 'block') return html`<div class="papervolt-table">\n${printed.html}</div>\n`;
  return printed.form === 'nothing' ? nothing : html`<p>${inLine(printed, bound)}</p>\n`;
}

function waitingTable({ rows, columns, caption }: TableAsked): Html {
  const layout = layoutTable(rows, columns);
  return renderTable(layout, waitingCells(layout), caption);
}

type TableAsked = Extract<BoundInsert['target'], { readonly kind: 'readings' }>;

const waitingCells = (layout: TableLayout) =>
  blankCells(layout).map((column) => column.map((cell) => (cell.kind === 'write' ? textCell('…') : cell)));

/** What needs no drawing and no solution: blanks, pupils' tables, boxes. */
function atHand(bound: BoundInsert, { meant, wishes }: Desk): Printed {
  const { audience, plan } = wishes;
  if (audience === 'pupils') {
    // A drawing that is not wished for is one that draws nothing.
    if (bound.target?.kind === 'drawing') return noPrint;
    return pupilsView(meant, { inserts: new Map(), blocks: new Map(), plan }).insert(bound.insert.number);
  }
  const { target, insert } = bound;
  if (target === null) return words(troubleBox(insert.written, bound.trouble));
  if (target.kind === 'blank') return words(freeBlank(target.unit, target.length_mm));
  return target.kind === 'later' ? block(laterBox(target.head)) : noPrint;
}
