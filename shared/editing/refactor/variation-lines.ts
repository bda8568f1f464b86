/** The lines that turn one statement of a setup into another: `change`, `move`. */
import type { RowStatement, Shape, Statement } from '../../block/tree.ts';
import type { Span } from '../../text/span.ts';
import type { NewLine } from '../moving/new-line.ts';
import { statementKey } from './statement-key.ts';

/** Null where the two differ in more than their terminal and their place. `textOf` is what stands in a span. */
export function variationLines(
  now: Statement,
  old: Statement,
  textOf: (span: Span) => string,
): readonly NewLine[] | null {
  if (now.kind === 'probe' && old.kind === 'probe') {
    return [{ word: 'move', name: now.name.text, body: `at ${textOf(now.where.span)}` }];
  }
  if (now.kind === 'row' && old.kind === 'row') return [movedRow(now, textOf)];
  if (now.kind !== 'shape' || old.kind !== 'shape') return null;
  return variedShape(now, old, textOf);
}

/** Ends and steps as they stand. */
function movedRow({ name, start, steps }: RowStatement, textOf: (span: Span) => string): NewLine {
  const body = `from ${textOf({ from: start.span.from, to: steps.span.to })}`;
  return { word: 'move', name: name.text, body };
}

function variedShape(now: Shape, old: Shape, textOf: (span: Span) => string): readonly NewLine[] | null {
  const { terminal, name } = now;
  const sameTerminal = statementKey(terminal) === statementKey(old.terminal);
  if (!sameTerminal && terminal === null) return null;
  const change =
    sameTerminal || terminal === null
      ? []
      : [{ word: 'change', name: name.text, body: textOf(terminal.span) }];
  if (statementKey(now, 'terminal') === statementKey(old, 'terminal')) return change;
  const place = movedPlace(now, old, textOf);
  return place === null ? null : [...change, { word: 'move', name: name.text, body: place }];
}

function movedPlace(now: Shape, old: Shape, textOf: (span: Span) => string): string | null {
  const same = (...but: readonly string[]): boolean =>
    statementKey(now, 'terminal', ...but) === statementKey(old, 'terminal', ...but);
  if ('place' in now && 'place' in old && same('place')) {
    const { anchor, turned } = now.place;
    // A move without `turned` keeps the angle.
    const kept = old.place.turned === null ? '' : ', turned 0°';
    return textOf(anchor.span) + (turned === null ? kept : `, turned ${textOf(turned.span)}`);
  }
  if (!('tip' in now) || !('tip' in old) || now.tip.kind !== 'tip' || !same('tip', 'pointing')) return null;
  const way = statementKey(now.pointing) === statementKey(old.pointing);
  return `tip at ${textOf(now.tip.point.span)}${way ? '' : ` pointing ${textOf(now.pointing.span)}`}`;
}
