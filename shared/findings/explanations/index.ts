/** All that is told about a code, from the catalogue and the explanations. */
import { catalogue, type FindingCode } from '../catalogue.ts';
import { departmentCodes } from '../department-codes.ts';
import type { CatalogueEntry } from '../entry.ts';
import { blockExplanations } from './block.ts';
import { checkExplanations } from './check.ts';
import { departmentExplanations } from './department.ts';
import type { Explanation } from './explanation.ts';
import { proseExplanations } from './prose.ts';
import { safetyExplanations } from './safety.ts';
import { setupExplanations } from './setup.ts';
import { sheetExplanations } from './sheet.ts';
import { statedExplanations } from './stated.ts';

interface Family {
  /** What the findings are about, as a heading. */
  readonly about: string;
  /** What is said of a finding that names no source. */
  readonly source: string;
  readonly explanations: Readonly<Partial<Record<FindingCode, Explanation>>>;
}

const practice = 'common practice, no source';

/** In the order in which they are told. */
const families: readonly Family[] = [
  {
    about: 'How a line of a block is written',
    source: 'none; it is how this language is written',
    explanations: blockExplanations,
  },
  {
    about: 'What the lines of a block mean together',
    source: practice,
    explanations: setupExplanations,
  },
  {
    about: 'The sheet around the blocks',
    source: 'none; it is how sheets are written here',
    explanations: sheetExplanations,
  },
  { about: 'Quantities and units in the text', source: practice, explanations: proseExplanations },
  {
    about: 'The sheet, its setups and their solutions together',
    source: practice,
    explanations: checkExplanations,
  },
  {
    about: 'Numbers of the text against the solution',
    source: 'the solution of the setup',
    explanations: statedExplanations,
  },
  {
    about: 'Notes on safety, and what is no practical for pupils',
    source: practice,
    explanations: safetyExplanations,
  },
  {
    about: 'The file of a department',
    source: 'none; it is how this file is written',
    explanations: departmentExplanations,
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
export const toldFamilies: readonly ToldFamily[] = families.map(({ about, source, explanations }) => ({
  about,
  // The keys of the tables are codes.
  told: (Object.entries(explanations) as readonly (readonly [FindingCode, Explanation])[]).map(
    ([code, explanation]) => told(code, explanation, source),
  ),
}));

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
