/** A text as the preview shows it, by our own markdown-it. */
import MarkdownIt from 'markdown-it';
import type { Audience } from '../../block/tree.ts';
import type { Source } from '../../text/source.ts';
import { environmentFor } from '../markdown/reading.ts';
import type { Lookup } from './lookup.ts';
import { previewRules } from './rules.ts';

export function renderSheet(source: Source, audience: Audience, lookup: Lookup): string {
  const md = new MarkdownIt({ html: true });
  previewRules(md, { reader: () => audience, begin: () => lookup });
  return md.render(source.text, environmentFor(source));
}
