/** Where a draft of a note goes: behind the last item of the notes on safety, or into a new passage below the title. */
import type { TextEdit } from '../../findings/finding.ts';
import { metaOf, tokenTypes } from '../../sheet/markdown/tokens.ts';
import type { PassageKind, Sheet } from '../../sheet/sheet.ts';
import { type LineIndex, lineIndex } from '../../text/source.ts';
import type { Span } from '../../text/span.ts';
import type { Note, Scene, Serves } from './hazard.ts';

/** Opens every text that is put in. */
export const draftOpening = 'Draft: adapt to your risk assessment.';

export interface Drafts {
  /** Where notes on safety are looked for first: the opening of their passage, or their heading. Null where there are none. */
  readonly place: Span | null;
  /** The edits that add these notes. */
  add(notes: readonly Note[]): readonly TextEdit[];
}

/** Tokens `from` to before `to`, with the lines that they may grow by. */
interface Part {
  readonly from: number;
  readonly to: number;
  /** Level of the lists in it. */
  readonly level: number;
  readonly lines: { readonly first: number; readonly end: number };
  readonly at: Span;
}

export function draftsFor(scene: Scene): Drafts {
  const { sheet, language } = scene;
  const index = lineIndex(sheet.source.text);
  const own = partFor(scene, index);
  const staff: Readonly<Record<Serves, Part | null>> = {
    bench: null,
    preparation: passagePart(sheet, index, 'technicians'),
    operator: passagePart(sheet, index, 'teachers'),
  };
  const lineOf = ({ draft, draftAmerican }: Note): string =>
    `${draftOpening} ${language === 'en-US' ? (draftAmerican ?? draft) : draft}`;
  return {
    place: own?.at ?? null,
    add(notes) {
      const groups = new Map<Part | null, string[]>();
      for (const note of notes) {
        const part = staff[note.serves] ?? own;
        groups.set(part, [...(groups.get(part) ?? []), lineOf(note)]);
      }
      return [...groups].map(([part, lines]) =>
        part === null ? newPassage(sheet, index, lines) : addition(sheet, index, part, lines),
      );
    },
  };
}

/** A passage of safety that reaches pupils, else any, else a part under a heading. */
function partFor({ sheet, text }: Scene, index: LineIndex): Part | null {
  const passage = passagePart(sheet, index, 'safety');
  if (passage !== null) return passage;
  const parts = text.openings.map((token) => sectionPart(sheet, index, token, text));
  return parts.find((part) => part !== null) ?? null;
}

function passagePart(sheet: Sheet, index: LineIndex, kind: PassageKind): Part | null {
  const numbers = [...sheet.passages.keys()].filter((i) => sheet.passages[i]?.kind === kind);
  const seen = numbers.find((i) => sheet.passages[i]?.readers.includes('pupils'));
  const number = seen ?? numbers[0];
  const passage = number === undefined ? undefined : sheet.passages[number];
  if (passage === undefined) return null;
  const isOf = (i: number, type: string): boolean => {
    const token = sheet.tokens[i];
    const meta = token === undefined ? null : metaOf(token);
    return token?.type === type && meta?.kind === 'passage' && meta.passage === number;
  };
  const all = [...sheet.tokens.keys()];
  const from = all.find((i) => isOf(i, tokenTypes.passageOpen));
  const to = all.find((i) => isOf(i, tokenTypes.passageClose));
  if (from === undefined || to === undefined) return null;
  const first = index.placeOf(passage.opening.from).line + 1;
  const end = index.placeOf(passage.span.to).line;
  return { from, to, level: sheet.tokens[from]?.level ?? 0, lines: { first, end }, at: passage.opening };
}

