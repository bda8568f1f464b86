/** What the blocks of a sheet make, as an outline: setups with their electrodes, probes and rows. */
import type { Block, Statement } from '../block/tree.ts';
import type { Sheet } from '../sheet/sheet.ts';
import type { Span } from '../text/span.ts';
import { openingSpan } from './place.ts';

export interface SheetSymbol {
  readonly kind: 'setup' | 'electrode' | 'probe' | 'row';
  readonly name: string;
  /** Shape of an electrode, `like …` of a setup. */
  readonly detail: string;
  readonly span: Span;
  readonly nameSpan: Span;
  readonly children: readonly SheetSymbol[];
}

export function symbolsOf(sheet: Sheet): readonly SheetSymbol[] {
  return sheet.blocks.map(({ block }) => setupSymbol(block));
}

function setupSymbol(block: Block): SheetSymbol {
  const { name, like } = block.head;
  return {
    kind: 'setup',
    name: name?.text ?? 'setup',
    detail: like === null ? '' : `like ${like.text}`,
    span: block.excerpt.span,
    nameSpan: name?.span ?? openingSpan(block),
    children: block.statements.flatMap(partSymbol),
  };
}

function partSymbol(statement: Statement): readonly SheetSymbol[] {
  switch (statement.kind) {
    case 'shape':
      return [symbol('electrode', statement.shape, statement)];
    case 'probe':
    case 'row':
      return [symbol(statement.kind, statement.kind, statement)];
    default:
      return [];
  }
}

const symbol = (
  kind: SheetSymbol['kind'],
  detail: string,
  { name, span }: Extract<Statement, { kind: 'shape' | 'probe' | 'row' }>,
): SheetSymbol => ({ kind, name: name.text, detail, span, nameSpan: name.span, children: [] });
