/** Reads the inserts that stand alone: tables and figures, with their names, columns or parts, options and caption. */
import { nearest } from '../../block/nearest.ts';
import { type DrawingPart, drawingParts } from '../../block/tree.ts';
import { laterFigures } from '../../block/words.ts';
import type { FigureParts, InsertHead, LaterWord, Reference } from '../sheet.ts';
import type { InsertReader } from './insert-reader.ts';
import { readNames, readQuoted } from './references.ts';

export const laterWords: readonly LaterWord[] = laterFigures;
export type FigureWord = 'readings' | 'drawing' | LaterWord;
export const figureWords: readonly FigureWord[] = ['readings', 'drawing', ...laterWords];

/** Columns of a table of readings, and what a graph may show. */
export const columnWords = ['distance', 'r', 'V', 'mean', 'ln r', '1/r'] as const;
export const helpWords = ['blank', 'axes', 'scales', 'points'] as const;

export function isFigureWord(word: string): word is FigureWord {
  return figureWords.some((figure) => figure === word);
}

/** The reader stands before the word. */
export function readFigure(reader: InsertReader, word: FigureWord): InsertHead | null {
  reader.take(word);
  const names = readNames(reader, () => atOptions(reader) || reader.sees(':') || reader.sees(','));
  if (names === null) return null;
  const listed = reader.take(':') ? readList(reader) : null;
  const options = readOptions(reader);
  const caption = readQuoted(reader);
  const parts = { size: options.size, caption };
  switch (word) {
    case 'drawing':
      return drawing(reader, names, listed, parts);
    case 'readings':
      return readings(reader, names, listed, parts);
    default:
      return later(reader, { word, names, listed, options, parts });
  }
}

interface Listed {
  readonly text: string;
  readonly from: number;
}
interface Options {
  readonly size: FigureParts['size'];
  readonly help: (typeof helpWords)[number] | null;
  readonly hinted: boolean;
  readonly sets: number | null;
}

