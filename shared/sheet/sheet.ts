/** A sheet read from Markdown: its blocks, front matter, passages, inserts and marks with their places in the file. */
import type { Token } from 'markdown-it';
import type { Audience, Block, DrawingPart } from '../block/tree.ts';
import type { laterFigures } from '../block/words.ts';
import type { Finding } from '../findings/finding.ts';
import type { Source } from '../text/source.ts';
import type { Span } from '../text/span.ts';

export interface FrontMatter {
  readonly span: Span | null;
  readonly title: string | null;
  readonly id: string | null;
  readonly version: string | null;
  readonly date: string | null;
  readonly author: string | null;
  readonly school: string | null;
  readonly status: 'draft' | 'reviewed' | 'issued' | 'withdrawn' | null;
  readonly course: string | null;
  readonly groups: number | null;
  readonly spares: number | null;
  readonly minutes: number | null;
  readonly print: 'A4' | 'Letter';
  readonly language: 'en-GB' | 'en-US';
  /** False where the language is the usual one, or the department's. */
  readonly saysLanguage: boolean;
  readonly reviewed: string | null;
  readonly nextReview: string | null;
  readonly riskAssessment: string | null;
  readonly kit: readonly { readonly item: string; readonly count: number }[];
  readonly audience: Audience | null;
  readonly safetyKeptIn: string | null;
}

export type PassageKind =
  | 'pupils'
  | 'teachers'
  | 'technicians'
  | 'safety'
  | 'answer'
  | 'hint'
  | 'support'
  | 'core'
  | 'stretch'
  /** Misspelt, unclosed or unknown: fails closed, hidden from pupils. */
  | 'broken';

export interface Passage {
  readonly kind: PassageKind;
  /** From its opening colons to its closing ones, or to the end of what it stands in. */
  readonly span: Span;
  /** The opening line from its colons on. */
  readonly opening: Span;
  /** Of its content. */
  readonly readers: Readers;
  /** `answer 4 lines`, `answer box 60 mm`; two ruled lines where nothing is said. */
  readonly space:
    | { readonly kind: 'lines'; readonly count: number }
    | { readonly kind: 'box'; readonly height_mm: number };
}

/** The readers of a place: those that every passage round it lets in. */
export type Readers = readonly Audience[];

/** A name in an insert, with the setup it belongs to where one is written. */
export interface Reference {
  readonly setup: string | null;
  readonly name: string;
  readonly heading: string | null;
  readonly span: Span;
}

export type InsertHead =
  /** Reading at a probe or on an electrode. */
  | {
      readonly kind: 'reading';
      readonly of: Reference;
      readonly form: 'value' | 'no unit' | 'of V0' | 'strength';
    }
  | { readonly kind: 'difference'; readonly from: Reference; readonly to: Reference }
  | { readonly kind: 'along'; readonly row: Reference; readonly distance_mm: number }
  | { readonly kind: 'gradient'; readonly row: Reference }
  | {
      readonly kind: 'mean strength';
      readonly row: Reference;
      readonly from_mm: number;
      readonly to_mm: number;
    }
  /** Of the supply, or of an electrode. */
  | {
      readonly kind: 'current';
      /** `?{N.current}`, `?{bars.current}`: one name may be an electrode or a setup; binding decides. */
      readonly of: Reference | null;
    }
  /** `of` names a setup. */
  | { readonly kind: 'resistance'; readonly of: Reference | null }
  | { readonly kind: 'range'; readonly of: Reference }
  | { readonly kind: 'blank'; readonly unit: string | null; readonly length_mm: number | null }
  | (FigureParts & {
      readonly kind: 'readings';
      readonly rows: readonly Reference[];
      /** In the words of the insert; empty: the usual ones. */
      readonly columns: readonly string[];
    })
  | (FigureParts & {
      readonly kind: 'drawing';
      /** Null: the only setup of the sheet. */
      readonly setup: Reference | null;
      /** Null: the usual parts. */
      readonly parts: readonly DrawingPart[] | null;
    })
  /** Figures that later versions print; teachers get a labelled placeholder, pupils nothing. */
  | (FigureParts & {
      readonly kind: 'later';
      readonly word: LaterWord;
      readonly names: readonly Reference[];
      readonly columns: readonly string[];
      readonly help: 'blank' | 'axes' | 'scales' | 'points' | null;
      readonly hinted: boolean;
      /** `kit 3 sets`. */
      readonly sets: number | null;
    })
  /** Cannot be read: a visible box. */
  | { readonly kind: 'broken'; readonly message: string };

export type LaterWord = (typeof laterFigures)[number];

/** What every table or figure may say about itself. */
export interface FigureParts {
  readonly size: 'half' | 'full' | null;
  readonly caption: string | null;
}

export interface Insert {
  /** `?{…}` asks pupils, `!{…}` tells everyone. */
  readonly told: boolean;
  readonly head: InsertHead;
  readonly span: Span;
  readonly written: string;
  /** Alone in its paragraph (with other inserts only): a table or figure. */
  readonly alone: boolean;
  readonly readers: Readers;
  /** Number in the sheet, in order of place. */
  readonly number: number;
  /** The number stands without its unit: `, no unit` is written, or it stands in a table column whose heading carries the unit. */
  readonly bareNumber: boolean;
  /** Symbol of the unit in the heading of its table column, in which the number is wanted: `mV`. */
  readonly columnUnit: string | null;
}

export interface SheetAllowance {
  readonly code: string;
  readonly reason: string;
  readonly span: Span;
  /** The line it covers. */
  readonly covers: Span;
}

/** `[2]` at the end of a list item or paragraph. */
export interface MarkTotal {
  readonly marks: number;
  readonly span: Span;
  /** Sum of the points in the answer that belongs to it; null where there is no answer. */
  readonly points: number | null;
}

/** Running text as Markdown gives it: a paragraph, a heading or a cell of a table. */
export interface RunningPiece {
  /** The inline token; what it is made of stands in its `children`. */
  readonly token: Token;
  /** With its markup and comments, without prefixes of lines and without marks. */
  readonly content: string;
  /** Offset in the file of an offset in `content`. */
  at(offset: number): number;
}

export interface Sheet {
  readonly source: Source;
  /** What markdown-it and our rules made of it; see `markdown/tokens.ts`. Empty where the text has no block: no sheet. */
  readonly tokens: readonly Token[];
  readonly front: FrontMatter;
  readonly blocks: readonly { readonly block: Block; readonly readers: Readers }[];
  readonly passages: readonly Passage[];
  readonly inserts: readonly Insert[];
  readonly totals: readonly MarkTotal[];
  readonly allowances: readonly SheetAllowance[];
  /** All running text, in order of place. */
  readonly running: readonly RunningPiece[];
  /** Findings of reading alone: front matter, passages, inserts' syntax, marks, fences; block findings stand in the blocks. */
  readonly findings: readonly Finding[];
}
