/**
 * The syntax tree of a block. Every node carries its span in the file. Values are in the working units of `quantity` (mm, V, Ω, A,
 * degrees). A part that could not be read is null and has a finding; the statement stands with what is left.
 */
import type { Finding } from '../findings/finding.ts';
import type { Quantity } from '../quantity/quantity.ts';
import type { Excerpt } from '../text/excerpt.ts';
import type { Span } from '../text/span.ts';

export interface Node {
  readonly span: Span;
}
export interface Name extends Node {
  readonly text: string;
}
export interface Value extends Node, Quantity {}
/** A number without a unit: counts of cells, steps, readings, field lines. */
export interface Count extends Node {
  readonly value: number;
}

export interface Coordinates extends Node {
  readonly kind: 'coordinates';
  readonly x: Value;
  readonly y: Value;
}
/** `centre` (of the paper, `of` null) or `centre of NAME`. */
export interface CentrePoint extends Node {
  readonly kind: 'centre';
  readonly of: Name | null;
}
export type Point = Coordinates | CentrePoint;
/** An end of a row: a point, or an electrode by its name. */
export interface ElectrodeEnd extends Node {
  readonly kind: 'electrode';
  readonly name: Name;
}
export type RowEnd = Point | ElectrodeEnd;

/** Anticlockwise from x: right 0, up 90, left 180, down 270, or the angle given. */
export interface Direction extends Node {
  readonly angle_deg: number;
  readonly word: 'left' | 'right' | 'up' | 'down' | null;
}

export type Side = 'right' | 'left' | 'above' | 'below';
export type Anchor =
  | (Node & { readonly kind: 'at'; readonly point: Point })
  | (Node & { readonly kind: 'beside'; readonly side: Side; readonly gap: Value; readonly of: Name })
  | (Node & { readonly kind: 'midway'; readonly between: readonly [Name, Name] });
export interface Place extends Node {
  readonly anchor: Anchor;
  readonly turned: Value | null;
}

export type Terminal =
  | (Node & { readonly kind: 'positive' | 'negative' | 'floating' })
  | (Node & { readonly kind: 'held'; readonly potential: Value })
  | (Node & { readonly kind: 'joined'; readonly to: Name });

export interface Size extends Node {
  readonly width: Value;
  readonly height: Value;
}

interface ShapeBase extends Node {
  readonly kind: 'shape';
  readonly name: Name;
  /** Null where it is not said; an error unless another piece of the same name says it. */
  readonly terminal: Terminal | null;
}
export interface Opening extends Node {
  readonly width: Value;
  readonly facing: Direction;
}
export interface BarShape extends ShapeBase {
  readonly shape: 'bar';
  readonly size: Size;
  readonly place: Place;
}
export interface DiscShape extends ShapeBase {
  readonly shape: 'disc';
  readonly diameter: Value;
  readonly place: Place;
}
export interface RingShape extends ShapeBase {
  readonly shape: 'ring';
  /** Two of the three are given; the third is null. */
  readonly diameter: Value | null;
  readonly inside: Value | null;
  readonly wall: Value | null;
  readonly opening: Opening | null;
  readonly place: Place;
}
export interface BoxShape extends ShapeBase {
  readonly shape: 'box';
  readonly size: Size;
  readonly wall: Value;
  readonly opening: Opening | null;
  readonly place: Place;
}
export type Tip =
  | (Node & { readonly kind: 'tip'; readonly point: Point })
  | (Node & { readonly kind: 'on'; readonly of: Name; readonly along: Value | null });
export interface SpikeShape extends ShapeBase {
  readonly shape: 'spike';
  readonly base: Value;
  readonly length: Value;
  readonly tipRadius: Value | null;
  readonly tip: Tip;
  readonly pointing: Direction;
}
export interface ProngShape extends ShapeBase {
  readonly shape: 'prong';
  /** Width across, length along the direction it points. */
  readonly size: Size;
  readonly tip: Tip;
  readonly pointing: Direction;
}
export interface OutlineShape extends ShapeBase {
  readonly shape: 'outline';
  readonly corners: readonly Coordinates[];
}
export interface StripShape extends ShapeBase {
  readonly shape: 'strip';
  readonly path: readonly Coordinates[];
  readonly width: Value;
}
export type Shape =
  | BarShape
  | DiscShape
  | RingShape
  | BoxShape
  | SpikeShape
  | ProngShape
  | OutlineShape
  | StripShape;

export interface PaperStatement extends Node {
  readonly kind: 'paper';
  readonly size: Size;
  /** `A4 landscape` and the like, as written; null where width and height are given. */
  readonly format: string | null;
  /** Per square; `y` differs from `x` for paper with a grain. Null where nothing is said. */
  readonly resistance: { readonly x: Value; readonly y: Value } | null;
}
export type SupplySource = 'cell' | 'power-pack' | 'eht' | 'ht';
export type Chemistry =
  | 'zinc-carbon'
  | 'zinc-chloride'
  | 'alkaline'
  | 'nickel-metal-hydride'
  | 'lithium-primary'
  | 'lithium-ion'
  | 'lead-acid';
