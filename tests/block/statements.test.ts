import { describe, expect, test } from 'vitest';
import { blockOf, read } from './blocks.ts';

const at = (point: unknown) => ({ anchor: { kind: 'at', point } });

describe('paper', () => {
  test('size and sheet resistance', () => {
    expect(read('paper 240 mm × 160 mm, 5 kΩ per square')).toEqual({
      kind: 'paper',
      size: { width: '240 mm', height: '160 mm' },
      resistance: { x: '5000 Ω', y: '5000 Ω' },
    });
  });
  test('a shared unit, and no resistance', () => {
    expect(read('paper 24 x 16 cm')).toEqual({ kind: 'paper', size: { width: '240 mm', height: '160 mm' } });
  });
  test('a grain, in either order', () => {
    const size = { width: '297 mm', height: '210 mm' };
    const grain = { kind: 'paper', format: 'A4 landscape', size, resistance: { x: '5000 Ω', y: '6000 Ω' } };
    expect(read('paper A4 landscape, 5 kΩ per square along x, 6 kΩ per square along y')).toEqual(grain);
    expect(read('paper a4 Landscape 6 kohm/sq along y, 5 kΩ/□ along x')).toEqual(grain);
  });
  test('upright formats', () => {
    expect(read('paper A4 portrait')).toMatchObject({ size: { width: '210 mm', height: '297 mm' } });
    expect(read('paper Letter portrait')).toMatchObject({ size: { width: '215.9 mm', height: '279.4 mm' } });
  });
});

describe('supply', () => {
  test('a cell with all it can say', () => {
    expect(read('supply cell 1.5 V, internal 0.5 Ω, limit 20 mA, zinc-carbon, size AA')).toEqual({
      kind: 'supply',
      source: 'cell',
      cells: 1,
      emf: '1.5 V',
      internal: '0.5 Ω',
      limit: '0.02 A',
      ac: false,
      chemistry: 'zinc-carbon',
      cellSize: 'AA',
    });
  });
  test('cells in series', () => {
    expect(read('supply 2 cells 1.2 V, NiMH')).toMatchObject({
      cells: 2,
      emf: '1.2 V',
      chemistry: 'nickel-metal-hydride',
    });
  });
  test.each([
    ['supply power-pack 6 V, ac', { source: 'power-pack', emf: '6 V', ac: true }],
    ['supply power pack 6V AC', { source: 'power-pack', emf: '6 V', ac: true }],
    ['supply EHT 3 kV, limit 3 mA', { source: 'eht', emf: '3000 V', limit: '0.003 A' }],
    ['supply ht 250 V, internal 1 MΩ', { source: 'ht', emf: '250 V', internal: '1000000 Ω' }],
    ['supply 1.5 V cell', { source: 'cell', cells: 1, emf: '1.5 V' }],
    ['supply cell 2 V, lead acid', { source: 'cell', chemistry: 'lead-acid' }],
    ['supply cell 3.7 V lithium-ion', { chemistry: 'lithium-ion' }],
    ['supply cell 3 V lithium-primary', { chemistry: 'lithium-primary' }],
    ['supply cell 1.5 V zinc-chloride', { chemistry: 'zinc-chloride' }],
    ['supply alkaline cell 1.5 V', { source: 'cell', emf: '1.5 V', chemistry: 'alkaline' }],
  ])('%s', (line, expected) => {
    expect(read(line)).toMatchObject(expected);
  });
});

test('meter', () => {
  expect(read('meter 10 MΩ, resolution 10 mV, range 2 V, probe tip 1 mm, black lead on N')).toEqual({
    kind: 'meter',
    resistance: '10000000 Ω',
    resolution: '0.01 V',
    range: '2 V',
    tip: '1 mm',
    blackLead: 'N',
  });
  expect(read('voltmeter 10 Mohm')).toEqual({ kind: 'meter', resistance: '10000000 Ω' });
});

