/**
 * Every place where a setup, an electrode, a probe or a row is named: in blocks and in inserts. A block that is like another one
 * speaks of the other's names. Where it gives one anew, what it has taken over from the other speaks of the new thing, so that all of
 * that name in a line of such blocks is one thing: told by its name and the first block of the line that gives it.
 */
import type { Block, Name, Statement } from '../block/tree.ts';
import { words } from '../block/words.ts';
import type { Draft } from '../checks/examine.ts';
import { nameGiven } from '../setup/references.ts';
import type { BoundInsert, Target } from '../sheet/inserts/bound.ts';
import type { InsertHead, Reference } from '../sheet/sheet.ts';
import type { Span } from '../text/span.ts';
import { holds } from './place.ts';

export interface Thing {
  readonly kind: 'setup' | 'named';
  readonly name: string;
  /** Number of the block that gives it first. */
  readonly block: number;
}

export interface Occurrence {
  readonly thing: Thing;
  readonly span: Span;
  /** True where the thing is made: a shape, a probe, a row, or the name behind `electrodes`. */
  readonly given: boolean;
  /** Number of the block whose line holds at this place. */
  readonly giver: number;
}

/** All of a sheet, in order of place. */
export function occurrencesOf(draft: Draft): readonly Occurrence[] {
  const scope = new Scope(draft.sheet.blocks.map(({ block }) => block));
  const inBlocks = draft.sheet.blocks.flatMap(({ block }, number) => blockOccurrences(block, number, scope));
  const inInserts = draft.binding.bound.flatMap((bound) => insertOccurrences(bound, scope));
  return [...inBlocks, ...inInserts].sort((a, b) => a.span.from - b.span.from);
}

/** False where no name can stand: outside our blocks and inserts. */
export function mayName({ sheet }: Draft, offset: number): boolean {
  return (
    sheet.blocks.some(({ block }) => holds(block.excerpt.span, offset)) ||
    sheet.inserts.some(({ span }) => holds(span, offset))
  );
}

/** What is named at an offset, the end of the name included. */
export function occurrenceAt(all: readonly Occurrence[], offset: number): Occurrence | null {
  return all.find(({ span }) => holds(span, offset)) ?? null;
}

/** Where the thing that is meant is made. */
export function definitionsOf(all: readonly Occurrence[], of: Occurrence): readonly Occurrence[] {
  return all.filter(({ thing, given, giver }) => given && giver === of.giver && sameThing(thing, of.thing));
}

export function sameThing(a: Thing, b: Thing): boolean {
  return a.kind === b.kind && a.name === b.name && a.block === b.block;
}

/** Names that the blocks give, and which block a name in a block comes from. */
export class Scope {
  readonly setupNames: readonly string[];
  private readonly given: readonly ReadonlySet<string>[];
  private readonly base: readonly (number | null)[];

  constructor(blocks: readonly Block[]) {
    this.setupNames = blocks.map(({ head }) => head.name?.text ?? 'setup');
    this.given = blocks.map(
      ({ statements }) => new Set(statements.flatMap((statement) => givenName(statement)?.text ?? [])),
    );
    this.base = blocks.map(({ head }) => (head.like === null ? null : this.setup(head.like.text)));
  }

  /** The block of a setup's name, the first where there are two. */
  setup(name: string): number | null {
    const found = this.setupNames.indexOf(name);
    return found < 0 ? null : found;
  }

  /** The first block of the line behind this one that gives a name. */
  owner(name: string, block: number): number | null {
    return this.givers(name, block).at(-1) ?? null;
  }

  /** The block whose line holds in this one; `inherited`: in the one that this one is like. */
  giver(name: string, block: number, inherited = false): number | null {
    return this.givers(name, block).find((at) => !inherited || at !== block) ?? null;
  }

  /** The nearest first. */
  private givers(name: string, block: number): readonly number[] {
    const line = new Set<number>();
    for (let at: number | null = block; at !== null && !line.has(at); at = this.base[at] ?? null)
      line.add(at);
    return [...line].filter((at) => this.given[at]?.has(name));
  }

  /** What a name means in a block; null where nothing gives it. */
  named(name: string, block: number): Thing | null {
    const owner = this.owner(name, block);
    return owner === null ? null : { kind: 'named', name, block: owner };
  }

  /** The one block that a bare name in an insert comes from; null where there is none or more than one. */
  onlyOwner(name: string): number | null {
    const owners = new Set(this.setupNames.flatMap((_, block) => this.owner(name, block) ?? []));
    const [only = null] = owners;
    return owners.size === 1 ? only : null;
  }
}

/** The name that a line gives; also of a line that cannot be read, so that what depends on it still finds it. */
function givenName(statement: Statement): Name | null {
  if (statement.kind !== 'broken') return nameGiven(statement);
  return statement.word === null || giving.has(statement.word) ? statement.name : null;
}

