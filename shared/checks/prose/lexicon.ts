/**
 * The words for units in English prose: symbols and names as the SI writes them, and the slips that are common enough to be known for
 * what they are. A word that is not here is no unit.
 */

/** What a unit measures, as far as rules ask. */
export type Measure =
  | 'potential'
  | 'current'
  | 'resistance'
  | 'length'
  | 'time'
  | 'strength'
  /** Ohm per square. */
  | 'sheet'
  | 'force'
  | 'charge'
  | 'temperature'
  | 'angle'
  | 'percent'
  | 'other';

export type SlipKind =
  | 'case'
  | 'prefix case'
  | 'unlikely prefix'
  | 'plural'
  | 'abbreviation'
  | 'name case'
  | 'mixed'
  | 'micro'
  | 'double prefix'
  | 'prefix alone'
  | 'prefix apart'
  | 'name apart'
  | 'degree apart'
  | 'direct current'
  | 'attached'
  | 'old name'
  | 'product'
  | 'product stop'
  | 'exponent'
  | 'double inverse'
  | 'two solidi'
  | 'square sign'
  | 'square size';

export interface UnitWord {
  /** The symbol as it should be, `kΩ`. */
  readonly symbol: string;
  readonly measure: Measure;
  readonly named: boolean;
  readonly slip: WordSlip | null;
}

export interface WordSlip {
  readonly kind: SlipKind;
  /** What may be meant, the likeliest first. */
  readonly meant: readonly string[];
  readonly certain: boolean;
}

/** The unit written as exactly this word, slips among them, or null. */
export function unitWord(word: string): UnitWord | null {
  return words.get(word) ?? null;
}

/** Name of a unit in the plural: `millimetres`. */
export function pluralName(symbol: string, american: boolean): string | null {
  const name = names.get(symbol);
  if (name === undefined) return null;
  return american ? name.replace('metre', 'meter') : name;
}

/** Symbol, spellings in ASCII or of another character, name, power of ten. */
const prefixes = [
  { symbol: 'p', also: [], name: 'pico', power: -12 },
  { symbol: 'n', also: [], name: 'nano', power: -9 },
  { symbol: 'µ', also: ['μ'], name: 'micro', power: -6 },
  { symbol: 'm', also: [], name: 'milli', power: -3 },
  { symbol: 'c', also: [], name: 'centi', power: -2 },
  { symbol: '', also: [], name: '', power: 0 },
  { symbol: 'k', also: [], name: 'kilo', power: 3 },
  { symbol: 'M', also: [], name: 'mega', power: 6 },
  { symbol: 'G', also: [], name: 'giga', power: 9 },
] as const;
type Prefix = (typeof prefixes)[number];

interface Base {
  readonly symbol: string;
  readonly also?: readonly string[];
  readonly measure: Measure;
  /** In the singular. */
  readonly names: readonly string[];
  /** Names that are shortened, no names of the SI. */
  readonly short?: readonly string[];
  /** Wrong capitals are known: not where the word would often be another. */
  readonly folded?: boolean;
}

const bases: readonly Base[] = [
  { symbol: 'V', measure: 'potential', names: ['volt'], folded: true },
  { symbol: 'A', measure: 'current', names: ['ampere'], short: ['amp'], folded: true },
  { symbol: 'Ω', also: ['\u2126'], measure: 'resistance', names: ['ohm'], folded: true },
  { symbol: 'm', measure: 'length', names: ['metre', 'meter'], folded: true },
  { symbol: 's', measure: 'time', names: ['second'] },
  { symbol: 'Hz', measure: 'other', names: ['hertz'], folded: true },
  { symbol: 'C', measure: 'charge', names: ['coulomb'] },
  { symbol: 'N', measure: 'force', names: ['newton'] },
  { symbol: 'J', measure: 'other', names: ['joule'] },
  { symbol: 'W', measure: 'other', names: ['watt'] },
  { symbol: 'F', measure: 'other', names: ['farad'] },
  { symbol: 'g', measure: 'other', names: ['gram', 'gramme'] },
  { symbol: 'Pa', measure: 'other', names: ['pascal'] },
];

const words = new Map<string, UnitWord>();
/** Plural names by symbol. */
const names = new Map<string, string>();

function enter(word: string, unit: UnitWord): void {
  if (!words.has(word)) words.set(word, unit);
}

const right = (symbol: string, measure: Measure, named = false): UnitWord => ({
  symbol,
  measure,
  named,
  slip: null,
});

