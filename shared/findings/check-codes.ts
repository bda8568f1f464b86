import type { CatalogueEntry } from './catalogue.ts';

/** Findings made by the room `check`. */
export const checkCodes = {
  'check-placeholder': { severity: 'note', meaning: 'placeholder' },
} as const satisfies Record<string, CatalogueEntry>;
