/** Setups that vary another one: what they inherit, change, move, leave out and replace. */
import { describe, expect, it } from 'vitest';
import { applied, dedent } from '../check.ts';
import { checkSetups, setupOf, setupsOf } from './blocks.ts';

const base = `
\`\`\`electrodes floating
paper 240 mm × 160 mm, 5 kΩ per square
supply cell 1.5 V
bar N 10 mm × 120 mm at (60, 80) mm negative
bar P 10 mm × 120 mm, 100 mm right of N positive
ring R diameter 50 mm, wall 4 mm, midway between N and P floating
row A from N to P every 10 mm
probe C at centre of R
draw electrodes
draw electrodes, equipotentials for pupils
\`\`\`
`;

const varied = (lines: string) => setupOf(`${base}\`\`\`electrodes other like floating\n${lines}\n\`\`\``);

const electrode = (setup: ReturnType<typeof setupOf>, name: string) =>
  setup.electrodes.find((e) => e.name === name);

describe('what a variation comes to', () => {
  it('inherits everything that it does not say', () => {
    const [first, second] = setupsOf(`${base}\`\`\`electrodes other like floating\n\`\`\``);
    expect(second?.electrodes).toEqual(first?.electrodes);
    expect(second?.rows).toEqual(first?.rows);
    expect(second?.findings).toEqual([]);
    expect(second?.name).toBe('other');
  });

  it('change gives another terminal', () => {
    const setup = varied('change R joined to P');
    expect(electrode(setup, 'R')).toMatchObject({ connection: { kind: 'positive' }, joinedTo: 'P' });
    expect(setup.findings).toEqual([]);
  });

  it('move takes relative places, rows and probes with it', () => {
    const setup = varied('move N at (40, 70) mm');
    expect(electrode(setup, 'P')?.box).toEqual({ x0: 145, y0: 10, x1: 155, y1: 130 });
    expect(setup.probes[0]?.at).toEqual({ x: 95, y: 70 });
    expect(setup.rows[0]?.start).toEqual({ x: 45, y: 70 });
  });

  it('move takes probes and rows too', () => {
    const setup = varied('move C at (100, 20) mm\nmove A from (70, 20) mm to (90, 20) mm');
    expect(setup.probes[0]?.at).toEqual({ x: 100, y: 20 });
    expect(setup.rows[0]?.points.map((p) => p.distance_mm)).toEqual([0, 10, 20]);
  });

  it('reverse supply swaps the leads, twice gives them back', () => {
    expect(electrode(varied('reverse supply'), 'N')?.connection).toEqual({ kind: 'positive' });
    expect(varied('reverse supply').supply?.reversed).toBe(true);
    const twice = setupOf(
      `${base}\`\`\`electrodes a like floating\nreverse supply\n\`\`\`\n\`\`\`electrodes b like a\nreverse supply\n\`\`\``,
    );
    expect(electrode(twice, 'N')?.connection).toEqual({ kind: 'negative' });
  });

  it('a once-only line replaces the old one, and draw replaces all of them', () => {
    const setup = varied('supply 2 cells 1.5 V\nequipotentials 1 V\ndraw values');
    expect(setup.supply?.emf_V).toBe(3);
    expect(setup.equipotentials.values_V).toEqual([1]);
    // Values reach pupils by `for pupils` alone.
    expect(setup.draw).toEqual({ pupils: [], teachers: ['values'], technicians: ['values'] });
  });

  it('a shape after without replaces the old one, and what named it follows', () => {
    const setup = varied('without R\ndisc R diameter 20 mm at (110, 60) mm floating');
    expect(setup.probes[0]?.at).toEqual({ x: 110, y: 60 });
    expect(setup.findings).toEqual([]);
  });

  it('a clip goes with its electrode', () => {
    const text = `${base.replace('row A', 'clip R 10 Ω\nrow A')}\`\`\`electrodes other like floating\nwithout R\nwithout C\n\`\`\``;
    const setup = setupOf(text);
    expect(setup.findings).toEqual([]);
    expect(setup.electrodes.map((e) => e.name)).toEqual(['N', 'P']);
  });

  it('several pieces and drawn ones move as a whole, by the centre of their box', () => {
    const text = `
      \`\`\`electrodes one
      paper 240 mm × 160 mm, 5 kΩ per square
      supply cell 1.5 V
      bar N 10 mm × 120 mm at (60, 80) mm negative
      bar P 10 mm × 120 mm at (180, 80) mm positive
      bar P 20 mm × 10 mm at (165, 80) mm
      outline H (100, 20) (120, 20) (120, 30) mm floating
      \`\`\`
      \`\`\`electrodes two like one
      move P at (200, 90) mm
      move H at (110, 60) mm, turned 90°
      \`\`\`
    `;
    const setup = setupOf(text);
    expect(setup.findings).toEqual([]);
    expect(electrode(setup, 'P')?.box).toEqual({ x0: 185, y0: 30, x1: 215, y1: 150 });
    expect(electrode(setup, 'H')?.box).toEqual({ x0: 105, y0: 50, x1: 115, y1: 70 });
  });
});

