/** The parts of the lines of our blocks, for colouring. */
import type { PieceKind } from '../block/line-reader.ts';
import { readLines } from '../block/parse.ts';
import type { Sheet } from '../sheet/sheet.ts';
import type { Span } from '../text/span.ts';

export const paintKinds = ['word', 'name', 'number', 'unit', 'remark'] as const;
export type PaintKind = (typeof paintKinds)[number];

export interface Painted {
  readonly kind: PaintKind;
  readonly span: Span;
}

const kindOf: Readonly<Partial<Record<PieceKind, PaintKind>>> = {
  word: 'word',
  name: 'name',
  number: 'number',
  unit: 'unit',
};

/** In order of place. A line that cannot be read is painted as far as it was understood. */
export function paintOf(sheet: Sheet): readonly Painted[] {
  return sheet.blocks.flatMap(({ block }) => {
    const { head } = block;
    const names = [head.name, head.like].flatMap((name) =>
      name === null ? [] : [{ kind: 'name' as const, span: name.span }],
    );
    return [...names, ...readLines(block.excerpt).flatMap(linePaint)];
  });
}

function linePaint({ reader }: ReturnType<typeof readLines>[number]): readonly Painted[] {
  const { line, text, pieces } = reader;
  const painted = pieces.flatMap((piece): readonly Painted[] => {
    const kind = kindOf[piece.kind];
    return kind === undefined ? [] : [{ kind, span: reader.span(piece.from, piece.to) }];
  });
  const remark = line.text.indexOf('#', text.length);
  if (remark < 0) return painted;
  return [...painted, { kind: 'remark', span: reader.span(remark, line.text.trimEnd().length) }];
}
