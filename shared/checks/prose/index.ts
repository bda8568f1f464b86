/** The rules of SI writing in prose, in one table. A new rule is one small function in the file of its family and one entry here. */
import type { Finding } from '../../findings/finding.ts';
import type { Rule, Subject } from '../rule.ts';
import * as compounds from './compounds.ts';
import { currentLetters } from './current-letters.ts';
import * as kinds from './kinds.ts';
import { proseIn } from './known.ts';
import * as missing from './missing.ts';
import * as names from './names.ts';
import * as numbers from './numbers.ts';
import * as pairs from './pairs-of-values.ts';
import { quietRuns } from './quiet.ts';
import { passageOf, type RunRule, type Setting, type TableRule, type WordRule } from './rule.ts';
import type { Run } from './run.ts';
import * as spacing from './spacing.ts';
import { spelling } from './spelling.ts';
import * as symbols from './symbols.ts';
import * as tables from './tables.ts';

const runRules: readonly RunRule[] = [
  spacing.unitSpace,
  spacing.degreeApart,
  spacing.unitHyphen,
  spacing.angleSpace,
  spacing.percentSpace,
  symbols.unitCase,
  symbols.prefixCase,
  symbols.prefixLarge,
  symbols.prefixSmall,
  symbols.prefixApart,
  symbols.prefixAlone,
  symbols.prefixDouble,
  symbols.microLetter,
  symbols.unitPlural,
  symbols.unitStop,
  names.unitAbbreviation,
  names.unitMixed,
  names.unitNameApart,
  names.unitOldName,
  names.directCurrent,
  names.unitAttached,
  compounds.unitProduct,
  compounds.unitProductStop,
  compounds.unitExponent,
  compounds.doubleInverse,
  compounds.twoSolidi,
  compounds.squareSign,
  compounds.squareSize,
  kinds.strengthUnit,
  kinds.potentialUnit,
  kinds.strengthStyle,
  missing.noUnit,
  missing.unitAlone,
  numbers.leadingZero,
  numbers.textComma,
  numbers.thousandsComma,
  numbers.digitGroups,
  numbers.timesSign,
  numbers.figuresMany,
  pairs.oneUnit,
  pairs.rangeDash,
  pairs.sidesUnit,
  pairs.plusMinus,
  pairs.uncertaintyDigits,
];

/** Headings are set in capitals as it pleases their writer. */
const textRules: readonly RunRule[] = [names.unitNameCase];

const tableRules: readonly TableRule[] = [
  tables.headingBrackets,
  tables.headingWords,
  tables.headingSolidus,
  tables.headingSolidi,
  tables.unitInCell,
  tables.columnDecimals,
];

/** These need no number beside them. */
const wordRules: readonly WordRule[] = [currentLetters, spelling, names.nameApart];

export const siWriting: Rule = ({ sheet, setups, department }) => {
  const prose = proseIn(sheet);
  const setting = settingOf({ sheet, setups, department }, prose.runs);
  const quiet = quietRuns(setting);
  const inRuns = prose.runs.flatMap((run) => {
    if (quiet.has(run)) return [];
    const findings = [...wordRules.flatMap((rule) => rule(run, setting)), ...inValues(run, setting)];
    if (findings.length === 0) quiet.add(run);
    return findings;
  });
  const inTables = prose.tables.flatMap((table) => tableRules.flatMap((rule) => rule(table, setting)));
  return [...inRuns, ...inTables];
};

function inValues(run: Run, setting: Setting): readonly Finding[] {
  if (!/\d|many|several|few|number/u.test(run.text)) return [];
  const passage = passageOf(run, setting);
  const rules = run.kind === 'heading' ? runRules : [...runRules, ...textRules];
  return rules.flatMap((rule) => rule(passage));
}

const emfLetter = /(?:e\.?m\.?f\.?|electromotive force),?\s\(?E(?![\p{L}\p{N}])/iu;

function settingOf(
  { sheet, setups, department: { style } }: Pick<Subject, 'sheet' | 'setups' | 'department'>,
  runs: readonly Run[],
): Setting {
  const names = setups.flatMap(({ electrodes, probes, rows }) =>
    [...electrodes, ...probes, ...rows].map(({ name }) => name),
  );
  return {
    american: sheet.front.language === 'en-US',
    saysLanguage: sheet.front.saysLanguage || style.language !== null,
    style,
    names: new Set(names),
    emf: runs.some(({ text }) => emfLetter.test(text)),
  };
}
