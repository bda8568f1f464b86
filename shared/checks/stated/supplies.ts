/** Voltages and numbers of cells, and sheet resistances of the paper, that the text names otherwise than the setup. */
import type { Finding } from '../../findings/finding.ts';
import { finding } from '../../findings/finding.ts';
import type { Setup, Supply } from '../../setup/setup.ts';
import { fix, spanOf } from '../prose/run.ts';
import type { Rule } from '../rule.ts';
import { agrees, differing, type Known } from './compare.ts';
import type { Quantity } from './quantities.ts';
import { type Said, saidIn, written } from './said.ts';
import { sign } from './skeleton.ts';

const { potential: V, sheet: Q } = sign;

const kindOfCell =
  '(?:(?:zinc|carbon|chloride|alkaline|dry|aa|r6|c|d|size|small|large|single|torch|nickel|metal|hydride|d\\.?c\\.?)[- –]?)*';
const counts = ['', 'one', 'two', 'three', 'four', 'five', 'six'];

/** With the sign of the voltage in it. */
const forms: readonly { readonly pattern: RegExp; readonly of: 'cells' | 'set' | 'emf' }[] = [
  {
    of: 'cells',
    pattern: new RegExp(
      `${V}[- ]${kindOfCell}(?:cells?|batter(?:y|ies))(?![\\p{L}-])(?! holder| box| clip)`,
      'gu',
    ),
  },
  { of: 'cells', pattern: new RegExp(`\\b(?:cells?|batter(?:y|ies)) of ${V}`, 'gu') },
  {
    of: 'set',
    pattern: new RegExp(
      `(?:supply|power[ -]?pack|power supply|output|voltage)(?:,| is| that is)? (?:set|turned|adjusted) (?:to|at) ${V}`,
      'gu',
    ),
  },
  {
    of: 'set',
    pattern: new RegExp(
      `\\b(?:set|turn|adjust) (?:the )?(?:supply|power[ -]?pack|power supply|output|voltage)(?: up| of the \\p{L}+)? (?:to|at) ${V}`,
      'gu',
    ),
  },
  {
    of: 'emf',
    pattern: new RegExp(`e\\.?m\\.?f\\.?(?: of the (?:cell|supply|battery))?,? (?:of|=|is|≈) ?${V}`, 'gu'),
  },
  {
    of: 'emf',
    pattern: new RegExp(
      `\\b(?:the|this|our|your) (?:cell|battery|supply|power[ -]?pack) (?:gives|provides|delivers|supplies|has|is at|is) ${V}`,
      'gu',
    ),
  },
];

const named = /cell|batter|supply|power|e\.?m\.?f|voltage|output/iu;
const elsewhere =
  /\b(?:spares?|meters?|multimeters?|voltmeter|rated|range|mains|stock|box(?:es)?|groups|class|charger|torch|internal)\b/u;
const conditional = /(?:\b(?:for|with|than|of|like|from) (?:a|an|each|every|one)(?: (?:\p{L}+))?|\bat) $/u;

export const statedSupplies: Rule = (subject) =>
  saidIn(subject, written.potential).flatMap((said) => {
    if (!named.test(said.text)) return [];
    const { text, atoms, offsets } = said.skeleton;
    if (!text.includes(V) || elsewhere.test(text)) return [];
    const seen = new Set<Quantity>();
    return forms.flatMap(({ pattern, of }) =>
      [...text.matchAll(pattern)].flatMap(({ 0: whole, index }): readonly Finding[] => {
        const at = index + whole.indexOf(V);
        const atom = atoms[at];
        const before = text.slice(0, index);
        if (atom?.kind !== 'quantity' || seen.has(atom.quantity) || conditional.test(before)) return [];
        seen.add(atom.quantity);
        if (!said.asserts(offsets[at] ?? 0)) return [];
        const supplies = said.setups.map(({ supply }) => supply);
        if (of === 'cells' && !/batter/u.test(whole)) {
          const counted = countBefore(before, atoms, said, offsets);
          const wrongCount = counted === null ? [] : miscounted(counted, said, supplies);
          if (wrongCount.length > 0) return wrongCount;
        }
        return voltage(atom.quantity, of, said, supplies);
      }),
    );
  });

