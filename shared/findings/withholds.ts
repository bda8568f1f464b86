/** Which findings hold prints back from pupils and technicians. */
import type { Finding } from './finding.ts';
import { proseCodes } from './prose-codes.ts';

/**
 * An error holds back: something is missing on the print, or hidden, or not solved. A slip in a unit of the text is an error as well, but
 * the print is whole; its teacher reads of the slip on top.
 */
export function withholds({ code, severity }: Pick<Finding, 'code' | 'severity'>): boolean {
  return severity === 'error' && !Object.hasOwn(proseCodes, code);
}
