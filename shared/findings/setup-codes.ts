import type { CatalogueEntry } from './catalogue.ts';

/** Findings made by the room `setup`. */
export const setupCodes = {
  'setup-placeholder': { severity: 'note', meaning: 'placeholder' },
} as const satisfies Record<string, CatalogueEntry>;
