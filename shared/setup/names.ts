/** Binds the names of a setup: electrodes, probes and rows share one namespace. */
import { nearest } from '../block/nearest.ts';
import type { Name, ProbeStatement, RowStatement, Shape, Statement } from '../block/tree.ts';
import type { FindingParts } from '../findings/finding.ts';
import type { Inventory } from './inventory.ts';
import { type Report, rewrite } from './report.ts';

type Role = 'electrode' | 'probe' | 'row';

export interface Names {
  /** Pieces of each electrode, in the order written. */
  readonly electrodes: ReadonlyMap<string, readonly Shape[]>;
  readonly probes: ReadonlyMap<string, ProbeStatement>;
  readonly rows: ReadonlyMap<string, RowStatement>;
  /** True where the name is an electrode's; otherwise one finding says why not. */
  electrode(name: Name, use: string): boolean;
  row(name: Name): RowStatement | null;
}

interface Given {
  readonly role: Role;
  readonly name: Name;
}

export function bindNames(inventory: Inventory, report: Report): Names {
  const electrodes = new Map<string, Shape[]>();
  const probes = new Map<string, ProbeStatement>();
  const rows = new Map<string, RowStatement>();
  const given = new Map<string, Given>();
  for (const statement of inventory.statements) {
    const role = roleOf(statement);
    if (role === null || !isNamed(statement)) continue;
    const name = statement.name.text;
    const first = given.get(name);
    if (first !== undefined && (role !== 'electrode' || first.role !== 'electrode')) {
      repeated(statement.name, role, first, new Set(given.keys()), report);
      continue;
    }
    if (first === undefined) given.set(name, { role, name: statement.name });
    if (statement.kind === 'shape') electrodes.set(name, [...(electrodes.get(name) ?? []), statement]);
    if (statement.kind === 'probe') probes.set(name, statement);
    if (statement.kind === 'row') rows.set(name, statement);
  }
  const misses = missing(inventory, given, report);
  return {
    electrodes,
    probes,
    rows,
    electrode: (name, use) =>
      electrodes.has(name.text) ||
      misses(name, { role: 'electrode', use, known: [...electrodes.keys()] }) !== null,
    row: (name) =>
      rows.get(name.text) ??
      misses(name, { role: 'row', use: 'A distance is counted along a row.', known: [...rows.keys()] }),
  };
}

interface Sought {
  readonly role: Role;
  /** What such a name is needed for. */
  readonly use: string;
  readonly known: readonly string[];
}

/** Says why a name is none of those sought: its line is broken, it is something else, or nothing has it. */
function missing(
  { statements, lost }: Inventory,
  given: ReadonlyMap<string, Given>,
  report: Report,
): (name: Name, sought: Sought) => null {
  const broken = new Set(statements.flatMap((s) => (s.kind === 'broken' && s.name ? [s.name.text] : [])));
  return ({ text, span }, { role, use, known }) => {
    if (broken.has(text) || lost.has(text)) {
      return report('waits-for-line', {
        span,
        message: `This waits for ${text}, whose line cannot be used yet.`,
      });
    }
    const actual = given.get(text)?.role;
    const suggestions = suggestNames({ text, span }, known, actual !== undefined);
    if (actual === undefined) {
      return report('name-unknown', { span, message: `There is no ${role} ${text}.`, ...suggestions });
    }
    const message = `${text} is ${article(actual)} ${actual}. ${use}`.trimEnd();
    return report('name-kind', { span, message, ...suggestions });
  };
}

const article = (role: Role): string => (role === 'electrode' ? 'an' : 'a');

const roleOf = ({ kind }: Statement): Role | null =>
  kind === 'shape' ? 'electrode' : kind === 'probe' || kind === 'row' ? kind : null;

const isNamed = (s: Statement): s is Shape | ProbeStatement | RowStatement =>
  s.kind === 'shape' || s.kind === 'probe' || s.kind === 'row';

function repeated(name: Name, role: Role, first: Given, taken: ReadonlySet<string>, report: Report): void {
  const free = freeName(name.text, taken);
  report('name-twice', {
    span: name.span,
    message: `${name.text} is already ${article(first.role)} ${first.role}. Call this ${role} ${free}?`,
    fixes: [rewrite(name.span, free)],
    related: [{ span: first.name.span, message: `${name.text} stands here first.` }],
  });
}

/** The next letter of the alphabet for a single letter, otherwise the name with a number, that is not taken. */
export function freeName(name: string, taken: ReadonlySet<string>): string {
  if (/^[A-Za-z]$/u.test(name)) {
    const first = name < 'a' ? 65 : 97;
    for (let step = 1; step < 26; step++) {
      const letter = String.fromCharCode(first + ((name.charCodeAt(0) - first + step) % 26));
      if (!taken.has(letter)) return letter;
    }
  }
  for (let number = 2; ; number++) if (!taken.has(`${name}-${number}`)) return `${name}-${number}`;
}

/** Names that may have been meant: near in spelling, or with the same first letter; where `always` asks for one, the next in the alphabet. */
export function suggestNames(
  name: Name,
  known: readonly string[],
  always = false,
): Required<Pick<FindingParts, 'fixes' | 'hints'>> {
  const others = [...new Set(known)].filter((other) => other !== name.text);
  const near = [nearest(name.text, others), others.filter((other) => initial(other) === initial(name.text))];
  const chosen = near.find((list) => list.length > 0) ?? (always ? nextInAlphabet(name.text, others) : []);
  const fixes = chosen.slice(0, 3).map((other) => rewrite(name.span, other));
  return { fixes, hints: fixes.length > 0 ? [] : [hint(others)] };
}

const hint = (others: readonly string[]): string =>
  others.length === 0 ? 'Nothing is named yet.' : `Named here: ${others.slice(0, 8).join(', ')}.`;

const initial = (name: string): string => name.charAt(0).toLowerCase();

/** The name that begins nearest in the alphabet; of two the one given first. */
function nextInAlphabet(name: string, others: readonly string[]): readonly string[] {
  const apart = (other: string): number => Math.abs((other.codePointAt(0) ?? 0) - (name.codePointAt(0) ?? 0));
  return [...others].sort((a, b) => apart(a) - apart(b)).slice(0, 1);
}
