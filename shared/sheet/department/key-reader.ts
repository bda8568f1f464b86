/** Reads keys and values of a department's file, and keeps what is to be said about them. */
import { isMap, isScalar } from 'yaml';
import { nearest } from '../../block/nearest.ts';
import type { DepartmentCode } from '../../findings/department-codes.ts';
import { type Finding, type Fix, finding } from '../../findings/finding.ts';
import type { Span } from '../../text/span.ts';

export interface Entry<Key extends string> {
  readonly key: Key;
  /** Of the key. */
  readonly span: Span;
  /** A node of the YAML tree. */
  readonly value: unknown;
}

export interface Written {
  readonly text: string;
  readonly span: Span;
}

export class KeyReader {
  readonly findings: Finding[] = [];

  report(code: DepartmentCode, span: Span, message: string, fixes: readonly Fix[] = []): void {
    this.findings.push(finding(code, { span, message, fixes }));
  }

  /** What stands under a key: keys that are known, one by one. Another key is named with what may be meant. */
  below<Key extends string>(
    { key, span, value }: Entry<string>,
    known: readonly Key[],
    example: string,
  ): readonly Entry<Key>[] {
    if (isMap(value)) return this.entries(value.items, known);
    if (value === null || textAt(value)?.text === '') return [];
    this.report('department-value', textAt(value)?.span ?? span, `Below \`${key}\` stand keys: ${example}.`);
    return [];
  }

  entries<Key extends string>(
    pairs: readonly { readonly key: unknown; readonly value: unknown }[],
    known: readonly Key[],
  ): readonly Entry<Key>[] {
    return pairs.flatMap(({ key, value }) => {
      const written = textAt(key);
      if (written === null) return [];
      const found = known.find((one) => one === written.text);
      if (found !== undefined) return [{ key: found, span: written.span, value }];
      const meant = meantBy(written.text, known);
      const question = meant[0] === undefined ? '' : ` \`${meant[0]}\`?`;
      this.report(
        'department-key',
        written.span,
        `\`${written.text}\` is not read.${question}`,
        offered(written, meant),
      );
      return [];
    });
  }

  /** The one text behind a key; null where nothing or something else stands there. */
  text({ key, span, value }: Entry<string>, example: string): Written | null {
    const written = textAt(value);
    if (written !== null && written.text !== '') return written;
    if (value !== null && !isScalar(value))
      this.report('department-value', span, `\`${key}\` is one value: \`${key}: ${example}\`.`);
    return null;
  }

  /** One of some words behind a key. */
  word<Word extends string>(entry: Entry<string>, words: readonly Word[]): Word | null {
    const written = this.text(entry, words[0] ?? '');
    const found = words.find((word) => word === written?.text);
    if (written === null || found !== undefined) return found ?? null;
    const listed = `${words.slice(0, -1).join(', ')} or ${words.at(-1)}`;
    const fixes = offered(written, meantBy(written.text, words));
    this.report('department-value', written.span, `\`${entry.key}\` is ${listed}.`, fixes);
    return null;
  }
}

/** Words may be joined with another sign. */
function meantBy(written: string, known: readonly string[]): readonly string[] {
  const joined = written.toLowerCase().replace(/[_\s]+/gu, '-');
  return known.includes(joined) ? [joined] : nearest(joined, known);
}

/** A key or value that is one text; null for anything else. */
function textAt(node: unknown): Written | null {
  if (!isScalar(node)) return null;
  const [from = 0, to = 0] = node.range ?? [];
  return { text: String(node.value ?? '').trim(), span: { from, to } };
}

export function offered({ span }: Written, words: readonly string[]): readonly Fix[] {
  return words.map((text) => ({
    title: `Write ${text}`,
    edits: [{ span, text }],
    certain: words.length === 1,
  }));
}
