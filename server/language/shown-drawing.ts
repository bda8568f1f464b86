/** The drawing of a block as an editor shows it: solved, or the last one that was, pale, with the reason below. */
import { editing } from '../../shared/index.ts';
import type { House } from './house.ts';
import { changed } from './reply.ts';
import type { OpenSheet } from './sheets.ts';

/** Null for a block without paper that never had a solution. */
export async function shownDrawing(
  { sheets, solutions, lastGood }: House,
  sheet: OpenSheet,
  block: number,
): Promise<editing.ShownDrawing | null> {
  const outcome = (await sheets.outcome(sheet, block)) ?? changed();
  const now = async (message: string | null): Promise<editing.ShownDrawing | null> => {
    const drawing = await sheets.drawing(sheet, block);
    if (!sheets.isCurrent(sheet)) changed();
    return drawing === null ? null : { ...drawing, message };
  };
  if (outcome.solved !== null) return now(null);
  const message = editing.whyUnsolved(sheet.draft, block, outcome.trouble);
  const last = lastGood.of(sheet.uri, sheet.draft.setups[block]?.name ?? '');
  const drawing = last === null ? null : await solutions.drawing(last);
  return drawing === null ? now(message) : editing.staleDrawing(drawing, message);
}
