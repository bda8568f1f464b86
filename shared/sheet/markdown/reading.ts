/** What our rules share while markdown-it parses one text; it travels in markdown-it's environment. */
import type { Env, Token } from 'markdown-it';
import type { Block } from '../../block/tree.ts';
import { type Finding, type FindingParts, finding } from '../../findings/finding.ts';
import type { SheetCode } from '../../findings/sheet-codes.ts';
import { KnownBlocks } from '../../setup/known-blocks.ts';
import { type LineIndex, lineIndex, type Source } from '../../text/source.ts';
import type { Span } from '../../text/span.ts';
import type { Insert, MarkTotal, Passage, Readers, RunningPiece, Sheet, SheetAllowance } from '../sheet.ts';

/** The content of a paragraph, heading or cell, and the way back to the file. */
export interface Places {
  readonly content: string;
  /** Offset in the file of an offset in the content. */
  at(offset: number): number;
}

/** An insert in the content of its paragraph; unclosed where its brace is missing. */
export interface FoundInsert {
  readonly from: number;
  readonly closed: boolean;
}

/** `[2]` taken from the end of a paragraph. */
export interface MarksCut {
  readonly marks: number;
  readonly span: Span;
  /** Of the paragraph before the cut. */
  readonly places: Places;
}

export class Reading {
  /** The text as it stands in the file; markdown-it's lines are its lines, one for one. */
  readonly source: Source;
  /** Blocks of earlier readings. */
  readonly known: KnownBlocks;
  readonly text: string;
  readonly index: LineIndex;
  readonly findings: Finding[] = [];
  /** A sheet has at least one block. In other texts our rules do nothing; `looking`: blocks are being looked for. */
  state: 'other' | 'looking' | 'sheet' = 'other';
  /** Of the front matter's lines between its rules, and of the whole. */
  front: { readonly inside: Span; readonly whole: Span } | null = null;
  /** Inserts as the inline parser found them. */
  readonly found = new Map<Token, FoundInsert>();
  /** Where `<` was looked at for HTML, in the content that became these tokens. */
  readonly tags = new Map<readonly Token[], number[]>();
  readonly passages: Passage[] = [];
  readonly blocks: { readonly block: Block; readonly readers: Readers }[] = [];
  readonly inserts: Insert[] = [];
  readonly allowances: SheetAllowance[] = [];
  readonly totals: MarkTotal[] = [];
  readonly running: RunningPiece[] = [];
  /** Marks that were taken from the end of paragraphs, by the inline token of the paragraph. */
  readonly cuts = new Map<Token, MarksCut>();
  sheet: Sheet | null = null;

  constructor(source: Source, known: KnownBlocks) {
    this.source = source;
    this.known = known;
    known.begin();
    this.text = source.text;
    this.index = lineIndex(source.text);
  }

  /** A line of the file, without its end. */
  line(line: number): string {
    return this.text.slice(this.index.startOf(line), this.index.endOf(line));
  }

  /** The same as markdown-it sees it. */
  parserLine(line: number): string {
    return this.line(line).replaceAll('\0', '\ufffd');
  }

  report(code: SheetCode, parts: FindingParts): void {
    this.findings.push(finding(code, parts));
  }
}

const key = 'papervolt';
const nameKey = 'papervolt_name';
const knownKey = 'papervolt_known';

/** An environment for parsing a source of that name. */
export function environmentFor(source: Source, known = new KnownBlocks()): Env {
  const env = { [nameKey]: source.name };
  keepKnown(env, known);
  return env;
}

export function keepKnown(env: Env, known: KnownBlocks): void {
  env[knownKey] = known;
}

export function knownIn(env: Env): KnownBlocks {
  const known = env[knownKey];
  return known instanceof KnownBlocks ? known : new KnownBlocks();
}

export function sourceName(env: Env): string {
  const name = env[nameKey];
  return typeof name === 'string' ? name : '';
}

export function readingIn(env: Env | undefined): Reading | null {
  const reading = env?.[key];
  return reading instanceof Reading ? reading : null;
}

export function keepReading(env: Env, reading: Reading): void {
  env[key] = reading;
}
