/** The things in `kit` of the front matter as runs of prose, with their places. */
import type { Sheet } from '../../../sheet/sheet.ts';
import type { Run } from '../../prose/run.ts';

export function kitPieces({ front, source }: Sheet): readonly Run[] {
  const { span, kit } = front;
  if (span === null || kit.length === 0) return [];
  const start = source.text.indexOf('\nkit:', span.from);
  let at = start < 0 ? span.from : start;
  return kit.flatMap(({ item }): readonly Run[] => {
    const found = source.text.indexOf(item, at);
    if (found < 0 || found > span.to) return [];
    at = found + item.length;
    return [{ kind: 'cell', text: item, at: (index) => found + index }];
  });
}
