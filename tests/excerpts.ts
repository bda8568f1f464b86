/** Blocks for tests, cut from text without a Markdown parser. */
import type { Excerpt } from '../shared/text/excerpt.ts';
import { lineIndex } from '../shared/text/source.ts';

/** The lines of a block's text, at their offsets in it; `head` is what follows `electrodes`. Offsets of the head lie behind the text. */
export function excerptOf(text: string, head = ''): Excerpt {
  const index = lineIndex(text);
  const lines = Array.from({ length: index.lineCount }, (_, line) => ({
    text: text.slice(index.startOf(line), index.endOf(line)),
    at: index.startOf(line),
  }));
  return {
    lines,
    span: { from: 0, to: text.length + head.length },
    head: { text: head, at: text.length },
  };
}
