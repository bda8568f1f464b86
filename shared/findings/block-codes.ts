import type { CatalogueEntry } from './catalogue.ts';

/** Findings made by the room `block`. */
export const blockCodes = {
  'block-placeholder': { severity: 'note', meaning: 'placeholder' },
} as const satisfies Record<string, CatalogueEntry>;
