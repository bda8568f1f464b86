/** Keeps the columns of a line whose words grow or shrink: the next wide gap gives way. */
import type { Block } from '../../block/tree.ts';
import type { TextEdit } from '../../findings/finding.ts';
import type { ExcerptLine } from '../../text/excerpt.ts';

/** The edits of a block's lines, with those of the gaps behind them. Edits that add lines stay as they are. */
export function inTheirColumns({ excerpt }: Block, edits: readonly TextEdit[]): readonly TextEdit[] {
  const loose = edits.filter(({ span }) => !excerpt.lines.some((line) => within(line, span)));
  const kept = excerpt.lines.flatMap((line) => {
    const own = edits.filter(({ span }) => within(line, span));
    return own.length === 0 ? [] : lineEdits(line, own);
  });
  return [...loose, ...kept];
}

const within = ({ at, text }: ExcerptLine, { from, to }: TextEdit['span']): boolean =>
  from >= at && to <= at + text.length;

function lineEdits({ at, text }: ExcerptLine, edits: readonly TextEdit[]): readonly TextEdit[] {
  const ordered = [...edits].sort((a, b) => a.span.from - b.span.from);
  const last = ordered.at(-1);
  const grown = ordered.reduce((sum, { span, text: to }) => sum + to.length - (span.to - span.from), 0);
  if (last === undefined || grown === 0 || ordered.some((edit) => /[\r\n]/u.test(edit.text))) return ordered;
  gapPattern.lastIndex = last.span.to - at;
  const gap = gapPattern.exec(text);
  if (gap === null) return ordered;
  const spaces = ' '.repeat(Math.max(2, gap[0].length - grown));
  const span = { from: at + gap.index, to: at + gap.index + gap[0].length };
  if (span.from > last.span.to) return [...ordered, { span, text: spaces }];
  return [...ordered.slice(0, -1), { span: { from: last.span.from, to: span.to }, text: last.text + spaces }];
}

const gapPattern = / {2,}(?=\S)/gu;
