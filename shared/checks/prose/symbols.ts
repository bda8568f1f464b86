/** Rules over the symbols of units and their prefixes. */
import { found, type RunRule, rewrite } from './rule.ts';
import { type SlipWords, slipRule } from './slips.ts';

const or = ({ meant }: SlipWords): string => meant.join(' or ');

export const unitCase = slipRule({
  kind: 'case',
  code: 'unit-case',
  say: (words) => `Capitals count in units, and there is no “${words.unit}”: ${or(words)}?`,
});

export const prefixCase = slipRule({
  kind: 'prefix case',
  code: 'prefix-case',
  say: (words) => `The prefix has the wrong capital in “${words.unit}”: ${or(words)}.`,
});

const millionTimes = slipRule({
  kind: 'unlikely prefix',
  code: 'prefix-unlikely',
  say: (words) => `With a capital M the unit is a million times as large. ${or(words)}?`,
});

/** A thundercloud does have megavolts, and a power line nearly one. */
export const prefixLarge: RunRule = (passage) =>
  /lightning|thunder|storm|clouds?\b|power lines?|grid\b/iu.test(passage.run.text)
    ? []
    : millionTimes(passage);

const ofMeter = /meter(?:’s|'s)?(?: (?:input|resistance))*,? (?:has|have|is|of|with) (?:about |an? )?$/iu;

/** A meter of milliohms would short the paper; a contact may well have some. */
export const prefixSmall: RunRule = ({ run, values }) =>
  values.flatMap((value) => {
    const { unit } = value;
    if (unit === null || run.text.slice(unit.from, unit.to).replace('\u2126', 'Ω') !== 'mΩ') return [];
    const before = run.text.slice(Math.max(0, value.from - 50), value.from);
    const near = before + run.text.slice(value.from, value.to + 50);
    const others = /contact|clip|internal|leads?\b|wire/iu.test(near) && !ofMeter.test(before);
    if (!/meter|\binput/iu.test(near) || others) return [];
    const meant = `${run.text.slice(value.from, value.number.to)} MΩ`;
    return [
      found(
        'prefix-unlikely',
        { run, from: unit.from, to: unit.to },
        {
          severity: 'error',
          message: `A meter of milliohms would short the paper. ${meant}?`,
          fixes: rewrite({ run, from: value.from, to: value.to }, meant, meant, false),
        },
      ),
    ];
  });

export const prefixApart = slipRule({
  kind: 'prefix apart',
  code: 'prefix-apart',
  say: (words) => `A prefix and its unit are one word: ${or(words)}.`,
});

export const prefixAlone = slipRule({
  kind: 'prefix alone',
  code: 'prefix-alone',
  say: (words) => `A prefix without its unit: ${or(words)}?`,
});

export const prefixDouble = slipRule({
  kind: 'double prefix',
  code: 'prefix-double',
  say: (words) => `A unit has one prefix, and “${words.unit}” has two: ${or(words)}?`,
});

export const microLetter = slipRule({
  kind: 'micro',
  code: 'micro-letter',
  say: (words) => `The prefix is the Greek letter: ${or(words)}.`,
});

export const unitPlural = slipRule({
  kind: 'plural',
  code: 'unit-plural',
  say: (words) => `Symbols of units have no plural, and an s would be a second: ${or(words)}.`,
});

/** A stop behind a unit when the sentence goes on. */
export const unitStop: RunRule = ({ run, values }) =>
  values.flatMap((value) => {
    const { unit } = value;
    if (unit === null || unit.named || /^[°%]$/u.test(unit.symbol)) return [];
    const after = run.text.slice(unit.to, unit.to + 32);
    const goesOn = /^\.[ \u00a0\n](?!e\.g|i\.e|cf\.)\p{Ll}{2,}(?![\p{L}\p{N}_(])/u.test(after);
    if (!goesOn) return [];
    const stop = { run, from: unit.to, to: unit.to + 1 };
    const menu = run.text.slice(value.from, value.to);
    return [
      found('unit-stop', stop, {
        message:
          'The symbol of a unit is no abbreviation: a full stop stands behind it at the end of a sentence only.',
        fixes: rewrite(stop, '', menu, true),
      }),
    ];
  });
