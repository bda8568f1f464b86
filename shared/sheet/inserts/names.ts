/** Finds what a name in an insert stands for, among all setups of a sheet, and says kindly what is wrong where it cannot. */
import { nearest } from '../../block/nearest.ts';
import { type Finding, type FindingParts, finding } from '../../findings/finding.ts';
import type { SheetCode } from '../../findings/sheet-codes.ts';
import type { Row, Setup } from '../../setup/setup.ts';
import type { Span } from '../../text/span.ts';
import type { Reference } from '../sheet.ts';
import type { Spot } from './bound.ts';

/** Why an insert stays a box; the finding is null where another finding already says it. */
export interface Trouble {
  readonly message: string;
  readonly finding: Finding | null;
}
export type Found<T> = { readonly found: T } | { readonly trouble: Trouble };

export type NameKind = 'spot' | 'row' | 'electrode';

export interface FoundRow {
  readonly setup: Setup;
  readonly index: number;
  readonly row: Row;
}
export interface FoundSpot {
  readonly setup: Setup;
  readonly spot: Spot;
}

export class Names {
  readonly setups: readonly Setup[];
  /** Names of lines that came to nothing: their findings stand in the block. */
  private readonly lost: ReadonlySet<string>;

  constructor(setups: readonly Setup[]) {
    this.setups = setups;
    this.lost = new Set(setups.flatMap(({ lost }) => lost));
  }

  /** The setup of this name. */
  setup(name: string, span: Span): Found<Setup> {
    const found = this.setups.find((setup) => setup.name === name);
    if (found !== undefined) return { found };
    const names = this.setups.map((setup) => setup.name);
    return trouble('insert-unknown', {
      span,
      ...suggestion(`No setup is called \`${name}\`.`, name, names, span),
    });
  }

  /** The only setup of the sheet; `qualified` is the insert's name for it, as in `bars.current`. */
  onlySetup(span: Span, qualified: (setup: string) => string): Found<Setup> {
    const [only, second] = this.setups;
    if (only !== undefined && second === undefined) return { found: only };
    if (only === undefined) return trouble('insert-unknown', { span, message: 'The sheet has no setup.' });
    return trouble('insert-ambiguous', {
      span,
      message: `The sheet has ${this.setups.length} setups: of which one?`,
      fixes: this.setups.map(({ name }) => replacing(span, qualified(name))),
    });
  }

  /** The one setup that has this name as something of this kind. */
  owner(reference: Reference, kind: NameKind): Found<Setup> {
    if (reference.setup !== null) {
      const { from } = reference.span;
      const setup = this.setup(reference.setup, { from, to: from + reference.setup.length });
      if ('trouble' in setup || has(setup.found, reference.name, kind)) return setup;
      return this.missing(reference, kind, [setup.found]);
    }
    const owners = this.setups.filter((setup) => has(setup, reference.name, kind));
    const [only, second] = owners;
    if (only === undefined) return this.missing(reference, kind, this.setups);
    if (second === undefined) return { found: only };
    return trouble('insert-ambiguous', {
      span: reference.span,
      message: `${reference.name} is in ${owners.length === 2 ? 'two' : owners.length} setups.`,
      fixes: owners.map(({ name }) => replacing(reference.span, `${name}.${reference.name}`)),
    });
  }

  spot(reference: Reference): Found<FoundSpot> {
    const owner = this.owner(reference, 'spot');
    if ('trouble' in owner) return owner;
    const spot = spotIn(owner.found, reference.name);
    if (spot === null) return this.missing(reference, 'spot', [owner.found]);
    return { found: { setup: owner.found, spot } };
  }

  row(reference: Reference): Found<FoundRow> {
    const owner = this.owner(reference, 'row');
    if ('trouble' in owner) return owner;
    const setup = owner.found;
    const index = setup.rows.findIndex((row) => row.name === reference.name);
    const row = setup.rows[index];
    return row === undefined ? this.missing(reference, 'row', [setup]) : { found: { setup, index, row } };
  }

  private missing(
    { name, span, setup }: Reference,
    kind: NameKind,
    setups: readonly Setup[],
  ): { readonly trouble: Trouble } {
    const actual = setups.map((one) => kindOf(one, name)).find((one) => one !== null);
    if (actual !== undefined && actual !== null) {
      return trouble('insert-kind', { span, message: `${name} is ${actual}. ${wants[kind]}` });
    }
    if (this.lost.has(name)) {
      return { trouble: { message: `The line that gives ${name} cannot be read.`, finding: null } };
    }
    const where = setups.length === 1 ? 'The setup' : 'No setup';
    const known = [...new Set(setups.flatMap((one) => namesOf(one, kind)))];
    const message = `${where} has ${setups.length === 1 ? 'no' : 'a'} ${name}.`;
    const said = suggestion(message, name, known, span, setup === null ? '' : `${setup}.`);
    return trouble('insert-unknown', { span, ...said });
  }
}

export function trouble(code: SheetCode, parts: FindingParts): { readonly trouble: Trouble } {
  return { trouble: { message: parts.message, finding: finding(code, parts) } };
}

export function spotIn(setup: Setup, name: string): Spot | null {
  const probe = setup.probes.find((one) => one.name === name);
  if (probe !== undefined) return { kind: 'probe', index: setup.probes.indexOf(probe), probe };
  const electrode = setup.electrodes.find((one) => one.name === name);
  if (electrode === undefined) return null;
  return { kind: 'electrode', index: setup.electrodes.indexOf(electrode), electrode };
}

export function has(setup: Setup, name: string, kind: NameKind): boolean {
  return namesOf(setup, kind).includes(name);
}

export function replacing(span: Span, text: string): NonNullable<FindingParts['fixes']>[number] {
  return { title: `Write ${text}`, edits: [{ span, text }], certain: false };
}

const wants: Readonly<Record<NameKind, string>> = {
  spot: 'A reading belongs to a probe or an electrode; along a row it has a place, as `A at 30 mm`.',
  row: 'A row belongs here.',
  electrode: 'A current belongs to an electrode or to a whole setup.',
};

function namesOf(setup: Setup, kind: NameKind): readonly string[] {
  const electrodes = setup.electrodes.map(({ name }) => name);
  if (kind === 'electrode') return electrodes;
  if (kind === 'row') return setup.rows.map(({ name }) => name);
  return [...setup.probes.map(({ name }) => name), ...electrodes];
}

function kindOf(setup: Setup, name: string): string | null {
  if (setup.rows.some((row) => row.name === name)) return 'a row';
  if (setup.probes.some((probe) => probe.name === name)) return 'a probe';
  return setup.electrodes.some((electrode) => electrode.name === name) ? 'an electrode' : null;
}

function suggestion(
  message: string,
  written: string,
  known: readonly string[],
  span: Span,
  before = '',
): Pick<FindingParts, 'message' | 'hints' | 'fixes'> & { readonly message: string } {
  const near = nearest(written, known);
  const longer = known.filter((name) => name.startsWith(written) || written.startsWith(name));
  const meant = near.length > 0 ? near : longer.length > 0 || known.length > 1 ? longer : known;
  // Names of one letter are near to none and to all.
  const offered = meant.length === 0 && written.length <= 2 ? known : meant;
  const question = meant[0] === undefined ? '' : ` \`${before}${meant[0]}\`?`;
  return {
    message: message + question,
    hints: meant.length > 0 || known.length === 0 ? [] : [`There are ${known.join(', ')}.`],
    fixes: offered.slice(0, 3).map((name) => replacing(span, before + name)),
  };
}
