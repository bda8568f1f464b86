/** Reads the lines that say what is drawn: equipotentials, field lines, parts. */
import type { LineReader } from './line-reader.ts';
import { end, unexpected } from './parts.ts';
import { quantityList } from './rows.ts';
import {
  type Audience,
  type DrawingPart,
  type DrawStatement,
  drawingParts,
  type EquipotentialsStatement,
  type FieldLinesStatement,
} from './tree.ts';
import { count, needsWord, nextToken, positive, quantity } from './values.ts';
import { wordsOf } from './words.ts';

/** `V to V every V`, `every V`, `V, V, …`. */
export function equipotentials(line: LineReader): EquipotentialsStatement | null {
  const head = { kind: 'equipotentials', span: line.whole } as const;
  if (line.takeWord('every')) {
    const step = positive(line, 'potential');
    end(line);
    return step === null ? null : { ...head, form: 'every', step };
  }
  if (!line.takeWord('from') && !seesRange(line)) return list(line);
  const first = quantity(line, 'potential');
  if (first === null) return null;
  if (!line.takeWord('to')) return needs(line, '`to` and the last potential');
  const last = quantity(line, 'potential');
  if (last === null) return null;
  line.skipCommas();
  if (!line.takeWord('every')) return needs(line, '`every` and the step');
  const step = positive(line, 'potential');
  end(line);
  return step === null ? null : { ...head, form: 'range', first, last, step };
}

export function fieldLines(line: LineReader): FieldLinesStatement | null {
  const number = count(line, 'field lines');
  end(line);
  return number === null ? null : { kind: 'field-lines', count: number, span: line.whole };
}

export function draw(line: LineReader): DrawStatement | null {
  const parts = new Set<DrawingPart>();
  let said = false;
  let nothing = false;
  while (!line.atEnd && !line.sees('for')) {
    if (line.sees('nothing')) nothing = true;
    if (!takePart(line, parts)) return unexpected(line, wordsOf('part'));
    said = true;
    line.skipCommas();
    line.takeWord('and');
  }
  if (!said) {
    return line.report('part-missing', {
      span: nextToken(line),
      message: 'What is drawn? `draw electrodes, probes`, `draw everything` or `draw nothing`.',
    });
  }
  if (nothing && parts.size > 0) {
    return line.report('word-unexpected', {
      span: line.whole,
      message: 'Nothing, or these parts? Not both.',
    });
  }
  const audience = line.takeWord('for') ? reader(line) : null;
  if (audience !== null) oneKindOfReaders(line);
  if (!line.failed) end(line);
  const inOrder = drawingParts.filter((part) => parts.has(part));
  return { kind: 'draw', parts: inOrder, audience, span: line.whole };
}

function list(line: LineReader): EquipotentialsStatement | null {
  const values = quantityList(line, 'potential');
  end(line);
  return values === null ? null : { kind: 'equipotentials', form: 'list', values, span: line.whole };
}

function seesRange(line: LineReader): boolean {
  return line.lookAhead(() => {
    quantity(line, 'potential');
    return line.sees('to');
  });
}

function needs(line: LineReader, what: string): null {
  return needsWord(line, ['to', 'every'], `Here stands ${what}: \`0.2 V to 1.4 V every 0.2 V\`.`);
}

function takePart(line: LineReader, parts: Set<DrawingPart>): boolean {
  if (line.takeWord('everything')) {
    for (const part of drawingParts) parts.add(part);
    return true;
  }
  if (line.takeWord('nothing')) return true;
  const part = line.seen(drawingParts);
  if (part === null) return false;
  line.takeWord(part);
  parts.add(part);
  return true;
}

/** `for pupils and teachers` is two lines. */
function oneKindOfReaders(line: LineReader): void {
  line.skipCommas();
  if (!line.sees('and')) return;
  line.report('word-unexpected', {
    span: nextToken(line),
    message: 'A line speaks of one kind of readers: write another line for the others.',
  });
}

const audiences: readonly Audience[] = ['pupils', 'teachers', 'technicians'];

function reader(line: LineReader): Audience | null {
  const audience = line.seen(audiences);
  if (audience === null)
    return needsWord(line, audiences, 'For whom? `pupils`, `teachers` or `technicians`.');
  line.takeWord(audience);
  return audience;
}
