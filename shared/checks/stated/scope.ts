/**
 * Of which setups something in a sheet is said: those that its sentence names, else the one of the heading, else the one whose block or
 * figures stand before it in the section, else all.
 */
import type { Setup } from '../../setup/setup.ts';
import type { InsertHead, Reference, Sheet } from '../../sheet/sheet.ts';
import type { Subject } from '../rule.ts';
import type { Section } from './sections.ts';

/** One, or all that may be meant. */
export function setupsMeant(
  { sheet, setups }: Pick<Subject, 'sheet' | 'setups'>,
  section: Section,
  at: number,
  text: string,
): readonly Setup[] {
  if (setups.length < 2) return setups;
  const named = setups.filter(({ name }) => isNamed(text, name));
  if (named.length > 0) return named.length === 1 ? named : setups;
  const inHeading = setups.filter(({ name }) => isNamed(section.heading, name));
  if (inHeading.length === 1) return inHeading;
  const shown = new Set([...blocksIn(sheet, section, at), ...figuresIn(sheet, setups, section, at)]);
  const before = setups.filter(({ name }) => shown.has(name));
  return before.length === 1 ? before : setups;
}

/** Names of setups are often plain words: only what calls it a set-up, or nothing but its name, names it for certain. */
function isNamed(text: string, name: string): boolean {
  if (name === 'setup' || !text.toLowerCase().includes(name.toLowerCase())) return false;
  const plain = name.replace(/-/gu, '\\-');
  const kind = '(?:setup|set-up|arrangement|block|case)';
  const said = `^\\W*${plain}\\W*$|^${plain}:|\\b${kind} [“‘"]?${plain}(?![\\p{L}\\p{N}-])|(?<![\\p{L}\\p{N}-])${plain}[”’"]? ${kind}\\b`;
  return new RegExp(said, 'iu').test(text);
}

function blocksIn(sheet: Sheet, { from }: Section, at: number): readonly string[] {
  return sheet.blocks.flatMap(({ block }) => {
    const { span } = block.excerpt;
    return span.from >= from && span.from < at ? [block.head.name?.text ?? 'setup'] : [];
  });
}

function figuresIn(sheet: Sheet, setups: readonly Setup[], { from }: Section, at: number): readonly string[] {
  return sheet.inserts
    .filter(({ span }) => span.from >= from && span.from < at)
    .flatMap(({ head }) => referencesIn(head))
    .flatMap(({ setup, name }) => {
      if (setup !== null) return [setup];
      if (setups.some((one) => one.name === name)) return [name];
      const owners = setups.filter(({ probes, rows }) =>
        [...probes, ...rows].some((one) => one.name === name),
      );
      return owners.map((owner) => owner.name);
    });
}

function referencesIn(head: InsertHead): readonly Reference[] {
  switch (head.kind) {
    case 'reading':
    case 'range':
      return [head.of];
    case 'difference':
      return [head.from, head.to];
    case 'along':
    case 'gradient':
    case 'mean strength':
      return [head.row];
    case 'current':
    case 'resistance':
      return head.of === null ? [] : [head.of];
    case 'readings':
      return head.rows;
    case 'drawing':
      return head.setup === null ? [] : [head.setup];
    case 'later':
      return head.names;
    default:
      return [];
  }
}
