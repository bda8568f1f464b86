/** Markdown-it's flat stream of opening and closing tokens as a tree. */
import type { Token } from 'markdown-it';

export interface TokenNode {
  readonly token: Token;
  readonly children: readonly TokenNode[];
}

/** An opening token takes what follows up to its close; a close too many is dropped, one missing is at the end. */
export function treeOf(tokens: readonly Token[]): readonly TokenNode[] {
  const root: TokenNode[] = [];
  const open: TokenNode[][] = [root];
  for (const token of tokens) {
    if (token.nesting === -1) {
      if (open.length > 1) open.pop();
      continue;
    }
    const children: TokenNode[] = token.children === null ? [] : [...treeOf(token.children)];
    open.at(-1)?.push({ token, children });
    if (token.nesting === 1) open.push(children);
  }
  return root;
}
