/** Figures on the page: which scale fits, how they stand, what is written below. Reaches setups, no solution. */
import type { Audience, DrawingPart } from '../../block/tree.ts';
import type { Scene } from '../../drawing/scene.ts';
import { printedScale, renderSvg } from '../../drawing/svg.ts';
import { printNumber } from '../../quantity/print.ts';
import { type Html, html, joined, trusted } from './html.ts';
import type { Figure, Placing } from './view.ts';

/** Parts that only a solution can fill. */
const solvedParts: readonly DrawingPart[] = ['equipotentials', 'field-lines', 'values'];

export const needsSolution = (part: DrawingPart): boolean => solvedParts.includes(part);

export const outlineParts = (parts: readonly DrawingPart[]): readonly DrawingPart[] =>
  parts.filter((part) => !needsSolution(part));

/** Parts of a drawing that an insert asks for; unless it says which: electrodes and probes, for teachers also equipotentials and field lines. */
export function partsAsked(parts: readonly DrawingPart[] | null, audience: Audience): readonly DrawingPart[] {
  if (parts !== null) return parts;
  const usual: readonly DrawingPart[] = ['electrodes', 'probes'];
  return audience === 'teachers' ? [...usual, 'equipotentials', 'field-lines', 'values'] : usual;
}

/** `id` is unique in the page and stable. */
export function figureOf(
  scene: Scene,
  { id, limit_mm, screen }: Placing,
  { caption, remark }: Pick<Figure, 'caption' | 'remark'>,
): Figure {
  return {
    svg: trusted(
      renderSvg(
        scene,
        screen === undefined
          ? { id, widthLimit_mm: limit_mm }
          : { id: `${id}-svg`, frame: screen, theme: 'editor' },
      ),
    ),
    scale: printedScale(scene, limit_mm),
    caption,
    remark,
  };
}

export function renderFigures(figures: readonly Figure[]): Html {
  return html`<div class="figures">${joined(figures.map(renderFigure))}</div>\n`;
}

function renderFigure({ svg, caption, scale, remark }: Figure): Html {
  const note = `${scaleNote(scale)}${remark === null ? '' : `; ${remark}`}`;
  const below =
    caption === null ? html`Drawn ${note}.` : html`${caption} <span class="together">(drawn ${note})</span>`;
  return html`<figure>${svg}<figcaption>${below}</figcaption></figure>`;
}

function scaleNote(scale: number): string {
  return Math.abs(scale - 1) < 0.005
    ? 'at full size'
    : `at ${printNumber(scale * 100, { digits: 2 })}\u00a0%`;
}
