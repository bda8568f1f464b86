/** Warns of prefixes that are read as written but hardly meant: the m and M of mΩ and MΩ, mm and Mm, mV and MV. */
import type { LineReader } from './line-reader.ts';
import type { Value } from './tree.ts';
import { rewrite } from './values.ts';

export type Role = 'meter' | 'paper' | 'supply';

interface Doubt {
  readonly symbol: string;
  readonly likely: string;
  /** Values that need no doubt, in the working unit: 1500 mV is a cell. */
  readonly plausible: (value: number) => boolean;
  readonly says: (written: string, likely: string) => string;
}

/** By what the quantity is for. */
const doubts: Readonly<Record<Role, readonly Doubt[]>> = {
  meter: [
    {
      symbol: 'mΩ',
      likely: 'MΩ',
      plausible: (ohm) => ohm >= 1,
      says: (w, l) => `${w} would short the paper. ${l}?`,
    },
  ],
  paper: [
    {
      symbol: 'mΩ',
      likely: 'MΩ',
      plausible: (ohm) => ohm >= 1,
      says: (w, l) => `${w} per square is sheet metal, not paper. ${l}, or kΩ?`,
    },
  ],
  supply: [
    {
      symbol: 'mV',
      likely: 'V',
      plausible: (volt) => volt >= 0.1,
      says: (w, l) => `${w} is very little for a supply. ${l}?`,
    },
    {
      symbol: 'MV',
      likely: 'kV',
      plausible: (volt) => volt <= 10_000,
      says: (w, l) => `${w} is a bolt of lightning. ${l}?`,
    },
  ],
};

/** The value as it is, doubted aloud where its prefix is unlikely. */
export function unlikely(line: LineReader, value: Value | null, role: Role): Value | null {
  if (value === null || line.failed) return value;
  doubt(line, value, doubts[role]);
  return value;
}

/** Doubts all lengths of a line that are written in Mm. */
export function doubtLengths(line: LineReader): void {
  for (const [i, piece] of line.pieces.entries()) {
    if (piece.kind !== 'unit' || piece.text !== 'Mm') continue;
    const number = line.pieces[i - 1];
    const written = number?.kind === 'number' ? `${number.text} Mm` : 'Mm';
    const likely = written.replace('Mm', 'mm');
    line.report('unit-unlikely', {
      span: line.span(piece.from, piece.to),
      message: `${written} are thousands of kilometres. ${likely}?`,
      fixes: [rewrite(line, piece, 'mm', likely)],
    });
  }
}

function doubt(line: LineReader, value: Value, candidates: readonly Doubt[]): void {
  const end = value.span.to - line.line.at;
  const unit = line.pieces.find((piece) => piece.kind === 'unit' && piece.to === end);
  const found = candidates.find((candidate) => candidate.symbol === unit?.text);
  if (unit === undefined || found === undefined || found.plausible(value.value)) return;
  const number = line.text.slice(value.span.from - line.line.at, unit.from).trim();
  const likely = `${number} ${found.likely}`;
  line.report('unit-unlikely', {
    span: value.span,
    message: found.says(`${number} ${found.symbol}`, likely),
    fixes: [rewrite(line, unit, found.likely, likely)],
  });
}