describe('shapes', () => {
  test('bar, its parts in any order', () => {
    const bar = {
      kind: 'shape',
      shape: 'bar',
      name: 'N',
      size: { width: '10 mm', height: '120 mm' },
      place: at('(60 mm, 80 mm)'),
      terminal: { kind: 'negative' },
    };
    expect(read('bar N 10 mm × 120 mm at (60, 80) mm negative')).toEqual(bar);
    expect(read('bar N negative, at (6, 8) cm, 10 mm wide, 120 mm high')).toEqual(bar);
    expect(read('bar N at (60 mm, 8 cm) 120 mm high, 10 mm wide NEG')).toEqual(bar);
    expect(read('BAR N 10*120mm at (60,80)mm,negative')).toEqual(bar);
    expect(read('bar N 10mmx120mm at ( 60 , 80 ) mm, negative,')).toEqual(bar);
  });
  test('without a terminal it stands: the meaning decides', () => {
    expect(read('bar N 10 mm × 120 mm at centre')).not.toHaveProperty('terminal');
  });
  test('the word after a shape is its name', () => {
    expect(read('bar bar 10 mm × 120 mm at centre of bar floating')).toMatchObject({
      name: 'bar',
      place: at({ kind: 'centre', of: 'bar' }),
    });
    expect(read('bar negative 10 mm × 120 mm at centre positive')).toMatchObject({ name: 'negative' });
  });
  test('places beside others', () => {
    const beside = (side: string) => ({ anchor: { kind: 'beside', side, gap: '100 mm', of: 'N' } });
    expect(read('bar P 1 cm × 12 cm, 100 mm right of N')).toMatchObject({ place: beside('right') });
    expect(read('bar P 1 cm × 12 cm 10 cm to the left of N')).toMatchObject({ place: beside('left') });
    expect(read('bar P 1 cm × 12 cm, 100 mm above N')).toMatchObject({ place: beside('above') });
    expect(read('bar P 1 cm × 12 cm, 100 mm below N')).toMatchObject({ place: beside('below') });
  });
  test('midway, turned', () => {
    expect(read('bar P 1 cm × 12 cm, midway between N and and, turned −30 degrees')).toMatchObject({
      place: { anchor: { kind: 'midway', between: ['N', 'and'] }, turned: '-30 °' },
    });
  });
  test('disc by diameter or radius', () => {
    const disc = { shape: 'disc', name: 'D', diameter: '20 mm', place: at({ kind: 'centre' }) };
    expect(read('disc D diameter 20 mm at centre')).toMatchObject(disc);
    expect(read('disk D radius 1 cm at center')).toMatchObject(disc);
  });
  test('ring by two of its three sizes, with an opening', () => {
    expect(
      read('ring R diameter 50 mm, wall 4 mm, opening 10 mm facing up, at centre floating'),
    ).toMatchObject({
      diameter: '50 mm',
      wall: '4 mm',
      opening: { width: '10 mm', facing: { word: 'up', angle_deg: 90 } },
    });
    const inside = read('ring R inside diameter 42 mm, wall 4 mm at centre held at 0.5 V');
    expect(inside).toMatchObject({
      inside: '42 mm',
      wall: '4 mm',
      terminal: { kind: 'held', potential: '0.5 V' },
    });
    expect(inside).not.toHaveProperty('diameter');
  });
  test('box', () => {
    expect(
      read('box B 60 × 40 mm, wall 4 mm, opening 10 mm facing 45°, at centre joined to P'),
    ).toMatchObject({
      shape: 'box',
      size: { width: '60 mm', height: '40 mm' },
      wall: '4 mm',
      opening: { facing: { angle_deg: 45 } },
      terminal: { kind: 'joined', to: 'P' },
    });
  });
  test('spike by its tip, and on another', () => {
    const sizes = { shape: 'spike', base: '20 mm', length: '40 mm' };
    expect(
      read('spike S base 20 mm, length 40 mm, tip radius 1 mm, tip at (90, 80) mm pointing left positive'),
    ).toMatchObject({
      ...sizes,
      tipRadius: '1 mm',
      tip: { kind: 'tip', point: '(90 mm, 80 mm)' },
      pointing: { angle_deg: 180 },
    });
    expect(read('spike S base 20 mm, length 40 mm on P pointing down at 30 mm')).toMatchObject({
      ...sizes,
      tip: { kind: 'on', of: 'P', along: '30 mm' },
      pointing: { angle_deg: 270 },
    });
  });
  test('prong', () => {
    expect(read('prong S 10 mm × 40 mm, on P pointing right')).toMatchObject({
      shape: 'prong',
      size: { width: '10 mm', height: '40 mm' },
      tip: { kind: 'on', of: 'P' },
      pointing: { angle_deg: 0 },
    });
    expect(read('prong S 10 mm × 40 mm, tip at centre pointing right floating')).toMatchObject({
      tip: { kind: 'tip', point: { kind: 'centre' } },
    });
  });
  test('outline and strip, with commas or without', () => {
    expect(read('outline F (2, 2) (4,2), (30 mm, 6 cm) (0, −1) cm floating')).toMatchObject({
      corners: ['(20 mm, 20 mm)', '(40 mm, 20 mm)', '(30 mm, 60 mm)', '(0 mm, -10 mm)'],
    });
    expect(read('strip G (20, 20) (20, 80) (60, 80) mm, width 5 mm positive')).toMatchObject({
      path: ['(20 mm, 20 mm)', '(20 mm, 80 mm)', '(60 mm, 80 mm)'],
      width: '5 mm',
    });
  });
});

