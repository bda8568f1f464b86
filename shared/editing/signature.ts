/** How the line under the cursor goes on: its form, with the part that is being written marked. */
import { type FormPart, type LineForm, lineForms } from '../block/line-forms.ts';
import type { Piece } from '../block/line-reader.ts';
import { readLines } from '../block/parse.ts';
import type { Sheet } from '../sheet/sheet.ts';
import { blockPlace } from './place.ts';
import { wordEntry } from './words.ts';

export interface Signature {
  /** The whole line: `clip NAME R`. */
  readonly label: string;
  readonly help: string;
  readonly parts: readonly SignaturePart[];
}
export interface SignaturePart {
  /** Where it stands in the label. */
  readonly from: number;
  readonly to: number;
  readonly help: string;
}

export interface SignatureHelp {
  /** All forms of the line. */
  readonly signatures: readonly Signature[];
  /** The one that is being written. */
  readonly active: number;
  /** The part of it that is being written; null where all is said. */
  readonly part: number | null;
}

/** Null outside the lines of our blocks, in a remark and before the first word is complete. */
export function signatureAt(sheet: Sheet, offset: number): SignatureHelp | null {
  const place = blockPlace(sheet, offset);
  if (place === null || place.line === null || place.line < 0) return null;
  const reader = readLines(place.block.excerpt)[place.line]?.reader;
  const first = reader?.pieces[0];
  if (reader === undefined || first === undefined) return null;
  const cursor = offset - reader.line.at;
  const inRemark =
    cursor > reader.text.length && reader.line.text.slice(reader.text.length, cursor).trim() !== '';
  const forms = lineForms.filter(({ word }) => word === first.text);
  if (forms.length === 0 || cursor <= first.to || inRemark) return null;
  const said = saidBefore(reader.pieces, cursor);
  const active = bestForm(forms, said);
  return {
    signatures: forms.map(signatureOf),
    active,
    part: activePart(forms[active]?.parts ?? [], said),
  };
}

/** A word or a value that stands before the cursor; `done` where the cursor has left it. */
interface Said {
  readonly word: string | null;
  readonly name: boolean;
  readonly done: boolean;
}

/** Units belong to their number; a pair of coordinates is one value. */
function saidBefore(pieces: readonly Piece[], cursor: number): readonly Said[] {
  const said: Said[] = [];
  let inPair = false;
  for (const [i, { kind, text, from, to }] of pieces.entries()) {
    if (i === 0 || from >= cursor) continue;
    const next = pieces[i + 1];
    const end = next?.kind === 'unit' ? next.to : to;
    if (kind === 'open') inPair = true;
    else if (kind === 'word') said.push({ word: text, name: false, done: to < cursor });
    else if (kind === 'close' || kind === 'name' || (kind === 'number' && !inPair)) {
      said.push({ word: null, name: kind === 'name', done: end < cursor });
      inPair = false;
    }
  }
  return said;
}

/** The first of the forms that fit best what was said. */
function bestForm(forms: readonly LineForm[], said: readonly Said[]): number {
  const scores = forms.map(({ parts }) => scoreOf(parts, said));
  return scores.indexOf(Math.max(...scores));
}

/** One for each word that the form knows, for a beginning like its own, and for a name where the form has one. */
function scoreOf(parts: readonly FormPart[], said: readonly Said[]): number {
  const [first] = parts;
  const [begin] = said;
  const begins =
    first !== undefined &&
    begin !== undefined &&
    (begin.word === null ? first.values > 0 : begin.word in first.words);
  const points = said.map(({ word }, i) => {
    const known = parts.filter((part) => word !== null && word in part.words);
    const named = known.some((part) => part.named === true) && said[i + 1]?.name === true;
    return (known.length > 0 ? 1 : 0) + (named ? 1 : 0);
  });
  return points.reduce((sum, more) => sum + more, begins ? 1 : 0);
}

function activePart(parts: readonly FormPart[], said: readonly Said[]): number | null {
  const finished = new Set<number>();
  let at = 0;
  let missing = parts[0]?.values ?? 0;
  let begunHere = false;
  for (const { word, done } of said) {
    if (word !== null) {
      const begun = partOf(parts, word, at);
      if (begun === null) continue;
      // A word inside the part that is being written may ask for more.
      if (begun !== at && begunHere) finished.add(at);
      at = begun;
      missing = parts[begun]?.words[word] ?? 0;
    } else missing--;
    begunHere = true;
    if (!done || missing > 0) continue;
    finished.add(at);
    at = nextPart(parts, finished, at);
    missing = parts[at]?.values ?? 0;
    begunHere = false;
  }
  return at < parts.length ? at : null;
}

/** The part that a word begins: this one or one behind it, or else one before. */
function partOf(parts: readonly FormPart[], word: string, at: number): number | null {
  const knows = (part: FormPart): boolean => word in part.words;
  const behind = parts.findIndex((part, i) => i >= at && knows(part));
  const found = behind >= 0 ? behind : parts.findIndex(knows);
  return found >= 0 ? found : null;
}

/** The next one, or else one that was passed over and cannot be left out. */
function nextPart(parts: readonly FormPart[], finished: ReadonlySet<number>, at: number): number {
  const behind = parts.findIndex((_, i) => i > at && !finished.has(i));
  const found = behind >= 0 ? behind : parts.findIndex((part, i) => !part.optional && !finished.has(i));
  return found >= 0 ? found : parts.length;
}

function signatureOf({ word, parts }: LineForm): Signature {
  let label = word;
  const placed = parts.map((part): SignaturePart => {
    const from = label.length + (part.optional ? 2 : 1);
    label += part.optional ? ` [${part.label}]` : ` ${part.label}`;
    return { from, to: from + part.label.length, help: part.help };
  });
  return { label, help: wordEntry(word, { first: true, of: null })?.help ?? '', parts: placed };
}
