/** The place at which refactorings are asked for: a block and what stands on the line there. */
import type { Block, Statement } from '../../block/tree.ts';
import type { Draft } from '../../checks/examine.ts';
import type { Setup } from '../../setup/setup.ts';
import type { Span } from '../../text/span.ts';
import { blockPlace, meets } from '../place.ts';

export interface Site {
  readonly draft: Draft;
  readonly source: string;
  /** The selection. */
  readonly span: Span;
  /** Number of the block. */
  readonly number: number;
  readonly block: Block;
  readonly setup: Setup;
  /** True on the opening line. */
  readonly onHead: boolean;
  /** What the selection meets, in order. */
  readonly statements: readonly Statement[];
}

/** Null outside our blocks. */
export function siteAt(draft: Draft, span: Span): Site | null {
  const place = blockPlace(draft.sheet, span.from);
  const setup = place === null ? undefined : draft.setups[place.number];
  if (place === null || setup === undefined) return null;
  const { number, block } = place;
  const source = draft.sheet.source.text;
  const statements = block.statements.filter((statement) => meets(statement.span, span));
  return { draft, source, span, number, block, setup, onHead: place.line === -1, statements };
}