describe('what is done to paper and metal', () => {
  test.each([
    ['clip N 0.2 Ω', { kind: 'clip', name: 'N', resistance: '0.2 Ω' }],
    ['contact N 50 Ω cm²', { kind: 'contact', name: 'N', resistance: '5000 Ω mm²' }],
    ['contact N 50 ohm cm^2', { kind: 'contact', name: 'N', resistance: '5000 Ω mm²' }],
    [
      'lifted N 10 mm × 30 mm at (60, 40) mm turned 10°',
      {
        kind: 'lifted',
        name: 'N',
        size: { width: '10 mm', height: '30 mm' },
        at: '(60 mm, 40 mm)',
        turned: '10 °',
      },
    ],
    [
      'hole 10 mm × 30 mm at centre',
      { kind: 'hole', form: 'box', size: { width: '10 mm', height: '30 mm' }, at: { kind: 'centre' } },
    ],
    [
      'hole disc radius 10 mm at centre of N',
      { kind: 'hole', form: 'disc', diameter: '20 mm', at: { kind: 'centre', of: 'N' } },
    ],
    [
      'hole outline (0, 0) (1, 0) (1, 1) cm',
      { kind: 'hole', form: 'outline', corners: ['(0 mm, 0 mm)', '(10 mm, 0 mm)', '(10 mm, 10 mm)'] },
    ],
    ['slit from (100, 20) mm to centre', { kind: 'slit', start: '(100 mm, 20 mm)', end: { kind: 'centre' } }],
    [
      'painted 20 mm × 20 mm at centre turned 45°, 1 kΩ per square',
      {
        kind: 'painted',
        size: { width: '20 mm', height: '20 mm' },
        at: { kind: 'centre' },
        turned: '45 °',
        resistance: '1000 Ω',
      },
    ],
    ['copper 100 µm', { kind: 'copper', thickness: '0.1 mm' }],
  ])('%s', (line, expected) => {
    expect(read(line)).toEqual(expected);
  });
});

describe('probes and rows', () => {
  test.each([
    ['probe M at (120, 80) mm', '(120 mm, 80 mm)'],
    ['probe M at centre', { kind: 'centre' }],
    ['probe M at centre of R', { kind: 'centre', of: 'R' }],
    ['probe M at A 50 mm', { kind: 'along', row: 'A', distance: '50 mm' }],
    ['probe M at 50 mm along A', { kind: 'along', row: 'A', distance: '50 mm' }],
  ])('%s', (line, where) => {
    expect(read(line)).toEqual({ kind: 'probe', name: 'M', where });
  });
  const fromTo = { start: { kind: 'electrode', name: 'N' }, end: { kind: 'electrode', name: 'P' } };
  test.each([
    ['row A from N to P every 10 mm', { ...fromTo, steps: { kind: 'every', step: '10 mm' } }],
    ['row A from N to P in 10 steps', { ...fromTo, steps: { kind: 'steps', count: 10 } }],
    ['row A from N to P, 11 readings', { ...fromTo, steps: { kind: 'readings', count: 11 } }],
    ['row A from N to P at 5 mm, 1 cm', { ...fromTo, steps: { kind: 'at', distances: ['5 mm', '10 mm'] } }],
    [
      'row A from centre of D right at 10 mm, 15 mm and 20 mm',
      {
        start: { kind: 'centre', of: 'D' },
        end: { kind: 'direction', word: 'right', angle_deg: 0 },
        steps: { kind: 'at', distances: ['10 mm', '15 mm', '20 mm'] },
      },
    ],
    [
      'row A from (0, 80) mm 30° at 5 mm',
      { start: '(0 mm, 80 mm)', end: { kind: 'direction', angle_deg: 30 } },
    ],
    ['row A from centre to (0, 80) mm every 5 mm', { start: { kind: 'centre' }, end: '(0 mm, 80 mm)' }],
  ])('%s', (line, expected) => {
    expect(read(line)).toMatchObject({ kind: 'row', name: 'A', ...expected });
  });
  test('a row called Center has places along it', () => {
    const block = blockOf(`
      row Center from (0, 0) mm to centre every 5 mm
      probe M at Center 10 mm
    `);
    expect(block.findings).toEqual([]);
    expect(block.statements[1]).toMatchObject({ where: { kind: 'along', row: { text: 'Center' } } });
  });
  test('an electrode called Centre is an end of a row; centre is the middle of the paper', () => {
    const block = blockOf(`
      disc Centre diameter 10 mm at centre positive
      row A from Centre to centre every 5 mm
    `);
    expect(block.findings).toEqual([]);
    expect(block.statements[1]).toMatchObject({ start: { kind: 'electrode' }, end: { kind: 'centre' } });
  });
});

