/** Lines for drawing: points as x, y pairs in mm, smooth to 0.02 mm where they curve. */

export interface TracedLine {
  /** A closed line does not repeat its first point. */
  readonly points: Float64Array;
  readonly closed: boolean;
}

/** Runs from high to low potential. */
export interface FieldLine extends TracedLine {
  /** Index of the point at the half-way potential, where its barb sits. */
  readonly half: number;
}
