/** Reads the lines for paper, supply and meter. */
import type { Fix } from '../findings/finding.ts';
import type { LineReader } from './line-reader.ts';
import { after, flag, missing, type Part, readParts, twice } from './parts.ts';
import { sizeAmongPart } from './places.ts';
import { perSquare } from './sheet-resistance.ts';
import type {
  Chemistry,
  Count,
  MeterStatement,
  Name,
  Node,
  PaperStatement,
  Size,
  SupplySource,
  SupplyStatement,
  Value,
} from './tree.ts';
import { unlikely } from './unlikely.ts';
import { count, name, positive, quantity, rewrite } from './values.ts';
import { wordsOf } from './words.ts';

export function paper(line: LineReader): PaperStatement | null {
  const found = readParts<{ format: PaperFormat; size: Size; resistance: PaperResistance }>(line, {
    format: formatPart,
    size: sizeAmongPart,
    resistance: resistancePart,
  });
  const size = found.size ?? found.format?.size ?? null;
  if (size === null) {
    return missing(line, 'How large is the paper? `paper 240 mm × 160 mm`, or `paper A4 landscape`.');
  }
  if (found.size !== null && found.format !== null) {
    const message = 'The paper has a size already. Which one holds?';
    line.report('part-twice', { span: found.format.span, message });
  }
  const format = found.format?.text ?? null;
  return { kind: 'paper', size, format, resistance: bothWays(line, found.resistance), span: line.whole };
}

export function supply(line: LineReader): SupplyStatement | null {
  const found = readParts<SupplyParts>(line, {
    source: sourcePart,
    internal: after('internal', (l) => notNegative(l, 'resistance')),
    limit: after('limit', (l) => positive(l, 'current')),
    ac: flag('ac'),
    chemistry: chemistryPart,
    cellSize: after('size', (l) => name(l, 'the size of the cells')),
    emf: bareEmfPart,
  });
  if (found.source === null) return supposedCell(line, found.emf);
  const { word, cells } = found.source;
  const emf = unlikely(line, found.source.emf ?? found.emf, 'supply');
  if (found.source.emf !== null && found.emf !== null) twice(line, found.emf.span);
  if (emf === null) return missing(line, 'How many volts? `cell 1.5 V`.');
  const { internal, limit, chemistry, cellSize } = found;
  const statement: SupplyStatement = {
    kind: 'supply',
    source: word,
    cells: cells?.value ?? 1,
    emf,
    internal,
    limit,
    ac: found.ac !== null,
    chemistry,
    cellSize,
    span: line.whole,
  };
  if (!line.failed) noteCells(line, statement);
  return statement;
}

export function meter(line: LineReader): MeterStatement | null {
  const found = readParts<MeterParts>(line, {
    resolution: after('resolution', (l) => positive(l, 'potential')),
    range: after('range', (l) => positive(l, 'potential')),
    tip: after('probe tip', (l) => positive(l, 'length')),
    blackLead: after('black lead on', (l) => name(l, 'the electrode that the black lead stands on')),
    resistance: {
      words: [],
      starts: (l) => l.peek().kind === 'number',
      read: (l) => unlikely(l, positive(l, 'resistance'), 'meter'),
    },
  });
  const { resistance, ...rest } = found;
  if (resistance === null) return missing(line, 'What is the resistance of the meter? `meter 10 MΩ`.');
  return { kind: 'meter', resistance, ...rest, span: line.whole };
}

interface PaperFormat extends Node {
  readonly text: string;
  readonly size: Size;
}
interface PaperResistance {
  readonly x: Value | null;
  readonly y: Value | null;
}
interface SupplyParts {
  readonly source: Source;
  readonly internal: Value;
  readonly limit: Value;
  readonly ac: true;
  readonly chemistry: Node & { readonly word: Chemistry };
  readonly cellSize: Name;
  readonly emf: Value;
}
interface Source {
  readonly word: SupplySource;
  readonly cells: Count | null;
  /** Where it stands right behind the word. */
  readonly emf: Value | null;
}
interface MeterParts {
  readonly resistance: Value;
  readonly resolution: Value;
  readonly range: Value;
  readonly tip: Value;
  readonly blackLead: Name;
}

