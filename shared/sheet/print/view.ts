/**
 * What a reader finds in the place of each insert and each block. Views are the only thing the printing of a document knows of
 * setups: whoever makes a view decides what that reader may see.
 */
import type { Audience } from '../../block/tree.ts';
import type { Frame } from '../../drawing/svg.ts';
import type { Html } from './html.ts';

export type Tier = 'support' | 'core' | 'stretch';

/** Where each figure of a print stands. */
export interface FigurePlan {
  ofInsert(number: number): Placing;
  ofBlock(number: number): Placing;
}

export interface Placing {
  /** Unique in the page. */
  readonly id: string;
  /** Printed mm for one mm of the bench, at most 1. */
  readonly scale: number;
  /** Room on the page; a drawing that is still wider shrinks as a whole. */
  readonly limit_mm: number;
  /** For a screen, in the editor's colours: what is shown of the drawing's page, the same whatever is drawn. Absent on paper. */
  readonly screen?: Frame;
}

/** A drawing ready for print. */
export interface Figure {
  readonly svg: Html;
  /** Printed mm for one mm of the bench. */
  readonly scale: number;
  readonly caption: string | null;
  /** Beside the scale: `not solved`. */
  readonly remark: string | null;
}

/** What stands in the place of an insert. */
export type Printed =
  /** In a line of text. */
  | { readonly form: 'words'; readonly html: Html }
  /** On its own: a table, a box. */
  | { readonly form: 'block'; readonly html: Html }
  | { readonly form: 'figure'; readonly figure: Figure }
  | { readonly form: 'nothing' };

/** Finished text and drawings of all that the sheet tells everyone. The only way by which a solved value reaches pupils. */
export interface Told {
  /** By number of the insert. */
  readonly inserts: ReadonlyMap<number, Printed>;
  /** By number of the block. */
  readonly blocks: ReadonlyMap<number, Figure>;
  /** Where all figures of the pupils' print stand: told ones share a scale with those beside them. */
  readonly plan: FigurePlan;
}

export interface View {
  readonly audience: Audience;
  insert(number: number): Printed;
  /** The block's own drawing; null where it draws nothing for this reader. */
  block(number: number): Figure | null;
}

export const noPrint: Printed = { form: 'nothing' };
export const words = (html: Html): Printed => ({ form: 'words', html });
export const block = (html: Html): Printed => ({ form: 'block', html });
