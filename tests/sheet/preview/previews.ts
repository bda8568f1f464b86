/** Previews for tests: by either markdown-it, with pieces from stand-in solutions, as an editor would render them. */
import MarkdownIt from 'markdown-it';
import OldMarkdownIt from 'markdown-it-12';
import type { Audience } from '../../../shared/block/tree.ts';
import type { Lookup, ReadyPiece, Wish } from '../../../shared/sheet/preview/lookup.ts';
import { pieceWork, previewPieces } from '../../../shared/sheet/preview/pieces.ts';
import { previewRules } from '../../../shared/sheet/preview/rules.ts';
import { wishesOf } from '../../../shared/sheet/preview/wishes.ts';
import type { PrintInput } from '../../../shared/sheet/print/print-sheet.ts';
import { inputOf, type StandIn } from '../print/sheets.ts';

export type Parser = InstanceType<typeof MarkdownIt>;

/** As in VS Code 1.91 to 1.100, and ours. The packages share the parts of their types that are used here. */
export const parsers: Readonly<Record<string, (options?: object) => Parser>> = {
  'markdown-it 12': (options) =>
    new OldMarkdownIt({ html: true, ...options }) as unknown as InstanceType<typeof MarkdownIt>,
  'markdown-it of ours': (options) => new MarkdownIt({ html: true, ...options }),
};

export const nothingReady: Lookup = { piece: () => null, lastGood: () => null };

/** Everything that a reader waits for, by key. */
export function piecesFor(
  input: PrintInput,
  audience: Audience,
  trouble: ReadonlyMap<number, string> = new Map(),
): ReadonlyMap<string, ReadyPiece> {
  const work = pieceWork(input, audience, wishesOf(input, audience).all);
  return new Map(previewPieces(work, input.solutions, trouble).map((piece) => [piece.key, piece]));
}

export const lookupIn = (pieces: ReadonlyMap<string, ReadyPiece>): Lookup => ({
  piece: ({ key }) => pieces.get(key) ?? null,
  lastGood: () => null,
});

/** Notes what is asked for. */
export function noting(lookup: Lookup, asked: Wish[]): Lookup {
  return {
    ...lookup,
    piece(wish) {
      asked.push(wish);
      return lookup.piece(wish);
    },
  };
}

/** The editor gives every token with lines of its own their number, for scrolling together. */
export function noteLines(md: Parser): void {
  md.core.ruler.push('lines', ({ tokens }) => {
    for (const token of tokens) {
      if (token.map === null || token.type === 'inline') continue;
      token.attrSet('data-line', String(token.map[0]));
      token.attrJoin('class', 'code-line');
    }
  });
}

export function preview(
  text: string,
  audience: Audience,
  lookup: Lookup = nothingReady,
  make = (): Parser => new MarkdownIt({ html: true }),
): string {
  const md = make();
  previewRules(md, { reader: () => audience, begin: () => lookup });
  return md.render(text);
}

/** With all pieces ready. */
export function readyPreview(text: string, audience: Audience, standIn?: StandIn): string {
  return preview(text, audience, lookupIn(piecesFor(inputOf(text, standIn), audience)));
}

export const withoutDrawings = (html: string): string => html.replace(/<svg[\s\S]*?<\/svg>\n?/gu, '');

export const figuresIn = (html: string): readonly string[] => html.match(/<figure[\s\S]*?<\/figure>/gu) ?? [];

/** Size and view of each drawing. */
export const framesIn = (html: string): readonly string[] =>
  [...html.matchAll(/<svg[^>]*? (width="[^"]*" height="[^"]*" viewBox="[^"]*")/gu)].map(
    ([, frame = '']) => frame,
  );

export const zoo = `---
title: Zoo
---

# A zoo of parts

Raw <b>HTML</b> and a value ?{bars.M}, a blank ?{blank 60 mm}, told !{bars.K}. [2]

<div>alone</div>

| place | *V* / V |
| --- | ---: |
| M | ?{bars.M} |

?{drawing bars: electrodes, equipotentials "Left"} ?{drawing small, half size "Right"}

?{readings bars.A "Readings"}

!{readings bars.A}

?{graph bars.A "later"}

<!-- papervolt: new page -->

::: support
For some ?{bars.M}.
:::

- An item [1]

  ::: answer box 30 mm
  Because of this (1)
  and !{bars.M} (1)
  :::

::: answer 3 lines
The solved answer.
:::

::: hint
Look **there**.
:::

::: technicians
Bench ?{bars.resistance}.
:::

::: teachers
Teaching.
:::

::: pupils
Only pupils.
:::

\`\`\`electrodes bars
paper   240 mm × 160 mm, 5 kΩ per square
supply  cell 1.5 V
meter   10 MΩ, resolution 0.01 V
bar     N  10 mm × 120 mm at (60, 80) mm      negative
bar     P  10 mm × 120 mm, 100 mm right of N  positive
row     A  from N to P every 10 mm
probe   M  at (120, 80) mm
probe   K  at (90, 80) mm
draw    everything
\`\`\`

> \`\`\`electrodes small like bars
> paper 200 mm × 180 mm, 5 kΩ per square
> draw nothing for pupils
> \`\`\`

\`\`\`js
const other = '<b>';
\`\`\`

::: teechers
Broken.
:::
`;
