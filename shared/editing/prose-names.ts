/** Where the running text speaks of an electrode, a probe or a row by its name: "probe M", "bars N and P", never a bare letter. */
import type { Draft } from '../checks/examine.ts';
import type { Span } from '../text/span.ts';
import { Scope, type Thing } from './occurrences.ts';

/** Empty where another setup gives the same name, since the text does not say which is meant. */
export function proseNames({ sheet, setups }: Draft, { kind, name, block }: Thing): readonly Span[] {
  const scope = new Scope(sheet.blocks.map((one) => one.block));
  const setup = setups[block];
  if (kind !== 'named' || setup === undefined || scope.onlyOwner(name) !== block) return [];
  const heads = [
    ...(setup.electrodes.some((one) => one.name === name) ? electrodeWords : []),
    ...(setup.probes.some((one) => one.name === name) ? ['probe'] : []),
    ...(setup.rows.some((one) => one.name === name) ? ['row'] : []),
  ];
  if (heads.length === 0) return [];
  return sheet.running.flatMap(({ content, at }) =>
    namedIn(withoutCode(content), heads, name).map((from) => ({
      from: at(from),
      to: at(from) + name.length,
    })),
  );
}

const electrodeWords = [
  'electrode',
  'bar',
  'disc',
  'disk',
  'ring',
  'box',
  'spike',
  'prong',
  'outline',
  'strip',
];

/** Code and inserts replaced by as many signs that are part of no name. */
function withoutCode(content: string): string {
  const code = /(?<!`)(`+)(?!`)[\s\S]*?(?<!`)\1(?!`)|[?!]\{[^}]*\}/gu;
  return content.replace(code, (found) => '\u0000'.repeat(found.length));
}

/** Offsets of the name behind one of the words, or in the list behind their plural. */
function namedIn(text: string, heads: readonly string[], name: string): readonly number[] {
  const found: number[] = [];
  const head = new RegExp(`(?<![\\p{L}\\p{N}-])(?:${heads.join('|')})(e?s)?(?=\\s)`, 'giu');
  for (const { 0: word, 1: plural, index } of text.matchAll(head)) {
    let at = index + word.length;
    for (;;) {
      listed.lastIndex = at;
      const next = listed.exec(text);
      if (next === null) break;
      const [whole, before = '', given = ''] = next;
      if (given === name) found.push(at + before.length);
      at += whole.length;
      if (plural === undefined) break;
      between.lastIndex = at;
      const link = between.exec(text);
      if (link === null) break;
      at += link[0].length;
    }
  }
  return found;
}

/** A name with the signs of emphasis round it. */
const listed = /(\s+[*_]{0,3})(\p{L}[\p{L}\p{M}\p{Nd}-]*)[*_]{0,3}/uy;
const between = /,?\s+(?:and|or|to)(?=\s)|,(?=\s)/uy;
