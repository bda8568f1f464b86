/** Who gets a print of a sheet, and why others do not. */
import type { Audience } from '../../block/tree.ts';
import type { Finding } from '../../findings/finding.ts';
import { withholds } from '../../findings/withholds.ts';
import type { Sheet } from '../sheet.ts';

const everyone: readonly Audience[] = ['pupils', 'teachers', 'technicians'];

/**
 * With an error that withholds teachers alone, with a stop teachers and technicians; a sheet for one reader reaches that one alone,
 * but its teacher still gets to see what is wrong with it.
 */
export function readersOf({ front }: Sheet, findings: readonly Finding[]): readonly Audience[] {
  if (findings.some(withholds)) return ['teachers'];
  const only = front.audience;
  if (isStopped(findings) && (only === null || only === 'pupils')) return ['teachers', 'technicians'];
  return only === null ? everyone : [only];
}

/** The end of a sentence about readers who get none. */
export function withheldBecause(
  { front }: Sheet,
  findings: readonly Finding[],
  missing: readonly Audience[],
): string {
  if (findings.some(withholds)) return 'the sheet has errors';
  if (isStopped(findings) && missing.includes('pupils')) return 'it is not a pupil practical as written';
  return `the sheet is for ${front.audience} alone`;
}

const isStopped = (findings: readonly Finding[]): boolean =>
  findings.some(({ severity }) => severity === 'stop');
