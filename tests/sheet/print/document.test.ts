/** The printed document: its frame, inserts as they stand, hostile input. */
import { describe, expect, it } from 'vitest';
import { printSheet } from '../../../shared/sheet/print/print-sheet.ts';
import { bodyOf, inputOf, printed, textOf } from './sheets.ts';

/** In the stand-in field V rises by 0.01 V for each mm along x, from 0 at the paper's edge. */
const block = `\`\`\`electrodes bars
paper   240 mm × 160 mm, 5 kΩ per square
supply  cell 1.5 V
meter   10 MΩ, resolution 0.01 V
bar     N  10 mm × 120 mm at (60, 80) mm      negative
bar     P  10 mm × 120 mm, 100 mm right of N  positive
row     A  from N to P every 25 mm
row     B  from (65, 60) mm to (165, 60) mm every 50 mm
row     E  from centre of N right at 10 mm, 15 mm, 20 mm
probe   M  at (120.4, 80) mm
probe   K  at (90, 80) mm
\`\`\`

`;
const teachers = (text: string) => textOf(printed(block + text, 'teachers'));
const value = (insert: string) => teachers(`= ${insert} =`).replace(/^.*?= | =.*$/g, '');

describe('values', () => {
  it.each([
    ['?{M}', '1.20\u00a0V'],
    ['?{bars.M}', '1.20\u00a0V'],
    ['!{M}', '1.20\u00a0V'],
    ['?{M, no unit}', '1.20'],
    ['?{M of V0}', '0.80'],
    ['?{p.d. M to K}', '0.30\u00a0V'],
    ['?{p.d. K to M}', '0.30\u00a0V'],
    ['?{M.strength}', '10.0\u00a0V/m'],
    ['?{A at 30 mm}', '0.95\u00a0V'],
    ['?{gradient A}', '10.0\u00a0V/m'],
    ['?{mean strength A from 0 mm to 5 mm}', '10.0\u00a0V/m'],
    ['?{current}', '0.585\u00a0mA'],
    ['?{resistance}', '2.57\u00a0kΩ'],
    // One step of the meter and 1 mm at 10 V/m, which is another step.
    ['?{range M}', '1.18\u00a0V to 1.22\u00a0V'],
  ])('%s', (insert, expected) => expect(value(insert)).toBe(expected));

  it('in a column headed with a unit stand bare and in that unit', () => {
    expect(teachers('| V / V | V / mV |\n| --- | --- |\n| ?{M} | ?{M} |\n')).toContain('1.20 1200');
  });

  it('free blanks are blanks for everyone', () => {
    expect(bodyOf(printed(`${block}V: ?{blank 60 mm} and ?{blank V}`, 'teachers'))).toMatch(
      /width:60mm.*\u00a0V/,
    );
  });

  it('a message in a box shows code as code', () => {
    expect(bodyOf(printed(`${block}Read ?{bras.M}.`, 'teachers'))).toMatch(
      /<span class="unknown">\?\{bras\.M\}: [^`]*<code>bars<\/code>[^`]*<\/span>/,
    );
  });

  it('an unknown name is a box, never a gap', () => {
    expect(bodyOf(printed(`${block}Read ?{Q}.`, 'teachers'))).toMatch(
      /Read <span class="unknown">\?\{Q\}: [^<]+<\/span>\./,
    );
    expect(bodyOf(printed(`${block}Read ?{Q}.`, 'pupils'))).toMatch(/Read <span class="unknown">/);
  });
});

describe('tables of readings', () => {
  it('have headings of quantity and unit, and one number of decimals a column', () => {
    expect(teachers('?{readings A}')).toContain(
      'distance d / mm V / V 0 0.65 25 0.90 50 1.15 75 1.40 100 1.65',
    );
  });
  it('leave cells empty where a row has no reading', () => {
    expect(teachers('?{readings A, B}')).toContain(
      'distance d / mm A: V / V B: V / V 0 0.65 0.65 25 0.90 50 1.15 1.15 75 1.40 100 1.65 1.65',
    );
    expect(bodyOf(printed(`${block}?{readings A, B}`, 'pupils')).match(/class="unread"/g)?.length).toBe(2);
  });
  it('take trials, means and radii', () => {
    expect(teachers('?{readings E: r, V, V, mean, ln r, 1/r}')).toContain(
      'r / mm V 1 / V V 2 / V mean V / V ln ( r / mm) (1/ r ) / mm⁻¹ 10 0.70 0.70 0.70 2.30 0.1000 15 0.75 0.75 0.75 2.71 0.0667',
    );
  });
  it('give pupils the distances and room to write', () => {
    const body = bodyOf(printed(`${block}?{readings E: r, V, ln r}`, 'pupils'));
    expect(textOf(printed(`${block}?{readings E: r, V, ln r}`, 'pupils'))).toContain(
      'r / mm V / V ln ( r / mm) 10 15 20',
    );
    expect(body.match(/<td class="write"><\/td>/g)?.length).toBe(6);
  });
});

