import fc from 'fast-check';
import { expect, test } from 'vitest';
import { formatBlock } from '../../shared/block/format.ts';
import { parseBlock } from '../../shared/block/parse.ts';
import type { Block } from '../../shared/block/tree.ts';
import { words } from '../../shared/block/words.ts';
import type { Span } from '../../shared/text/span.ts';
import { applied } from '../check.ts';
import { excerptOf } from '../excerpts.ts';
import { plainStatements } from './blocks.ts';

const blockOf = (text: string): Block => parseBlock(excerptOf(text));
const formatted = (text: string): string => applied(text, formatBlock(blockOf(text)));

const length = fc.constantFrom('10 mm', '5.5cm', '120 mm', '0.1 m', '7');
const potential = fc.constantFrom('1.5 V', '200mV', '3 kV', '−0.5 V');
const resistance = fc.constantFrom(
  '5 kΩ per square',
  '5 kohm/sq',
  '10 Mohm',
  '0.5 ohms',
  '6 kΩ per square along y',
);
const name = fc.constantFrom(
  'N',
  'P',
  'R',
  'bar',
  'Left',
  '电极',
  '𝔑',
  'A-1',
  'X',
  'centre',
  'Centre',
  'and',
);
const pair = fc.constantFrom(
  '(60, 80) mm',
  '(6,8)cm',
  '(4 mm, 2 cm)',
  '(40,5, 95) mm',
  '(1 2) mm',
  '(1, 2',
  ')',
);
const word = fc.constantFrom(
  ...words.flatMap((entry) => [entry.word, entry.word.toUpperCase(), ...entry.spellings]),
);
const sign = fc.constantFrom(
  ',',
  '×',
  'x',
  '*',
  '#',
  '# allow unit-unlikely because of it',
  '°',
  '30 deg',
  '(',
  '"',
  '/',
  '\u00a0',
  '\t',
);
const piece = fc.oneof(
  length,
  potential,
  resistance,
  name,
  pair,
  word,
  word,
  sign,
  fc.string({ maxLength: 4 }),
);
/** Lines that begin with a known word, of pieces that may or may not belong there. */
const soup = fc
  .tuple(word, fc.array(piece, { maxLength: 9 }))
  .map(([first, rest]) => [first, ...rest].join(' '));
const examples = fc.constantFrom(
  ...words.filter((entry) => entry.role !== 'head').map((entry) => entry.example),
);
/** A good line as it may be typed in a hurry. */
const sloppy = fc
  .tuple(examples, fc.subarray(['×', ' mm', 'Ω', ' ', ', ', '°', 'centre']))
  .map(([line, habits]) => {
    const typed: Record<string, string> = {
      '×': 'x',
      ' mm': 'mm',
      Ω: 'ohm',
      ' ': '  ',
      ', ': ',',
      '°': ' degrees',
      centre: 'Center',
    };
    const hurried = habits.reduce((text, habit) => text.replaceAll(habit, typed[habit] ?? habit), line);
    return { line, hurried };
  });
const lines = fc.oneof(
  soup,
  sloppy.map(({ hurried }) => hurried),
  fc.string({ unit: 'binary', maxLength: 30 }),
);
const end = fc.constantFrom('\n', '\r\n', '\r');
const text = fc
  .array(fc.tuple(lines, end), { maxLength: 8 })
  .map((parts) => parts.map(([line, close]) => line + close).join(''));

test('any text parses, and every span lies in it', () => {
  fc.assert(
    fc.property(text, (source) => {
      const block = blockOf(source);
      const spans: Span[] = [];
      collectSpans([block.statements, block.findings, block.allowances], spans);
      for (const { from, to } of spans) {
        expect(from).toBeGreaterThanOrEqual(0);
        expect(from).toBeLessThanOrEqual(to);
        expect(to).toBeLessThanOrEqual(source.length);
      }
      for (const statement of block.statements) {
        // A statement is a line without the space around it: no line end in it.
        const said = source.slice(statement.span.from, statement.span.to);
        expect(said).toBe(said.trim());
        expect(said).not.toBe('');
      }
    }),
    { numRuns: 400 },
  );
});