export interface SupplyStatement extends Node {
  readonly kind: 'supply';
  readonly source: SupplySource;
  /** Cells in series; 1 for other sources. */
  readonly cells: number;
  /** Of one cell, or of the whole supply otherwise. */
  readonly emf: Value;
  readonly internal: Value | null;
  readonly limit: Value | null;
  readonly ac: boolean;
  readonly chemistry: (Node & { readonly word: Chemistry }) | null;
  /** `size AA`, as written. */
  readonly cellSize: Name | null;
}
export interface MeterStatement extends Node {
  readonly kind: 'meter';
  readonly resistance: Value;
  readonly resolution: Value | null;
  readonly range: Value | null;
  readonly tip: Value | null;
  readonly blackLead: Name | null;
}
export interface ClipStatement extends Node {
  readonly kind: 'clip';
  readonly name: Name;
  readonly resistance: Value;
}
export interface ContactStatement extends Node {
  readonly kind: 'contact';
  readonly name: Name;
  readonly resistance: Value;
}
export interface Patch {
  readonly size: Size;
  readonly at: Point;
  readonly turned: Value | null;
}
export interface LiftedStatement extends Node, Patch {
  readonly kind: 'lifted';
  readonly name: Name;
}
export type HoleStatement = Node & { readonly kind: 'hole' } & (
    | ({ readonly form: 'box' } & Patch)
    | { readonly form: 'disc'; readonly diameter: Value; readonly at: Point }
    | { readonly form: 'outline'; readonly corners: readonly Coordinates[] }
  );
export interface SlitStatement extends Node {
  readonly kind: 'slit';
  readonly start: Point;
  readonly end: Point;
}
export interface PaintedStatement extends Node, Patch {
  readonly kind: 'painted';
  readonly resistance: Value;
}
export interface CopperStatement extends Node {
  readonly kind: 'copper';
  readonly thickness: Value;
}
export interface ProbeStatement extends Node {
  readonly kind: 'probe';
  readonly name: Name;
  readonly where: Point | (Node & { readonly kind: 'along'; readonly row: Name; readonly distance: Value });
}
export type RowSteps = Node &
  (
    | { readonly kind: 'every'; readonly step: Value }
    | { readonly kind: 'steps'; readonly count: Count }
    | { readonly kind: 'readings'; readonly count: Count }
    | { readonly kind: 'at'; readonly distances: readonly Value[] }
  );
export interface RowStatement extends Node {
  readonly kind: 'row';
  readonly name: Name;
  readonly start: RowEnd;
  readonly end: RowEnd | (Direction & { readonly kind: 'direction' });
  readonly steps: RowSteps;
}
export type EquipotentialsStatement = Node & { readonly kind: 'equipotentials' } & (
    | { readonly form: 'range'; readonly first: Value; readonly last: Value; readonly step: Value }
    | { readonly form: 'every'; readonly step: Value }
    | { readonly form: 'list'; readonly values: readonly Value[] }
  );
export interface FieldLinesStatement extends Node {
  readonly kind: 'field-lines';
  readonly count: Count;
}
export const drawingParts = [
  'electrodes',
  'probes',
  'dimensions',
  'ruling',
  'circuit',
  'equipotentials',
  'field-lines',
  'values',
] as const;
export type DrawingPart = (typeof drawingParts)[number];
export type Audience = 'pupils' | 'teachers' | 'technicians';
export interface DrawStatement extends Node {
  readonly kind: 'draw';
  /** Empty for `draw nothing`; all for `everything`. */
  readonly parts: readonly DrawingPart[];
  readonly audience: Audience | null;
}
export interface ChangeStatement extends Node {
  readonly kind: 'change';
  readonly name: Name;
  readonly terminal: Terminal;
}
/**
 * `move NAME PLACE`, `move S tip at …`, `move A from … to …` for a row, `move M at A 50 mm` for a probe. A probe moved to a point comes as
 * a place: the line does not show what NAME is.
 */
export interface MoveStatement extends Node {
  readonly kind: 'move';
  readonly name: Name;
  readonly to:
    | (Node & { readonly kind: 'place'; readonly place: Place })
    | (Node & {
        readonly kind: 'tip';
        readonly tip: Tip;
        readonly pointing: Direction | null;
      })
    | (Node & { readonly kind: 'probe'; readonly where: ProbeStatement['where'] })
    | (Node & {
        readonly kind: 'row';
        readonly start: RowEnd;
        readonly end: RowStatement['end'];
        readonly steps: RowSteps | null;
      });
}
export interface WithoutStatement extends Node {
  readonly kind: 'without';
  readonly name: Name;
}
export interface ReverseStatement extends Node {
  readonly kind: 'reverse';
}
/** A line that could not be read. It costs only itself; its findings stand in `Block.findings`. */
export interface BrokenStatement extends Node {
  readonly kind: 'broken';
  /** The word of the table that it begins with, where it does: `paper`, `bar`. */
  readonly word: string | null;
  /** The name the line would have given, where one can be seen: others that refer to it are not misspelt. */
  readonly name: Name | null;
}

export type Statement =
  | PaperStatement
  | SupplyStatement
  | MeterStatement
  | Shape
  | ClipStatement
  | ContactStatement
  | LiftedStatement
  | HoleStatement
  | SlitStatement
  | PaintedStatement
  | CopperStatement
  | ProbeStatement
  | RowStatement
  | EquipotentialsStatement
  | FieldLinesStatement
  | DrawStatement
  | ChangeStatement
  | MoveStatement
  | WithoutStatement
  | ReverseStatement
  | BrokenStatement;

export interface BlockHead extends Node {
  /** Null for a block without a name; it is then called `setup`. */
  readonly name: Name | null;
  readonly like: Name | null;
}

/** `# allow CODE because REASON` in a block. */
export interface Allowance extends Node {
  readonly code: string;
  readonly reason: string;
  /** The line of the file text that it speaks of: the next one that is more than a remark. */
  readonly covers: Span;
}

export interface Block {
  readonly excerpt: Excerpt;
  readonly head: BlockHead;
  readonly statements: readonly Statement[];
  readonly allowances: readonly Allowance[];
  /** Findings of the syntax alone. */
  readonly findings: readonly Finding[];
}
