/** Rows: where they start and end on electrodes, and the places between. */
import { describe, expect, it } from 'vitest';
import type { Row } from '../../shared/setup/setup.ts';
import { checkSetups, setupOf } from './blocks.ts';

const bench = `
  paper 240 mm × 240 mm, 1 kΩ per square
  supply cell 1.5 V
  disc D diameter 20 mm at (120, 120) mm positive
  ring R diameter 170 mm, wall 5 mm at (120, 120) mm negative
`;

function row(line: string, above = bench): Row {
  const setup = setupOf(`${above}  ${line}`);
  const [found] = setup.rows;
  if (found === undefined) throw new Error(setup.findings.map(({ message }) => message).join('\n') || line);
  return found;
}

const distances = (found: Row): readonly number[] => found.points.map(({ distance_mm }) => distance_mm);

describe('ends of a row', () => {
  it('run from facing edge to facing edge', () => {
    const bars = `
      paper 240 mm × 160 mm, 1 kΩ per square
      supply cell 1.5 V
      bar N 10 mm × 120 mm at (60, 80) mm negative
      bar P 10 mm × 120 mm at (170, 80) mm positive
    `;
    expect(row('row A from N to P every 20 mm', bars)).toMatchObject({
      start: { x: 65, y: 80 },
      end: { x: 165, y: 80 },
      startRadius_mm: 5,
    });
    expect(row('row A from P to (65, 80) mm in 4 steps', bars).points.map(({ at }) => at.x)).toEqual([
      165, 140, 115, 90, 65,
    ]);
  });

  it('leave out what stands on an electrode, under its own name or another', () => {
    const bars = (name: string): string => `
      paper 240 mm × 160 mm, 1 kΩ per square
      supply cell 1.5 V
      bar N 10 mm × 120 mm at (60, 80) mm negative
      bar P 10 mm × 120 mm at (170, 80) mm positive
      spike ${name} base 20 mm, length 30 mm, on P pointing left
    `;
    for (const name of ['P', 'S']) {
      expect(row('row A from N to P every 20 mm', bars(name)).end).toEqual({ x: 165, y: 80 });
    }
    expect(row('row A from N to S every 10 mm', bars('S')).end).toEqual({ x: 135, y: 80 });
  });

  it('meet an outline at its very corner', () => {
    const drawn = `
      paper 240 mm × 160 mm, 1 kΩ per square
      supply cell 1.5 V
      bar N 10 mm × 120 mm at (60, 80) mm negative
      outline P (120, 80) (180, 60) (180, 100) mm positive
    `;
    expect(row('row A from N to P every 5 mm', drawn).end).toEqual({ x: 120, y: 80 });
    const turned = drawn.replace('(120, 80) (180, 60) (180, 100)', '(120, 80) (180, 100) (180, 60)');
    expect(row('row A from N to P every 5 mm', turned).end).toEqual({ x: 120, y: 80 });
  });

  it('a disc beside the centre of a ring looks to the near side of it', () => {
    const eccentric = bench.replace(
      'disc D diameter 20 mm at (120, 120)',
      'disc D diameter 20 mm at (150, 120)',
    );
    expect(row('row A from D to R in 2 steps', eccentric)).toMatchObject({
      start: { x: 160, y: 120 },
      end: { x: 200, y: 120 },
    });
  });

  it('one centre gives no direction', () => {
    checkSetups(`
      paper 240 mm × 240 mm, 1 kΩ per square
      supply cell 1.5 V
      disc D diameter 20 mm at (120, 120) mm positive
      ring R diameter 170 mm, wall 5 mm at (120, 120) mm negative
      row A from D to R every 10 mm
                 ^^^^^^ error line-concentric Both ends have one centre
                 => row A from centre of D right at 10 mm, 20 mm
    `);
  });

  it('a direction counts from the centre, or from the edge of an electrode', () => {
    const centre = row('row E from centre of D right at 15 mm, 20 mm');
    expect(centre).toMatchObject({ start: { x: 120, y: 120 }, end: null, startRadius_mm: 0 });
    expect(centre.points.map(({ at }) => at.x)).toEqual([135, 140]);
    expect(row('row E from D up at 5 mm')).toMatchObject({ start: { x: 120, y: 130 }, startRadius_mm: 10 });
  });

  it('a spike starts a row at its tip', () => {
    const spiked = `
      paper 240 mm × 160 mm, 1 kΩ per square
      supply cell 1.5 V
      spike S base 20 mm, length 80 mm, tip radius 0.5 mm, tip at (100, 80) mm pointing right negative
      bar P 10 mm × 120 mm at (165, 80) mm positive
    `;
    expect(row('row A from S to P every 10 mm', spiked)).toMatchObject({
      start: { x: 100, y: 80 },
      end: { x: 160, y: 80 },
    });
    expect(row('row A from P to S every 10 mm', spiked).end).toEqual({ x: 100, y: 80 });
  });
});

describe('places of a row', () => {
  it('every step, with both ends', () => {
    expect(distances(row('row A from (10, 10) mm to (60, 10) mm every 20 mm'))).toEqual([0, 20, 40, 50]);
    expect(distances(row('row A from (10, 10) mm to (70, 10) mm every 20 mm'))).toEqual([0, 20, 40, 60]);
  });

  it('steps and readings', () => {
    expect(distances(row('row A from (10, 10) mm to (50, 10) mm in 4 steps'))).toEqual([0, 10, 20, 30, 40]);
    expect(distances(row('row A from (10, 10) mm to (50, 10) mm 5 readings'))).toEqual([0, 10, 20, 30, 40]);
  });

  it('a probe along a row', () => {
    const setup = setupOf(
      `${bench}  row A from (10, 10) mm to (10, 60) mm every 10 mm\n  probe M at A 25 mm`,
    );
    expect(setup.probes[0]?.at).toEqual({ x: 10, y: 35 });
  });
});
