/** Binds the names of tables and figures. */
import type { Setup } from '../../setup/setup.ts';
import type { Span } from '../../text/span.ts';
import type { InsertHead, LaterWord, Reference } from '../sheet.ts';
import type { HeadedRow, Target } from './bound.ts';
import { type Found, type FoundRow, type Names, trouble } from './names.ts';

type Head<K extends InsertHead['kind']> = InsertHead & { readonly kind: K };

export function bindReadings(names: Names, head: Head<'readings'>): Found<Target> {
  const rows: FoundRow[] = [];
  for (const reference of head.rows) {
    const row = names.row(reference);
    if ('trouble' in row) return row;
    rows.push(row.found);
  }
  return { found: { ...head, rows: headed(rows, head.rows) } };
}

export function bindDrawing(names: Names, head: Head<'drawing'>, span: Span): Found<Target> {
  // Behind `?{drawing`.
  const behind = span.from + '?{drawing'.length;
  const setup =
    head.setup === null
      ? names.onlySetup({ from: behind, to: behind }, (name) => ` ${name}`)
      : names.setup(head.setup.name, head.setup.span);
  return 'trouble' in setup ? setup : { found: { ...head, setup: setup.found } };
}

/** What is printed later has its names looked up all the same. */
export function bindLater(names: Names, head: Head<'later'>): Found<Target> {
  const { size, caption } = head;
  for (const reference of head.names) {
    const found = head.word === 'graph' ? names.row(reference) : ofSetup(names, reference, head.word);
    if ('trouble' in found) return found;
  }
  return { found: { kind: 'later', head, size, caption } };
}

function ofSetup(names: Names, reference: Reference, word: LaterWord): Found<Setup> {
  if (reference.setup === null) return names.setup(reference.name, reference.span);
  const message = `\`${word}\` names whole setups: \`${reference.setup}\`.`;
  return trouble('insert-kind', { span: reference.span, message });
}

/** Setup names are never printed: rows of one name get letters. */
function headed(rows: readonly FoundRow[], references: readonly Reference[]): readonly HeadedRow[] {
  const counts = new Map<string, number>();
  return rows.map((found, i) => {
    const heading = references[i]?.heading ?? null;
    const { name } = found.row;
    const alike = references.filter((other) => other.heading === null && other.name === name).length;
    if (heading !== null || alike < 2) return { ...found, heading: heading ?? name };
    const count = counts.get(name) ?? 0;
    counts.set(name, count + 1);
    return { ...found, heading: `${name} (${String.fromCharCode(97 + (count % 26))})` };
  });
}