describe('moves upon moves', () => {
  const text = `
    \`\`\`electrodes one
    paper 240 mm × 160 mm, 5 kΩ per square
    supply cell 1.5 V
    bar N 10 mm × 120 mm at (60, 80) mm negative
    bar P 10 mm × 120 mm at (180, 80) mm positive
    bar Q 10 mm × 10 mm at (100, 40) mm floating
    bar Q 10 mm × 10 mm at (110, 40) mm
    \`\`\`
    \`\`\`electrodes two like one
    move Q at (120, 80) mm, turned 90°
    move N at (50, 80) mm, turned 90°
    \`\`\`
    \`\`\`electrodes three like two
    move Q at (120, 60) mm
    move N at (70, 80) mm
    \`\`\`
    \`\`\`electrodes four like three
    move Q at (120, 60) mm, turned 0°
    \`\`\`
  `;
  it('keep an earlier turn unless they say another', () => {
    const boxes = setupsOf(text).map((setup) => electrode(setup, 'Q')?.box);
    expect(boxes[1]).toEqual({ x0: 115, y0: 70, x1: 125, y1: 90 });
    expect(boxes[2]).toEqual({ x0: 115, y0: 50, x1: 125, y1: 70 });
    expect(boxes[3]).toEqual({ x0: 110, y0: 55, x1: 130, y1: 65 });
    expect(electrode(setupsOf(text)[2] ?? setupOf(text), 'N')?.box).toEqual({
      x0: 10,
      y0: 75,
      x1: 130,
      y1: 85,
    });
  });
});

