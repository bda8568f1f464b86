/** What touches what: conductors, short circuits, metal beside the paper, paper without metal. */
import { expect, test } from 'vitest';
import { checkSetups, setupOf } from './blocks.ts';

test('a bar lying down that shorts the supply is first stood upright', () => {
  checkSetups(`
    paper 240 mm × 160 mm, 5 kΩ per square
    supply cell 1.5 V
    bar N 120 mm × 10 mm at (60, 80) mm negative
    bar P 10 mm × 120 mm at (115, 80) mm positive
        ^ error short-circuit N (negative) and P (positive) touch at
        => bar P 10 mm × 120 mm at (115, 80) mm positive
  `);
  const [found] = setupOf(`
    paper 240 mm × 160 mm, 5 kΩ per square
    supply cell 1.5 V
    bar N 120 mm × 10 mm at (60, 80) mm negative
    bar P 10 mm × 120 mm at (115, 80) mm positive
  `).findings;
  expect(found?.fixes.map(({ title }) => title)).toEqual(['Stand N upright: 10 mm × 120 mm']);
});

test('touching, nearly touching, and over floating metal', () => {
  checkSetups(`
    paper 240 mm × 160 mm, 5 kΩ per square
    supply cell 1.5 V
    bar N 10 mm × 120 mm at (60, 80) mm negative
    bar P 10 mm × 120 mm, 0.04 mm right of N positive
        ^ error short-circuit N (negative) and P (positive) come within 0.04 mm
  `);
  checkSetups(`
    paper 240 mm × 160 mm, 5 kΩ per square
    supply cell 1.5 V
    bar N 10 mm × 120 mm at (60, 80) mm negative
    bar P 10 mm × 120 mm, 100 mm right of N positive
        ^ error short-circuit N (negative) and P (positive) touch over F
    bar F 110 mm × 10 mm midway between N and P floating
  `);
});

test('of one potential, or floating, they are one conductor', () => {
  const text = `
    paper 240 mm × 160 mm, 5 kΩ per square
    supply cell 1.5 V
    bar N 10 mm × 120 mm at (60, 80) mm negative
    disc F diameter 20 mm at (75, 80) mm floating
         ^ note metal-touches N and F touch: they count as one conductor.
    bar P 10 mm × 120 mm at (180, 80) mm positive
  `;
  checkSetups(text);
  const setup = setupOf(text.replace(/\n.*note.*/u, ''));
  expect(setup.electrodes.map(({ conductor }) => conductor)).toEqual([0, 0, 1]);
  expect(setup.solvable).toBe(true);
});

test('discs 0.1 mm apart stay two', () => {
  const setup = setupOf(`
    paper 240 mm × 160 mm, 5 kΩ per square
    supply cell 1.5 V
    disc N diameter 20 mm at (100, 80) mm negative
    disc P diameter 20 mm at (120.1, 80) mm positive
  `);
  expect(setup.findings).toEqual([]);
  expect(setup.electrodes.map(({ conductor }) => conductor)).toEqual([0, 1]);
});

test('metal past the edge is cut off: a tab is meant, a bar lying down is not', () => {
  checkSetups(`
    paper 240 mm × 160 mm, 5 kΩ per square
    supply cell 1.5 V
    bar N 10 mm × 120 mm at (125, 80) mm negative
    bar P 140 mm × 10 mm, 100 mm right of N positive
    ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ warning mostly-off-paper Only part of P (x from 230 to 240 mm) lies on the paper. Stand it upright?
    => bar P 10 mm × 140 mm, 100 mm right of N positive
    bar Q 20 mm × 10 mm at (0, 20) mm floating
    bar S 20 mm × 10 mm at (300, 20) mm floating
        ^ error off-paper No part of S lies on the paper.
        => bar S 10 mm × 20 mm at (300, 20) mm floating
  `);
});

