/** The panel's picture: the way from the paper to its units is held against what is drawn; paths of handles against lengths that can be written down. */
import { describe, expect, test } from 'vitest';
import { draftSheet, editing, outcomeOf, type Setup } from '../../../shared/index.ts';

const sheet = (lines: string): string => `\`\`\`electrodes one\n${lines}\n\`\`\`\n`;

function setupOf(lines: string): Setup {
  const [setup] = draftSheet({ name: 'sheet.md', text: sheet(lines) }).setups;
  if (setup === undefined) throw new Error('no block');
  return setup;
}

function solvedPicture(lines: string): editing.PanelPicture {
  const draft = draftSheet({ name: 'sheet.md', text: sheet(lines) });
  const [setup] = draft.setups;
  if (setup === undefined) throw new Error('no block');
  const picture = editing.panelPicture(
    setup,
    outcomeOf(setup, { gap: 1e-3, traces: true, samples: [] }).solved,
  );
  if (picture === null) throw new Error('no picture');
  return picture;
}

/** Centres of the dots of a layer, units of the view box. */
function dots(svg: string, layer: string): (readonly [number, number])[] {
  const [, inside = ''] = svg.split(`<g id="panel-${layer}">`);
  const [part = ''] = inside.split('<g id="panel-');
  return [...part.matchAll(/<circle cx="([^"]+)" cy="([^"]+)"/gu)].map(([, x, y]) => [Number(x), Number(y)]);
}

const bars = (width: number, height: number): string => `paper ${width} mm × ${height} mm
supply cell 1.5 V
bar N 10 mm × 40 mm at (20, 30) mm negative
bar P 10 mm × 40 mm at (70, 30) mm positive`;

describe('the frame leads from the paper to the dots that are drawn there', () => {
  test.each([
    ['a small paper', 100, 60, 33, 41],
    ['a usual one', 240, 160, 120, 95],
    ['A4', 297, 210, 290, 3],
    ['a long one', 900, 60, 871, 12.5],
  ])('%s', (_, width, height, x, y) => {
    const probe = `${bars(width, height)}\nprobe C at (${x}, ${y}) mm`;
    for (const picture of [editing.panelPicture(setupOf(probe), null), solvedPicture(probe)]) {
      const { frame, svg = '' } = picture ?? {};
      const [dot] = dots(svg, 'probes');
      // Written to a hundredth of a unit.
      expect(dot?.[0]).toBeCloseTo((frame?.left ?? NaN) + (frame?.scale ?? NaN) * x, 1.7);
      expect(dot?.[1]).toBeCloseTo((frame?.top ?? NaN) - (frame?.scale ?? NaN) * y, 1.7);
    }
  });

  test('also where a name stands out over the board', () => {
    const { frame, svg } = solvedPicture(`${bars(100, 60)}\nprobe C at (50, 30) mm`);
    const viewBox = /viewBox="([^"]+)"/u.exec(svg)?.[1]?.split(' ').map(Number) ?? [];
    const [dot] = dots(svg, 'probes');
    expect(dot?.[0]).toBe(50);
    expect(dot?.[1]).toBeCloseTo(frame.top - 30, 9);
    expect(viewBox[0]).toBeLessThan(0);
    expect(viewBox[1]).toBe(0);
  });
});

test('letters keep their size and large papers are drawn smaller', () => {
  expect(editing.panelPicture(setupOf(bars(100, 60)), null)?.frame.scale).toBe(1);
  const { frame, paper } = solvedPicture(bars(260, 160));
  expect(frame.scale).toBeCloseTo(0.5, 12);
  expect(paper).toEqual({ width_mm: 260, height_mm: 160 });
});

test('colours are those of the page round it, and nothing is styled by style attributes', () => {
  const { svg } = solvedPicture(bars(100, 60));
  expect(svg).toContain('stroke="var(--papervolt-ink, #1C1C1C)"');
  expect(svg).toContain('stroke="var(--papervolt-field, #005A8C)"');
  expect(svg).not.toMatch(/style=|<style/u);
});

test('without paper there is nothing to draw', () => {
  expect(editing.panelPicture(setupOf('supply cell 1.5 V'), null)).toBeNull();
});

describe('what is grasped is the outline in mm', () => {
  const pathOf = (lines: string): string | null => {
    const draft = draftSheet({ name: 'sheet.md', text: sheet(lines) });
    const [handle] = editing.handlesOf(draft, 0);
    return handle === undefined ? null : editing.handlePath(handle.outlines);
  };
  test('of a bar its four sides', () => {
    expect(pathOf('paper 100 mm × 60 mm\nbar N 10 mm × 40 mm at (20, 30) mm negative')).toBe(
      'M15 10L25 10L25 50L15 50L15 10Z',
    );
  });
  test('of a ring two circles, each in two halves', () => {
    expect(pathOf('paper 100 mm × 60 mm\nring R diameter 40 mm, wall 5 mm, at (50, 30) mm floating')).toMatch(
      /^M70 30A20 20 0 0 1 30 30A20 20 0 0 1 70 30ZM(65|35) 30A15 15 .*Z$/u,
    );
  });
  test('of a point nothing', () => {
    expect(editing.handlePath([])).toBeNull();
  });
});
