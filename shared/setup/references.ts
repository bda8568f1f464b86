/** Which names a statement gives and which it refers to. */
import type { Name, Place, Point, RowEnd, RowStatement, Shape, Statement, Terminal } from '../block/tree.ts';

export interface Reference {
  readonly name: Name;
  /** What the statement does with the name, as a sentence: "C stands at the centre of R." */
  readonly says: string;
}

/** The electrode, probe or row that the statement makes; null for other statements. */
export function nameGiven(statement: Statement): Name | null {
  switch (statement.kind) {
    case 'shape':
    case 'probe':
    case 'row':
      return statement.name;
    default:
      return null;
  }
}

export function referencesOf(statement: Statement): readonly Reference[] {
  switch (statement.kind) {
    case 'shape':
      return shapeReferences(statement);
    case 'probe':
      return probeReferences(statement.name.text, statement.where);
    case 'row':
      return rowReferences(statement);
    case 'meter':
      return statement.blackLead === null
        ? []
        : [{ name: statement.blackLead, says: `The black lead stands on ${statement.blackLead.text}.` }];
    case 'clip':
      return [{ name: statement.name, says: `A clip holds ${statement.name.text}.` }];
    case 'contact':
      return [{ name: statement.name, says: `A contact resistance is given for ${statement.name.text}.` }];
    case 'lifted':
      return [
        { name: statement.name, says: `${statement.name.text} is lifted.` },
        ...pointReferences('A lifted patch', statement.at),
      ];
    case 'hole':
      return statement.form === 'outline' ? [] : pointReferences('A hole', statement.at);
    case 'painted':
      return pointReferences('A painted patch', statement.at);
    case 'slit':
      return [...pointReferences('A slit', statement.start), ...pointReferences('A slit', statement.end)];
    default:
      return [];
  }
}

function shapeReferences(shape: Shape): readonly Reference[] {
  const name = shape.name.text;
  const terminal = terminalReferences(name, shape.terminal);
  switch (shape.shape) {
    case 'spike':
    case 'prong':
      return shape.tip.kind === 'on'
        ? [{ name: shape.tip.of, says: `${name} stands on ${shape.tip.of.text}.` }, ...terminal]
        : [...pointReferences(name, shape.tip.point), ...terminal];
    case 'outline':
    case 'strip':
      return terminal;
    default:
      return [...placeReferences(name, shape.place), ...terminal];
  }
}

const terminalReferences = (name: string, terminal: Terminal | null): readonly Reference[] =>
  terminal?.kind === 'joined'
    ? [{ name: terminal.to, says: `${name} is joined to ${terminal.to.text}.` }]
    : [];

const pointReferences = (what: string, point: Point): readonly Reference[] =>
  point.kind === 'centre' && point.of !== null
    ? [{ name: point.of, says: `${what} stands at the centre of ${point.of.text}.` }]
    : [];

/** Names in a place, for what stands there. */
function placeReferences(what: string, { anchor }: Place): readonly Reference[] {
  switch (anchor.kind) {
    case 'at':
      return pointReferences(what, anchor.point);
    case 'beside':
      return [{ name: anchor.of, says: `${what} is placed from ${anchor.of.text}.` }];
    case 'midway':
      return anchor.between.map((name) => ({ name, says: `${what} stands midway to ${name.text}.` }));
  }
}

type ProbePlace = Extract<Statement, { kind: 'probe' }>['where'];

function probeReferences(what: string, where: ProbePlace): readonly Reference[] {
  return where.kind === 'along'
    ? [{ name: where.row, says: `${what} stands on the row ${where.row.text}.` }]
    : pointReferences(what, where);
}

function rowReferences({ name, start, end }: RowStatement): readonly Reference[] {
  const ends = end.kind === 'direction' ? [start] : [start, end];
  return ends.flatMap((point) => endReferences(name.text, point));
}

function endReferences(row: string, end: RowEnd): readonly Reference[] {
  return end.kind === 'electrode'
    ? [{ name: end.name, says: `Row ${row} runs to ${end.name.text}.` }]
    : pointReferences(`Row ${row}`, end);
}
