/** Slips of the pen that belong to the meaning of a block, as marked documents. */
import { expect, test } from 'vitest';
import { parseBlock } from '../../shared/block/parse.ts';
import { resolveSetups } from '../../shared/setup/resolve.ts';
import { applied } from '../check.ts';
import { checkSetups, setupOf } from './blocks.ts';

test('relative places in a circle cost both lines, named in one sentence', () => {
  checkSetups(`
    paper 240 mm × 160 mm, 5 kΩ per square
    supply cell 1.5 V
    bar N 10 mm × 120 mm at (40, 80) mm negative
    bar Q 10 mm × 120 mm at (220, 80) mm positive
    ring R diameter 50 mm, wall 4 mm, midway between N and P floating
    ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ error places-circular R waits for P, P waits for R.
    bar P 10 mm × 120 mm, 50 mm right of R floating
  `);
});

test('a place that counts from a probe, a row or nothing', () => {
  checkSetups(`
    paper 240 mm × 160 mm, 5 kΩ per square
    supply cell 1.5 V
    bar N 10 mm × 120 mm at (60, 80) mm negative
    bar P 10 mm × 120 mm, 100 mm right of M positive
                                          ^ error name-kind M is a probe. Relative places count from electrodes.
                                          => bar P 10 mm × 120 mm, 100 mm right of N positive
    bar Q 10 mm × 20 mm, 20 mm right of n floating
                                        ^ error name-unknown There is no electrode n.
                                        => bar Q 10 mm × 20 mm, 20 mm right of N floating
    probe M at (100, 80) mm
    bar S 10 mm × 120 mm at (200, 80) mm positive
  `);
});

test('a row that crowds its readings by one', () => {
  checkSetups(`
    paper 240 mm × 160 mm, 5 kΩ per square
    supply cell 1.5 V
    bar N 10 mm × 120 mm at (60, 80) mm negative
    bar P 10 mm × 120 mm, 100 mm right of N positive
    row A from N to P 10 readings
                      ^^ note row-count 10 readings stand 11.1 mm apart. 11 readings stand 10 mm apart.
                      => row A from N to P 11 readings
    row B from N to P in 11 steps
                         ^^ note row-count 11 steps stand 9.09 mm apart. 10 steps stand 10 mm apart.
                         => row B from N to P in 10 steps
    row C from N to P every 30 mm
                            ^^^^^ warning row-uneven 30 mm does not divide 100 mm: the last step is 10 mm.
    row D from N to P in 20 steps
    row E from N to P at 10 mm, 110 mm
                                ^^^^^^ error row-readings The row is 100 mm long.
    row F from N to P every 0.01 mm
                            ^^^^^^^ error row-readings
  `);
});

test('terminals left out, contradicted, circular', () => {
  checkSetups(`
    paper 240 mm × 160 mm, 5 kΩ per square
    supply cell 1.5 V
    bar N 10 mm × 120 mm at (60, 80) mm negative
    bar N 10 mm × 120 mm at (160, 80) mm positive
                                         ^^^^^^^^ error terminal-differs N is negative and positive. Call one of them O?
                                         => bar O 10 mm × 120 mm at (160, 80) mm positive
    disc F diameter 10 mm at (110, 80) mm
         ^ error terminal-missing Where does F lead
         => disc F diameter 10 mm at (110, 80) mm positive
         => disc F diameter 10 mm at (110, 80) mm negative
         => disc F diameter 10 mm at (110, 80) mm floating
    disc G diameter 10 mm at (110, 40) mm joined to H
    disc H diameter 10 mm at (110, 120) mm joined to G
                                                     ^ error terminal-circular G is joined to H, H is joined to G
    disc K diameter 10 mm at (200, 120) mm joined to M
                                                     ^ error name-kind M is a probe. An electrode is joined to another electrode.
                                                     => disc K diameter 10 mm at (200, 120) mm joined to N
    probe M at (20, 20) mm
  `);
});

test('one name for two things', () => {
  checkSetups(`
    paper 240 mm × 160 mm, 5 kΩ per square
    supply cell 1.5 V
    bar N 10 mm × 120 mm at (60, 80) mm negative
    bar P 10 mm × 120 mm, 100 mm right of N positive
    probe M at (100, 80) mm
    probe M at (110, 80) mm
          ^ error name-twice M is already a probe. Call this probe O?
          => probe O at (110, 80) mm
    row P from N to P every 10 mm
        ^ error name-twice P is already an electrode.
        => row Q from N to P every 10 mm
    paper 100 mm × 100 mm
    ^^^^^^^^^^^^^^^^^^^^^ error line-twice
  `);
});

