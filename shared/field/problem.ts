/**
 * The field problem: steady conduction in a thin sheet. div(σ grad V) = 0 on the paper, one potential on each conductor, no current
 * through paper edges, holes and slits. Knows no sheet of text, no supply, no meter.
 */
import type { Outline, Segment } from './geometry/outline.ts';

export interface FieldProblem {
  readonly paper: Outline;
  /** Paper cut away. */
  readonly holes: readonly Outline[];
  /** Cuts without width. */
  readonly slits: readonly Segment[];
  /**
   * Conductors, each of one potential: pieces may overlap each other, holes, slits and the paper's edge. A hollow piece is given by
   * its outer outline and those of its hollows.
   */
  readonly conductors: readonly (readonly Piece[])[];
  /** Resistance per square along x and along y, Ω. */
  readonly sheet_ohm: readonly [number, number];
}

export interface Piece {
  readonly outer: Outline;
  readonly hollows: readonly Outline[];
}

/** An edge of the paper's region: conductor number, or one of these. */
export const INSULATING = -1;

/**
 * The region of bare paper, as the mesher takes it: closed loops with the paper on the left of every edge (outer loops
 * anticlockwise, islands clockwise; a slit inside the paper is a loop there and back). Tests use it directly where an edge without
 * width is an electrode.
 */
export interface Domain {
  readonly loops: readonly Loop[];
  /** Number of conductors, also of those that no loop touches. */
  readonly conductors: number;
  readonly sheet_ohm: readonly [number, number];
}

export interface Loop {
  readonly edges: readonly DomainEdge[];
}

export interface DomainEdge {
  readonly x: number;
  readonly y: number;
  /** Circle followed to the next edge's point; null for a straight edge. */
  readonly arc: { readonly x: number; readonly y: number; readonly anticlockwise: boolean } | null;
  /** Conductor number, or INSULATING. */
  readonly tag: number;
}
