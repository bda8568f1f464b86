/** Tidies the blocks of a sheet; every other character of the file stays. */
import { formatBlock } from '../block/format.ts';
import { readSheet } from './read-sheet.ts';

export function formatSheet(text: string): string {
  const edits = readSheet({ name: '', text }).blocks.flatMap(({ block }) => formatBlock(block));
  let formatted = '';
  let done = 0;
  for (const edit of [...edits].sort((a, b) => a.span.from - b.span.from)) {
    formatted += text.slice(done, edit.span.from) + edit.text;
    done = edit.span.to;
  }
  return formatted + text.slice(done);
}
