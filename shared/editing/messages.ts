/**
 * What Papervolt's editors and its language server say to each other beyond the Language Server Protocol. Plain data; places are the
 * protocol's own: lines and UTF-16 columns from 0. Lengths are mm on the paper, origin at its bottom left corner, y up.
 */
import type { Audience } from '../block/tree.ts';

export const messages = {
  /** Request: TextPlace → ShownDrawing | null, of the block there or the one whose drawing the insert there asks for. */
  drawing: 'papervolt/drawing',
  /** Request: TextPlace → PanelDrawing | null, of the block there or of the nearest one above it. */
  panel: 'papervolt/panel',
  /** Request: PointAsk → Slip | null. */
  slip: 'papervolt/slip',
  /** Request: MoveAsk → Moved. Nothing in the text is changed: the editor applies the edits, or not. */
  move: 'papervolt/move',
  /** Request: PointAsk → Moved: a line for a new probe. */
  addProbe: 'papervolt/addProbe',
  /** Request: PrintAsk → PrintAnswer. */
  print: 'papervolt/print',
  /** Notification to the server: Watch. While a text is watched, its preview is sent after every change. */
  watch: 'papervolt/watch',
  /** Notification to the editor: PreviewUpdate. */
  preview: 'papervolt/preview',
  /** Notification to the editor: PanelStale: what the panel shows of this text has a newer solution. */
  solved: 'papervolt/solved',
  /** Notification to the editor: ServerState, for the status item. */
  state: 'papervolt/state',
  /** Request to the editor where the server cannot read files itself: null → uris of all Markdown files of the workspace. */
  listFiles: 'papervolt/listFiles',
  /** Request to the editor: { uri } → text | null. */
  readFile: 'papervolt/readFile',
} as const;

export interface TextPlace {
  readonly textDocument: { readonly uri: string };
  readonly position: Place;
}
export interface Place {
  readonly line: number;
  readonly character: number;
}
export interface PlacedEdit {
  readonly range: { readonly start: Place; readonly end: Place };
  readonly newText: string;
}

/** A block as the panel shows it. */
export interface PanelDrawing {
  readonly version: number;
  /** Number of the block in the sheet. */
  readonly block: number;
  readonly name: string;
  /** An SVG element whose colours are CSS variables; of the last setup that could be solved where `stale`. */
  readonly svg: string;
  readonly title: string;
  readonly description: string;
  /** From mm on the paper to units of the SVG's view box: `left + scale · x` and `top − scale · y`. */
  readonly frame: { readonly left: number; readonly top: number; readonly scale: number };
  readonly paper: { readonly width_mm: number; readonly height_mm: number };
  readonly handles: readonly PanelHandle[];
  /** True where the setup as it stands has no solution: the drawing is that of an earlier one. */
  readonly stale: boolean;
  /** Why it is not solved, or what else is to be said below the drawing. */
  readonly message: string | null;
}

/** What can be moved. */
export interface PanelHandle {
  /** Stable while the text's names are. */
  readonly id: string;
  readonly kind: 'electrode' | 'probe' | 'row-end';
  /** For people and screen readers: `bar N`, `first end of row A`. */
  readonly label: string;
  readonly x_mm: number;
  readonly y_mm: number;
  /** Outline to grasp, as an SVG path in mm on the paper, y up; null for a point. */
  readonly path: string | null;
  /** Where its line stands. */
  readonly place: Place;
}

export interface PointAsk {
  readonly textDocument: { readonly uri: string };
  readonly block: number;
  readonly x_mm: number;
  readonly y_mm: number;
}

/** The reading slip for one place of the paper. */
export interface Slip {
  /** `0.75 V at (140, 95) mm; 15.0 V/m toward N`. */
  readonly text: string;
  /** Direction of the field at the place, degrees anticlockwise from x; null where there is none. The equipotential is square to it. */
  readonly direction_deg: number | null;
}

export interface MoveAsk {
  readonly textDocument: { readonly uri: string };
  readonly block: number;
  readonly handle: string;
  readonly by_mm: readonly [number, number];
  /** Whether the drawing after the move is wanted: while the pointer moves and when it stops. */
  readonly draw: boolean;
}

/** Edits to make it so, and what it would then look like; or why it cannot be. */
export type Moved =
  | {
      readonly edits: readonly PlacedEdit[];
      readonly version: number;
      readonly drawing: PanelDrawing | null;
      /** The handle or probe that it is about. */
      readonly handle: string;
      /** `bar P 100 mm right of N becomes 105 mm right of N`, for the slip and for screen readers. */
      readonly said: string;
    }
  | { readonly refusal: string };

export interface PrintAsk {
  readonly textDocument: { readonly uri: string };
}
export interface PrintAnswer {
  readonly prints: readonly { readonly audience: Audience; readonly suffix: string; readonly html: string }[];
  /** Why a reader gets none: errors, stops. */
  readonly withheld: readonly string[];
}

/** `audience` null: no preview of this text is open any more. */
export interface Watch {
  readonly uri: string;
  readonly audience: Audience | null;
}

/** Ready parts of a preview; `keys` are all that the text has now, `pieces` those not sent before. */
export interface PreviewUpdate {
  readonly uri: string;
  readonly audience: Audience;
  readonly keys: readonly string[];
  readonly pieces: readonly PreviewPiece[];
}
export interface PreviewPiece {
  /** By content: same key, same bytes, but that a finer solution may follow a rough one. */
  readonly key: string;
  readonly html: string;
  /** Why there is no solution; the last good piece is then shown dimmed above it. */
  readonly message: string | null;
}

export interface PanelStale {
  readonly uri: string;
}

export interface ServerState {
  readonly state: 'ready' | 'solving';
  /** Sheets that are open. */
  readonly sheets: number;
}
