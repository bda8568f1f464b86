/**
 * A drawing before it is written down: plain shapes and labels in printed mm, y up, origin at the paper's bottom left corner. One
 * file (`svg.ts`) turns it into SVG; styles are named, their widths and dashes stand in `pens.ts`.
 */

/** What a mark means; its pen follows from it. */
export type Style =
  | 'board'
  | 'paper'
  | 'tick'
  | 'paper-clip'
  | 'ruling'
  | 'metal'
  | 'metal-face'
  | 'hatch'
  | 'overhang'
  | 'equipotential'
  | 'carbon-dot'
  | 'field-line'
  | 'barb'
  | 'lead'
  | 'casing'
  | 'clip'
  | 'terminal'
  | 'junction'
  | 'probe'
  | 'leader'
  | 'row'
  | 'dimension'
  | 'dimension-end'
  | 'hole'
  | 'cut'
  | 'patch'
  | 'lifted'
  | 'grain'
  | 'circuit'
  | 'circuit-thick';

export type PathPart =
  | { readonly to: 'move' | 'line'; readonly x: number; readonly y: number }
  | {
      readonly to: 'arc';
      readonly x: number;
      readonly y: number;
      readonly radius: number;
      readonly large: boolean;
      readonly anticlockwise: boolean;
    }
  | { readonly to: 'close' };

export interface Path {
  readonly kind: 'path';
  readonly style: Style;
  readonly parts: readonly PathPart[];
}
export interface Dot {
  readonly kind: 'dot';
  readonly style: Style;
  readonly x: number;
  readonly y: number;
  readonly diameter: number;
}
export type Item = Path | Dot | Label;

/** Upright runs, italic quantity symbols, subscripts. */
export interface TextRun {
  readonly text: string;
  readonly form: 'upright' | 'italic' | 'subscript';
}

export interface Label {
  readonly kind: 'label';
  readonly x: number;
  /** Of the base line. */
  readonly y: number;
  readonly runs: readonly TextRun[];
  readonly size_mm: number;
  readonly anchor: 'start' | 'middle' | 'end';
  /** Wipes the lines beneath it, as a closed equipotential breaks for its value. */
  readonly halo: boolean;
}

/** A group keeps things together that belong together and may be named for styling. */
export interface Layer {
  readonly name: string;
  readonly items: readonly Item[];
}

export interface Scene {
  /** Extent in printed mm, board and outside labels included. */
  readonly left: number;
  readonly bottom: number;
  readonly width: number;
  readonly height: number;
  /** Printed mm for one mm of the bench: 1 at full size. */
  readonly scale: number;
  readonly layers: readonly Layer[];
  /** For readers that cannot see it. */
  readonly title: string;
  readonly description: string;
}