test('a broken line has an error, and a line with an error is broken', () => {
  fc.assert(
    fc.property(lines, (line) => {
      fc.pre(!/[\r\n]/u.test(line));
      const { statements, findings } = blockOf(line);
      const broken = statements.some((statement) => statement.kind === 'broken');
      expect(findings.some((finding) => finding.severity === 'error')).toBe(broken);
    }),
    { numRuns: 400 },
  );
});

test('formatting twice is formatting once, and keeps what is said', () => {
  fc.assert(
    fc.property(text, (source) => {
      const once = formatted(source);
      expect(formatted(once)).toBe(once);
      expect(meaning(once)).toEqual(meaning(source));
      expect(once.match(/\r\n|\r|\n/gu)).toEqual(source.match(/\r\n|\r|\n/gu));
      expect(blockOf(once).allowances).toHaveLength(blockOf(source).allowances.length);
    }),
    { numRuns: 400 },
  );
});

test('a good line typed in a hurry is formatted like the good line', () => {
  fc.assert(
    fc.property(sloppy, ({ line, hurried }) => {
      fc.pre(!blockOf(line).statements.some((statement) => statement.kind === 'broken'));
      expect(formatted(hurried)).toBe(formatted(line));
    }),
  );
});

test('a fix that is certain leaves no finding of its kind at its place', () => {
  let tried = 0;
  const slips = fc.constantFrom(
    '1,5 V',
    '5 KΩ per square',
    '10 mv',
    '(60 80) mm',
    '(1, 2',
    '10, 15, 20 mm',
    '5 kΩ/cm²',
  );
  const frames = fc.constantFrom(
    'supply cell @',
    'paper 24 × 16 cm, @',
    'meter 10 MΩ, range @',
    'probe M at @',
    'row A from N to P at @',
  );
  fc.assert(
    fc.property(frames, slips, (frame, slip) => {
      const line = frame.replace('@', slip);
      for (const made of blockOf(line).findings) {
        for (const fix of made.fixes.filter((candidate) => candidate.certain)) {
          const again = blockOf(applied(line, fix.edits)).findings;
          expect(again.map((finding) => finding.code)).not.toContain(made.code);
          tried++;
        }
      }
    }),
  );
  expect(tried).toBeGreaterThan(20);
});

test.each([
  ['a long word', 'x'.repeat(300_000)],
  ['a long name', `bar ${'n'.repeat(300_000)} 10 mm × 120 mm at centre`],
  ['a long number', `supply cell ${'1'.repeat(300_000)}`],
  ['many spaces', `bar N${' '.repeat(300_000)}at${' '.repeat(300_000)}(1${' '.repeat(300_000)}2)`],
  ['many commas', `bar N ${','.repeat(300_000)} at centre`],
  ['many numbers', `row A from N to P at ${'1,'.repeat(150_000)}`],
  ['many quantities', `equipotentials ${'1 V, '.repeat(60_000)}`],
  ['many corners', `outline F ${'(1, 2) '.repeat(40_000)} mm`],
  ['many brackets', `outline F ${'('.repeat(300_000)}`],
  ['many signs', `bar N ${'×'.repeat(300_000)}`],
  ['many terminals', `bar N ${'positive '.repeat(40_000)}`],
  ['many lines', 'row A from N every 10 mm\n'.repeat(4000)],
  ['many electrodes', Array.from({ length: 4000 }, (_, i) => `bar N${i} 10 mm × 5 at centre`).join('\n')],
  ['a long remark', `# allow ${'a '.repeat(150_000)}`],
])(
  'work grows with the text and not with its square: %s',
  (_, source) => {
    // At these lengths quadratic work would outlast the limit of the test many times over.
    const block = blockOf(source);
    formatBlock(block);
    expect(block.excerpt.lines.length).toBeGreaterThan(0);
  },
  20_000,
);

function collectSpans(value: unknown, spans: Span[]): void {
  if (typeof value !== 'object' || value === null) return;
  if ('from' in value && 'to' in value && typeof value.from === 'number' && typeof value.to === 'number') {
    spans.push({ from: value.from, to: value.to });
  }
  for (const part of Object.values(value)) collectSpans(part, spans);
}

/** What is said, without places in the text; of broken lines only that they are. */
function meaning(source: string): unknown {
  const { statements } = blockOf(source);
  return plainStatements(statements.map((statement) => statement));
}