const giving: ReadonlySet<string> = new Set([
  ...words.filter(({ role }) => role === 'shape').map(({ word }) => word),
  'probe',
  'row',
]);

function blockOccurrences(block: Block, number: number, scope: Scope): readonly Occurrence[] {
  const { name, like } = block.head;
  const head = [
    ...(name === null || scope.setup(name.text) !== number
      ? []
      : [setupAt(name.text, number, name.span, true)]),
    ...(like === null ? [] : setupsNamed(like.text, like.span, scope)),
  ];
  const lines = block.statements.flatMap((statement) => {
    const given = givenName(statement);
    return namesIn(statement).flatMap(({ text, span }): readonly Occurrence[] => {
      const thing = scope.named(text, number);
      const giver = scope.giver(text, number, statement.kind === 'without');
      return thing === null
        ? []
        : [{ thing, span, given: span === given?.span, giver: giver ?? thing.block }];
    });
  });
  return [...head, ...lines];
}

const setupAt = (name: string, block: number, span: Span, given: boolean): Occurrence => ({
  thing: { kind: 'setup', name, block },
  span,
  given,
  giver: block,
});

function setupsNamed(name: string, span: Span, scope: Scope): readonly Occurrence[] {
  const block = scope.setup(name);
  return block === null ? [] : [setupAt(name, block, span, false)];
}

/** All names in a statement; `size AA` is none. */
function namesIn(statement: Statement): readonly Name[] {
  const found: Name[] = [];
  const visit = (value: unknown): void => {
    if (Array.isArray(value)) for (const one of value) visit(one);
    else if (isName(value)) found.push(value);
    else if (value !== null && typeof value === 'object') {
      for (const [key, part] of Object.entries(value)) if (key !== 'cellSize') visit(part);
    }
  };
  visit(statement);
  return found;
}

/** Of all nodes, names alone have a `text`. */
function isName(value: unknown): value is Name {
  return (
    value !== null &&
    typeof value === 'object' &&
    'text' in value &&
    typeof value.text === 'string' &&
    'span' in value
  );
}

function insertOccurrences({ insert, target }: BoundInsert, scope: Scope): readonly Occurrence[] {
  return referencesIn(insert.head).flatMap(({ reference, whole }, i) => {
    const { setup, name, span } = reference;
    const nameSpan = { from: span.to - name.length, to: span.to };
    if (whole(scope)) return setupsNamed(name, nameSpan, scope);
    const block = setup === null ? boundBlock(target, i, scope) : scope.setup(setup);
    const of = block ?? scope.onlyOwner(name);
    const thing = of === null ? null : scope.named(name, of);
    const giver = of === null ? null : scope.giver(name, of);
    const setupSpan = { from: span.from, to: span.from + (setup?.length ?? 0) };
    return [
      ...(setup === null ? [] : setupsNamed(setup, setupSpan, scope)),
      ...(thing === null ? [] : [{ thing, span: nameSpan, given: false, giver: giver ?? thing.block }]),
    ];
  });
}

/** The block whose setup the reference with this number was bound to. */
function boundBlock(target: Target | null, number: number, scope: Scope): number | null {
  if (target === null) return null;
  if (target.kind === 'readings') return target.rows[number]?.setup.block ?? null;
  return 'setup' in target ? target.setup.block : scope.setupNames.length === 1 ? 0 : null;
}

/** A reference in an insert, and whether it names a whole setup. */
interface Mention {
  readonly reference: Reference;
  readonly whole: (scope: Scope) => boolean;
}

function referencesIn(head: InsertHead): readonly Mention[] {
  switch (head.kind) {
    case 'reading':
    case 'range':
      return [part(head.of)];
    case 'difference':
      return [part(head.from), part(head.to)];
    case 'along':
    case 'gradient':
    case 'mean strength':
      return [part(head.row)];
    case 'current':
      return head.of === null ? [] : [setupOrPart(head.of)];
    case 'resistance':
      return head.of === null ? [] : [setup(head.of)];
    case 'readings':
      return head.rows.map(part);
    case 'drawing':
      return head.setup === null ? [] : [setup(head.setup)];
    case 'later':
      return head.names.map(head.word === 'graph' ? part : setup);
    case 'blank':
    case 'broken':
      return [];
  }
}

const part = (reference: Reference): Mention => ({ reference, whole: () => false });
const setup = (reference: Reference): Mention => ({ reference, whole: () => true });
/** `N.current` or `bars.current`: a setup's name goes first. */
const setupOrPart = (reference: Reference): Mention => ({
  reference,
  whole: (scope) => reference.setup === null && scope.setup(reference.name) !== null,
});