describe('what a variation may not do', () => {
  it('break an inherited line, and is told so where it does', () => {
    const start = `
      \`\`\`electrodes one
      paper 240 mm × 160 mm, 5 kΩ per square
      supply cell 1.5 V
      bar N 10 mm × 120 mm at (60, 80) mm negative
      bar P 10 mm × 120 mm at (170, 80) mm positive
      spike S base 10 mm, length 20 mm on P pointing left
      row A from N to P every 10 mm
      \`\`\``;
    checkSetups(`${start}
      \`\`\`electrodes two like one
      move S tip at (120, 80) mm
      ^^^^^^^^^^^^^^^^^^^^^^^^^^ error terminal-missing Where does S lead
      => move S tip at (120, 80) mm
      => move S tip at (120, 80) mm
      => move S tip at (120, 80) mm
      \`\`\`
      \`\`\`electrodes three like one
      move P at (300, 80) mm
      ^^^^^^^^^^^^^^^^^^^^^^ error off-paper No part of P lies on the paper.
      without S
      without A
      \`\`\`
      \`\`\`electrodes four like one
      change S floating
               ^^^^^^^^ error terminal-differs S stands on P and takes its terminal
      move S at (120, 80) mm
             ^^^^^^^^^^^^^^^ error move-form S keeps the form of its line: move S on P at …
      \`\`\`
    `);
    const missing = setupsOf(`${start}
      \`\`\`electrodes two like one
      move S tip at (120, 80) mm
      \`\`\`
    `)[1]?.findings[0];
    expect(missing?.fixes.map(({ title }) => title)).toEqual([
      'Add change S positive',
      'Add change S negative',
      'Add change S floating',
    ]);
  });

  it('give a probe or a row the name of an inherited electrode', () => {
    checkSetups(`
      \`\`\`electrodes one
      paper 240 mm × 160 mm, 5 kΩ per square
      supply cell 1.5 V
      bar N 10 mm × 120 mm at (60, 80) mm negative
      bar P 10 mm × 120 mm at (180, 80) mm positive
      \`\`\`
      \`\`\`electrodes two like one
      probe P at (120, 80) mm
            ^ error name-inherited P is inherited as an electrode. Call this Q?
            => probe Q at (120, 80) mm
      \`\`\`
      \`\`\`electrodes two
                    ^^^ error setup-name-twice There is already a setup called two.
                    => \`\`\`electrodes two-2
      paper 240 mm × 160 mm, 5 kΩ per square
      supply cell 1.5 V
      bar N 10 mm × 120 mm at (60, 80) mm negative
      bar P 10 mm × 120 mm at (180, 80) mm positive
      \`\`\`
    `);
  });

  it('change the terminal of what still needs its place', () => {
    const joined = base.replace('floating\nrow', 'joined to P\nrow');
    const text = dedent(
      `${joined}\`\`\`electrodes other like floating\nwithout P\nwithout A\nchange R positive\n\`\`\``,
    );
    const setup = setupOf(text);
    expect(setup.findings.map(({ message }) => message)).toEqual([
      'R stands midway to P.',
      'This waits for R, whose line cannot be used yet.',
    ]);
    expect(setup.lost).toEqual(['C', 'R']);
  });

  it('leave something that names what is gone', () => {
    const text = dedent(`${base}\`\`\`electrodes other like floating\nwithout R\n\`\`\``);
    const [found] = setupOf(text).findings;
    expect(found).toMatchObject({ code: 'name-gone', message: 'C stands at the centre of R.' });
    expect(found?.fixes.map(({ title }) => title)).toEqual(['Add without C', 'Add move C at (115, 80) mm']);
    for (const fix of found?.fixes ?? []) {
      const mended = applied(text, fix.edits);
      expect(mended).toContain('without R\n');
      expect(setupOf(mended).findings).toEqual([]);
    }
    expect(setupOf(text).solvable).toBe(true);
  });

  it('leave an electrode joined to what is gone', () => {
    const joined = base.replace('floating\nrow', 'joined to P\nrow');
    const text = dedent(`${joined}\`\`\`electrodes other like floating\nwithout P\nwithout A\n\`\`\``);
    const found = setupOf(text).findings.map(({ message }) => message);
    expect(found).toContain('R stands midway to P.');
  });

  it('use an inherited name again, change what is not there, or vary nothing', () => {
    checkSetups(`
      \`\`\`electrodes one
      paper 240 mm × 160 mm, 5 kΩ per square
      supply cell 1.5 V
      bar N 10 mm × 120 mm at (60, 80) mm negative
      bar P 10 mm × 120 mm at (180, 80) mm positive
      change N floating
      ^^^^^^^^^^^^^^^^^ error variation-alone
      \`\`\`
      \`\`\`electrodes two like one
      bar N 10 mm × 100 mm at (60, 80) mm negative
          ^ error name-inherited N is inherited. Leave it out first, then give it anew.
          => bar N 10 mm × 100 mm at (60, 80) mm negative
      change Q floating
             ^ error name-unknown There is no Q in the setup that this one is like.
      move M at (10, 10) mm
           ^ error name-unknown
      move P tip at (10, 10) mm
             ^^^^^^^^^^^^^^^^^^ error move-form
      \`\`\`
      \`\`\`electrodes three like tow
                               ^^^ error like-unknown There is no setup called tow.
                               => \`\`\`electrodes three like two
      \`\`\`
      \`\`\`electrodes two
                    ^^^ error setup-name-twice There is already a setup called two.
      paper 240 mm × 160 mm, 5 kΩ per square
      supply cell 1.5 V
      bar N 10 mm × 120 mm at (60, 80) mm negative
      bar P 10 mm × 120 mm at (180, 80) mm positive
      \`\`\`
    `);
  });

  it('be like itself', () => {
    const found = setupsOf(`
      \`\`\`electrodes a like b
      \`\`\`
      \`\`\`electrodes b like a
      \`\`\`
    `).flatMap(({ findings }) => findings.map(({ code }) => code));
    expect(found).toContain('like-circular');
  });

  it('repeat the findings of inherited lines', () => {
    const broken = base.replace('floating\nrow', 'joined to Q\nrow');
    const [first, second] = setupsOf(`${broken}\`\`\`electrodes other like floating\n\`\`\``);
    expect(first?.findings.map(({ code }) => code)).toEqual(['name-unknown']);
    expect(second?.findings).toEqual([]);
  });

  it('break an inherited line without saying so at its own opening line', () => {
    const text = dedent(`${base}\`\`\`electrodes other like floating\nmove N at (200, 80) mm\n\`\`\``);
    const found = setupOf(text).findings;
    expect(found.map(({ code }) => code)).toContain('off-paper');
    for (const { span } of found) expect(text.slice(span.from, span.to)).toBe('floating');
  });
});
