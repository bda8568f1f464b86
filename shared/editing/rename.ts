/** Renaming a setup, an electrode, a probe or a row at every place that names it. */
import { isName } from '../block/tokens.ts';
import { reservedNames, reservedSetupNames } from '../block/words.ts';
import type { Draft } from '../checks/examine.ts';
import type { TextEdit } from '../findings/finding.ts';
import type { Span } from '../text/span.ts';
import { occurrenceAt, occurrencesOf, Scope, sameThing, type Thing } from './occurrences.ts';
import { proseNames } from './prose-names.ts';

/** Edits, or why there are none. Those in the running text are guesses: they are made only where somebody has looked at them. */
export type Renaming =
  | { readonly edits: readonly TextEdit[]; readonly prose: readonly TextEdit[] }
  | { readonly refusal: string };

/** Null where nothing that has a name stands at the offset. */
export function renameAt(draft: Draft, offset: number, to: string): Renaming | null {
  const all = occurrencesOf(draft);
  const found = occurrenceAt(all, offset);
  if (found === null) return null;
  const refusal = refusalOf(draft, found.thing, to);
  if (refusal !== null) return { refusal };
  const written = (span: Span): TextEdit => ({ span, text: to });
  const named = all.filter(({ thing }) => sameThing(thing, found.thing));
  return {
    edits: named.map(({ span }) => written(span)),
    prose: proseNames(draft, found.thing).map(written),
  };
}

function refusalOf(draft: Draft, thing: Thing, to: string): string | null {
  if (!isName(to)) return 'A name is a letter, then letters, digits and hyphens.';
  if (to === thing.name) return null;
  const scope = new Scope(draft.sheet.blocks.map(({ block }) => block));
  if (thing.kind === 'setup') {
    if (reservedSetupNames.includes(to)) return `A setup cannot be called ${to}.`;
    return scope.setup(to) === null ? null : `There is already a setup called ${to}.`;
  }
  if (reservedNames.includes(to)) return `Inserts mean something else by ${to}.`;
  const taken = scope.setupNames.findIndex(
    (_, block) => scope.owner(to, block) !== null && scope.owner(thing.name, block) === thing.block,
  );
  return taken < 0 ? null : `${scope.setupNames[taken]} already has ${to}.`;
}
