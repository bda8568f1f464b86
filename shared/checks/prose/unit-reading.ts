/** Reads the unit that stands at a place of prose, with the slips in it: one word, several words, quotients and products. */
import { type Measure, type SlipKind, type UnitWord, unitWord } from './lexicon.ts';

export interface Slip {
  readonly kind: SlipKind;
  /** What is to be replaced, in the run. */
  readonly from: number;
  readonly to: number;
  /** The likeliest first. */
  readonly meant: readonly string[];
  readonly certain: boolean;
}

export interface UnitReading {
  readonly from: number;
  readonly to: number;
  /** Behind its first word: of `V/m` the `V`. */
  readonly firstTo: number;
  /** As it should be written: `kΩ`, `V/m`, `cm²`. */
  readonly symbol: string;
  readonly measure: Measure;
  /** Spelt out: `volts`. */
  readonly named: boolean;
  readonly slips: readonly Slip[];
}

/** The unit at `from`, no space before it, or null. */
export function unitReading(text: string, from: number): UnitReading | null {
  const first = firstOf(text, from);
  if (first === null) return joinedProduct(text, from);
  if (first.measure === 'percent' || first.measure === 'temperature') return first;
  return squareOf(text, first) ?? quotientOf(text, first) ?? productOf(text, first) ?? areaOf(text, first);
}

/** The unit that all of this text is, or null. */
export function wholeUnit(text: string): UnitReading | null {
  const reading = unitReading(text, 0);
  return reading?.to === text.length ? reading : null;
}

const wordPattern = /[\p{L}\u2126]{1,24}/uy;

function match(pattern: RegExp, text: string, at: number): RegExpExecArray | null {
  pattern.lastIndex = at;
  return pattern.exec(text);
}

function plain(from: number, to: number, unit: UnitWord): UnitReading {
  const slips = unit.slip === null ? [] : [{ ...unit.slip, from, to }];
  const { symbol, measure, named } = unit;
  return { from, to, firstTo: to, symbol, measure, named, slips };
}

function slipped(from: number, to: number, unit: Omit<UnitReading, 'from' | 'to' | 'firstTo'>): UnitReading {
  return { from, to, firstTo: to, ...unit };
}

function firstOf(text: string, from: number): UnitReading | null {
  const sign = text.charAt(from);
  if (sign === '%')
    return slipped(from, from + 1, { symbol: '%', measure: 'percent', named: false, slips: [] });
  if (sign === '°' || sign === 'º') return degrees(text, from);
  const several = severalWords(text, from);
  if (several !== null) return several;
  const word = match(wordPattern, text, from)?.[0];
  if (word === undefined) return null;
  const to = from + word.length;
  const unit = unitWord(word);
  if (unit !== null) return wordReading(text, { from, to }, unit);
  if (word === 'k' || word === 'K') return prefixAlone(text, from, word);
  return word.length === 1 ? prefixApart(text, from, word) : null;
}

const celsius = /[°º](?:[ \u00a0]?(?:C(?![\p{L}\p{N}])|[Cc]entigrade(?!\p{L}))|c(?![\p{L}\p{N}]))/uy;

function degrees(text: string, from: number): UnitReading {
  const written = match(celsius, text, from)?.[0];
  if (written === undefined)
    return slipped(from, from + 1, { symbol: '°', measure: 'angle', named: false, slips: [] });
  const to = from + written.length;
  const slip = (kind: SlipKind): Slip => ({ kind, from, to, meant: ['°C'], certain: true });
  const slips = /^.C$/u.test(written)
    ? []
    : [slip(written.endsWith('C') ? 'degree apart' : written.endsWith('c') ? 'case' : 'old name')];
  return slipped(from, to, { symbol: '°C', measure: 'temperature', named: false, slips });
}

/** Slips of more than one word: the pattern, and what it comes to. */
const phrases: readonly (readonly [
  RegExp,
  SlipKind,
  Measure,
  (words: readonly string[]) => readonly string[],
])[] = [
  [
    /deg(?:rees?|s?\.?)[ \u00a0]?(?:centigrade|Centigrade)(?!\p{L})/uy,
    'old name',
    'temperature',
    () => ['°C'],
  ],
  [/deg(?:s?\.?)[ \u00a0]?C(?!\p{L})/uy, 'abbreviation', 'temperature', () => ['°C']],
  [
    /sq(?:\.[ \u00a0]?|[ \u00a0])(mm|cm|m)(?![\p{L}\p{N}])/uy,
    'abbreviation',
    'other',
    ([unit]) => [`${unit}²`],
  ],
  [/square[ \u00a0](mm|cm|m)(?![\p{L}\p{N}])/uy, 'mixed', 'other', ([unit]) => [`${unit}²`]],
  [/cc(?![\p{L}\p{N}])/uy, 'abbreviation', 'other', () => ['cm³']],
  [
    /(kilo|mega|milli|micro|centi)[ \u00a0-](volts?|ohms?|amp(?:ere)?s?|met(?:re|er)s?|hertz)(?!\p{L})/uy,
    'name apart',
    'other',
    ([prefix = '', name = '']) => [joinedName(prefix, name)],
  ],
];