test('pieces of one electrode joined by a lead', () => {
  checkSetups(`
    paper 240 mm × 160 mm, 5 kΩ per square
    supply cell 1.5 V
    bar N 10 mm × 120 mm at (60, 80) mm negative
    bar N 20 mm × 10 mm at (75, 135) mm
    disc N diameter 20 mm at (110, 80) mm
         ^ note pieces-apart This piece of N stands 35 mm from the others: a lead joins them.
    bar P 10 mm × 120 mm at (200, 80) mm positive
  `);
});

test('sizes and outlines that make no metal cost their line alone', () => {
  checkSetups(`
    paper 240 mm × 160 mm, 5 kΩ per square
    supply cell 1.5 V
    bar N 10 mm × 120 mm at (60, 80) mm negative
    bar P 10 mm × 120 mm, 100 mm right of N positive
    bar A 0.0001 mm × 20 mm at (100, 80) mm floating
          ^^^^^^^^^ error size-impossible
    disc B diameter 20 km at (100, 80) mm floating
                    ^^^^^ error size-impossible B would be 20000 m in size.
    ring C diameter 20 mm, wall 10 mm at (100, 80) mm floating
                                ^^^^^ error ring-sizes A wall of 10 mm fills a ring of 20 mm. A disc?
    box D 20 mm × 30 mm, wall 2 mm, opening 17 mm facing up at (100, 80) mm floating
                                            ^^^^^ error opening-too-wide wider than the hollow of 16 mm
    spike E base 10 mm, length 40 mm, tip radius 6 mm, tip at (100, 80) mm pointing left floating
                                                 ^^^^ error tip-radius
    outline F (90, 60) (110, 80) (110, 60) (90, 80) mm floating
    ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ error outline-crosses
    outline G (90, 60) (100, 60) (110, 60) mm floating
    ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ error outline-flat
    prong H 10 mm × 30 mm on N pointing right at 130 mm
                                                 ^^^^^^ error stand-beyond That side is 120 mm long
  `);
});

test('what needs the sheet resistance says so, and the rest is solved for potentials', () => {
  checkSetups(`
    paper 240 mm × 160 mm
    supply cell 1.5 V, internal 0.5 Ω
                                ^^^^^ error sheet-resistance-missing An internal resistance needs the sheet resistance
    meter 10 MΩ
    ^^^^^^^^^^^ error sheet-resistance-missing A meter needs the sheet resistance
    bar N 10 mm × 120 mm at (60, 80) mm negative
    bar P 10 mm × 120 mm, 100 mm right of N positive
    clip N 5 Ω
    ^^^^^^^^^^ error sheet-resistance-missing
  `);
});

test('no supply, no paper, nothing to drive a current', () => {
  checkSetups(`
    \`\`\`electrodes one
                  ^^^ error supply-missing This block has no supply.
    paper 240 mm × 160 mm, 5 kΩ per square
    bar N 10 mm × 120 mm at (60, 80) mm negative
    bar P 10 mm × 120 mm, 100 mm right of N positive
    \`\`\`
    \`\`\`electrodes two
                  ^^^ error paper-missing This block has no paper.
    supply cell 1.5 V
    bar N 10 mm × 120 mm at (60, 80) mm negative
    bar P 10 mm × 120 mm, 100 mm right of N positive
    \`\`\`
    \`\`\`electrodes three
                  ^^^^^ error circuit-open No electrode is positive
    paper 240 mm × 160 mm, 5 kΩ per square
    supply cell 1.5 V
    bar N 10 mm × 120 mm at (60, 80) mm negative
    bar F 10 mm × 120 mm, 100 mm right of N floating
    \`\`\`
  `);
});

test('a broken supply has its own finding: no second one that it is missing', () => {
  checkSetups(`
    paper 240 mm × 160 mm, 5 kΩ per square
    supply cell 1,5 V
    bar N 10 mm × 120 mm at (60, 80) mm negative
    bar P 10 mm × 120 mm, 100 mm right of N positive
  `);
});

test('places that wait for a line that cannot be read', () => {
  checkSetups(`
    paper 240 mm × 160 mm, 5 kΩ per square
    supply cell 1.5 V
    bar N 10 × 120 at (60, 80) mm negative
    bar P 10 mm × 120 mm, 100 mm right of N positive
                                          ^ note waits-for-line This waits for N
  `);
});

