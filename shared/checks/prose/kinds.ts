/** Rules over the kind of a quantity and its unit: a field strength in volts, a potential in volts per metre. */
import { found, type Passage, type RunRule, rewrite, type Setting } from './rule.ts';
import type { Value } from './values.ts';

const letterE = /(?:^|[^\p{L}\p{N}_/₀-₉.])E[ \u00a0]?[=≈][ \u00a0]?[-\u2212]?$/u;
const fieldWords =
  /\bfield(?<strength> strength)?(?: E)?,? (?<verb>of|is|was|equals|(?:comes|came|works|worked) (?:out )?(?:as|at|to)) (?:about |roughly |approximately |nearly |only )?$/iu;
/** What follows makes a quotient, a product or another noun of it. */
const goesOn =
  /^[ \u00a0\n]?(?:[/÷×*·(]|[-+\u2212\u2013] ?\d)|^[ \u00a0\n](?:per|over|across|for|in|divided|times|between|cell|batter|supply|source|power|bar|plate|electrode|line)/u;

export const strengthUnit: RunRule = (passage) =>
  passage.values.flatMap((value) => {
    const { run, setting } = passage;
    const { unit } = value;
    if (unit?.measure !== 'potential' || unit.slips.length > 0 || goesOn.test(after(passage, value)))
      return [];
    const before = run.text.slice(Math.max(0, value.from - 48), value.from);
    const words = fieldWords.exec(before);
    const symbol = letterE.test(before) && !setting.names.has('E') && !isEmf(passage, value);
    if (words === null && !symbol) return [];
    if (isQuotedClaim(passage, value)) return [];
    const bare = words?.groups?.verb === 'of' && words.groups.strength === undefined;
    const fieldEnd = value.from - (words?.[0].length ?? 0) + 'field'.length;
    const meant = `${run.text.slice(value.from, value.number.to)} ${perMetre(unit.symbol, setting)}`;
    const text = bare ? `${run.text.slice(fieldEnd, value.from)}${meant}` : meant;
    const place = bare ? { run, from: fieldEnd, to: value.to } : { run, from: value.from, to: value.to };
    return [
      found(
        'strength-unit',
        { run, from: value.from, to: value.to },
        {
          message: `${run.text.slice(value.from, value.to)} is a potential. A field strength is in volts per metre: ${meant}?`,
          fixes: rewrite(
            place,
            bare ? ` strength${text}` : text,
            bare ? `field strength${text}` : meant,
            false,
          ),
        },
      ),
    ];
  });

const claims =
  /(?:\b(?:says?|said|claims?|claimed|thinks?|thought|believes?|believed|writes?|wrote)\b[^.!?\n]*)$/iu;

/** "Meera says the field is 1.6 V": what somebody says may be wrong on purpose. */
function isQuotedClaim({ run }: Passage, { from }: Value): boolean {
  return claims.test(run.text.slice(Math.max(0, from - 90), from));
}

/** A sheet that writes E for an electromotive force somewhere is left alone, and so is a sentence that speaks of one. */
function isEmf({ run, setting }: Passage, value: Value): boolean {
  return (
    setting.emf ||
    /e\.?m\.?f\b|electromotive/iu.test(run.text.slice(Math.max(0, value.from - 80), value.to + 40))
  );
}

/** A newton per coulomb is a volt per metre. */
function perMetre(symbol: string, { style }: Setting): string {
  return style.strength === 'N/C' ? `${symbol.replace('V', 'N')}/C` : `${symbol}/m`;
}

const perMetreUnit = /^([kmµ]?)V(?:(\/)m| m⁻¹)$/u;
const perCoulombUnit = /^([kmµ]?)N(?:(\/)C| C⁻¹)$/u;

/** A text that has both units tells that they are one. */
export const strengthStyle: RunRule = ({ run, values, setting: { style } }) => {
  if (style.strength === null) return [];
  const [other, top, below] =
    style.strength === 'N/C' ? ([perMetreUnit, 'N', 'C'] as const) : ([perCoulombUnit, 'V', 'm'] as const);
  if (run.text.includes(style.strength) || run.text.includes(`${top} ${below}⁻¹`)) return [];
  return values.flatMap(({ from, to, number, unit }) => {
    const [written, prefix = '', solidus] = other.exec(unit?.symbol ?? '') ?? [];
    if (unit === null || written === undefined || unit.slips.length > 0 || unit.named) return [];
    const symbol = `${prefix}${top}${solidus === undefined ? ` ${below}⁻¹` : `/${below}`}`;
    const menu = `${run.text.slice(from, number.to)} ${symbol}`;
    const message = `The house style for a field strength is ${style.strength}: ${menu}.`;
    const fixes = rewrite({ run, from: unit.from, to }, symbol, menu, false);
    return [found('strength-style', { run, from, to }, { message, fixes })];
  });
};

const letterV = /(?:^|[^\p{L}\p{N}_/.])Δ?V₀?[ \u00a0]?[=≈][ \u00a0]?[-\u2212]?$/u;
const potentialWords =
  /\b(?:potential(?: difference)?|voltage|p\.d\.)(?: (?:at|in|on|near|between|across)(?= )[^.;:,\d]{1,30}?)? (?:of|is|was) (?:about |roughly |approximately |nearly |only )?$/iu;
const rateWords = /gradient|rate|slope|chang|fall|drop|steep|derivative|strength|field|per /iu;

export const potentialUnit: RunRule = (passage) =>
  passage.values.flatMap((value) => {
    const { run, setting } = passage;
    const { unit } = value;
    const volts = unit !== null && /^[mkµ]?V/u.test(unit.symbol) && unit.measure === 'strength';
    if (
      !volts ||
      unit.named ||
      unit.slips.length > 0 ||
      goesOn.test(after(passage, value).replace(/^ in /u, ''))
    )
      return [];
    const before = run.text.slice(Math.max(0, value.from - 48), value.from);
    const words = potentialWords.test(before) && !rateWords.test(before);
    if (!words && (!letterV.test(before) || setting.names.has('V'))) return [];
    if (isQuotedClaim(passage, value)) return [];
    const meant = run.text.slice(value.from, unit.firstTo);
    return [
      found(
        'potential-unit',
        { run, from: value.from, to: value.to },
        {
          message: `${run.text.slice(value.from, value.to)} is a field strength. A potential is in volts: ${meant}?`,
          fixes: rewrite({ run, from: unit.firstTo, to: value.to }, '', meant, false),
        },
      ),
    ];
  });

function after({ run }: Passage, { to }: Value): string {
  return run.text.slice(to, to + 12);
}
