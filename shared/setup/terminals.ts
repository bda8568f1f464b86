/** Terminals: how each electrode is connected, with `joined to` followed to its end. */
import type { Name, Shape, Terminal } from '../block/tree.ts';
import { freeName, type Names } from './names.ts';
import { fixBy, type Report, rewrite } from './report.ts';
import type { Connection } from './setup.ts';
import { isPointed } from './shapes/table.ts';

export interface Wiring {
  /** Null where no terminal is known. */
  readonly connection: Connection | null;
  readonly joinedTo: string | null;
  /** The electrode on which this spike or prong stands: it is part of it. */
  readonly partOf: string | null;
}

export interface Terminals {
  readonly wiring: ReadonlyMap<string, Wiring>;
  /** Pieces left out because their terminal is not that of their electrode. */
  readonly refused: ReadonlySet<Shape>;
}

export function readTerminals(
  names: Names,
  options: { readonly reversed: boolean; readonly excused: ReadonlySet<string> },
  report: Report,
): Terminals {
  const refused = new Set<Shape>();
  const own = new Map<string, Terminal | null>();
  for (const [name, shapes] of names.electrodes) own.set(name, ownTerminal(shapes, names, refused, report));
  const wiring = new Map<string, Wiring>();
  const follow = new Following(names, own, report);
  for (const [name, shapes] of names.electrodes) {
    const [first] = shapes;
    if (first === undefined) continue;
    const terminal = own.get(name) ?? null;
    const partOf = standsOn(first);
    if (terminal === null && partOf === null && !options.excused.has(name)) missing(first, report);
    const connection = follow.connection(name);
    if (partOf !== null && terminal !== null) agrees(first, terminal, partOf, follow, report);
    wiring.set(name, {
      connection: connection === null ? null : options.reversed ? swapped(connection) : connection,
      joinedTo: terminal?.kind === 'joined' ? terminal.to.text : null,
      partOf,
    });
  }
  return { wiring, refused };
}

/** The electrode that a spike or prong stands on, where it has a name of its own. */
export function standsOn(shape: Shape): string | null {
  if (!isPointed(shape) || shape.tip.kind !== 'on' || shape.tip.of.text === shape.name.text) return null;
  return shape.tip.of.text;
}

const swapped = (connection: Connection): Connection => {
  if (connection.kind === 'positive') return { kind: 'negative' };
  if (connection.kind === 'negative') return { kind: 'positive' };
  return connection;
};

/** The terminal that the first piece with one gives; pieces on another terminal are refused. */
function ownTerminal(
  shapes: readonly Shape[],
  names: Names,
  refused: Set<Shape>,
  report: Report,
): Terminal | null {
  const first = shapes.find(({ terminal }) => terminal !== null);
  if (first?.terminal == null) return null;
  for (const shape of shapes) {
    if (shape.terminal === null || sameTerminal(shape.terminal, first.terminal)) continue;
    refused.add(shape);
    const name = shape.name.text;
    const free = freeName(
      name,
      new Set([...names.electrodes.keys(), ...names.probes.keys(), ...names.rows.keys()]),
    );
    report('terminal-differs', {
      span: shape.terminal.span,
      message: `${name} is ${sayTerminal(first.terminal)} and ${sayTerminal(shape.terminal)}. Call one of them ${free}?`,
      fixes: [rewrite(shape.name.span, free)],
      related: [{ span: first.terminal.span, message: `Here ${name} is ${sayTerminal(first.terminal)}.` }],
    });
  }
  return first.terminal;
}

function sameTerminal(a: Terminal, b: Terminal): boolean {
  if (a.kind === 'held' && b.kind === 'held') return a.potential.value === b.potential.value;
  if (a.kind === 'joined' && b.kind === 'joined') return a.to.text === b.to.text;
  return a.kind === b.kind;
}

function sayTerminal(terminal: Terminal): string {
  if (terminal.kind === 'held') return `held at ${terminal.potential.value} V`;
  return terminal.kind === 'joined' ? `joined to ${terminal.to.text}` : terminal.kind;
}

function missing(shape: Shape, report: Report): void {
  const end = { from: shape.span.to, to: shape.span.to };
  report('terminal-missing', {
    span: shape.name.span,
    message: `Where does ${shape.name.text} lead: positive, negative or floating?`,
    fixes: ['positive', 'negative', 'floating'].map((word) =>
      fixBy(`Add ${word}`, [{ span: end, text: ` ${word}` }]),
    ),
  });
}

function agrees(shape: Shape, terminal: Terminal, partOf: string, follow: Following, report: Report): void {
  const base = follow.connection(partOf);
  const given = follow.connectionOf(terminal);
  if (base === null || given === null || sameConnection(base, given)) return;
  if (terminal.kind === 'joined' && terminal.to.text === partOf) return;
  // A terminal given by `change` is all that its line says.
  const inLine = terminal.span.from >= shape.span.from && terminal.span.to <= shape.span.to;
  report('terminal-differs', {
    span: terminal.span,
    message: `${shape.name.text} stands on ${partOf} and takes its terminal: it cannot be ${sayTerminal(terminal)} beside it.`,
    fixes: inLine ? [fixBy(`Leave out ${sayTerminal(terminal)}`, [{ span: terminal.span, text: '' }])] : [],
  });
}

function sameConnection(a: Connection, b: Connection): boolean {
  return a.kind === 'held' && b.kind === 'held' ? a.potential_V === b.potential_V : a.kind === b.kind;
}

/** Follows `joined to` and `on` from electrode to electrode. */
class Following {
  private readonly known = new Map<string, Connection | null>();
  private readonly begun: string[] = [];
  private readonly names: Names;
  private readonly own: ReadonlyMap<string, Terminal | null>;
  private readonly report: Report;

  constructor(names: Names, own: ReadonlyMap<string, Terminal | null>, report: Report) {
    this.names = names;
    this.own = own;
    this.report = report;
  }

  connection(name: string): Connection | null {
    const known = this.known.get(name);
    if (known !== undefined) return known;
    this.begun.push(name);
    const first = this.names.electrodes.get(name)?.[0];
    const partOf = first === undefined ? null : standsOn(first);
    const terminal = this.own.get(name) ?? null;
    let found: Connection | null = null;
    if (partOf !== null && this.names.electrodes.has(partOf)) {
      found = this.begun.includes(partOf) ? null : this.connection(partOf);
    } else if (terminal !== null) found = this.connectionOf(terminal);
    this.begun.pop();
    this.known.set(name, found);
    return found;
  }

  connectionOf(terminal: Terminal): Connection | null {
    if (terminal.kind === 'held') return { kind: 'held', potential_V: terminal.potential.value };
    if (terminal.kind !== 'joined') return { kind: terminal.kind };
    const { to } = terminal;
    if (!this.names.electrode(to, 'An electrode is joined to another electrode.')) return null;
    if (!this.begun.includes(to.text)) return this.connection(to.text);
    return this.circular(to);
  }

  private circular(to: Name): null {
    const circle = this.begun.slice(this.begun.indexOf(to.text));
    const joined = circle.map((name, i) => `${name} is joined to ${circle[(i + 1) % circle.length] ?? name}`);
    return this.report('terminal-circular', {
      span: to.span,
      message: `${joined.join(', ')}: one of them needs a terminal.`,
      fixes: [],
    });
  }
}
