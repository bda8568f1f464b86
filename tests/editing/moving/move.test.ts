/** Moving a thing edits the line that gives its place, in the words and units that stand there. */
import { describe, expect, it, test } from 'vitest';
import { handlesOf } from '../../../shared/editing/moving/handles.ts';
import { twoSetups } from '../cursor.ts';
import { blockOf, draftOf, moved, said } from './moved.ts';

const bar = 'bar N 10 mm × 120 mm at (60, 80) mm negative';

describe('numbers keep their unit and their decimals', () => {
  test.each([
    ['at (60, 80) mm', 'at (63, 78) mm'],
    ['at (6, 8) cm', 'at (6.3, 7.8) cm'],
    ['at (60 mm, 9.5 cm)', 'at (63 mm, 9.3 cm)'],
    ['at (60.5, 80.00) mm', 'at (63.5, 78.00) mm'],
    ['at (0.06, 0.08) m', 'at (0.063, 0.078) m'],
    ['at ( 60 , 80 )mm', 'at ( 63 , 78 )mm'],
    ['at centre', 'at (123, 78) mm'],
  ])('%s', (before, after) => {
    const line = `disc D diameter 20 mm ${before}, floating`;
    expect(moved({ text: blockOf(bar, line), id: 'electrode D', by: [3, -2] })).toBe(
      `disc D diameter 20 mm ${after}, floating`,
    );
  });

  it('crosses zero with the minus sign that stands there', () => {
    const text = blockOf('bar N 10 mm × 120 mm at (2, 80) mm negative');
    expect(moved({ text, id: 'electrode N', by: [-4, 0] })).toBe(
      'bar N 10 mm × 120 mm at (-2, 80) mm negative',
    );
    const again = blockOf('bar N 10 mm × 120 mm at (−2, 80) mm negative');
    expect(moved({ text: again, id: 'electrode N', by: [-1, 0] })).toBe(
      'bar N 10 mm × 120 mm at (−3, 80) mm negative',
    );
  });

  it('rounds the way to whole mm', () => {
    expect(moved({ text: blockOf(bar), id: 'electrode N', by: [2.6, 0.3] })).toBe(bar.replace('60', '63'));
    expect(said({ text: blockOf(bar), id: 'electrode N', by: [0.4, 0.3] })).toBe('bar N stays');
  });
});

describe('places in relation to others', () => {
  const beside = (place: string): string => blockOf(bar, `bar P 10 mm × 120 mm, ${place} positive`);
  const told = (place: string, by: readonly [number, number]): string =>
    moved({ text: beside(place), id: 'electrode P', by })
      .replace('bar P 10 mm × 120 mm, ', '')
      .replace(' positive', '');

  test.each([
    ['100 mm right of N', [5, 0], '105 mm right of N'],
    ['10 cm right of N', [5, -3], '10.5 cm right of N'],
    ['100 mm right of N', [5, 4], 'at (175, 84) mm'],
    ['20 mm left of N', [-5, 1], '25 mm left of N'],
    ['100 mm right of N, turned 20°', [7, 0], '107 mm right of N, turned 20°'],
  ] as const)('%s', (before, by, after) => {
    expect(told(before, by)).toBe(after);
  });

  it('stays in line, and does not come nearer than the edge', () => {
    expect(told('100 mm right of N', [0, 2])).toBe(
      'bar P keeps in line with N: moved by more than 3 mm it gets a place of its own.',
    );
    expect(told('100 mm right of N', [-101, 0])).toBe(
      'bar P stands right of N: the gap cannot be less than 0 mm.',
    );
  });

  it('says how it reads and what goes along', () => {
    const text = `${twoSetups}`;
    expect(said({ text, id: 'electrode P', by: [5, 0] })).toBe(
      'bar P 100 mm right of N becomes 105 mm right of N; row A goes along',
    );
    expect(said({ text, id: 'electrode N', by: [0, 5] })).toBe(
      'bar N at (60, 80) mm becomes (60, 85) mm; P, H, row A go along',
    );
    expect(said({ text, id: 'row A last end', by: [1, 0] })).toBe(
      'last end of row A at P becomes (166, 80) mm',
    );
  });

  it('midway and centre become coordinates', () => {
    const text = blockOf(
      bar,
      'bar P 10 mm × 120 mm, 100 mm right of N positive',
      'ring R diameter 50 mm, wall 4 mm, midway between N and P floating',
      'disc D diameter 8 mm at centre of R floating',
    );
    expect(moved({ text, id: 'electrode R', by: [1, 1] })).toBe(
      'ring R diameter 50 mm, wall 4 mm, at (116, 81) mm floating',
    );
    expect(moved({ text, id: 'electrode D', by: [0, -1] })).toBe(
      'disc D diameter 8 mm at (115, 79) mm floating',
    );
  });
});

