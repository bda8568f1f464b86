/** What is known of a key of the front matter or of the word that opens a passage. */
import type { Sheet } from '../sheet/sheet.ts';
import { type Span, span } from '../text/span.ts';
import { keyHelp, keyValues } from './completion/front-matter.ts';
import { passageReaders } from './completion/passage.ts';
import { holds } from './place.ts';

interface Help {
  readonly span: Span;
  readonly text: string;
  readonly drawing: null;
}

export function textHover(sheet: Sheet, offset: number): Help | null {
  const { front, source } = sheet;
  if (front.span !== null && holds(front.span, offset)) return keyHover(source.text, front.span, offset);
  const passage = sheet.passages.find(({ opening }) => holds(opening, offset));
  const readers = passage === undefined ? undefined : passageReaders[passage.kind];
  if (passage === undefined || readers === undefined) return null;
  return { span: passage.opening, text: `**${passage.kind}**: for ${readers}`, drawing: null };
}

function keyHover(text: string, front: Span, offset: number): Help | null {
  const lines = text.slice(front.from, front.to).matchAll(/^([a-z-]+):/gmu);
  for (const { 1: key = '', index } of lines) {
    const at = span(front.from + index, front.from + index + key.length);
    const help = Object.hasOwn(keyHelp, key) ? keyHelp[key] : undefined;
    if (help === undefined || !holds(at, offset)) continue;
    const values = keyValues[key];
    return {
      span: at,
      text: `**${key}**: ${values === undefined ? help : values.join(', ')}`,
      drawing: null,
    };
  }
  return null;
}
