/** Reads a sheet resistance: `5 kΩ per square`. */
import type { LineReader } from './line-reader.ts';
import type { Value } from './tree.ts';
import { positive, rewrite } from './values.ts';

/** Without "per square" it is read all the same, with a warning; "per" some area is mended by a fix. */
export function perSquare(line: LineReader): Value | null {
  const value = positive(line, 'resistance');
  if (value === null || line.takeWord('per square')) return value;
  const at = wrongArea(line);
  if (at !== null) {
    line.report('per-square-missing', {
      span: { from: value.span.from, to: line.span(at.from, at.to).to },
      message:
        'A sheet resistance is per square, whatever the size of the square, not per square centimetre.',
      fixes: [rewrite(line, at, ' per square', 'per square', true)],
    });
    line.take('sign', at.from, at.to);
    return value;
  }
  const end = { from: line.offset, to: line.offset };
  line.report('per-square-missing', {
    span: value.span,
    message: 'A sheet resistance is “per square”. Is this the resistance of a square of the paper?',
    fixes: [rewrite(line, end, ' per square', 'per square behind it')],
  });
  return value;
}

/** Offsets of `/cm²`, `per cm²`, `per sq cm`. */
function wrongArea(line: LineReader): { readonly from: number; readonly to: number } | null {
  areaPattern.lastIndex = line.offset;
  const match = areaPattern.exec(line.text);
  return match === null ? null : { from: line.offset, to: areaPattern.lastIndex };
}

const areaPattern =
  /\s*(?:\/|per)\s*(?:(?:sq\.?|square)\s*)?(?:mm|cm|m|centimetre|metre)(?:²|\^2|2)?(?![\p{L}\p{N}])/uy;
