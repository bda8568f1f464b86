/** The refactorings that can be offered at a place, in the order of a menu. */
import type { Draft } from '../../checks/examine.ts';
import type { Span } from '../../text/span.ts';
import { rowBetween } from './add-row.ts';
import { barToOutline } from './bar-to-outline.ts';
import { unitConversions } from './convert-unit.ts';
import { asVariation } from './like.ts';
import { namedSetup } from './name-setup.ts';
import type { Refactoring } from './refactoring.ts';
import { places } from './relative-place.ts';
import { type Site, siteAt } from './site.ts';

const all: readonly ((site: Site) => readonly Refactoring[])[] = [
  unitConversions,
  places,
  barToOutline,
  rowBetween,
  namedSetup,
  asVariation,
];

/** Empty outside our blocks. What is offered keeps the meaning of the sheet; a row that is added is all that it adds. */
export function refactoringsAt(draft: Draft, span: Span): readonly Refactoring[] {
  const site = siteAt(draft, span);
  return site === null ? [] : all.flatMap((offer) => offer(site));
}
