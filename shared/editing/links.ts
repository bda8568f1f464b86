/** Documents that the front matter points to: where the risk assessment and the notes on safety are kept. */
import type { Sheet } from '../sheet/sheet.ts';
import { type Span, span } from '../text/span.ts';

export interface Link {
  readonly span: Span;
  /** As written: a URL, or a path from the folder of the sheet. */
  readonly target: string;
}

export function linksOf({ front, source }: Sheet): readonly Link[] {
  if (front.span === null) return [];
  const written = source.text.slice(front.span.from, front.span.to);
  return [...written.matchAll(entry)].flatMap((found): readonly Link[] => {
    const [whole, before = '', value = ''] = found;
    const target = unquoted(value.replace(/[ \t]+#.*$/u, '').trim());
    if (!isUrl.test(target) && !isFile.test(target)) return [];
    const from =
      front.span === null ? 0 : front.span.from + found.index + whole.indexOf(target, before.length);
    return [{ span: span(from, from + target.length), target }];
  });
}

const entry = /^(risk-assessment:|safety:[ \t]*kept-in)[ \t]+([^\r\n]*)/gmu;
const isUrl = /^https?:\/\/[^\s"'<>]+$/u;
/** A path without a scheme or drive that ends as documents do. */
const isFile = /^(?![/\\])[^:"<>|*?\r\n]+\.(?:pdf|docx?|odt|md|markdown|html?|txt|xlsx?|ods)(?:#\S*)?$/iu;

const unquoted = (text: string): string => /^(["'])(.*)\1$/u.exec(text)?.[2] ?? text;
