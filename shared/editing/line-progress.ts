/** How far a line of a block has come: the forms that fit what is said, and in each the part that is being written. */
import { type FormPart, type LineForm, lineForms } from '../block/line-forms.ts';
import type { Piece } from '../block/line-reader.ts';

export interface Progress {
  readonly form: LineForm;
  /** Number of the part; as many as there are parts where all is said. */
  readonly at: number;
  /** True where something of the part is said already. */
  readonly begun: boolean;
}

/** The forms that fit best, in the order of the table; empty where no line begins with such a word. */
export function progressOf(pieces: readonly Piece[], cursor: number): readonly Progress[] {
  const forms = lineForms.filter(({ word }) => word === pieces[0]?.text);
  const said = saidBefore(pieces, cursor);
  const scores = forms.map(({ parts }) => scoreOf(parts, said));
  const best = Math.max(...scores);
  return forms
    .filter((_, i) => scores[i] === best)
    .map((form) => ({ form, ...activePart(form.parts, said) }));
}

/** A word or a value that stands before the cursor; `done` where the cursor has left it. */
interface Said {
  readonly word: string | null;
  readonly name: boolean;
  readonly done: boolean;
}

/** Units belong to their number: one that ends the line waits for its own. A pair of coordinates is one value. */
function saidBefore(pieces: readonly Piece[], cursor: number): readonly Said[] {
  const said: Said[] = [];
  let inPair = false;
  for (const [i, { kind, text, from, to }] of pieces.entries()) {
    if (i === 0 || from >= cursor) continue;
    const next = pieces[i + 1];
    const end = next?.kind === 'unit' ? next.to : to;
    if (kind === 'open') inPair = true;
    else if (kind === 'word') said.push({ word: singular(text), name: false, done: to < cursor });
    else if (kind === 'name') said.push({ word: null, name: true, done: to < cursor });
    else if (kind === 'close' || (kind === 'number' && !inPair)) {
      said.push({ word: null, name: false, done: next !== undefined && end < cursor });
      inPair = false;
    }
  }
  return said;
}

const singular = (word: string): string => (word === 'cells' ? 'cell' : word);

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

function activePart(parts: readonly FormPart[], said: readonly Said[]): Omit<Progress, 'form'> {
  const finished = new Set<number>();
  let at = 0;
  let missing = parts[0]?.values ?? 0;
  let begun = false;
  for (const { word, done } of said) {
    if (word !== null) {
      const part = partOf(parts, word, at);
      if (part === null) continue;
      // A word inside the part that is being written may ask for more.
      if (part !== at && begun) finished.add(at);
      at = part;
      missing = parts[part]?.words[word] ?? 0;
    } else missing--;
    begun = true;
    if (!done || missing > 0) continue;
    finished.add(at);
    at = nextPart(parts, finished, at);
    missing = parts[at]?.values ?? 0;
    begun = false;
  }
  return { at, begun };
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