function joinedName(prefix: string, name: string): string {
  const whole = name.replace(/^amp(s?)$/u, 'ampere$1');
  return (/^ohm/u.test(whole) ? prefix.replace(/(?<=kil|meg)[oa]$/u, '') : prefix) + whole;
}

function severalWords(text: string, from: number): UnitReading | null {
  if (!/[dsckm]/u.test(text.charAt(from))) return null;
  for (const [pattern, kind, measure, meaning] of phrases) {
    const found = match(pattern, text, from);
    if (found === null) continue;
    const to = from + found[0].length;
    const meant = meaning(found.slice(1));
    const slips = [{ kind, from, to, meant, certain: true }];
    const symbol = kind === 'name apart' ? (unitWord(meant[0] ?? '')?.symbol ?? '') : (meant[0] ?? '');
    const known = kind === 'name apart' ? (unitWord(meant[0] ?? '')?.measure ?? measure) : measure;
    return slipped(from, to, { symbol, measure: known, named: kind === 'name apart', slips });
  }
  return null;
}

/** A word of the table, unless a metre is the prefix of what follows. */
function wordReading(
  text: string,
  { from, to }: { readonly from: number; readonly to: number },
  unit: UnitWord,
): UnitReading | null {
  if (text.charAt(to) === '_') return null;
  const metre = unit.symbol === 'm' && !unit.named;
  return (metre ? prefixApart(text, from, 'm') : null) ?? plain(from, to, unit);
}

