/** How the line under the cursor goes on: its form, with the part that is being written marked. */
import { type LineForm, lineForms } from '../block/line-forms.ts';
import { readLines } from '../block/parse.ts';
import type { Sheet } from '../sheet/sheet.ts';
import { progressOf } from './line-progress.ts';
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
  if (cursor <= first.to || inRemark) return null;
  const [progress] = progressOf(reader.pieces, cursor);
  if (progress === undefined) return null;
  const { form, at } = progress;
  const forms = lineForms.filter(({ word }) => word === form.word);
  return {
    signatures: forms.map(signatureOf),
    active: forms.indexOf(form),
    part: at < form.parts.length ? at : null,
  };
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
