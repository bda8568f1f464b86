/** Binds the names of a setup: electrodes, probes and rows share one namespace. */
import { nearest } from '../block/nearest.ts';
import type { Name, ProbeStatement, RowStatement, Shape, Statement } from '../block/tree.ts';
import type { FindingParts } from '../findings/finding.ts';
import { type Report, rewrite } from './report.ts';
import type { Inventory } from './variation.ts';

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

export function bindNames(inventory: Inventory, report: Report): Names {
  const electrodes = new Map<string, Shape[]>();
  const probes = new Map<string, ProbeStatement>();
  const rows = new Map<string, RowStatement>();
  const given = new Map<string, { readonly role: Role; readonly name: Name }>();
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
  const broken = new Set(
    inventory.statements.flatMap((s) => (s.kind === 'broken' && s.name ? [s.name.text] : [])),
  );
  const waits = (name: Name): boolean => {
    if (!broken.has(name.text) && !inventory.lost.has(name.text)) return false;
    report('waits-for-line', {
      span: name.span,
      message: `This waits for ${name.text}, whose line cannot be used yet.`,
    });
    return true;
  };
  return {
    electrodes,
    probes,
    rows,
    electrode(name, use) {
      if (electrodes.has(name.text)) return true;
      if (waits(name)) return false;
      const role = given.get(name.text)?.role;
      const suggestions = suggestNames(name, [...electrodes.keys()], role !== undefined);
      if (role === undefined)
        report('name-unknown', {
          span: name.span,
          message: `There is no electrode ${name.text}.`,
          ...suggestions,
        });
      else
        report('name-kind', {
          span: name.span,
          message: `${name.text} is a ${role}. ${use}`,
          ...suggestions,
        });
      return false;
    },
    row(name) {
      const row = rows.get(name.text);
      if (row !== undefined) return row;
      if (waits(name)) return null;
      const role = given.get(name.text)?.role;
      const suggestions = suggestNames(name, [...rows.keys()], role !== undefined);
      return role === undefined
        ? report('name-unknown', {
            span: name.span,
            message: `There is no row ${name.text}.`,
            ...suggestions,
          })
        : report('name-kind', {
            span: name.span,
            message: `${name.text} is no row but ${article(role)} ${role}.`,
            ...suggestions,
          });
    },
  };
}

const article = (role: Role): string => (role === 'electrode' ? 'an' : 'a');

const roleOf = ({ kind }: Statement): Role | null =>
  kind === 'shape' ? 'electrode' : kind === 'probe' || kind === 'row' ? kind : null;

const isNamed = (s: Statement): s is Shape | ProbeStatement | RowStatement =>
  s.kind === 'shape' || s.kind === 'probe' || s.kind === 'row';

function repeated(
  name: Name,
  role: Role,
  first: { readonly role: Role; readonly name: Name },
  taken: ReadonlySet<string>,
  report: Report,
): void {
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
