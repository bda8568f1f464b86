/** Rules over what is missing beside the other: a number without a unit, a unit without a number. */
import { pluralName } from './lexicon.ts';
import { found, type RunRule, rewrite } from './rule.ts';
import type { Value } from './values.ts';

interface Said {
  readonly pattern: RegExp;
  readonly unit: string;
}

const verb = String.raw`(?: (?:there|here|then|at \p{Lu}\w{0,3}|(?:at|in|on|near|beside) the [\p{Ll}-]{2,12}(?: [\p{Ll}-]{2,12})?))? (?:was|is|of|reads?|shows?|showed) (?:about |only |roughly |approximately )?[-\u2212]?$`;

/** What stands before the number, and the unit that is likely. */
const said: readonly Said[] = [
  {
    pattern: new RegExp(String.raw`\b(?:reading|voltage|potential(?: difference)?|p\.d\.)${verb}`, 'iu'),
    unit: 'V',
  },
  { pattern: /\b(?:volt)?meter (?:reads?|shows?|showed) (?:about )?[-\u2212]?$/iu, unit: 'V' },
  { pattern: /(?:^|[\s(])V₀?[ \u00a0]?=[ \u00a0]?[-\u2212]?$/u, unit: 'V' },
  { pattern: new RegExp(String.raw`\bfield strength(?: E)?${verb}`, 'iu'), unit: 'V/m' },
  { pattern: /\bcurrent (?:was|is|of) (?:about )?$/iu, unit: 'mA' },
];

/** Only a decimal number that ends its clause: what goes on may be a count, a ratio or a sum. */
export const noUnit: RunRule = ({ run, values, setting }) => {
  // "Write your readings in volts": said once for all.
  if (saidOnce.test(run.text)) return [];
  return values.flatMap((value) => {
    const before = run.text.slice(Math.max(0, value.from - 60), value.from);
    const match = endsClause(run.text, value) ? said.find(({ pattern }) => pattern.test(before)) : undefined;
    if (match === undefined || (setting.names.has('V') && /V₀?[ \u00a0]?=/u.test(before))) return [];
    const number = run.text.slice(value.from, value.to);
    const { strength } = setting.style;
    const unit = match.unit === 'V/m' ? (strength ?? match.unit) : match.unit;
    const menu = `${number} ${unit}`;
    const end = { run, from: value.to, to: value.to };
    return [
      found(
        'no-unit',
        { run, from: value.from, to: value.to },
        { message: `${number} of what? ${menu}?`, fixes: rewrite(end, ` ${unit}`, menu, false) },
      ),
    ];
  });
};

const saidOnce = /\b(?:in|\/) (?:mV|V|volts?|mA|V\/m)(?![\p{L}\d])/u;

function endsClause(text: string, { to, number, unit }: Value): boolean {
  if (unit !== null || number.decimals === 0 || number.power !== null || Number(number.digits) === 0)
    return false;
  return /^(?:$|\)?[.;!?](?:\s|$)|\)$|, \p{Ll}|[ \u00a0](?:at|when|and the|but|so|because|there|here)(?!\p{L}))/u.test(
    text.slice(to, to + 10),
  );
}

const countedUnit =
  /\b(?:how many|many|several|a few|fewer|number of) ([mc]m|km|[mk]V|[mµ]A|kΩ|MΩ)(?![\p{L}\p{N}/²³⁻])/gu;

export const unitAlone: RunRule = ({ run, setting }) =>
  [...run.text.matchAll(countedUnit)].flatMap((match) => {
    const [whole, symbol = ''] = match;
    const name = pluralName(symbol, setting.american);

    if (name === null) return [];
    const at = match.index;
    const place = { run, from: at + whole.length - symbol.length, to: at + whole.length };
    return [
      found('unit-alone', place, {
        message: `A symbol goes with a number; in words it is ${name}.`,
        fixes: rewrite(place, name, name, false),
      }),
    ];
  });