describe('figures', () => {
  it('say their scale and carry their caption', () => {
    const body = bodyOf(printed(`${block}?{drawing bars "Two bars"}`, 'pupils'));
    expect(body).toMatch(
      /<figcaption>Two bars <span class="together">\(drawn at \d\d\u00a0%\)<\/span><\/figcaption>/,
    );
  });
  it('two in a paragraph stand side by side at one scale', () => {
    const body = bodyOf(printed(`${block}?{drawing bars "a"} ?{drawing bars "b"}`, 'teachers'));
    const group = body.slice(body.lastIndexOf('<div class="figures">'));
    expect(group.match(/<figure>/g)?.length).toBe(2);
    expect(new Set(group.match(/drawn at [^<]*/g)).size).toBe(1);
    const widths = [...group.matchAll(/<svg[^>]* width="([\d.]+)mm"/g)].map(([, width]) => Number(width));
    expect(widths.length).toBe(2);
    expect(widths.reduce((sum, width) => sum + width, 6)).toBeLessThanOrEqual(172);
  });
  const scaleOf = (text: string): number => Number(/drawn at (\d+)/i.exec(text)?.[1]);
  const wide = block.replace('240 mm × 160 mm', '260 mm × 170 mm');
  it('use their column: one of 260 mm more than half of it, two a quarter', () => {
    expect(scaleOf(textOf(printed(wide, 'teachers')))).toBeGreaterThanOrEqual(54);
    const pair = bodyOf(printed(`${wide}?{drawing bars "a"} ?{drawing bars "b"}`, 'teachers'));
    expect(scaleOf(pair.slice(pair.lastIndexOf('<div class="figures">')))).toBeGreaterThanOrEqual(25);
  });
  it('too small side by side stand below each other, still at one scale', () => {
    const four = '?{drawing bars "a"} '.repeat(4);
    const body = bodyOf(printed(wide + four, 'pupils'));
    const group = body.slice(body.lastIndexOf('<div class="figures">'));
    expect(group.match(/<figure>/g)?.length).toBe(4);
    expect(new Set(group.match(/drawn at [^<]*/g)).size).toBe(1);
    expect(scaleOf(group)).toBeGreaterThanOrEqual(25);
  });
  it('of a block have one scale for all readers, so that the answer lies on the blank', () => {
    const drawn = wide.replace('row     A', 'draw everything for teachers\nrow     A');
    const scales = (['pupils', 'teachers', 'technicians'] as const).map((reader) =>
      scaleOf(textOf(printed(drawn, reader))),
    );
    expect(new Set(scales).size).toBe(1);
  });
  it('ids are unique in the page', () => {
    for (const audience of ['pupils', 'teachers'] as const) {
      const document = printed(
        `${block}?{drawing bars}\n\n!{drawing bars: equipotentials} ?{drawing bars}`,
        audience,
      );
      const ids = [...document.matchAll(/ id="([^"]*)"/g)].map(([, id]) => id);
      expect(ids.length).toBeGreaterThan(8);
      expect(new Set(ids).size).toBe(ids.length);
    }
  });
  it('what a later version prints is a labelled place for teachers and technicians, nothing for pupils', () => {
    const later = `${block}?{plot bars "My plot"}\n\n!{marks}`;
    expect(textOf(printed(later, 'teachers'))).toContain(
      'Plot at full size “My plot”: not printed by this version.',
    );
    expect(textOf(printed(later, 'pupils'))).not.toMatch(/plot/i);
  });
});

describe('marks', () => {
  it('stand at the right, points of an answer for teachers', () => {
    const text = `${block}1. Why? [2]\n\n   ::: answer\n   Because. (1)\n   So. (1)\n   :::\n`;
    expect(bodyOf(printed(text, 'pupils'))).toContain('Why?\u00a0<span class="mark"><span>[2]</span></span>');
    expect(bodyOf(printed(text, 'teachers')).match(/<span class="mark"><span>\(1\)<\/span>/g)?.length).toBe(
      2,
    );
  });
});

