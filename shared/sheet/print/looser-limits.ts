/** On prints for staff: the limits of the department that allow more than is usual, and on whose word. */
import type { Department } from '../department/department.ts';
import { limitNames, usualLimits } from '../department/limits.ts';
import { type Html, html, nothing } from './html.ts';

/** Nothing where the department allows no more than is usual. */
export function looserLimits({ limits }: Department): Html {
  const items = limitNames
    .filter((name) => limits[name].looser)
    .map((name) => {
      const { meaning, value, unit } = usualLimits[name];
      const own = limits[name];
      return html`<li>${meaning} Here ${own.value}\u00a0${own.unit}, by ${own.source}; usual are ${value}\u00a0${unit}.</li>\n`;
    });
  if (items.length === 0) return nothing;
  return html`<section class="limits">
<h2>Limits of this department that allow more than is usual</h2>
<ul>
${items}</ul>
</section>
`;
}
