/** Carries out `like`: the statements of a block together with those it inherits, as changed, moved, left out and replaced. */
import type { Block, MoveStatement, Name, Shape, Statement, WithoutStatement } from '../block/tree.ts';
import type { Point } from '../field/geometry/outline.ts';
import type { Fix } from '../findings/finding.ts';
import { type Inventory, nothingGiven } from './inventory.ts';
import { moved, turnedAs } from './moving.ts';
import { freeName, suggestNames } from './names.ts';
import { nameGiven, referencesOf } from './references.ts';
import { fixBy, type Report, rewrite } from './report.ts';
import { isPointed } from './shapes/table.ts';
import type { Writing } from './writing.ts';

export interface Variation {
  readonly block: Block;
  /** What the other setup comes to; null for a block that is not `like` another. */
  readonly base: Inventory | null;
  /** Places in the other setup, for fixes that give what has lost its place a new one. */
  readonly placeOf: (name: string) => Point | null;
  readonly report: Report;
  readonly writing: Writing;
}

export function varied(variation: Variation): Inventory {
  const { block, base } = variation;
  const own = block.statements.filter((statement) => !isVariation(statement));
  const inherited = base === null ? nothingGiven : reduced(base, variation);
  const taken = new Map(inherited.statements.map((s) => [nameGiven(s)?.text, s.kind] as const));
  const added = own.filter((statement) => base === null || !repeatsInherited(statement, taken, variation));
  const replaced = inherited.statements.filter((old) => !added.some((statement) => replaces(statement, old)));
  let result: Inventory = { ...inherited, statements: [...replaced, ...added] };
  for (const statement of block.statements) {
    if (statement.kind === 'reverse') result = { ...result, reversed: !result.reversed };
    if (statement.kind === 'change') result = changed(result, statement, variation);
    if (statement.kind === 'move') result = movedWithin(result, statement, variation);
    if (statement.kind === 'without' && base === null) needsLike(statement, statement.name, variation);
  }
  return result;
}

const isVariation = ({ kind }: Statement): boolean =>
  kind === 'change' || kind === 'move' || kind === 'without' || kind === 'reverse';

const onceOnly: ReadonlySet<string> = new Set([
  'paper',
  'supply',
  'meter',
  'copper',
  'equipotentials',
  'field-lines',
  'draw',
]);

function replaces(own: Statement, old: Statement): boolean {
  if (own.kind !== old.kind) return false;
  if (onceOnly.has(own.kind)) return true;
  return (
    (own.kind === 'clip' && old.kind === 'clip' && own.name.text === old.name.text) ||
    (own.kind === 'contact' && old.kind === 'contact' && own.name.text === old.name.text)
  );
}

/** A shape, probe or row under an inherited name is left out. */
function repeatsInherited(
  statement: Statement,
  taken: ReadonlyMap<string | undefined, Statement['kind']>,
  { report, writing }: Variation,
): boolean {
  const name = nameGiven(statement);
  const kind = taken.get(name?.text);
  if (name === null || kind === undefined) return false;
  if (kind !== statement.kind) {
    const free = freeName(name.text, new Set([...taken.keys()].filter((known) => known !== undefined)));
    report('name-inherited', {
      span: name.span,
      message: `${name.text} is inherited as ${kindWords[kind] ?? 'something else'}. Call this ${free}?`,
      fixes: [rewrite(name.span, free)],
    });
    return true;
  }
  const edit = writing.lineAfter(statement.span, `without ${name.text}`);
  report('name-inherited', {
    span: name.span,
    message: `${name.text} is inherited. Leave it out first, then give it anew.`,
    fixes: [fixBy(`Add without ${name.text}`, [edit])],
  });
  return true;
}

const kindWords: Readonly<Partial<Record<Statement['kind'], string>>> = {
  shape: 'an electrode',
  probe: 'a probe',
  row: 'a row',
};

/** The other setup's statements without what this block leaves out. */
function reduced(base: Inventory, variation: Variation): Inventory {
  const { block, report } = variation;
  const gone = new Map<string, WithoutStatement>();
  for (const statement of block.statements) {
    if (statement.kind !== 'without') continue;
    const known = base.statements.some((s) => nameGiven(s)?.text === statement.name.text);
    if (known || base.lost.has(statement.name.text)) gone.set(statement.name.text, statement);
    else unknownName(statement.name, base, report);
  }
  const left = base.statements.filter((s) => !gone.has(nameGiven(s)?.text ?? ''));
  const givenAnew = new Set(block.statements.flatMap((s) => nameGiven(s)?.text ?? []));
  const missing = new Map([...gone].filter(([name]) => !givenAnew.has(name)));
  const shifts = new Map([...base.shifts].filter(([name]) => !gone.has(name)));
  return withoutDangling({ ...base, statements: left, shifts }, missing, variation);
}

/** Clips, contacts and lifted patches go with their electrode; anything else that names it is an error at `without`. */
function withoutDangling(
  inventory: Inventory,
  missing: ReadonlyMap<string, WithoutStatement>,
  variation: Variation,
): Inventory {
  const lost = new Set(inventory.lost);
  const unjoined = new Set(inventory.unjoined);
  const statements = inventory.statements.flatMap((statement): readonly Statement[] => {
    if (belongsTo(statement, missing)) return [];
    const reference = referencesOf(statement).find(
      ({ name }) => missing.has(name.text) && !givenUp(statement, name, inventory, variation.block),
    );
    if (reference === undefined) return [statement];
    const cause = missing.get(reference.name.text) ?? statement;
    variation.report('name-gone', {
      span: cause.span,
      message: reference.says,
      hints: [goneHint(statement, reference.name.text)],
      fixes: danglingFixes(statement, reference.name, cause, variation),
      related: [{ span: reference.name.span, message: `Here ${reference.name.text} is named.` }],
    });
    if (statement.kind === 'meter') return [{ ...statement, blackLead: null }];
    if (statement.kind === 'shape' && isTerminalOf(statement, reference.name)) {
      unjoined.add(statement.name.text);
      return [{ ...statement, terminal: null }];
    }
    const name = nameGiven(statement);
    if (name !== null) lost.add(name.text);
    return [];
  });
  return { ...inventory, statements, lost, unjoined };
}