/** Long and short side in mm. A series: ISO 216. Letter: ANSI/ASME Y14.1. */
const formats = { A3: [420, 297], A4: [297, 210], A5: [210, 148], Letter: [279.4, 215.9] } as const;
const formatWords = ['A3', 'A4', 'A5', 'Letter'] as const;
const ways = ['landscape', 'portrait'] as const;

const formatPart: Part<PaperFormat> = {
  words: formatWords,
  starts: (line) => line.seen([...formatWords, ...ways]) !== null,
  read(line) {
    const from = line.pieces.length;
    if (line.seen(ways) !== null) return wayFirst(line);
    const word = line.seen(formatWords);
    if (word === null) return null;
    line.takeWord(word);
    const upright = line.takeWord('portrait');
    const across = !upright && line.takeWord('landscape');
    if (!upright && !across) return whichWay(line, word);
    const span = line.spanFrom(from);
    const [long, short] = formats[word];
    const side = (value: number): Value => ({ value, dimension: 'length', span });
    const size = { width: side(upright ? short : long), height: side(upright ? long : short), span };
    return { text: `${word} ${upright ? 'portrait' : 'landscape'}`, size, span };
  },
};

/** `landscape A4`. */
function wayFirst(line: LineReader): null {
  const way = line.seen(ways);
  const { from } = line.peek();
  if (way === null) return null;
  line.takeWord(way);
  const word = line.seen(formatWords) ?? 'A4';
  line.takeWord(word);
  const at = { from, to: line.offset };
  return line.report('word-unexpected', {
    span: line.span(from, line.offset),
    message: `The format comes first: \`${word} ${way}\`.`,
    fixes: [rewrite(line, at, `${word} ${way}`, `${word} ${way}`, true)],
  });
}

function whichWay(line: LineReader, word: string): null {
  const at = { from: line.offset, to: line.offset };
  const fixes = ways.map((way): Fix => rewrite(line, at, ` ${way}`, `${word} ${way}`));
  return missing(
    line,
    `Which way does the ${word} sheet lie? \`${word} landscape\` or \`${word} portrait\`.`,
    fixes,
  );
}

/** `R per square`, or `R per square along x, R per square along y`. */
const resistancePart: Part<PaperResistance> = {
  words: [],
  starts: (line) => line.peek().kind === 'number',
  read(line) {
    const first = perSquare(line);
    const along = first === null ? null : axis(line);
    if (first === null) return null;
    if (along === null) return { x: first, y: first };
    line.skipCommas();
    if (line.peek().kind !== 'number') return otherAxis(line, along);
    const second = perSquare(line);
    const other = second === null ? null : axis(line);
    if (second === null) return null;
    if (other === null || other === along) return otherAxis(line, along);
    return along === 'x' ? { x: first, y: second } : { x: second, y: first };
  },
};

function axis(line: LineReader): 'x' | 'y' | null {
  if (!line.takeWord('along')) return null;
  const token = line.peek();
  const letter = token.text.toLowerCase();
  if (letter === 'x' || letter === 'y') {
    line.take('word', token.from, token.to, letter);
    return letter;
  }
  return missing(line, 'Along `x` or along `y`?');
}

function otherAxis(line: LineReader, along: 'x' | 'y'): null {
  const other = along === 'x' ? 'y' : 'x';
  return missing(line, `And along ${other}? \`5 kΩ per square along x, 6 kΩ per square along y\`.`);
}

function bothWays(line: LineReader, found: PaperResistance | null): { x: Value; y: Value } | null {
  if (found === null || found.x === null || found.y === null) return null;
  unlikely(line, found.x, 'paper');
  if (found.y !== found.x) unlikely(line, found.y, 'paper');
  return { x: found.x, y: found.y };
}

const sourceWords = ['cell', 'power-pack', 'eht', 'ht'] as const;

/** `cell V`, `N cells V`, `power-pack V` and the like. */
const sourcePart: Part<Source> = {
  words: sourceWords,
  starts: seesSource,
  read(line) {
    if (line.sees('battery')) return battery(line);
    const cells = line.peek().kind === 'number' ? count(line, 'cells') : null;
    const word = line.seen(sourceWords);
    if (word === null) return null;
    takeSource(line, word, cells);
    line.skipCommas();
    if (line.peek().kind === 'end' || line.peek().kind === 'word') return { word, cells, emf: null };
    const emf = positive(line, 'potential');
    return emf === null ? null : { word, cells, emf };
  },
};

