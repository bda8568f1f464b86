/** Reads YAML that is a flat list of keys and values, such as front matter. Every value is text and knows its place. */
import { isMap, parseDocument, type YAMLMap } from 'yaml';
import { type Span, span } from '../text/span.ts';

export interface YamlReading {
  /** Null where the text is no list of keys and values. */
  readonly map: YAMLMap | null;
  readonly troubles: readonly { readonly span: Span; readonly message: string }[];
  /** True for a text that holds something else than keys and values. */
  readonly otherwise: boolean;
}

/** `inside`: the part of the text that is YAML. Null for one so large that it is none of ours. */
export function readYamlMap(text: string, inside: Span): YamlReading | null {
  const yaml = text.slice(inside.from, inside.to);
  if (isTooDeep(yaml)) return null;
  // All values are read as text: a version 1.10 is not the number 1.1.
  const document = parseDocument(yaml, { schema: 'failsafe', uniqueKeys: true, prettyErrors: false });
  const troubles = document.errors.map(({ pos: [from, to], message }) => ({
    span: span(inside.from + from, inside.from + Math.max(to, from)),
    message: `YAML: ${message.split('\n')[0] ?? ''}.`.replace(/[:.]+\.$/u, '.'),
  }));
  const { contents } = document;
  const map = isMap(contents) ? contents : null;
  return { map, troubles, otherwise: map === null && contents !== null && troubles.length === 0 };
}

/** The YAML parser descends once for each level. */
function isTooDeep(yaml: string): boolean {
  if (yaml.length > 65_536) return true;
  const openers = yaml.match(/[[{]|[-?:](?=\s)/gu)?.length ?? 0;
  return openers > 500;
}
