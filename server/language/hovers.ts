/** What an editor shows about the place under the pointer, drawing and all. */
import { type Hover, MarkupKind, type Position } from 'vscode-languageserver';
import { editing } from '../../shared/index.ts';
import { base64 } from './base64.ts';
import type { House } from './house.ts';
import { offsetOf, rangeOf } from './places.ts';
import { changed } from './reply.ts';
import type { OpenSheet } from './sheets.ts';
import { shownDrawing } from './shown-drawing.ts';

/** Longer hovers are shown as raw text by some editors. */
const longestHover = 90_000;

export async function hover(house: House, sheet: OpenSheet, position: Position): Promise<Hover | null> {
  const { draft, lines } = sheet;
  const offset = offsetOf(lines, position);
  const block = editing.hoverNeeds(draft, offset);
  const outcome = block === null ? null : ((await house.sheets.outcome(sheet, block)) ?? changed());
  const solved = outcome?.solved ?? null;
  const solutions = block === null || solved === null ? new Map() : new Map([[block, solved]]);
  const found = editing.hoverAt(draft, solutions, offset);
  if (found === null) return null;
  const shown = found.drawing === null ? null : await shownDrawing(house, sheet, found.drawing);
  const why =
    outcome !== null && solved === null && found.drawing !== null
      ? editing.whyUnsolved(draft, found.drawing, outcome.trouble)
      : null;
  const value = hoverText(found.text, shown, why, house.client.drawings);
  return { range: rangeOf(lines, found.span), contents: { kind: MarkupKind.Markdown, value } };
}

/** The drawing as an image or in words, and below it why it is not that of a solution; shorter where it would be too long. */
function hoverText(
  text: string,
  drawing: editing.ShownDrawing | null,
  why: string | null,
  images: boolean,
): string {
  const below = why === null ? [] : [why];
  const written = (...parts: readonly string[]): string => [text, ...parts, ...below].join('\n\n');
  const forms =
    drawing === null
      ? []
      : [
          ...(images
            ? [written(`![${drawing.title}](data:image/svg+xml;base64,${base64(drawing.svg)})`)]
            : []),
          written(drawing.description),
        ];
  return forms.find(({ length }) => length < longestHover) ?? written().slice(0, longestHover - 1);
}
