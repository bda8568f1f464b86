import type { CatalogueEntry } from './catalogue.ts';

/** Findings made by the room `sheet`. */
export const sheetCodes = {
  'sheet-placeholder': { severity: 'note', meaning: 'placeholder' },
} as const satisfies Record<string, CatalogueEntry>;
