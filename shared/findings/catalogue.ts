/**
 * The catalogue of findings: every code with its usual severity and its meaning in one line. Codes are lower-case words. One table
 * a room, so that a new finding touches the room that makes it.
 */
import { blockCodes } from './block-codes.ts';
import { checkCodes } from './check-codes.ts';
import { departmentCodes } from './department-codes.ts';
import type { CatalogueEntry } from './entry.ts';
import { proseCodes } from './prose-codes.ts';
import { safetyCodes } from './safety-codes.ts';
import { setupCodes } from './setup-codes.ts';
import { sheetCodes } from './sheet-codes.ts';
import { statedCodes } from './stated-codes.ts';

export const catalogue = {
  ...blockCodes,
  ...setupCodes,
  ...sheetCodes,
  ...checkCodes,
  ...statedCodes,
  ...proseCodes,
  ...safetyCodes,
  ...departmentCodes,
} as const satisfies Record<string, CatalogueEntry>;

export type FindingCode = keyof typeof catalogue;
