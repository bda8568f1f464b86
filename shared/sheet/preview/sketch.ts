/** What stands in a figure's frame until it is drawn: board, paper and metal in outline. From the setup alone, in well under a millisecond. */
import { titleOf } from '../../drawing/describe.ts';
import { alongCurves, box } from '../../drawing/marks.ts';
import { scaledOutline } from '../../drawing/page.ts';
import type { Item } from '../../drawing/scene.ts';
import { renderSvg } from '../../drawing/svg.ts';
import { curvesOf } from '../../field/geometry/curve.ts';
import type { Setup } from '../../setup/setup.ts';
import type { Placing } from '../print/view.ts';

/** Board above the paper, and from the board to the frame elsewhere, mm: about as in the drawing to come. */
const [above_mm, rim_mm] = [11, 0.5];

export function renderSketch(setup: Setup, { id, scale, screen }: Placing): string {
  if (screen === undefined || setup.paper === null) return '';
  const width = setup.paper.width_mm * scale;
  const height = setup.paper.height_mm * scale;
  const metal = setup.electrodes.flatMap(({ pieces }) =>
    pieces.flatMap(({ geometry }) =>
      [geometry.outer, ...geometry.hollows].map((outline) =>
        alongCurves('metal', curvesOf(scaledOutline(outline, scale)), true),
      ),
    ),
  );
  const items: Item[] = [
    box(
      'board',
      screen.left + rim_mm,
      screen.bottom + rim_mm,
      width - screen.left - rim_mm,
      height + above_mm,
    ),
    box('paper', 0, 0, width, height),
    ...metal,
  ];
  const words = { title: titleOf(setup), description: 'Not drawn yet.' };
  const scene = { ...screen, scale, layers: [{ name: 'sketch', items }], ...words };
  return renderSvg(scene, { id: `${id}-svg`, frame: screen, theme: 'editor' });
}
