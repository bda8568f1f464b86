/** Reads a sheet from Markdown text. Total: any text gives a sheet; one without a block has nothing but findings. */
import MarkdownIt from 'markdown-it';
import type { KnownBlocks } from '../setup/known-blocks.ts';
import type { Source } from '../text/source.ts';
import { environmentFor, readingIn } from './markdown/reading.ts';
import { markdownRules } from './markdown/rules.ts';
import type { FrontMatter, Sheet } from './sheet.ts';

/** A parser with our rules, for reading and for printing; HTML is recognised, so that comments are seen. */
function sheetParser(): InstanceType<typeof MarkdownIt> {
  const parser = new MarkdownIt({ html: true });
  markdownRules(parser);
  return parser;
}

/** `language`: of a sheet that does not say. `known`: blocks of earlier readings. */
export function readSheet(
  source: Source,
  language: FrontMatter['language'] = 'en-GB',
  known?: KnownBlocks,
): Sheet {
  const env = environmentFor(source, known);
  parser.parse(source.text, env);
  const sheet = readingIn(env)?.sheet;
  if (!sheet) throw new Error('the rules did not run');
  const { front } = sheet;
  return front.saysLanguage ? sheet : { ...sheet, front: { ...front, language } };
}

/** True for a text with at least one block; others are left alone. */
export function isSheet(sheet: Sheet): boolean {
  return sheet.blocks.length > 0;
}

const parser = sheetParser();
