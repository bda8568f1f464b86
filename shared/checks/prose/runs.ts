/** Collects the prose of a sheet: paragraphs, items, headings, captions, and tables with their cells. */
import type { RunningPiece, Sheet } from '../../sheet/sheet.ts';
import { cleanText } from './clean-text.ts';
import type { ProseTable, Run } from './run.ts';

export interface Prose {
  /** In order of place, cells too. */
  readonly runs: readonly Run[];
  readonly tables: readonly ProseTable[];
}

export function proseOf(sheet: Sheet): Prose {
  const pieces = new Map(sheet.running.map((piece) => [piece.token, piece]));
  const runs: Run[] = [];
  const tables: Run[][][] = [];
  let kind: Run['kind'] = 'paragraph';
  for (const token of sheet.tokens) {
    if (token.type === 'heading_open') kind = 'heading';
    else if (token.type === 'heading_close' || token.type === 'table_close') kind = 'paragraph';
    else if (token.type === 'table_open') {
      kind = 'cell';
      tables.push([]);
    } else if (token.type === 'tr_open') tables.at(-1)?.push([]);
    if (token.type !== 'inline') continue;
    const piece = pieces.get(token);
    const found = piece === undefined ? [] : runsOf(piece, kind);
    runs.push(...found);
    if (kind === 'cell')
      tables
        .at(-1)
        ?.at(-1)
        ?.push(...found.slice(0, 1));
  }
  return { runs, tables: tables.map(([head = [], ...rows]) => ({ head, rows })) };
}

/** Runs that are known: several rules read the same sheet. */
const known = new WeakMap<RunningPiece, readonly Run[]>();

/** The text itself, then the captions of its inserts. */
export function runsOf(piece: RunningPiece, kind: Run['kind']): readonly Run[] {
  const runs = known.get(piece) ?? readRuns(piece, kind);
  known.set(piece, runs);
  return runs;
}

function readRuns(piece: RunningPiece, kind: Run['kind']): readonly Run[] {
  const { token, content } = piece;
  const { text, offsets, captions } = cleanText(token.children ?? [], content);
  const end = offsets.length === 0 ? 0 : (offsets[offsets.length - 1] ?? 0) + 1;
  const main: Run = { kind, text, at: (index) => piece.at(offsets[index] ?? end) };
  return [
    main,
    ...captions.map(
      ({ from, to }): Run => ({
        kind: 'caption',
        text: content.slice(from, to),
        at: (index) => piece.at(from + index),
      }),
    ),
  ];
}
