/** Completion: which part of a sheet the cursor is in, and what may stand there. */
import type { Draft } from '../../checks/examine.ts';
import { isSheet } from '../../sheet/read-sheet.ts';
import type { Source } from '../../text/source.ts';
import { blockPlace, lineSpan } from '../place.ts';
import { headOffers, lineOffers } from './block-line.ts';
import { type Completion, offer, placed } from './completion.ts';
import { frontMatterOffers } from './front-matter.ts';
import { insertOffers } from './insert.ts';
import { passageOffers } from './passage.ts';
import { wholeBlock } from './templates.ts';

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
  if (place === null && opensFence.test(before)) return fenceCompletions(sheet.source, offset);
  if (!isSheet(sheet)) return [];
  const { span } = sheet.front;
  if (span !== null && offset > span.from && offset < span.to) {
    return placed(frontMatterOffers(sheet, before), offset, typed);
  }
  const passage = /^[\s>*+-]*:{3,}[ \t]*([^:]*)$/u.exec(before)?.[1];
  if (passage !== undefined) return placed(passageOffers(passage), offset, typed);
  return placed(insertOffers(draft, offset), offset, typed);
}

/** Behind three backticks, in a text that need not be a sheet yet: a block to fill in, closed by the same marks. */
export function fenceCompletions(source: Source, offset: number): readonly Completion[] {
  const before = lineBefore(source, offset);
  const marks = opensFence.exec(before)?.[1];
  if (marks === undefined) return [];
  const [rest = '', next = ''] = source.text.slice(offset).split(/\r\n?|\n/u, 2);
  const text = `${wholeBlock.join('\n')}${closing(marks, rest.trim(), next.trim())}`;
  return placed([{ ...blockOffer, text }], offset, typedIn(before));
}

/** Nothing where an editor has closed the fence already, behind the cursor or on the next line. */
function closing(marks: string, rest: string, next: string): string {
  if (rest === marks) return '\n';
  return rest === '' && next === marks ? '' : `\n${marks}`;
}

/** The part of a word before the cursor. */
function typedIn(before: string): string {
  return /[\p{L}\p{M}\p{N}_-]*$/u.exec(before)?.[0] ?? '';
}

function lineBefore({ text }: Source, offset: number): string {
  const from = Math.max(text.lastIndexOf('\n', offset - 1), text.lastIndexOf('\r', offset - 1)) + 1;
  return text.slice(from, offset);
}

const opensFence = /^[\s>*+\d.)-]*(`{3,}|~{3,})[ \t]*[a-z]*$/u;

const blockOffer = offer('word', 'electrodes', 'opens a block: a setup on conducting paper');
