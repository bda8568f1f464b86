/** Plane geometry of the bench: closed outlines of straight and circular edges. Positions in mm, x to the right, y up. */

export interface Point {
  readonly x: number;
  readonly y: number;
}

/** The circle an edge follows from its own first point to that of the next edge; shorter or longer than a half turn alike. */
export interface Arc {
  readonly centre: Point;
  readonly anticlockwise: boolean;
}

export interface Edge {
  readonly from: Point;
  /** Null for a straight edge. */
  readonly arc: Arc | null;
}

/** A closed curve without self-crossings; edge i runs to the first point of edge i + 1. Either sense. */
export interface Outline {
  readonly edges: readonly Edge[];
}

export interface Segment {
  readonly from: Point;
  readonly to: Point;
}
