/** The refactorings that can be offered at a place. */
import type { Draft } from '../../checks/examine.ts';
import type { Span } from '../../text/span.ts';
import type { Refactoring } from './refactoring.ts';

/** Empty outside our blocks. */
export function refactoringsAt(_draft: Draft, _span: Span): readonly Refactoring[] {
  return [];
}
