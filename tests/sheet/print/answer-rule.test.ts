/** What pupils get is made from the sheet, the setups and the told values; no other solved number reaches their print. */
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { describe, expect, it } from 'vitest';
import { printSheet } from '../../../shared/sheet/print/print-sheet.ts';
import { bodyOf, inputOf, printed, textOf } from './sheets.ts';

const shared = join(import.meta.dirname, '../../../shared');

const asked = `---
title: Bars
---
\`\`\`electrodes hidden-lift
paper   240 mm × 160 mm, 5 kΩ per square
supply  cell 1.5 V
meter   10 MΩ, resolution 0.01 V
bar     N  10 mm × 120 mm at (60, 80) mm      negative
bar     P  10 mm × 120 mm, 100 mm right of N  positive
row     A  from N to P every 10 mm
probe   M  at (120, 80) mm
probe   K  at (90, 80) mm
clip    P  20 Ω
draw    everything
\`\`\`

- Reading ?{M}, ?{M, no unit}, ?{M of V0}, ?{p.d. M to K}, ?{M.strength}, ?{range M}, ?{A at 33 mm}
- ?{gradient A}, ?{mean strength A from 0 mm to 15 mm}, ?{current}, ?{N.current}, ?{resistance}, ?{N}, ?{P.current}

| place | V / V |
| --- | --- |
| M | ?{M} |

?{readings A}

?{readings A: r, V, V, mean, ln r, 1/r}

?{drawing hidden-lift: equipotentials, field-lines, values, electrodes "The field"}

?{drawing hidden-lift} ?{drawing hidden-lift, half size}

::: answer
!{M} (1)
:::

::: hint
Look at ?{K}.
:::

::: teachers
!{M}, !{drawing hidden-lift: equipotentials}
:::
`;

const pupils = (text: string, slope: number): string =>
  printSheet(inputOf(text, { slope_V_per_mm: slope }), 'pupils')?.html ?? '';

describe('independence', () => {
  it('a sheet that only asks gives pupils the same bytes whatever the solution', () => {
    expect(pupils(asked, 0.01).length).toBeGreaterThan(5000);
    expect(pupils(asked, 0.0137)).toBe(pupils(asked, 0.01));
    expect(pupils(asked, -3)).toBe(pupils(asked, 0.01));
  });

  it('the same bytes where nothing could be solved', () => {
    const input = inputOf(asked);
    expect(printSheet({ ...input, solutions: new Map() }, 'pupils')?.html).toBe(pupils(asked, 0.01));
  });

  it('teachers see another print with every other solution', () => {
    const teachers = (slope: number) =>
      printSheet(inputOf(asked, { slope_V_per_mm: slope }), 'teachers')?.html ?? '';
    expect(teachers(0.0137)).not.toBe(teachers(0.01));
  });

  it.each(['!{M}', '!{readings A}', '!{drawing hidden-lift: equipotentials}'])(
    '%s reaches pupils',
    (told) => {
      const text = `${asked}\n${told}\n`;
      expect(pupils(text, 0.0137)).not.toBe(pupils(text, 0.01));
    },
  );

  it('so does draw … for pupils, and only that', () => {
    const text = asked.replace('draw    everything', 'draw equipotentials for pupils');
    expect(pupils(text, 0.0137)).not.toBe(pupils(text, 0.01));
    const common = asked.replace('draw    everything', 'draw equipotentials, values');
    expect(pupils(common, 0.0137)).toBe(pupils(common, 0.01));
  });
});

describe('what else would give the answer away', () => {
  it('pupils never see the name of a setup, teachers’ text, or the text of an answer', () => {
    const body = printed(asked, 'pupils');
    expect(body).not.toContain('hidden-lift');
    expect(body).not.toContain('clip of');
    expect(textOf(body)).not.toContain('(1)');
  });

  it('all blanks of a quantity are alike', () => {
    const blanks = [
      ...bodyOf(printed(asked, 'pupils')).matchAll(
        /<span class="together"><span class="blank" style="([^"]*)"><\/span>([^<]*)</g,
      ),
    ];
    const widths = new Map<string, Set<string>>();
    for (const [, style = '', unit = ''] of blanks)
      widths.set(unit, (widths.get(unit) ?? new Set()).add(style));
    expect([...widths.keys()].sort()).toEqual(['\u00a0V', '\u00a0V/m', '\u00a0kΩ', '\u00a0mA']);
    for (const unit of ['\u00a0V/m', '\u00a0kΩ', '\u00a0mA']) expect(widths.get(unit)?.size).toBe(1);
  });
});

describe('by types', () => {
  /** Every file that a file's imports lead to, types included. */
  function reached(from: string, seen = new Set<string>()): Set<string> {
    if (seen.has(from)) return seen;
    seen.add(from);
    for (const [, path = ''] of readFileSync(from, 'utf8').matchAll(/from\s+'(\.[^']*)'/g)) {
      reached(join(dirname(from), path), seen);
    }
    return seen;
  }
  const graphOf = (file: string) => [...reached(join(shared, file))].map((path) => relative(shared, path));
  const solved =
    /^setup\/readings\.ts$|^setup\/solve|^field\/(solve|sample|mesh)\/|^drawing\/solved|solved-|told\.ts$/;

  it('the makers of the pupils’ view and of the page reach no solution', () => {
    for (const file of ['sheet/print/pupils.ts', 'sheet/print/render-tokens.ts', 'sheet/print/page.ts']) {
      const graph = graphOf(file);
      expect(graph.length).toBeGreaterThan(15);
      expect(
        graph.filter((path) => solved.test(path)),
        file,
      ).toEqual([]);
    }
  });

  it('the scan sees what it looks for', () => {
    expect(graphOf('sheet/print/told.ts').some((path) => solved.test(path))).toBe(true);
    expect(readdirSync(join(shared, 'setup'))).toContain('readings.ts');
  });
});
