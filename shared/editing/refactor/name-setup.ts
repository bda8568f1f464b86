/** Gives a block without a name one, and writes it where inserts and other blocks speak of the setup. */
import type { Shape, Statement } from '../../block/tree.ts';
import type { Draft } from '../../checks/examine.ts';
import { draftSheet } from '../../checks/examine.ts';
import { freeName } from '../../setup/names.ts';
import { editedText } from '../moving/supposed.ts';
import { occurrencesOf } from '../occurrences.ts';
import type { Refactoring } from './refactoring.ts';
import { sameSetup } from './same-meaning.ts';
import type { Site } from './site.ts';

export function namedSetup({ draft, source, number, block, onHead }: Site): readonly Refactoring[] {
  // A line that cannot be read may have a name in it.
  const isPlain = /^(?:like\s|$)/iu.test(block.excerpt.head.text);
  if (!onHead || block.head.name !== null || !isPlain) return [];
  const taken = new Set(draft.setups.map(({ name }) => name));
  const wanted = nameFor(block.statements);
  const name = taken.has(wanted) ? freeName(wanted, taken) : wanted;
  const { at, text } = block.excerpt.head;
  const before = /\s$/u.test(source.slice(0, at)) ? '' : ' ';
  const written = { span: { from: at, to: at }, text: `${before}${name}${text === '' ? '' : ' '}` };
  const spoken = occurrencesOf(draft)
    .filter(({ thing }) => thing.kind === 'setup' && thing.block === number)
    .map(({ span }) => ({ span, text: name }));
  const edits = [written, ...spoken];
  const after = draftSheet({ name: draft.sheet.source.name, text: editedText(source, edits) });
  return sameSheet(draft, after) ? [{ title: `Name this setup ${name}`, kind: 'extract', edits }] : [];
}

/** By the shape that most pieces have: `bars`. */
function nameFor(statements: readonly Statement[]): string {
  const shapes = statements.filter((statement): statement is Shape => statement.kind === 'shape');
  const words = shapes.map(({ shape }) => shape);
  const count = (word: string): number => words.filter((one) => one === word).length;
  const [most] = [...new Set(words)].sort((a, b) => count(b) - count(a));
  if (most === undefined) return 'first';
  return most === 'box' ? 'boxes' : `${most}s`;
}

function sameSheet(before: Draft, after: Draft): boolean {
  const targets = ({ binding }: Draft): string =>
    binding.bound.map(({ target }) => target?.kind ?? '').join();
  const codes = ({ sheet, setups, binding }: Draft): number =>
    [...sheet.blocks.map(({ block }) => block), ...setups, binding]
      .map(({ findings }) => findings.length)
      .reduce((sum, more) => sum + more, 0);
  if (before.setups.length !== after.setups.length || targets(before) !== targets(after)) return false;
  if (codes(after) > codes(before)) return false;
  return before.setups.every((setup, i) => {
    const other = after.setups[i];
    return other !== undefined && sameSetup(setup, other);
  });
}