describe('the document', () => {
  const front =
    '---\ntitle: Bars\nid: EF-1\nversion: "1.2"\ndate: 2026-09-07\nlanguage: en-US\nprint: Letter\n---\n';
  it('is whole, without scripts and links to styles, in its language and paper', () => {
    const document = printed(front + block, 'teachers');
    expect(document.startsWith('<!doctype html>\n<html lang="en-US">')).toBe(true);
    expect(document).toContain('size: letter;');
    expect(document).toContain('<meta charset="utf-8">');
    expect(document).not.toMatch(/<script|<link|@import|url\(/);
    expect(document.match(/<style>/g)?.length).toBe(1);
  });
  it('names reader, id, version and date; pupils get lines for name, class and date', () => {
    const pupils = printed(front + block, 'pupils');
    for (const word of [
      'EF-1',
      'version 1.2',
      '2026-09-07',
      '<span class="reader">Pupils</span>',
      'Name <i>',
      'Class <i>',
    ]) {
      expect(pupils).toContain(word);
    }
  });
  it('has at the foot of every page what it is, and that it may be out of date; nothing is left for a page of its own', () => {
    const technicians = printed(front + block, 'technicians');
    expect(technicians).toContain('Technicians \\b7  printed copies may be out of date"');
    expect(technicians).not.toContain('<footer');
    const duty = technicians.indexOf(
      'this list is not complete, and the sheet is not for use until assessed',
    );
    expect(duty).toBeGreaterThan(0);
    expect(duty).toBeLessThan(technicians.indexOf('<main>'));
    expect(technicians).toContain('those of whoever holds the duty where you work,');
    expect(printed(block, 'teachers')).toContain(
      'whoever holds the duty where you work (in the UK the employer)',
    );
    expect(technicians).toContain('these notes are not permission');
    expect(printed(block, 'pupils')).not.toContain('not complete');
  });
  it('cuts a long name in its foot', () => {
    const long = `---\ntitle: ${'Fields of all kinds '.repeat(8)}\n---\n${block}`;
    expect(/@bottom-left \{ content: "([^"]*)"/.exec(printed(long, 'pupils'))?.[1]?.length).toBeLessThan(130);
  });
  it('has as many corner notches as its reader asks', () => {
    const count = (audience: 'pupils' | 'teachers' | 'technicians') =>
      printed(block, audience)
        .match(/<div class="notches"[\s\S]*?<\/div>/)?.[0]
        .match(/<path/g)?.length ?? 0;
    expect([count('pupils'), count('teachers'), count('technicians')]).toEqual([0, 1, 2]);
  });
  it('has one title: the sheet’s own first heading, else that of the front matter, else its name', () => {
    expect(printed(`${front}# Own *head*\n\n${block}`, 'pupils')).toContain('<h1>Own <em>head</em></h1>');
    expect(printed(`${front}# Own\n\n${block}`, 'pupils').match(/<h1>/g)?.length).toBe(1);
    expect(printed(front + block, 'pupils')).toContain('<h1>Bars</h1>');
    expect(printed(block, 'pupils')).toContain('<h1>sheet</h1>');
  });
  it('is the same every time', () => {
    const input = inputOf(front + block);
    expect(printSheet(input, 'teachers')?.html).toBe(printSheet(inputOf(front + block), 'teachers')?.html);
  });
});

describe('hostile input', () => {
  const attack = '</style></title><script>alert(1)</script><img src=x onerror=alert(1)>';
  const quoted = JSON.stringify(attack);
  const text = `---
title: ${quoted}
id: ${quoted}
version: ${quoted}
date: ${quoted}
author: ${quoted}
school: ${quoted}
course: ${quoted}
risk-assessment: ${quoted}
safety: kept-in ${attack}
---
${block}
${attack}

<script>alert(2)</script>

?{drawing bars ${JSON.stringify(attack).replace(/\\?"/g, '"')}}

?{drawing bars "${attack}"} ?{readings A as "${attack}"}

?{${attack}} \`${attack}\` [a](javascript:alert(1)) [b](<data:text/html,x> "${attack}") ![${attack}](javascript:alert(1) "t")

[c]: javascript:alert(3) '${attack}'

[c] <javascript:alert(4)> ![d](https://example.org/a.png "\\" onerror=alert(1)")

~~~html
${attack}
~~~

| ${attack} |
| --- |
| ${attack} |

::: ${attack}
x
:::

[2]: javascript:alert(1)

Marks [2]
`;
  it.each(['pupils', 'teachers', 'technicians'] as const)('runs nothing in the print of %s', (audience) => {
    const document = printed(text, audience);
    expect(document.length).toBeGreaterThan(3000);
    expect(document).not.toMatch(/<script/i);
    expect(document).not.toMatch(/<img(?! src="https:)/i);
    expect(document).not.toMatch(/(href|src)="\s*(javascript|data|vbscript):/i);
    expect(document).not.toMatch(/<[a-z][^>]*\son[a-z]+=/i);
    expect(document.match(/<\/style>/g)?.length).toBe(1);
    expect(document.match(/<\/title>/gi)?.length).toBe(1 + (document.match(/<title id=/g)?.length ?? 0));
  });
});