describe('spikes and prongs', () => {
  const on = (...rest: readonly string[]): string => blockOf(bar, ...rest);
  it('slide along the side that they stand on', () => {
    const spike = 'spike S base 20 mm, length 30 mm, on N pointing right';
    expect(moved({ text: on(spike), id: 'electrode S', by: [1, 3] })).toBe(`${spike} at 63 mm`);
    expect(moved({ text: on(`${spike} at 4 cm`), id: 'electrode S', by: [0, -5] })).toBe(
      `${spike} at 3.5 cm`,
    );
    expect(moved({ text: on(spike), id: 'electrode S', by: [10, 3] })).toBe(
      'spike S stands on N and slides along that side only.',
    );
    expect(moved({ text: on(spike), id: 'electrode S', by: [0, 70] })).toBe(
      'There is no metal for S to stand on there.',
    );
  });
  it('move by their tip', () => {
    const prong = 'prong S 6 mm × 30 mm, tip at (100, 80) mm pointing left floating';
    expect(moved({ text: on(prong), id: 'electrode S', by: [0, 7] })).toBe(prong.replace('80', '87'));
    expect(said({ text: on(prong), id: 'electrode S', by: [0, 7] })).toBe(
      'prong S tip at (100, 80) mm becomes tip at (100, 87) mm',
    );
  });
});

describe('what is drawn by its corners, and several pieces', () => {
  it('shifts every corner', () => {
    const text = blockOf('outline F (2, 2) (40 mm, 2 cm) (3, 6) cm floating');
    expect(moved({ text, id: 'electrode F', by: [2, 0] })).toBe(
      'outline F (2.2, 2) (42 mm, 2 cm) (3.2, 6) cm floating',
    );
  });
  it('moves all pieces alike', () => {
    const text = blockOf(
      bar,
      'disc D diameter 10 mm at (120, 40) mm floating',
      'disc D diameter 10 mm, 30 mm right of N',
      'spike D base 4 mm, length 8 mm on D pointing up at 25 mm',
    );
    expect(moved({ text, id: 'electrode D', by: [2, 0] })).toBe(
      'disc D diameter 10 mm at (122, 40) mm floating\ndisc D diameter 10 mm, 32 mm right of N',
    );
    expect(moved({ text, id: 'electrode D', by: [0, 1] })).toBe(
      'disc D diameter 10 mm at (120, 41) mm floating\ndisc D diameter 10 mm, at (100, 81) mm',
    );
  });
});

describe('probes and rows', () => {
  const rows = (...lines: readonly string[]): string =>
    blockOf(
      bar,
      'bar P 10 mm × 120 mm, 100 mm right of N positive',
      'row A from N to P every 10 mm',
      ...lines,
    );

  test.each([
    ['probe M at (100, 80) mm', [1, 1], 'probe M at (101, 81) mm'],
    ['probe M at centre of N', [1, 1], 'probe M at (61, 81) mm'],
    ['probe M at A 50 mm', [2, 3], 'probe M at A 52 mm'],
    ['probe M at 5 cm along A', [2, 0], 'probe M at 5.2 cm along A'],
    ['probe M at A 50 mm', [2, 4], 'probe M at (117, 84) mm'],
    ['probe M at A 5 mm', [-6, 0], 'probe M at (64, 80) mm'],
    [
      'probe M at A 5 mm',
      [0, 2],
      'probe M keeps to row A: moved by more than 3 mm it gets a place of its own.',
    ],
    ['probe M at (5, 5) mm', [-6, 0], 'probe M would stand beside the paper.'],
  ] as const)('%s', (line, by, after) => {
    expect(moved({ text: rows(line), id: 'probe M', by })).toBe(after);
  });

  test('ends of rows', () => {
    const text = rows('row E from centre of N right at 10 mm, 20 mm');
    expect(moved({ text, id: 'row A first end', by: [0, 5] })).toBe(
      'row A from (65, 85) mm to P every 10 mm',
    );
    expect(moved({ text, id: 'row A last end', by: [1, 0] })).toBe(
      'row A from N to (166, 80) mm every 10 mm',
    );
    expect(moved({ text, id: 'row E first end', by: [1, 0] })).toBe(
      'row E from (61, 80) mm right at 10 mm, 20 mm',
    );
    expect(moved({ text, id: 'row E last end', by: [1, 0] })).toBe('There is no row E last end here.');
  });
});

