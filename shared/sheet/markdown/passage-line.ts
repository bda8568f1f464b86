/** Reads the line of colons that opens a passage: its readers and, for an answer, the space that pupils get. */
import { nearest } from '../../block/nearest.ts';
import type { Audience } from '../../block/tree.ts';
import type { FindingParts, Fix } from '../../findings/finding.ts';
import type { SheetCode } from '../../findings/sheet-codes.ts';
import { parseQuantity } from '../../quantity/read.ts';
import { type Span, span } from '../../text/span.ts';
import type { Passage, PassageKind, Readers } from '../sheet.ts';

export interface PassageLine {
  readonly kind: PassageKind;
  readonly space: Passage['space'];
  readonly trouble: (FindingParts & { readonly code: SheetCode }) | null;
}

export const everyone: Readers = ['pupils', 'teachers', 'technicians'];

/** Who reads a passage that stands in no other. A hint reaches pupils on a page of its own, an answer as room to write. */
export const readersOf: Readonly<Record<PassageKind, Readers>> = {
  pupils: ['pupils'],
  teachers: ['teachers'],
  technicians: ['technicians'],
  safety: everyone,
  answer: ['teachers'],
  hint: ['pupils', 'teachers'],
  support: ['pupils', 'teachers'],
  core: ['pupils', 'teachers'],
  stretch: ['pupils', 'teachers'],
  broken: ['teachers'],
};

/** Readers whom both let in, in fixed order. */
export function common(a: Readers, b: Readers): Readers {
  return everyone.filter((reader: Audience) => a.includes(reader) && b.includes(reader));
}

/** `line` begins with its colons, `at` in the file; null for a bare run of colons. */
export function readPassageLine(line: string, at: number): PassageLine | null {
  const [, colons = '', word = '', space = '', rest = ''] =
    /^(:{3,}[ \t]*)(\S*)([ \t]*)(.*)$/u.exec(line) ?? [];
  if (word === '') return null;
  const wordAt = at + colons.length;
  const kind = kinds[word];
  if (kind === undefined) return unknownKind(word, span(wordAt, wordAt + word.length), rest !== '');
  if (rest === '') return { kind, space: usualSpace, trouble: null };
  const restSpan = span(wordAt + word.length + space.length, at + line.length);
  const whole = span(wordAt + word.length, restSpan.to);
  return kind === 'answer' ? readSpace(rest, restSpan, whole) : tooMuch(word, restSpan, whole);
}

const usualSpace: Passage['space'] = { kind: 'lines', count: 2 };

const kinds: Readonly<Record<string, PassageKind>> = Object.assign(Object.create(null), {
  pupils: 'pupils',
  students: 'pupils',
  teachers: 'teachers',
  technicians: 'technicians',
  safety: 'safety',
  answer: 'answer',
  hint: 'hint',
  support: 'support',
  core: 'core',
  stretch: 'stretch',
});

/** Words that open a passage. */
export const passageWords: readonly string[] = Object.keys(kinds);

function unknownKind(word: string, wordSpan: Span, more: boolean): PassageLine {
  const known = passageWords;
  const singular = known.filter((kind) => kind === `${word.toLowerCase()}s`);
  const meant = [...new Set([...singular, ...nearest(word, known)])];
  const question = meant[0] === undefined ? '' : ` \`${meant[0]}\`?`;
  return broken({
    code: 'passage-kind',
    span: wordSpan,
    message: `No readers are called \`${word}\`, so pupils do not get this passage.${question}`,
    hints: [`A passage is for ${known.slice(0, -1).join(', ')} or ${known.at(-1)}.`],
    fixes: meant.map((kind) => ({
      title: `Write ${kind}`,
      edits: [{ span: wordSpan, text: kind }],
      certain: meant.length === 1 && !more,
    })),
  });
}

function tooMuch(word: string, rest: Span, whole: Span): PassageLine {
  return broken({
    code: 'passage-form',
    span: rest,
    message: `Only the word \`${word}\` belongs on the opening line, so pupils do not get this passage.`,
    fixes: [{ title: `Leave only ${word}`, edits: [{ span: whole, text: '' }], certain: false }],
  });
}

function broken(trouble: FindingParts & { readonly code: SheetCode }): PassageLine {
  return { kind: 'broken', space: usualSpace, trouble };
}

/** `4 lines`, `box 60 mm`. An answer stays hidden whatever stands here. */
function readSpace(rest: string, restSpan: Span, whole: Span): PassageLine {
  const lines = /^(\d{1,2})\s*lines?$/u.exec(rest)?.[1];
  if (lines !== undefined && Number(lines) >= 1) {
    return { kind: 'answer', space: { kind: 'lines', count: Number(lines) }, trouble: null };
  }
  const box = /^box\s+(.*)$/u.exec(rest)?.[1];
  const height = box === undefined ? null : parseQuantity(box, 'length');
  if (height?.kind === 'read' && height.quantity.value > 0 && height.quantity.value <= tallestBox_mm) {
    return { kind: 'answer', space: { kind: 'box', height_mm: height.quantity.value }, trouble: null };
  }
  const trouble = {
    code: 'passage-form' as const,
    span: restSpan,
    message: 'The room for an answer is `answer 4 lines` or `answer box 60 mm`. Pupils get two lines.',
    fixes: spaceFixes(rest, restSpan, whole),
  };
  return { kind: 'answer', space: usualSpace, trouble };
}

/** Higher than a page. */
const tallestBox_mm = 250;

function spaceFixes(rest: string, restSpan: Span, whole: Span): readonly Fix[] {
  const number = /\d+(?:\.\d+)?/u.exec(rest)?.[0];
  if (number === undefined) {
    return [{ title: 'Leave two lines', edits: [{ span: whole, text: '' }], certain: false }];
  }
  const forms = /box|mm|cm/u.test(rest) ? [`box ${number} mm`] : [`${number} lines`, `box ${number} mm`];
  return forms.map((form) => ({
    title: `Write ${form}`,
    edits: [{ span: restSpan, text: form }],
    certain: false,
  }));
}