/** `m V`, `k Ω`: a prefix, a space, and a unit that ends its clause. With `m` it could be a metre. */
function prefixApart(text: string, from: number, prefix: string): UnitReading | null {
  if (!/^[kMmµμ]$/u.test(prefix)) return null;
  const found = match(
    /.[ \u00a0](V|A|Ω|\u2126|m|Hz)(?![\p{L}\p{N}₀_(])(?![ \u00a0]?[=/<>≈·⁻-])/uy,
    text,
    from,
  );
  const unit = found?.[1]?.replace('\u2126', 'Ω');
  if (!found || unit === undefined) return null;
  const to = from + found[0].length;
  if (prefix === 'm' && (unit === 'm' || unit === 'Hz' || startsClause(text, to, unit))) return null;
  if (unit === 'm' && prefix !== 'k') return null;
  const meant = prefix.replace('μ', 'µ') + unit;
  const known = unitWord(meant);
  if (known === null) return null;
  const slip: Slip = { kind: 'prefix apart', from, to, meant: [meant], certain: prefix !== 'm' };
  return slipped(from, to, { symbol: meant, measure: known.measure, named: false, slips: [slip] });
}

/** `10 m A pupil …`, `at 2 m V falls`: what follows is not a unit but goes on in words. */
function startsClause(text: string, to: number, unit: string): boolean {
  const next = /^[ \u00a0\n]+(\p{L}+)/u.exec(text.slice(to, to + 24))?.[1];
  if (next === undefined) return false;
  return unit === 'A' || /^(?:is|was|are|has|falls?|rises?|drops?|reads?|shows?|at|against)$/u.test(next);
}

function prefixAlone(text: string, from: number, word: string): UnitReading | null {
  const to = from + 1;
  const apart = prefixApart(text, from, word);
  if (apart !== null || word === 'K' || /[\p{N}_=(/-]/u.test(text.charAt(to))) return apart;
  if (/^[ \u00a0](?:[=×]|per(?!\p{L})(?! sq))/u.test(text.slice(to, to + 8))) return null;
  const slip: Slip = { kind: 'prefix alone', from, to, meant: ['kΩ'], certain: false };
  return slipped(from, to, { symbol: 'kΩ', measure: 'resistance', named: false, slips: [slip] });
}

const squareSign = /[ \u00a0]?\/[ \u00a0]?(?:□|(sq(?:uare|\.(?![ \u00a0\n]+\p{Lu}))?)(?![\p{L}\p{N}]))/uy;
const perSquare =
  /[ \u00a0\n]per[ \u00a0\n](?:square|sq\.?)(?!\p{L})(?![ \u00a0\n](?:mm|cm|m|inch|(?:centi|milli)?met(?:re|er)s?)(?!\p{L}))/uy;
const perArea =
  /(?:[ \u00a0]?\/[ \u00a0]?|[ \u00a0\n]per[ \u00a0\n])(?:(?:mm|cm|m)(?:²|\^?2)(?![\p{N}])|(?:square|sq\.?)[ \u00a0\n](?:mm|cm|m|(?:centi|milli)?met(?:re|er)s?)(?!\p{L}))/uy;

/** Ohm per square, and what is taken for it. */
function squareOf(text: string, first: UnitReading): UnitReading | null {
  if (first.measure !== 'resistance') return null;
  const { symbol, to } = first;
  const grown = (found: RegExpExecArray, kind: SlipKind | null): UnitReading => {
    const end = to + found[0].length;
    const slip = kind && { kind, from: to, to: end, meant: [' per square'], certain: false };
    const slips = slip === null ? first.slips : [...first.slips, slip];
    return { ...first, to: end, symbol: `${symbol} per square`, measure: 'sheet', slips };
  };
  const area = match(perArea, text, to);
  if (area !== null) return grown(area, 'square size');
  const sign = match(squareSign, text, to);
  if (sign !== null) return grown(sign, sign[1] === undefined ? null : 'square sign');
  const words = match(perSquare, text, to);
  return words === null ? null : grown(words, null);
}

const slash = /[ \u00a0]?\/[ \u00a0]?([\p{L}\u2126]{1,12})(⁻¹|\^?[-\u2212]1(?!\d)|²|³)?(?![\p{L}\p{N}(])/uy;
const secondSlash = /\/([\p{L}]{1,3})(?![\p{L}\p{N}(])/uy;
const perWord = /[ \u00a0\n]per[ \u00a0\n](\p{L}{1,12})(?![\p{L}\p{N}])/uy;

function quotientOf(text: string, first: UnitReading): UnitReading | null {
  const found = match(slash, text, first.to);
  if (found !== null) return solidus(text, first, found);
  const per = match(perWord, text, first.to);
  const below = per === null ? null : belowOf(per[1] ?? '');
  if (per === null || below === null || !divides(first.measure, below.measure)) return null;
  const to = first.to + per[0].length;
  const spelt = first.named || first.slips.some(({ kind }) => kind === 'name case');
  const symbol = `${first.symbol}/${below.symbol}`;
  const mixed = !(spelt && below.named);
  if (mixed && !/^(?:length|charge|time)$/u.test(below.measure)) return null;
  if (mixed && first.measure === 'time') return null;
  const slip = mixedSlip(first, to, symbol);
  const measure = quotientMeasure(first.measure, below.measure);
  return {
    ...first,
    to,
    symbol,
    measure,
    named: first.named && below.named,
    slips: mixed ? [slip] : first.slips,
  };
}

function solidus(text: string, first: UnitReading, found: RegExpExecArray): UnitReading | null {
  const [whole, word = '', power] = found;
  const below = belowOf(word);
  if (below === null || (below.slip !== null && below.named)) return null;
  const from = first.to + whole.indexOf(word);
  const to = first.to + whole.length;
  const measure = quotientMeasure(first.measure, below.measure);
  const symbol = `${first.symbol}/${below.symbol}`;
  const grown = { ...first, to, symbol, measure };
  if (first.named || below.named) {
    return { ...grown, named: false, slips: [mixedSlip(first, to, symbol)] };
  }
  const slips = [...first.slips];
  if (below.slip !== null) slips.push({ ...below.slip, from, to: from + word.length });
  if (power !== undefined && !/[²³]/u.test(power))
    slips.push({ kind: 'double inverse', from: from + word.length, to, meant: [''], certain: false });
  if (power === '²' || power === '³') return { ...grown, symbol: symbol + power, measure: 'other', slips };
  const second = match(secondSlash, text, to);
  const third = second === null ? null : belowOf(second[1] ?? '');
  if (second === null || third === null || third.named || power !== undefined) return { ...grown, slips };
  const end = to + second[0].length;
  const denominator =
    below.symbol === third.symbol ? `${below.symbol}²` : `(${below.symbol} ${third.symbol})`;
  slips.push({ kind: 'two solidi', from, to: end, meant: [denominator], certain: false });
  return { ...grown, to: end, symbol: `${first.symbol}/${denominator}`, measure: 'other', slips };
}

/** Mended as a whole, and so no surer than the unit above the line. */
function mixedSlip(first: UnitReading, to: number, symbol: string): Slip {
  const certain = first.slips.every((slip) => slip.certain);
  return { kind: 'mixed', from: first.from, to, meant: [symbol], certain };
}

/** What may stand below the line. A capital M alone is a metre there. */
function belowOf(word: string): UnitWord | null {
  if (word === 'M')
    return {
      symbol: 'm',
      measure: 'length',
      named: false,
      slip: { kind: 'case', meant: ['m'], certain: true },
    };
  const unit = unitWord(word);
  const usable = unit !== null && (unit.slip === null || /case$|^unlikely/u.test(unit.slip.kind));
  return usable ? unit : null;
}

function divides(above: Measure, below: Measure): boolean {
  return /^(?:potential|force|resistance|current|length|charge|other)$/u.test(above) && below !== 'potential';
}

function quotientMeasure(above: Measure, below: Measure): Measure {
  if (above === 'potential' && below === 'length') return 'strength';
  return above === 'force' && below === 'charge' ? 'strength' : 'other';
}

const inverse =
  /([ \u00a0·⋅.])(mm|cm|m|C|s)(⁻[¹²]|\^\{?[-\u2212][12]\}?|[-\u2212][12](?!\d|[.,]\d))(?!\p{L})/uy;
const joinedInverse = /(mm|cm|m|C|s)(⁻[¹²]|\^\{?[-\u2212][12]\}?|[-\u2212][12](?!\d|[.,]\d))(?!\p{L})/uy;

/** `V m⁻¹`, and `V.m⁻¹`, `V m-1`. */
function productOf(text: string, first: UnitReading): UnitReading | null {
  if (first.named) return null;
  const found = match(inverse, text, first.to);
  const [whole, sign = '', unit = '', power = ''] = found ?? [];
  if (whole === undefined) return null;
  const to = first.to + whole.length;
  const raised = raisedPower(power);
  const symbol = `${first.symbol} ${unit}${raised}`;
  const slips = [...first.slips];
  if (sign === '.')
    slips.push({ kind: 'product stop', from: first.to, to, meant: [` ${unit}${raised}`], certain: true });
  else if (raised !== power)
    slips.push({ kind: 'exponent', from: to - power.length, to, meant: [raised], certain: true });
  return { ...first, to, symbol, measure: inverseMeasure(first.measure, unit, raised), slips };
}

/** `Vm⁻¹`: two symbols in one word, told by the power behind them. */
function joinedProduct(text: string, from: number): UnitReading | null {
  const above = match(/[mkµμ]?V|N|A/uy, text, from)?.[0];
  const unit = above === undefined ? null : unitWord(above);
  if (above === undefined || unit === null) return null;
  const found = match(joinedInverse, text, from + above.length);
  const [whole, below = '', power = ''] = found ?? [];
  if (whole === undefined) return null;
  const to = from + above.length + whole.length;
  const raised = raisedPower(power);
  const symbol = `${unit.symbol} ${below}${raised}`;
  const measure = inverseMeasure(unit.measure, below, raised);
  const slip: Slip = { kind: 'product', from, to, meant: [symbol], certain: true };
  return { from, to, firstTo: from + above.length, symbol, measure, named: false, slips: [slip] };
}

function inverseMeasure(above: Measure, unit: string, power: string): Measure {
  if (power !== '⁻¹') return 'other';
  return quotientMeasure(above, unit === 'C' ? 'charge' : unit === 's' ? 'time' : 'length');
}

export function raisedPower(written: string): string {
  const raised = '⁰¹²³⁴⁵⁶⁷⁸⁹';
  return [...written.replace(/[\^{}+⁺]/gu, '')]
    .map((sign) =>
      /\d/u.test(sign) ? raised.charAt(Number(sign)) : /[-\u2212\u2013]/u.test(sign) ? '⁻' : sign,
    )
    .join('');
}

/** `cm²`, `cm2`; any other unit ends here as it stands. */
function areaOf(text: string, first: UnitReading): UnitReading | null {
  if (first.measure !== 'length' || first.named) return endOf(text, first);
  const found = match(/(²|³)|\^?([23])(?![\p{L}\p{N}]|[.,]\d)/uy, text, first.to);
  if (found === null) return endOf(text, first);
  const to = first.to + found[0].length;
  const power = found[1] ?? raisedPower(found[2] ?? '');
  const slip: Slip = { kind: 'exponent', from: first.to, to, meant: [power], certain: true };
  const slips = found[1] === undefined ? [...first.slips, slip] : first.slips;
  return { ...first, to, symbol: first.symbol + power, measure: 'other', slips };
}

/** A unit goes on into nothing that would make it another word. */
function endOf(text: string, reading: UnitReading): UnitReading | null {
  if (reading.symbol === '°') return reading;
  return /[\p{L}\p{N}_²³⁻^]/u.test(text.charAt(reading.to)) ? null : reading;
}
