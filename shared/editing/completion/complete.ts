/** Completion: which part of a sheet the cursor is in, and what may stand there. */
import type { Draft } from '../../checks/examine.ts';
import { isSheet } from '../../sheet/read-sheet.ts';
import { blockPlace, lineSpan } from '../place.ts';
import { headOffers, lineOffers } from './block-line.ts';
import { type Completion, lineBefore, placed, typedIn } from './completion.ts';
import { fenceCompletions, opensFence } from './fence.ts';
import { frontMatterOffers } from './front-matter.ts';
import { insertOffers } from './insert.ts';
import { passageOffers } from './passage.ts';

export function completionsAt(draft: Draft, offset: number): readonly Completion[] {
  const { sheet } = draft;
  const { text } = sheet.source;
  const place = blockPlace(sheet, offset);
  if (place !== null && place.line !== null) {
    const line = place.line < 0 ? place.block.excerpt.head : place.block.excerpt.lines[place.line];
    if (line === undefined || offset < line.at) return [];
    const before = text.slice(lineSpan(line).from, offset);
    const offers = place.line < 0 ? headOffers(draft, place, before) : lineOffers(draft, place, before);
    return placed(offers, offset, typedIn(before));
  }
  const before = lineBefore(sheet.source, offset);
  const typed = typedIn(before);
  if (place === null && opensFence(before)) return fenceCompletions(sheet.source, offset);
  if (!isSheet(sheet)) return [];
  const { span } = sheet.front;
  if (span !== null && offset > span.from && offset < span.to) {
    return placed(frontMatterOffers(sheet, before), offset, typed);
  }
  const passage = /^[\s>*+-]*:{3,}[ \t]*([^:]*)$/u.exec(before)?.[1];
  if (passage !== undefined) return placed(passageOffers(passage), offset, typed);
  return placed(insertOffers(draft, offset), offset, typed);
}
