/** All that is told about a code, from the catalogue and the explanations. */
import { blockCodes } from '../block-codes.ts';
import { catalogue, type FindingCode } from '../catalogue.ts';
import { checkCodes } from '../check-codes.ts';
import { departmentCodes } from '../department-codes.ts';
import type { CatalogueEntry } from '../entry.ts';
import { proseCodes } from '../prose-codes.ts';
import { safetyCodes } from '../safety-codes.ts';
import { setupCodes } from '../setup-codes.ts';
import { sheetCodes } from '../sheet-codes.ts';
import { statedCodes } from '../stated-codes.ts';
import { blockExplanations } from './block.ts';
import { checkExplanations } from './check.ts';
import { departmentExplanations } from './department.ts';
import type { Explanation } from './explanation.ts';
import { proseExplanations } from './prose.ts';
import { safetyExplanations } from './safety.ts';
import { setupExplanations } from './setup.ts';
import { sheetExplanations } from './sheet.ts';
import { statedExplanations } from './stated.ts';

/** Of every code: a table that leaves one out does not compile. */
const explanations: Readonly<Record<FindingCode, Explanation>> = {
  ...blockExplanations,
  ...setupExplanations,
  ...sheetExplanations,
  ...proseExplanations,
  ...checkExplanations,
  ...statedExplanations,
  ...safetyExplanations,
  ...departmentExplanations,
};

interface Family {
  /** What the findings are about, as a heading. */
  readonly about: string;
  /** What is said of a finding that names no source. */
  readonly source: string;
  readonly codes: Readonly<Partial<Record<FindingCode, CatalogueEntry>>>;
}

const practice = 'common practice, no source';

/** In the order in which they are told. */
const families: readonly Family[] = [
  {
    about: 'How a line of a block is written',
    source: 'none; it is how this language is written',
    codes: blockCodes,
  },
  { about: 'What the lines of a block mean together', source: practice, codes: setupCodes },
  {
    about: 'The sheet around the blocks',
    source: 'none; it is how sheets are written here',
    codes: sheetCodes,
  },
  { about: 'Quantities and units in the text', source: practice, codes: proseCodes },
  { about: 'The sheet, its setups and their solutions together', source: practice, codes: checkCodes },
  { about: 'Numbers of the text against the solution', source: practice, codes: statedCodes },
  { about: 'Notes on safety, and what is no practical for pupils', source: practice, codes: safetyCodes },
  {
    about: 'The file of a department',
    source: 'none; it is how this file is written',
    codes: departmentCodes,
  },
];

/** What is told about one finding, ready to be printed or written to a page. */
export interface Told extends CatalogueEntry, Explanation {
  readonly code: FindingCode;
  readonly source: string;
  readonly allowance: Allowance;
}

export interface ToldFamily extends Pick<Family, 'about'> {
  readonly told: readonly Told[];
}

/** The line that allows it, or why there is none, as a sentence. */
export type Allowance =
  | { readonly kind: 'line'; readonly line: string }
  | { readonly kind: 'never'; readonly because: string };

/** All codes with what is told about them. */
export function toldFamilies(): readonly ToldFamily[] {
  return families.map(({ about, source, codes }) => ({
    about,
    // The keys of the tables are codes.
    told: (Object.keys(codes) as readonly FindingCode[]).map((code) =>
      told(code, explanations[code], source),
    ),
  }));
}

function told(code: FindingCode, explanation: Explanation, source: string): Told {
  const entry: CatalogueEntry = catalogue[code];
  return { source, ...entry, ...explanation, code, allowance: allowanceOf(code, entry, explanation) };
}

function allowanceOf(
  code: FindingCode,
  { severity }: CatalogueEntry,
  { allow, from }: Explanation,
): Allowance {
  if (severity !== 'stop' && allow !== null) {
    const words = `allow ${code} because ${allow}`;
    return { kind: 'line', line: from === 'block' ? `# ${words}` : `<!-- papervolt: ${words} -->` };
  }
  return { kind: 'never', because: never(code, severity) };
}

function never(code: FindingCode, severity: CatalogueEntry['severity']): string {
  if (severity === 'stop')
    return 'It cannot be allowed: the sheet is no practical for pupils as it is written.';
  if (Object.hasOwn(departmentCodes, code))
    return 'No sheet can allow it: it is about the file of the department.';
  if (severity === 'error')
    return 'Mend it: an allowance would hide the message, and what cannot be read or solved would still be missing.';
  return 'It cannot be allowed where it stands: mend it.';
}