const wrong = (
  kind: SlipKind,
  meant: readonly string[],
  measure: Measure,
  certain = meant.length === 1,
): UnitWord => ({
  symbol: meant[0] ?? '',
  measure,
  named: false,
  slip: { kind, meant, certain },
});

const takes = (base: Base, prefix: Prefix): boolean => prefix.symbol !== 'c' || base.symbol === 'm';
const capital = (word: string): string => word.charAt(0).toUpperCase() + word.slice(1);

function enterRight(): void {
  for (const base of bases)
    for (const prefix of prefixes) {
      if (!takes(base, prefix)) continue;
      const symbol = prefix.symbol + base.symbol;
      for (const p of [prefix.symbol, ...prefix.also])
        for (const b of [base.symbol, ...(base.also ?? [])]) enter(p + b, right(symbol, base.measure));
      for (const name of base.names) enterName(longName(prefix, name), symbol, base.measure);
    }
  for (const [symbol, name] of [
    ['min', 'minute'],
    ['h', 'hour'],
  ] as const) {
    enter(symbol, right(symbol, 'time'));
    enterName(name, symbol, 'time');
  }
}

/** English joins kilo and mega to ohm without the second vowel. */
function longName(prefix: Prefix, name: string): string {
  const joined = name === 'ohm' && /^(?:kilo|mega)$/u.test(prefix.name);
  return (joined ? prefix.name.slice(0, -1) : prefix.name) + name;
}

function enterName(name: string, symbol: string, measure: Measure): void {
  const plural = name.endsWith('z') ? name : `${name}s`;
  if (!names.has(symbol)) names.set(symbol, plural);
  for (const word of [name, plural]) {
    enter(word, right(symbol, measure, true));
    for (const shouted of [capital(word), word.toUpperCase()])
      enter(shouted, wrong('name case', [symbol, word], measure, true));
  }
}

/** `mins`, `amps`, `kohm`, `uA`, `mms`, `mmA`, `VDC`. */
function enterSlips(): void {
  for (const base of bases)
    for (const prefix of prefixes) {
      if (!takes(base, prefix)) continue;
      const symbol = prefix.symbol + base.symbol;
      enterShort(base, prefix, symbol);
      if (prefix.symbol !== '') enterMixed(base, prefix, symbol);
      const plural = `${symbol}s`;
      if (['V', 'Ω', 'A', 'm', 'Hz'].includes(base.symbol) && plural !== 'As' && plural !== 'ms')
        enter(plural, wrong('plural', [symbol], base.measure, !/[VA]s$/u.test(plural)));
    }
  for (const word of ['uV', 'uA', 'uF', 'uC', 'um', 'uΩ']) {
    const symbol = `µ${word.slice(1)}`;
    enter(word, wrong('micro', [symbol], words.get(symbol)?.measure ?? 'other'));
  }
  const times: readonly (readonly [string, string])[] = [
    ['mins', 'min'],
    ['secs', 's'],
    ['sec', 's'],
    ['hrs', 'h'],
    ['hr', 'h'],
  ];
  for (const [word, symbol] of times)
    for (const spelling of [word, capital(word)]) enter(spelling, wrong('abbreviation', [symbol], 'time'));
  for (const word of ['Kg', 'KG']) enter(word, wrong('prefix case', ['kg'], 'other'));
  for (const word of ['micron', 'microns']) enter(word, wrong('old name', ['µm'], 'length'));
}

function enterShort(base: Base, prefix: Prefix, symbol: string): void {
  for (const short of base.short ?? [])
    for (const word of [short, `${short}s`])
      for (const spelling of [prefix.name + word, capital(prefix.name + word)])
        enter(spelling, wrong('abbreviation', [symbol], base.measure));
}

/** The symbol of a prefix before the name of a unit. A milliohm and a megohm are told apart by a capital alone. */
function enterMixed(base: Base, prefix: Prefix, symbol: string): void {
  const spellings = { µ: ['µ', 'μ', 'u'], k: ['k', 'K'] };
  const written = prefix.symbol === 'µ' || prefix.symbol === 'k' ? spellings[prefix.symbol] : [prefix.symbol];
  const meant = symbol === 'mΩ' ? ['mΩ', 'MΩ'] : [symbol];
  for (const p of written)
    for (const name of [...base.names, ...(base.short ?? [])])
      for (const word of [name, `${name}s`, capital(name), `${capital(name)}s`])
        enter(p + word, wrong('mixed', meant, base.measure));
}

