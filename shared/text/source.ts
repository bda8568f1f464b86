/** One text with a name, and the way between offsets and lines. Lines end with CRLF, LF or CR, as Markdown counts them. */

export interface Source {
  /** A file name for messages; paths are the caller's affair. */
  readonly name: string;
  readonly text: string;
}

/** Zero-based line and UTF-16 column. */
export interface Place {
  readonly line: number;
  readonly column: number;
}

export interface LineIndex {
  readonly lineCount: number;
  /** Offset of the first character of a line; lines past the end give the end of the text. */
  startOf(line: number): number;
  /** Offset behind the last character of a line, before its line end. */
  endOf(line: number): number;
  placeOf(offset: number): Place;
  offsetOf(place: Place): number;
}

export function lineIndex(text: string): LineIndex {
  const starts: number[] = [0];
  const ends: number[] = [];
  for (let at = 0; at < text.length; at++) {
    const c = text.charCodeAt(at);
    if (c !== 10 && c !== 13) continue;
    ends.push(at);
    if (c === 13 && text.charCodeAt(at + 1) === 10) at++;
    starts.push(at + 1);
  }
  ends.push(text.length);

  const startOf = (line: number): number => starts[line] ?? text.length;
  const endOf = (line: number): number => ends[line] ?? text.length;
  const lineAt = (offset: number): number => {
    let low = 0;
    let high = starts.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (startOf(middle) <= offset) low = middle;
      else high = middle - 1;
    }
    return low;
  };
  return {
    lineCount: starts.length,
    startOf,
    endOf,
    placeOf(offset) {
      const line = lineAt(Math.max(0, Math.min(offset, text.length)));
      return { line, column: Math.max(0, Math.min(offset, endOf(line)) - startOf(line)) };
    },
    offsetOf: ({ line, column }) => Math.min(startOf(line) + column, endOf(line)),
  };
}
