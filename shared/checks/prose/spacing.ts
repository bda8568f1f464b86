/** Rules over the space between a number and its unit. */
import { found, type RunRule, rewrite } from './rule.ts';
import { fix } from './run.ts';
import { mendsGap, slipRule } from './slips.ts';

export const unitSpace: RunRule = ({ run, values }) =>
  values.flatMap(({ from, to, number, gap, unit }) => {
    if (unit === null || gap !== '' || /^(?:°|%)$/u.test(unit.symbol) || mendsGap(unit)) return [];
    const menu = `${run.text.slice(from, number.to)} ${run.text.slice(unit.from, to)}`;
    return [
      found(
        'unit-space',
        { run, from, to },
        {
          message: `A space stands between a number and its unit: ${menu}.`,
          fixes: rewrite({ run, from: number.to, to: number.to }, ' ', menu, true),
        },
      ),
    ];
  });

export const degreeApart = slipRule({
  kind: 'degree apart',
  code: 'unit-space',
  say: ({ meant }) => `The degree Celsius is one sign, with a space before it: ${meant.join(' or ')}.`,
});

export const unitHyphen: RunRule = ({ run, values }) =>
  values.flatMap(({ from, to, number, gap, unit }) => {
    if (unit === null || gap !== '-' || unit.named) return [];
    const menu = `${run.text.slice(from, number.to)} ${run.text.slice(unit.from, to)}`;
    return [
      found(
        'unit-hyphen',
        { run, from, to },
        {
          message: `A space stands before the symbol of a unit, also before a noun: ${menu}. A hyphen goes with the name: 1.5-volt.`,
          fixes: rewrite({ run, from: number.to, to: unit.from }, ' ', menu, true),
        },
      ),
    ];
  });

export const angleSpace: RunRule = ({ run, values }) =>
  values.flatMap(({ from, to, number, gap, unit }) => {
    if (unit?.symbol !== '°' || !/[ \u00a0\u202f\u2009]/u.test(gap)) return [];
    const menu = `${run.text.slice(from, number.to)}°`;
    return [
      found(
        'angle-space',
        { run, from, to },
        {
          message: `The degree sign of an angle follows without a space: ${menu}.`,
          fixes: rewrite({ run, from: number.to, to: unit.from }, '', menu, true),
        },
      ),
    ];
  });

/** House style: said once for a run of text. Where the department has not said, the SI's way is worth a note. */
export const percentSpace: RunRule = ({ run, values, setting: { style } }) => {
  const joins = style.percent === 'joined';
  const wrong = values.filter(({ gap, unit }) => unit?.symbol === '%' && (gap === '') !== joins);
  const [first] = wrong;
  if (first?.unit == null) return [];
  const menu = `${run.text.slice(first.from, first.number.to)}${joins ? '' : ' '}%`;
  const changes = wrong.flatMap(({ number, unit }) =>
    unit === null ? [] : [{ run, from: number.to, to: unit.from, text: joins ? '' : ' ' }],
  );
  if (style.percent !== null) {
    const message = `The house style has ${joins ? 'no' : 'a'} space before the per cent sign: ${menu}.`;
    const fixes = fix(`Write ${menu}`, changes, true);
    return [
      found(
        'percent-space',
        { run, from: first.from, to: first.to },
        { severity: 'warning', message, fixes },
      ),
    ];
  }
  return [
    found(
      'percent-space',
      { run, from: first.from, to: first.to },
      {
        message: `The SI has a space before the per cent sign: ${menu}. Most schools leave it out; keep to one way.`,
        fixes: fix(`Write ${menu}`, changes, false),
      },
    ),
  ];
};