function voltage(
  quantity: Quantity,
  of: 'cells' | 'set' | 'emf',
  said: Said,
  supplies: readonly (Supply | null)[],
): readonly Finding[] {
  const known = supplies.map((supply): Known | null => {
    if (supply === null || (of === 'cells') !== (supply.source === 'cell' && of !== 'set')) {
      if (of !== 'emf' || supply === null) return null;
    }
    const each = supply.emf_V / supply.cells;
    return {
      values: of === 'set' ? [supply.emf_V] : [each, supply.emf_V],
      uncertainty: 0,
      blur: 0,
      nought: 0,
    };
  });
  const [first] = known;
  if (first === undefined || first === null) return [];
  if (known.some((one) => one === null || agrees(quantity, one) || one.values.join() !== first.values.join()))
    return [];
  const subject = of === 'set' ? 'The supply is set to' : 'The supply has';
  return [differing({ code: 'stated-supply', sentence: said, quantity, known: first, subject, given: true })];
}

interface Counted {
  readonly count: number;
  /** Of the word or number, in the sentence. */
  readonly from: number;
  readonly to: number;
}

/** "two 1.5 V cells", "2 × 1.5 V cells"; "a" and "the" count nothing. */
function countBefore(
  before: string,
  atoms: readonly ({ readonly kind: string } | null)[],
  { text }: Said,
  offsets: readonly number[],
): Counted | null {
  const word = /(?:^|[^\p{L}])(a single|single|one|two|three|four|five|six) $/u.exec(before)?.[1];
  if (word !== undefined) {
    const at = offsets[before.length - 1 - word.length] ?? 0;
    return { count: Math.max(1, counts.indexOf(word)), from: at, to: at + word.length };
  }
  const number = /(\ue007)(?: ?[×x])? $/u.exec(before);
  const atom = number === null ? null : (atoms[number.index] ?? null);
  if (number === null || atom?.kind !== 'quantity') return null;
  const from = offsets[number.index] ?? 0;
  const digits = /^\d(?![\d.,])/u.exec(text.slice(from))?.[0];
  return digits === undefined ? null : { count: Number(digits), from, to: from + 1 };
}

function miscounted(
  { count, from, to }: Counted,
  said: Said,
  supplies: readonly (Supply | null)[],
): readonly Finding[] {
  const [supply] = supplies;
  if (
    supply == null ||
    supply.source !== 'cell' ||
    supplies.some((one) => one?.source !== 'cell' || one.cells !== supply.cells)
  )
    return [];
  if (supply.cells === count) return [];
  const { run } = said;
  const meant = counts[supply.cells] ?? String(supply.cells);
  const place = { run, from: said.from + from, to: said.from + to };
  const digits = /^\d/u.test(said.text.slice(from));
  const text = digits ? String(supply.cells) : meant;
  return [
    finding('stated-supply', {
      span: spanOf(run, place.from, place.to),
      message: `The setup has ${meant} ${supply.cells === 1 ? 'cell' : 'cells'}, the text ${counts[count] ?? count}.`,
      fixes: fix(`Write ${text}`, [{ ...place, text }], false),
    }),
  ];
}

const otherPaper =
  /\b(?:paint\w*|patch\w*|ink|range\w*|strip|other papers?|papers|kinds?|water|metal|copper|foil|along|wet|dry|fold\w*)\b/iu;

export const statedSheetResistances: Rule = (subject) =>
  saidIn(subject, written.sheet).flatMap((said) => {
    const { text, atoms } = said.skeleton;
    if (!text.includes(Q) || otherPaper.test(text)) return [];
    return atoms.flatMap((atom): readonly Finding[] => {
      if (atom?.kind !== 'quantity' || atom.quantity.measure !== 'sheet' || !said.asserts(atom.quantity.from))
        return [];
      const known = said.setups.map(paperOf);
      const [first] = known;
      if (first === undefined || first === null) return [];
      if (
        known.some(
          (one) => one === null || agrees(atom.quantity, one) || one.values.join() !== first.values.join(),
        )
      )
        return [];
      return [
        differing({
          code: 'stated-sheet-resistance',
          sentence: said,
          quantity: atom.quantity,
          known: first,
          subject: 'The paper has',
          given: true,
        }),
      ];
    });
  });

function paperOf({ paper, unsolved }: Setup): Known | null {
  if (paper?.resistance_ohm == null || unsolved.some(({ kind }) => kind === 'painted')) return null;
  return { values: paper.resistance_ohm, uncertainty: 0, blur: 0, nought: 0 };
}