test('equipotentials outside the supply, steps that do not fit', () => {
  checkSetups(`
    paper 240 mm × 160 mm, 5 kΩ per square
    supply cell 1.5 V
    bar N 10 mm × 120 mm at (60, 80) mm negative
    bar P 10 mm × 120 mm, 100 mm right of N positive
    equipotentials 0.5 V, 1.8 V
                          ^^^^^ warning equipotential-outside 1.8 V lies outside the supply: potentials run from 0 V to 1.5 V.
  `);
  checkSetups(`
    paper 240 mm × 160 mm, 5 kΩ per square
    supply cell 1.5 V
    bar N 10 mm × 120 mm at (60, 80) mm negative
    bar P 10 mm × 120 mm, 100 mm right of N positive
    equipotentials 0.2 V to 1.3 V every 0.2 V
                                        ^^^^^ warning equipotential-uneven
  `);
});

test('readings where nothing can be read', () => {
  checkSetups(`
    paper 240 mm × 160 mm, 5 kΩ per square
    supply cell 1.5 V
    bar N 10 mm × 120 mm at (60, 80) mm negative
    bar P 10 mm × 120 mm, 100 mm right of N positive
    hole disc diameter 20 mm at (110, 80) mm
    probe A at (300, 10) mm
               ^^^^^^^^^^^^ error reading-off-paper A stands beside the paper.
    probe B at (110, 85) mm
               ^^^^^^^^^^^^ error reading-off-paper B stands in a hole.
    row C from N to P at 25 mm, 75 mm
    row D from N to P every 10 mm
        ^ error reading-off-paper The reading at 40 mm (and 1 more) of row D lies in a hole.
    probe E at D 120 mm
                 ^^^^^^ error row-readings Row D is 100 mm long
  `);
});

test('a line lost to an error is told once: what follows from it is quiet', () => {
  checkSetups(`
    papre 240 mm × 160 mm, 5 kΩ per square
    suply cell 1.5 V
    bar N 10 mm × 120 mm at (60, 80) mm negative
    bar P 10 mm × 120 mm, 100 mm right of N positive
  `);
  checkSetups(`
    paper 240 mm × 160 mm, 5 kΩ per square
    supply cell 1.5 V
    bar N 10 mm × 120 mm, 50 mm left of P negative
    ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ error places-circular N waits for P, P waits for N.
    bar P 10 mm × 120 mm, 100 mm right of N positive
  `);
});

test('names that have come to nothing are listed', () => {
  const { lost } = setupOf(`
    paper 240 mm × 160 mm, 5 kΩ per square
    supply cell 1,5 V
    bar N 10 × 120 at (60, 80) mm negative
    bar P 10 mm × 120 mm, 100 mm right of N positive
    bar Q 10 mm × 120 mm at (200, 80) mm positive
    rwo A from N to P every 10 mm
    probe M at A 20 mm
    probe K at (20, 20) mm
  `);
  expect(lost).toEqual(['N', 'P', 'A', 'M']);
});

test('a slit beside the paper', () => {
  checkSetups(`
    paper 240 mm × 160 mm, 5 kΩ per square
    supply cell 1.5 V
    bar N 10 mm × 120 mm at (60, 80) mm negative
    bar P 10 mm × 120 mm, 100 mm right of N positive
    slit from (300, 20) mm to (330, 20) mm
    ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ warning patch-misses This slit lies beside the paper.
    slit from (−100, 50) mm to (50, 260) mm
    ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ warning patch-misses
    slit from (−20, 40) mm to (120, 90) mm
  `);
});

test('a line that is added takes the prefix of its quotation, and its line end', () => {
  const written =
    '> paper 240 mm × 160 mm, 5 kΩ per square\r\n> bar N 10 mm × 120 mm at (60, 80) mm negative';
  const lines = written.split('\r\n').map((line) => ({
    text: line.slice(2),
    at: written.indexOf(line) + 2,
    prefix: '> ',
  }));
  const head = { text: '', at: written.length };
  const block = parseBlock({ lines, span: { from: 0, to: written.length }, head, lineEnd: '\r\n' });
  const [setup] = resolveSetups([block]);
  const found = setup?.findings.find(({ code }) => code === 'supply-missing');
  expect(applied(written, found?.fixes[0]?.edits ?? [])).toBe(`${written}\r\n> supply cell 1.5 V`);
});

test('a second contact for one electrode', () => {
  checkSetups(`
    paper 240 mm × 160 mm, 5 kΩ per square
    supply cell 1.5 V
    bar N 10 mm × 120 mm at (60, 80) mm negative
    bar P 10 mm × 120 mm, 100 mm right of N positive
    contact N 5 Ω cm²
    ^^^^^^^^^^^^^^^^^ error solved-later
    contact N 8 Ω cm²
    ^^^^^^^^^^^^^^^^^ error line-twice A second contact for N: the first stands.
  `);
});