describe('in a setup that is like another', () => {
  const like = (...lines: readonly string[]): string =>
    `${twoSetups}\n\`\`\`electrodes third like bars\n${lines.join('\n')}${lines.length > 0 ? '\n' : ''}\`\`\`\n`;
  const third = (id: string, by: readonly [number, number], ...lines: readonly string[]): string =>
    moved({ text: like(...lines), id, by, block: 2 });

  it('adds a line that moves', () => {
    expect(third('electrode N', [1, 0], 'change  P  floating')).toBe('move    N  at (61, 80) mm');
    expect(third('electrode P', [1, 0])).toBe('move    P  101 mm right of N');
    expect(third('probe H', [1, 0])).toBe('move    H  at A 21 mm');
    expect(third('row A last end', [0, 1])).toBe('move    A  from N to (165, 81) mm');
  });

  it('edits the one that is there', () => {
    expect(third('electrode N', [1, 0], 'move N at (61, 80) mm')).toBe('move N at (62, 80) mm');
    expect(third('row A first end', [0, 1], 'move A from N to P')).toBe('move A from (65, 81) mm to P');
  });

  it('knows drawn and several pieces as a whole', () => {
    const text = `${blockOf(
      bar,
      'outline F (20, 20) (40, 20) (30, 60) mm floating',
      'spike S base 20 mm, length 30 mm, on N pointing right',
    )}\n\`\`\`electrodes other like setup\n\`\`\`\n`;
    expect(moved({ text, id: 'electrode F', by: [1, 0], block: 1 })).toBe('move F at (31, 40) mm');
    expect(moved({ text, id: 'electrode S', by: [0, 1], block: 1 })).toBe('move S on N at 61 mm');
  });
});

test('metal may pass the edge of the paper but not leave it', () => {
  expect(moved({ text: blockOf(bar), id: 'electrode N', by: [-62, 0] })).toBe(bar.replace('60', '-2'));
  expect(moved({ text: blockOf(bar), id: 'electrode N', by: [-70, 0] })).toBe(
    'No part of N lies on the paper.',
  );
});

test('columns, prefixes and line ends are kept', () => {
  const quoted = twoSetups.replace(/^/gmu, '> ').replace(/\n/gu, '\r\n');
  expect(moved({ text: quoted, id: 'electrode P', by: [-1, 0] })).toBe(
    '> bar     P  10 mm × 120 mm, 99 mm right of N             positive\r',
  );
  expect(moved({ text: quoted, id: 'electrode P', by: [1, 0], block: 1 })).toBe(
    '> move    P  101 mm right of N\r',
  );
});

test('handles', () => {
  const told = handlesOf(draftOf(twoSetups), 1).map(
    ({ id, label, point, outlines }) => `${id}: ${label} (${point.x}, ${point.y}) ${outlines.length}`,
  );
  expect(told).toEqual([
    'electrode N: bar N (60, 80) 1',
    'electrode P: bar P (170, 80) 1',
    'row A first end: first end of row A (65, 80) 0',
    'row A last end: last end of row A (165, 80) 0',
    'probe M: probe M (100, 80) 0',
    'probe H: probe H (85, 80) 0',
  ]);
});