function belongsTo(statement: Statement, missing: ReadonlyMap<string, unknown>): boolean {
  const { kind } = statement;
  return (kind === 'clip' || kind === 'contact' || kind === 'lifted') && missing.has(statement.name.text);
}

const isTerminalOf = (shape: Shape, name: Name): boolean =>
  shape.terminal?.kind === 'joined' && shape.terminal.to === name;

const goneHint = (statement: Statement, gone: string): string =>
  statement.kind === 'meter' || nameGiven(statement) !== null
    ? `Leave that out too, or give it another place: ${gone} is gone.`
    : `It is left out here, as ${gone} is gone. Coordinates in place of ${gone} would keep it.`;

/**
 * The block itself replaces the statement, changes the terminal in which it names `name`, or moves it away from there. Several pieces
 * are moved as a whole, each from its own place, which they need.
 */
function givenUp(statement: Statement, name: Name, { statements }: Inventory, block: Block): boolean {
  const given = nameGiven(statement)?.text;
  const way = statement.kind === 'shape' && isTerminalOf(statement, name) ? 'change' : 'move';
  const whole = way === 'move' && statements.filter((s) => nameGiven(s)?.text === given).length > 1;
  return block.statements.some(
    (own) => replaces(own, statement) || (own.kind === way && own.name.text === given && !whole),
  );
}

function danglingFixes(
  statement: Statement,
  gone: Name,
  cause: Statement,
  { writing, placeOf }: Variation,
): readonly Fix[] {
  const add = (line: string): Fix => fixBy(`Add ${line}`, [writing.lineAfter(cause.span, line)]);
  const name = nameGiven(statement)?.text;
  if (statement.kind === 'meter') {
    const bare = writing.text(statement.span).replace(/,?\s*black\s+lead\s+on\s+[\p{L}\p{N}-]+/u, '');
    return bare === '' ? [] : [add(bare)];
  }
  if (name === undefined) return [];
  const joined = statement.kind === 'shape' && isTerminalOf(statement, gone);
  // A spike or prong that moves away from its base would need a terminal too.
  const at = statement.kind === 'shape' && isPointed(statement) ? null : placeOf(name);
  const place = at === null ? [] : [add(`move ${name} at (${rounded(at.x)}, ${rounded(at.y)}) mm`)];
  return [add(`without ${name}`), ...(joined ? [add(`change ${name} floating`)] : place)];
}

const rounded = (mm: number): number => Math.round(mm * 100) / 100;

function changed(
  inventory: Inventory,
  statement: Extract<Statement, { kind: 'change' }>,
  variation: Variation,
): Inventory {
  if (variation.base === null) return needsLike(statement, statement.name, variation) ?? inventory;
  const { name, terminal } = statement;
  const shapes = shapesNamed(inventory, name.text);
  if (shapes.length === 0) {
    if (!inventory.lost.has(name.text)) unknownName(name, inventory, variation.report, true);
    return inventory;
  }
  const [first] = shapes;
  const renewed = (s: Statement): Statement =>
    s.kind === 'shape' && s.name.text === name.text ? { ...s, terminal: s === first ? terminal : null } : s;
  const unjoined = new Set([...inventory.unjoined].filter((other) => other !== name.text));
  return { ...inventory, statements: inventory.statements.map(renewed), unjoined };
}

function movedWithin(inventory: Inventory, statement: MoveStatement, variation: Variation): Inventory {
  if (variation.base === null) return needsLike(statement, statement.name, variation) ?? inventory;
  const name = statement.name.text;
  const named = inventory.statements.filter((s) => nameGiven(s)?.text === name);
  const [only] = named;
  if (only === undefined) {
    if (!inventory.lost.has(name)) unknownName(statement.name, inventory, variation.report);
    return inventory;
  }
  const result = moved(named, statement, variation.report);
  if (result === 'as a whole') {
    const shift = turnedAs(inventory.shifts.get(name), statement);
    return { ...inventory, shifts: new Map([...inventory.shifts, [name, shift]]) };
  }
  return result === null
    ? inventory
    : { ...inventory, statements: inventory.statements.map((s) => (s === only ? result : s)) };
}

const shapesNamed = (inventory: Inventory, name: string): readonly Shape[] =>
  inventory.statements.filter((s): s is Shape => s.kind === 'shape' && s.name.text === name);

function needsLike(statement: Statement, name: Name, { report }: Variation): null {
  return report('variation-alone', {
    span: statement.span,
    message: `This block is not like another one: what should ${name.text} differ from?`,
    hints: [
      'Write `like` and the name of a setup on the opening line, or change the line of the electrode itself.',
    ],
  });
}

function unknownName(name: Name, inventory: Inventory, report: Report, electrodes = false): null {
  const known = inventory.statements.flatMap((s) =>
    electrodes && s.kind !== 'shape' ? [] : (nameGiven(s)?.text ?? []),
  );
  return report('name-unknown', {
    span: name.span,
    message: `There is no ${name.text} in the setup that this one is like.`,
    ...suggestNames(name, known),
  });
}