function takeSource(line: LineReader, word: SupplySource, cells: Count | null): void {
  line.takeWord(word);
  const piece = line.pieces.at(-1);
  if (cells !== null && cells.value !== 1 && piece !== undefined) {
    line.pieces[line.pieces.length - 1] = { ...piece, text: 'cells' };
  }
}

function seesSource(line: LineReader): boolean {
  if (line.seen(sourceWords) !== null || line.sees('battery')) return true;
  if (line.peek().kind !== 'number') return false;
  return line.lookAhead(() => {
    const { from, to } = line.peek();
    line.take('number', from, to);
    return line.sees('cell');
  });
}

/** A battery is so many cells: of 1.5 V where that divides its voltage. */
function battery(line: LineReader): null {
  const { from, to } = line.peek();
  line.takeWord('battery');
  const emf = quantity(line, 'potential');
  if (emf === null || line.failed) return null;
  const cells = emf.value / 1.5;
  const many = Number.isInteger(cells) && cells > 1;
  const fixes = many
    ? [rewrite(line, { from, to: line.offset }, `${cells} cells 1.5 V`, `${cells} cells 1.5 V`)]
    : [];
  return line.report('word-unknown', {
    span: line.span(from, to),
    message: 'A battery is several cells: how many, and of how many volts each?',
    fixes: [...fixes, rewrite(line, { from, to }, 'cell', 'cell')],
  });
}

/** The volts where they stand alone: `supply 1.5 V cell`. */
const bareEmfPart: Part<Value> = {
  words: [],
  starts: (line) => line.peek().kind === 'number',
  read: (line) => positive(line, 'potential'),
};

function supposedCell(line: LineReader, emf: Value | null): null {
  const at = emf === null ? line.offset : emf.span.from - line.line.at;
  const fixes =
    emf === null
      ? []
      : sourceWords.map((word): Fix => rewrite(line, { from: at, to: at }, `${word} `, `${word} before it`));
  return missing(
    line,
    'What supply? `cell 1.5 V`, `2 cells 1.5 V`, `power-pack 6 V`, `eht 3 kV` or `ht 250 V`.',
    fixes,
  );
}

const chemistryPart: Part<Node & { readonly word: Chemistry }> = {
  words: wordsOf('chemistry'),
  starts: (line) => line.seen(chemistries) !== null,
  read(line) {
    const word = line.seen(chemistries);
    if (word === null) return null;
    line.takeWord(word);
    return { word, span: line.spanFrom(line.pieces.length - 1) };
  },
};

const chemistries: readonly Chemistry[] = [
  'zinc-carbon',
  'zinc-chloride',
  'alkaline',
  'nickel-metal-hydride',
  'lithium-primary',
  'lithium-ion',
  'lead-acid',
];

export function notNegative(line: LineReader, dimension: 'resistance' | 'contact'): Value | null {
  const value = quantity(line, dimension);
  if (value !== null && value.value < 0) {
    line.report('number-positive', { span: value.span, message: 'This cannot be less than zero.' });
  }
  return value;
}

/**
 * Says what cells in series make together. A cell of one of the usual chemistries gives 1.2 V to 2.1 V; where the voltage divided by the
 * number of cells falls there and the voltage itself does not, that of the whole was probably written (common practice, no source).
 */
function noteCells(line: LineReader, statement: SupplyStatement): void {
  const { cells, emf, chemistry } = statement;
  if (cells < 2) return;
  const total = volts(cells * emf.value);
  const each = emf.value / cells;
  const lithium = chemistry?.word === 'lithium-ion' || chemistry?.word === 'lithium-primary';
  const span = emf.span;
  const says = `${cells} cells of ${volts(emf.value)} in series make ${total}.`;
  if (lithium || emf.value < 2.3 || each < 1.15 || each > 2.15) {
    line.report('cells-total', { span, message: says });
    return;
  }
  const at = { from: span.from - line.line.at, to: span.to - line.line.at };
  line.report('cells-each', {
    span,
    message: `${says} Is each cell ${volts(each)}?`,
    hints: ['The voltage is that of each cell.'],
    fixes: [rewrite(line, at, volts(each), volts(each))],
  });
}

function volts(value: number): string {
  return `${Number(value.toPrecision(4))} V`;
}