/** Wrong capitals: `mv`, `KΩ`, `HZ`. Prefixes that a bench has no use for stay out, and words that are English. */
function enterFolded(): void {
  const common = prefixes.filter(({ symbol }) => ['µ', 'm', 'c', '', 'k', 'M'].includes(symbol));
  const meant = new Map<string, { readonly symbol: string; readonly base: Base }[]>();
  for (const base of bases.filter(({ folded }) => folded))
    for (const prefix of common) {
      if (!takes(base, prefix) || (prefix.symbol === '' && base.symbol !== 'V' && base.symbol !== 'Hz'))
        continue;
      const symbol = prefix.symbol + base.symbol;
      for (const spelling of spellings(symbol)) {
        if (words.has(spelling)) continue;
        meant.set(spelling, [...(meant.get(spelling) ?? []), { symbol, base }]);
      }
    }
  for (const [spelling, found] of meant) {
    const kept = found.filter(({ symbol }) => symbol.charAt(0) === spelling.charAt(0));
    const usual = found.filter(({ symbol }) => usualSymbols.has(symbol));
    const likely = usual.length === 1 ? usual : kept.length === 1 ? kept : found;
    const base = likely[0]?.base;
    if (base === undefined) continue;
    const symbols = [...likely, ...found].map(({ symbol }) => symbol);
    const all = spelling.startsWith('M') ? symbols : symbols.slice(0, likely.length);
    const tail = spelling.endsWith(base.symbol) && spelling.length > base.symbol.length;
    enter(spelling, wrong(tail ? 'prefix case' : 'case', [...new Set(all)], base.measure));
  }
}

const usualSymbols: ReadonlySet<string> = new Set([
  'V',
  'mV',
  'kV',
  'mA',
  'µA',
  'kΩ',
  'mm',
  'cm',
  'Hz',
  'kHz',
]);

/** All ways to set capitals, the right one left out. */
function spellings(symbol: string): readonly string[] {
  let all: readonly string[] = [''];
  for (const sign of symbol) {
    const cases = sign === 'Ω' || sign === 'µ' ? [sign] : [sign.toLowerCase(), sign.toUpperCase()];
    all = all.flatMap((head) => cases.map((one) => head + one));
  }
  return all.filter((spelling) => spelling !== symbol);
}

/** Legal, but a million or a thousand million times what lies on a bench. */
function enterUnlikely(): void {
  const table: readonly (readonly [string, readonly string[], Measure])[] = [
    ['Mm', ['mm'], 'length'],
    ['MV', ['mV'], 'potential'],
    ['MA', ['mA'], 'current'],
  ];
  for (const [word, meant, measure] of table)
    words.set(word, { ...wrong('unlikely prefix', meant, measure, false), symbol: word });
}

/** Two prefixes stand for their product, or one of them is a slip of the finger. */
function enterDoubled(): void {
  const doubled = prefixes.filter(({ symbol }) => ['n', 'µ', 'm', 'k', 'M'].includes(symbol));
  for (const base of bases.filter(({ symbol }) => /^(?:V|A|Ω|F|Hz)$/u.test(symbol)))
    for (const first of doubled)
      for (const second of doubled) {
        const product = prefixes.find(({ power }) => power === first.power + second.power);
        const single = second.symbol + base.symbol;
        const meant = product === undefined ? [single] : [product.symbol + base.symbol, single];
        const slip = wrong('double prefix', [...new Set(meant)], base.measure, false);
        for (const a of [first.symbol, ...first.also])
          for (const b of [second.symbol, ...second.also]) enter(a + b + base.symbol, slip);
      }
}

/** `VDC`, `kVmax`: what belongs to the quantity, hung on its unit. The first is kept behind the unit, as in "V d.c.". */
function enterAttached(): void {
  for (const [letter, quantity, measure] of [
    ['V', 'V', 'potential'],
    ['A', 'I', 'current'],
  ] as const)
    for (const prefix of ['', 'm', 'k', 'µ']) {
      const symbol = prefix + letter;
      for (const [tail, meant] of [
        ['DC', 'd.c.'],
        ['dc', 'd.c.'],
        ['AC', 'a.c.'],
        ['ac', 'a.c.'],
      ] as const)
        enter(symbol + tail, wrong('direct current', [`${symbol} ${meant}`], measure, false));
      for (const tail of ['max', 'min', 'rms', 'RMS', 'pp', 'peak', 'pk'])
        enter(symbol + tail, {
          ...wrong('attached', [`${quantity}(${tail.toLowerCase()})`], measure, false),
          symbol,
        });
    }
}

enterRight();
enterSlips();
enterFolded();
enterUnlikely();
enterDoubled();
enterAttached();
