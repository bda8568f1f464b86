import { describe, expect, test } from 'vitest';
import { formatBlock } from '../../shared/block/format.ts';
import { parseBlock } from '../../shared/block/parse.ts';
import { applied, dedent } from '../check.ts';
import { excerptOf } from '../excerpts.ts';

const formatted = (text: string): string => applied(text, formatBlock(parseBlock(excerptOf(text))));

function checkFormat(before: string, after: string): void {
  expect(formatted(dedent(before))).toBe(dedent(after));
}

test('a block as the guide shows it stands', () => {
  const block = `
    paper   240 mm × 160 mm, 5 kΩ per square
    supply  cell 1.5 V, internal 0.5 Ω, zinc-carbon
    meter   10 MΩ, resolution 0.01 V, probe tip 1 mm, black lead on N

    bar     N  10 mm × 120 mm at (60, 80) mm                negative
    bar     P  10 mm × 120 mm, 100 mm right of N            positive
    ring    R  diameter 50 mm, wall 4 mm, midway between N and P  floating

    row     A  from N to P every 10 mm
    probe   C  at centre of R
    equipotentials 0.2 V to 1.4 V every 0.2 V
  `;
  checkFormat(block, block);
});

test('spellings and signs are mended', () => {
  checkFormat(
    `
    PAPER 240mm x 160 mm , 5 kohm/sq
    supply EHT 3kV,limit 150 uA
    supply power pack 6 V AC
    supply 2 cells of 1.2 V, NiMH
    Voltmeter 10Mohm, tip 100 μm
    disk D dia 20 mm at center of R, pos
    bar N 10*120 mm at (40,95)mm turned 30 degrees neg
    contact N 50 ohm cm^2
    draw field lines, Probes for students
    row A from N to P 10 steps
    probe M at .5 cm along A
    `,
    `
    paper   240 mm × 160 mm, 5 kΩ per square
    supply  eht 3 kV, limit 150 µA
    supply  power-pack 6 V ac
    supply  2 cells 1.2 V, nickel-metal-hydride
    meter   10 MΩ, probe tip 100 µm
    disc    D  diameter 20 mm at centre of R                positive
    bar     N  10 × 120 mm at (40, 95) mm turned 30°        negative
    contact N  50 Ω cm²
    draw    field-lines, probes for pupils
    row     A  from N to P in 10 steps
    probe   M  at A 0.5 cm
    `,
  );
});

test('names keep their spelling, even where they are words', () => {
  checkFormat(
    `
    bar Bar 10 mm × 120 mm at centre of DISK joined to Positive
    bar center 10 mm × 120 mm, midway between Left and X floating
    `,
    `
    bar     Bar     10 mm × 120 mm at centre of DISK        joined to Positive
    bar     center  10 mm × 120 mm, midway between Left and X  floating
    `,
  );
});

test('names are columns of their paragraph', () => {
  checkFormat(
    `
    bar N 10 mm × 120 mm at centre negative
    # the other one
    bar Left 10 mm × 120 mm at centre positive

    probe M at centre
    `,
    `
    bar     N     10 mm × 120 mm at centre                  negative
    # the other one
    bar     Left  10 mm × 120 mm at centre                  positive

    probe   M  at centre
    `,
  );
});

test('a terminal behind the name stays there', () => {
  checkFormat('bar N negative 10 mm × 120 mm at centre', 'bar     N  negative 10 mm × 120 mm at centre');
});

test('remarks and blank lines are kept', () => {
  checkFormat(
    dedent(`
    # bars,   as in the store\t
    \t
    supply cell 1.5 V    # a   fresh one
       #indented
    `),
    `
    # bars,   as in the store

    supply  cell 1.5 V  # a   fresh one
    #indented
    `,
  );
});

test('lines with errors keep their words and lose trailing space only', () => {
  const line = 'bar   N 10mm x 120 at   (60,80) mm postive  # why';
  expect(formatted(`${line} \t`)).toBe(line);
});

describe('edits', () => {
  test('none for a line that stands', () => {
    expect(formatBlock(parseBlock(excerptOf('supply  cell 1.5 V\n')))).toEqual([]);
  });
  test('inside the lines only: prefixes and line ends are not touched', () => {
    const file = '> ```electrodes\r\n> supply cell 1.5V\r\n> meter 10Mohm\r\n> ```\r\n';
    const line = (text: string) => ({ text, at: file.indexOf(text) });
    const lines = [line('supply cell 1.5V'), line('meter 10Mohm')];
    const block = parseBlock({ lines, span: { from: 2, to: file.length }, head: { text: '', at: 15 } });
    expect(applied(file, formatBlock(block))).toBe(
      '> ```electrodes\r\n> supply  cell 1.5 V\r\n> meter   10 MΩ\r\n> ```\r\n',
    );
  });
});
