/**
 * Where patterns are found in the text of a sheet. From one keystroke to the next nearly all of it stays: what was found in lines that
 * are the same is known, and only the others are searched. No match goes beyond its line, so that what is known changes no result.
 */

export interface Found {
  /** In the whole text. */
  readonly from: number;
  readonly match: RegExpExecArray;
}

/** What two texts share: `from` to `to` is the part of the new one, in whole lines, that the old one does not have. */
interface Change {
  readonly from: number;
  readonly to: number;
  /** From a place behind the change in the old text to the same in the new one. */
  readonly shift: number;
}

export class Matches {
  private readonly whole: string;
  /** By source: an expression written inside a function is a new object each time. */
  private readonly known = new Map<string, readonly Found[]>();
  private readonly before: {
    readonly known: ReadonlyMap<string, readonly Found[]>;
    readonly change: Change;
  } | null;

  private constructor(whole: string, last: Matches | null) {
    this.whole = whole;
    this.before = last && { known: last.known, change: changeOf(last.whole, whole) };
  }

  /** Those of a text; `last`: of a similar text, if there is one. */
  static in(whole: string, last: Matches | null = null): Matches {
    return new Matches(whole, last);
  }

  /** How much of the text a similar one has to be searched for, in characters. */
  distanceTo(whole: string): number {
    const { from, to } = changeOf(this.whole, whole);
    return to - from;
  }

  /** In order of place. `pattern` has the flags g and u. */
  of(pattern: RegExp): readonly Found[] {
    const known = this.known.get(pattern.source) ?? this.find(pattern);
    this.known.set(pattern.source, known);
    return known;
  }

  private find(pattern: RegExp): readonly Found[] {
    const old = this.before?.known.get(pattern.source);
    if (this.before === null || old === undefined) return search(this.whole, pattern, 0, this.whole.length);
    const { from, to, shift } = this.before.change;
    return [
      ...old.filter((one) => one.from < from),
      ...search(this.whole, pattern, from, to),
      ...old.flatMap((one) => (one.from + shift >= to ? [moved(one, shift)] : [])),
    ];
  }
}

const moved = ({ from, match }: Found, shift: number): Found => ({ from: from + shift, match });

function search(whole: string, pattern: RegExp, from: number, to: number): readonly Found[] {
  const found = [...whole.slice(from, to).matchAll(pattern)];
  if (!found.some(([text]) => text.includes('\n')))
    return found.map((match) => ({ from: from + match.index, match }));
  const lines: Found[] = [];
  for (let start = from; start < to; ) {
    const next = whole.indexOf('\n', start) + 1;
    const end = next === 0 || next > to ? to : next;
    for (const match of whole.slice(start, end).replace(/\n$/u, '').matchAll(pattern))
      lines.push({ from: start + match.index, match });
    start = end;
  }
  return lines;
}

function changeOf(old: string, whole: string): Change {
  const most = Math.min(old.length, whole.length);
  let head = 0;
  while (head < most && old.charCodeAt(head) === whole.charCodeAt(head)) head++;
  let tail = 0;
  while (
    tail < most - head &&
    old.charCodeAt(old.length - 1 - tail) === whole.charCodeAt(whole.length - 1 - tail)
  )
    tail++;
  const from = whole.lastIndexOf('\n', head - 1) + 1;
  const next = whole.indexOf('\n', whole.length - tail) + 1;
  const shift = whole.length - old.length;
  return { from: head === 0 ? 0 : from, to: next === 0 ? whole.length : next, shift };
}

/** Texts that are remembered: those of the sheets that somebody works on. */
const mostTexts = 8;
let remembered: readonly { readonly whole: string; readonly matches: Matches }[] = [];

/** The matches of a text, with what is known of the last one like it. */
export function matchesIn(whole: string): Matches {
  const same = remembered.find((one) => one.whole === whole);
  const near = same ?? nearest(whole);
  const matches = same?.matches ?? Matches.in(whole, near?.matches ?? null);
  remembered = [{ whole, matches }, ...remembered.filter((one) => one !== near)].slice(0, mostTexts);
  return matches;
}

/** One of which most stays. */
function nearest(whole: string): (typeof remembered)[number] | undefined {
  const least = whole.length / 2;
  return remembered.find(({ matches }) => matches.distanceTo(whole) < least);
}
