/** The nodes of a syntax tree, wherever they stand in it. */
import type { Node } from '../block/tree.ts';
import type { Span } from '../text/span.ts';

/** Every node with a span, the node itself first. */
export function nodesIn(tree: unknown): readonly Node[] {
  const found: Node[] = [];
  const visit = (value: unknown): void => {
    if (value === null || typeof value !== 'object') return;
    if (isNode(value)) found.push(value);
    for (const part of Object.values(value)) visit(part);
  };
  visit(tree);
  return found;
}

export const spansIn = (tree: unknown): readonly Span[] => nodesIn(tree).map(({ span }) => span);

function isNode(value: object): value is Node {
  return 'span' in value && typeof value.span === 'object' && value.span !== null && 'from' in value.span;
}