function sectionPart(sheet: Sheet, index: LineIndex, opening: number, text: Scene['text']): Part | null {
  const { tokens } = sheet;
  const before = tokens[opening - 1];
  const map = before?.map;
  const piece = text.pieces.find(({ token }) => token === opening);
  if (before === undefined || !map || piece === undefined) return null;
  const heading = before.type === 'heading_open';
  const ends = (i: number): boolean => {
    const token = tokens[i];
    if (token === undefined || token.level < before.level) return true;
    if (token.type === tokenTypes.passageOpen || token.type === tokenTypes.passageClose) return true;
    if (token.level > before.level) return false;
    if (token.type === 'heading_open') return !heading || token.tag <= before.tag;
    return !heading && token.type === 'paragraph_open';
  };
  let to = opening + 2;
  while (!ends(to)) to++;
  const end = tokens[to]?.map?.[0] ?? index.lineCount;
  const at = text.spanOf(
    piece.from,
    Math.min(piece.to, heading ? piece.to : piece.from + 6) - (heading ? 1 : 0),
  );
  return { from: opening, to, level: before.level, lines: { first: map[0] + 1, end }, at };
}

/** More items behind the last one; without a list a new one at the end. */
function addition(sheet: Sheet, index: LineIndex, part: Part, lines: readonly string[]): TextEdit {
  const { tokens, source } = sheet;
  const eol = source.text.includes('\r\n') ? '\r\n' : '\n';
  let item: (typeof tokens)[number] | undefined;
  for (let i = part.from; i < part.to; i++) {
    const token = tokens[i];
    if (token?.type === 'list_item_open' && token.level === part.level + 1) item = token;
  }
  const map = item?.map;
  if (item === undefined || !map) return newList(sheet, index, part, lines);
  const { text } = source;
  const start = index.startOf(map[0]);
  const prefix = /^[\s>]*/u.exec(text.slice(start, index.endOf(map[0])))?.[0] ?? '';
  const ordered = item.info !== '';
  const number = Number(item.info);
  const marker = (i: number): string => (ordered ? `${number + 1 + i}${item?.markup}` : `${item?.markup}`);
  const end = index.endOf(lastWritten(text, index, map[0], map[1]));
  const added = lines.map((line, i) => `${eol}${prefix}${marker(i)} ${line}`).join('');
  return { span: { from: end, to: end }, text: added };
}

function newList(
  { source: { text }, tokens }: Sheet,
  index: LineIndex,
  { from, lines: { first, end }, at }: Part,
  lines: readonly string[],
): TextEdit {
  const eol = text.includes('\r\n') ? '\r\n' : '\n';
  const line = lastWritten(text, index, first - 1, end);
  const start = index.startOf(first - 1);
  const prefix = /^[\s>]*/u.exec(text.slice(start, at.from))?.[0] ?? '';
  const empty = line < first && tokens[from]?.type === tokenTypes.passageOpen;
  const gap = empty ? '' : `${eol}${prefix.trimEnd()}`;
  const added = lines.map((written) => `${eol}${prefix}- ${written}`).join('');
  const to = index.endOf(line);
  return { span: { from: to, to }, text: `${gap}${added}` };
}

/** The last line from `first` to before `end` that has something on it. */
function lastWritten(text: string, index: LineIndex, first: number, end: number): number {
  let line = Math.max(first, end - 1);
  while (line > first && /^[\s>]*$/u.test(text.slice(index.startOf(line), index.endOf(line)))) line--;
  return line;
}

/** Below the first heading where it is the title, else at the top. */
function newPassage(
  { source: { text }, front, tokens }: Sheet,
  index: LineIndex,
  lines: readonly string[],
): TextEdit {
  const eol = text.includes('\r\n') ? '\r\n' : '\n';
  const passage = ['::: safety', ...lines.map((line) => `- ${line}`), ':::'].join(eol);
  const title = tokens.find(({ type, level }) => type === 'heading_open' && level === 0);
  const map = title?.tag === 'h1' ? title.map : null;
  const behind = map ? index.endOf(map[1] - 1) : (front.span?.to ?? null);
  if (behind === null) {
    const start = text.startsWith('\ufeff') ? 1 : 0;
    return { span: { from: start, to: start }, text: `${passage}${eol}${eol}` };
  }
  const gap = blankFollows(text.slice(behind)) ? '' : eol;
  return { span: { from: behind, to: behind }, text: `${eol}${eol}${passage}${gap}` };
}

const blankFollows = (rest: string): boolean => /^(?:$|(?:\r\n|\n|\r(?!\n))[ \t]*(?:\r|\n|$))/u.test(rest);
