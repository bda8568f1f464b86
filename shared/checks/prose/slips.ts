/** Makes a rule of one kind of slip in a unit: the tokenizer has seen it, the rule says it. */
import type { FindingCode } from '../../findings/catalogue.ts';
import type { Severity } from '../../findings/finding.ts';
import type { SlipKind } from './lexicon.ts';
import { found, type RunRule, rewrite } from './rule.ts';
import type { Slip, UnitReading } from './unit-reading.ts';
import type { Value } from './values.ts';

export interface SlipWords {
  /** As written. */
  readonly unit: string;
  /** What is meant, the likeliest first, with its number: `1.5 mV`. */
  readonly meant: readonly string[];
}

export interface SlipRule {
  readonly kind: SlipKind;
  readonly code: FindingCode;
  readonly say: (words: SlipWords) => string;
  readonly severity?: Severity;
}

export function slipRule({ kind, code, say, severity }: SlipRule): RunRule {
  return ({ run, slipped }) =>
    slipped.flatMap((value) => {
      const { unit } = value;
      const slip = unit?.slips.find((one) => one.kind === kind);
      if (unit === null || slip === undefined) return [];
      const meant = slip.meant.map((text) => mended(run.text, value, slip, text));
      const fixes = meant.flatMap((text, i) =>
        rewrite({ run, from: value.from, to: value.to }, text, text, slip.certain && i === 0),
      );
      const written = run.text.slice(unit.from, unit.to);
      const message = say({ unit: written, meant });
      return [
        found(code, { run, from: slip.from, to: slip.to }, { message, fixes, ...(severity && { severity }) }),
      ];
    });
}

/** True where a mend of the unit brings the space before it along. */
export function mendsGap(unit: UnitReading): boolean {
  return unit.slips.some(({ from }) => from === unit.from);
}

/** Number and unit with one slip mended; others stay as they are. */
function mended(text: string, { from, number, gap, unit }: Value, slip: Slip, meant: string): string {
  if (unit === null) return '';
  if (slip.kind === 'attached') return `${meant} = ${text.slice(from, number.to)} ${unit.symbol}`;
  const own = text.slice(unit.from, slip.from) + meant + text.slice(slip.to, unit.to);
  const space = gap === '' && slip.from === unit.from ? ' ' : gap;
  return text.slice(from, number.to) + space + own;
}