test('a bar lying across the edge is asked about, though more than half of it is left', () => {
  checkSetups(`
    paper 240 mm × 160 mm, 5 kΩ per square
    supply cell 1.5 V
    bar N 10 mm × 120 mm at (60, 80) mm negative
    bar P 140 mm × 10 mm, 100 mm right of N positive
    ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ warning mostly-off-paper Only part of P (x from 165 to 240 mm) lies on the paper. Stand it upright?
    => bar P 10 mm × 140 mm, 100 mm right of N positive
  `);
});

test('a piece of paper without metal', () => {
  checkSetups(`
    paper 240 mm × 160 mm, 5 kΩ per square
    ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ note paper-island
    supply cell 1.5 V
    bar N 10 mm × 120 mm at (60, 80) mm negative
    bar P 10 mm × 120 mm at (160, 80) mm positive
    hole 2 mm × 200 mm at (200, 80) mm
  `);
});

test('what is drawn but not solved yet', () => {
  checkSetups(`
    paper 240 mm × 160 mm, 5 kΩ per square
    supply cell 1.5 V
    bar N 10 mm × 120 mm at (70, 80) mm negative
    bar P 10 mm × 120 mm, 100 mm right of N positive
    contact N 5 Ω cm²
    ^^^^^^^^^^^^^^^^^ error solved-later
    painted 20 mm × 20 mm at (120, 80) mm, 500 Ω per square
    ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ error solved-later
    lifted N 10 mm × 70 mm at (70, 115) mm
    ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ error solved-later
    lifted N 10 mm × 70 mm at (50, 115) mm
    ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ warning patch-misses No part of N lies there.
    => lifted N 10 mm × 70 mm at (70, 115) mm
  `);
});

test('200 electrodes are read in one go', () => {
  const lines = Array.from(
    { length: 200 },
    (_, i) =>
      `disc E${i} diameter 4 mm at (${10 + 10 * (i % 20)}, ${10 + 10 * Math.floor(i / 20)}) mm ${i % 2 === 0 ? 'positive' : 'negative'}`,
  );
  const setup = setupOf(`paper 240 mm × 160 mm, 5 kΩ per square\nsupply cell 1.5 V\n${lines.join('\n')}`);
  expect(setup.findings).toEqual([]);
  expect(new Set(setup.electrodes.map(({ conductor }) => conductor)).size).toBe(200);
});

test('a fix stands a bar upright only where that ends the short circuit', () => {
  checkSetups(`
    paper 240 mm × 160 mm, 5 kΩ per square
    supply cell 1.5 V
    bar N 10 mm × 120 mm at (60, 80) mm negative
    bar P 120 mm × 10 mm, 0.04 mm right of N positive
        ^ error short-circuit N (negative) and P (positive) come within 0.04 mm
  `);
  const [nearby] = setupOf(`
    paper 240 mm × 160 mm, 5 kΩ per square
    supply cell 1.5 V
    bar N 10 mm × 120 mm at (60, 80) mm negative
    bar P 120 mm × 10 mm, 0.04 mm right of N positive
  `).findings;
  expect(nearby?.fixes).toEqual([]);
  const [bridged] = setupOf(`
    paper 240 mm × 160 mm, 5 kΩ per square
    supply cell 1.5 V
    bar N 10 mm × 120 mm at (60, 80) mm negative
    bar P 10 mm × 120 mm, 100 mm right of N positive
    bar F 110 mm × 10 mm midway between N and P floating
  `).findings;
  expect(bridged?.fixes.map(({ title }) => title)).toEqual(['Stand F upright: 10 mm × 110 mm']);
});

test('a piece refused for its terminal does not move what is placed by the rest', () => {
  const setup = setupOf(`
    paper 240 mm × 160 mm, 5 kΩ per square
    supply cell 1.5 V
    bar N 10 mm × 120 mm at (60, 80) mm negative
    bar P 10 mm × 120 mm, 100 mm right of N positive
    bar P 10 mm × 20 mm at (100, 80) mm negative
    bar Q 10 mm × 20 mm, 10 mm left of P floating
  `);
  expect(setup.findings.map(({ code }) => code)).toEqual(['terminal-differs']);
  expect(setup.electrodes.find(({ name }) => name === 'Q')?.box.x1).toBe(155);
});
