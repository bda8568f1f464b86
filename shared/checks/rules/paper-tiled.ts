/** Full-size prints of a paper that is larger than what a printer reaches of a page: they go over several pages. */
import { finding } from '../../findings/finding.ts';
import { printQuantity } from '../../quantity/print.ts';
import type { Setup } from '../../setup/setup.ts';
import type { Insert } from '../../sheet/sheet.ts';
import type { Rule } from '../rule.ts';

/** What a full-size print may take of a page lying down, mm: the margins and the check line take the rest. */
const areas = { A4: { long: 265, short: 170 }, Letter: { long: 247, short: 175 } } as const;

const fullSize: ReadonlySet<string> = new Set(['plot', 'placement']);

export const paperTiled: Rule = ({ sheet, setups }) =>
  sheet.inserts.flatMap((insert) => {
    const area = areas[sheet.front.print];
    const too = setupsOf(insert, setups).filter(({ paper }) => {
      const [short = 0, long = 0] =
        paper === null ? [] : [paper.width_mm, paper.height_mm].sort((a, b) => a - b);
      return short > area.short || long > area.long;
    });
    const paper = too[0]?.paper;
    if (!paper) return [];
    const size = [paper.width_mm, paper.height_mm].map((side) => printQuantity(side, 'length')).join(' × ');
    return [
      finding('paper-tiled', {
        span: insert.span,
        message: `This paper is ${size}; at full size a page of ${sheet.front.print} takes ${area.long} mm × ${area.short} mm, so that it goes over several pages, to be joined.`,
      }),
    ];
  });

/** Without a name the insert means the only setup. */
function setupsOf({ head }: Insert, setups: readonly Setup[]): readonly Setup[] {
  if (head.kind !== 'later' || !fullSize.has(head.word)) return [];
  if (head.names.length === 0) return setups.length === 1 ? setups : [];
  return setups.filter(({ name }) => head.names.some((one) => one.name === name));
}