function atOptions(reader: InsertReader): boolean {
  return (
    reader.sees('help') ||
    reader.sees('hinted') ||
    reader.sees('half', 'size') ||
    reader.sees('full', 'size') ||
    reader.peek().kind === 'number' ||
    /^["“„]/u.test(reader.peek().text)
  );
}

/** Words between commas, up to options and caption. */
function readList(reader: InsertReader): readonly Listed[] {
  const list: Listed[] = [];
  while (!reader.atEnd && !/^["“„]/u.test(reader.peek().text)) {
    const before = reader.position;
    if (list.length > 0 && !reader.take(',')) break;
    if (list.length > 0 && atOptions(reader) && !reader.sees('1', '/')) {
      reader.position = before;
      break;
    }
    const match = reader.takePattern(/[^,"“„]+/uy);
    if (match === null) break;
    list.push({ text: match[0].trim().replace(/\s+/gu, ' '), from: match.index });
  }
  return list;
}

function readOptions(reader: InsertReader): Options {
  let size: Options['size'] = null;
  let help: Options['help'] = null;
  let hinted = false;
  let sets: number | null = null;
  for (let going = true; going; ) {
    const before = reader.position;
    reader.take(',');
    if (reader.takeWords('half', 'size')) size = 'half';
    else if (reader.takeWords('full', 'size')) size = 'full';
    else if (reader.take('hinted')) hinted = true;
    else if (reader.take('help')) help = readHelp(reader) ?? help;
    else {
      const count = reader.takePattern(/(\d{1,4})\s+sets?(?![\p{L}\p{N}])/uy)?.[1];
      if (count !== undefined) sets = Number(count);
      else {
        reader.position = before;
        going = false;
      }
    }
  }
  return { size, help, hinted, sets };
}

function readHelp(reader: InsertReader): Options['help'] {
  const found = helpWords.find((word) => reader.take(word));
  if (found !== undefined) return found;
  const token = reader.peek();
  const span = reader.span(token.from, token.to);
  const meant = nearest(token.text, helpWords);
  const message = `Help is ${helpWords.slice(0, -1).join(', ')} or ${helpWords.at(-1)}.`;
  const fixes = meant.map((text) => ({ title: `Write ${text}`, edits: [{ span, text }], certain: false }));
  if (token.kind === 'word') reader.position = token.to;
  return reader.report('insert-form', { span, message, fixes });
}

function drawing(
  reader: InsertReader,
  names: readonly Reference[],
  listed: readonly Listed[] | null,
  parts: FigureParts,
): InsertHead | null {
  const [setup = null, second] = names;
  if (second !== undefined) {
    return reader.report('insert-form', {
      span: second.span,
      message: 'A drawing shows one setup. Two inserts in one paragraph stand side by side.',
    });
  }
  if (setup !== null && setup.setup !== null) {
    return reader.report('insert-form', {
      span: setup.span,
      message: `A drawing shows a whole setup: \`?{drawing ${setup.setup}}\`.`,
      fixes: [
        { title: `Write ${setup.setup}`, edits: [{ span: setup.span, text: setup.setup }], certain: false },
      ],
    });
  }
  const shown = listed === null ? null : readParts(reader, listed);
  return { kind: 'drawing', setup, parts: shown, ...parts };
}

function readParts(reader: InsertReader, listed: readonly Listed[]): readonly DrawingPart[] {
  const found = new Set<DrawingPart>();
  for (const item of listed) {
    const part = drawingParts.find((known) => known === item.text);
    if (part !== undefined) found.add(part);
    else if (item.text === 'everything') for (const known of drawingParts) found.add(known);
    else if (item.text !== 'nothing') unknownWord(reader, item, [...drawingParts, 'everything'], 'parts');
  }
  return drawingParts.filter((part) => found.has(part));
}

function readings(
  reader: InsertReader,
  rows: readonly Reference[],
  listed: readonly Listed[] | null,
  parts: FigureParts,
): InsertHead | null {
  if (rows.length === 0) {
    const message = 'Of which row? `?{readings A}`';
    return reader.report('insert-form', { span: reader.whole(), message });
  }
  return { kind: 'readings', rows, columns: readColumns(reader, listed ?? []), ...parts };
}

function readColumns(reader: InsertReader, listed: readonly Listed[]): readonly string[] {
  for (const item of listed) {
    if (columnWords.every((word) => word !== item.text)) unknownWord(reader, item, columnWords, 'columns');
  }
  return listed.map(({ text }) => text);
}

interface LaterReading {
  readonly word: LaterWord;
  readonly names: readonly Reference[];
  readonly listed: readonly Listed[] | null;
  readonly options: Options;
  readonly parts: FigureParts;
}

/** A graph may say what it shows against what: `V against ln r`. */
function later(
  reader: InsertReader,
  { word, names, listed, options, parts }: LaterReading,
): InsertHead | null {
  const axes = (listed ?? []).flatMap((item) => {
    const at = item.text.indexOf(' against ');
    if (at < 0) return [item];
    const second = item.text.slice(at + ' against '.length);
    return [
      { text: item.text.slice(0, at), from: item.from },
      { text: second, from: item.from + item.text.length - second.length },
    ];
  });
  const { help, hinted, sets } = options;
  return { kind: 'later', word, names, columns: readColumns(reader, axes), help, hinted, sets, ...parts };
}

function unknownWord(reader: InsertReader, item: Listed, known: readonly string[], what: string): void {
  const span = reader.span(item.from, item.from + item.text.length);
  const meant = nearest(item.text, known);
  const question = meant[0] === undefined ? '' : ` \`${meant[0]}\`?`;
  reader.report('insert-form', {
    span,
    message: `\`${item.text}\` is not one of the ${what}.${question}`,
    hints: [`The ${what} are ${known.join(', ')}.`],
    fixes: meant.map((text) => ({ title: `Write ${text}`, edits: [{ span, text }], certain: false })),
  });
}