describe('what is drawn', () => {
  test.each([
    [
      'equipotentials 0.2 V to 1.4 V every 0.2 V',
      { form: 'range', first: '0.2 V', last: '1.4 V', step: '0.2 V' },
    ],
    ['equipotentials every 250 mV', { form: 'every', step: '0.25 V' }],
    ['equipotentials 0.2 V, 0.5 V, 1 V', { form: 'list', values: ['0.2 V', '0.5 V', '1 V'] }],
    ['equipotentials −0.5 V', { form: 'list', values: ['-0.5 V'] }],
  ])('%s', (line, expected) => {
    expect(read(line)).toEqual({ kind: 'equipotentials', ...expected });
  });
  test.each([
    ['field-lines 12', { kind: 'field-lines', count: 12 }],
    ['Field lines 12', { kind: 'field-lines', count: 12 }],
    ['draw probes, electrodes', { kind: 'draw', parts: ['electrodes', 'probes'] }],
    ['draw field lines and values for students', { parts: ['field-lines', 'values'], audience: 'pupils' }],
    ['draw nothing for technicians', { kind: 'draw', parts: [], audience: 'technicians' }],
    ['draw everything for teachers', { audience: 'teachers', parts: { length: 8 } }],
  ])('%s', (line, expected) => {
    expect(read(line)).toMatchObject(expected);
  });
});

describe('variations', () => {
  test.each([
    ['change R joined to P', { kind: 'change', name: 'R', terminal: { kind: 'joined', to: 'P' } }],
    ['change R to floating', { kind: 'change', name: 'R', terminal: { kind: 'floating' } }],
    ['without R', { kind: 'without', name: 'R' }],
    ['reverse supply', { kind: 'reverse' }],
    ['move R at (12, 8) cm', { to: { kind: 'place', place: at('(120 mm, 80 mm)') } }],
    [
      'move R 20 mm right of N, turned 5°',
      { to: { place: { anchor: { kind: 'beside', side: 'right' }, turned: '5 °' } } },
    ],
    ['move S tip at (90, 80) mm', { to: { kind: 'tip', tip: { kind: 'tip', point: '(90 mm, 80 mm)' } } }],
    [
      'move S on N pointing right at 10 mm',
      { to: { kind: 'tip', tip: { kind: 'on', of: 'N', along: '10 mm' }, pointing: { angle_deg: 0 } } },
    ],
    ['move M at A 50 mm', { to: { kind: 'probe', where: { kind: 'along', row: 'A', distance: '50 mm' } } }],
    [
      'move A from N to R',
      { to: { kind: 'row', start: { kind: 'electrode', name: 'N' }, end: { kind: 'electrode', name: 'R' } } },
    ],
    [
      'move A from N up at 10 mm',
      { to: { kind: 'row', end: { word: 'up' }, steps: { kind: 'at', distances: ['10 mm'] } } },
    ],
  ])('%s', (line, expected) => {
    expect(read(line)).toMatchObject(expected);
  });
});
