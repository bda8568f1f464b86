/** What every drawing must hold: labels clear of each other and of metal, one frame with and without field, sound SVG. */
import { describe, expect, test } from 'vitest';
import { drawingParts } from '../../shared/block/tree.ts';
import { boxOf, overlap } from '../../shared/drawing/labels.ts';
import { outlineScene } from '../../shared/drawing/outline-scene.ts';
import { isMetal, type Look, pageOf } from '../../shared/drawing/page.ts';
import type { Label, Scene } from '../../shared/drawing/scene.ts';
import { solvedScene } from '../../shared/drawing/solved-scene.ts';
import { printedScale, renderSvg } from '../../shared/drawing/svg.ts';
import type { SolvedSetup } from '../../shared/setup/readings.ts';
import type { Setup } from '../../shared/setup/setup.ts';
import { solveSetup } from '../../shared/setup/solve-setup.ts';
import { setupsOf } from '../setup/blocks.ts';
import { type SetupName, setupCalled, setupNames } from './setups.ts';
import { elementsOf } from './xml.ts';

const everything = drawingParts.filter((part) => part !== 'ruling');
const looks: readonly Look[] = [
  { parts: ['electrodes', 'probes', 'dimensions'], audience: 'pupils', scale: 1 },
  { parts: everything, audience: 'teachers', scale: 1 },
  { parts: everything, audience: 'teachers', scale: 0.55 },
];

const solutions = new Map<SetupName, SolvedSetup>();
function solutionOf(name: SetupName): SolvedSetup {
  const known = solutions.get(name);
  if (known !== undefined) return known;
  const { solved } = solveSetup(setupCalled(name), { gap: 1e-2, traces: true, samples: [] });
  if (solved === null) throw new Error(`${name} has no solution`);
  solutions.set(name, solved);
  return solved;
}

const labelsOf = (scene: Scene): Label[] =>
  scene.layers.flatMap(({ items }) => items.filter((item) => item.kind === 'label'));
const textOf = ({ runs }: Label): string => runs.map(({ text }) => text).join('');

const nowhere: Label = {
  kind: 'label',
  x: 0,
  y: 0,
  runs: [{ text: 'here', form: 'upright' }],
  size_mm: 4,
  anchor: 'middle',
  halo: false,
};

describe.each(setupNames)('%s', (name) => {
  const setup = setupCalled(name);
  const drawn = new Map<Look, Scene[]>();
  const scenes = (look: Look): Scene[] => {
    const known = drawn.get(look) ?? [outlineScene(setup, look), solvedScene(setup, solutionOf(name), look)];
    drawn.set(look, known);
    return known;
  };

  test('labels do not collide', () => {
    for (const look of looks) {
      for (const scene of scenes(look)) {
        const labels = labelsOf(scene);
        expect(labels.length).toBeGreaterThan(4);
        const hits = labels.flatMap((a, i) =>
          labels
            .slice(i + 1)
            .flatMap((b) => (overlap(boxOf(a), boxOf(b)) ? [`${textOf(a)} over ${textOf(b)}`] : [])),
        );
        expect(hits).toEqual([]);
      }
    }
  });

  test('labels on the paper stand clear of metal', () => {
    for (const look of looks) {
      const page = pageOf(setup, look);
      const onMetal = (label: Label): boolean => {
        const { x0, y0, x1, y1 } = boxOf(label);
        const along = Array.from({ length: 41 }, (_, i) => x0 + (i * (x1 - x0)) / 40);
        return along.some((x) => [y0, (y0 + y1) / 2, y1].some((y) => isMetal(page, { x, y })));
      };
      expect(onMetal({ ...nowhere, ...page.electrodes[0]?.pieces[0]?.polygons[0]?.[0] })).toBe(true);
      for (const scene of scenes(look)) expect(labelsOf(scene).filter(onMetal).map(textOf)).toEqual([]);
    }
  });

  test('nothing lies outside the extent', () => {
    for (const scene of looks.flatMap((look) => scenes(look))) {
      const { left, bottom, width, height } = scene;
      const outside = labelsOf(scene).filter((label) => {
        const { x0, y0, x1, y1 } = boxOf(label);
        return x0 < left || x1 > left + width || y0 < bottom || y1 > bottom + height;
      });
      expect(outside.map(textOf)).toEqual([]);
    }
  });

  test('every electrode, probe and row is named', () => {
    const texts = labelsOf(outlineScene(setup, looks[0] as Look)).map(
      (label) => textOf(label).split(/[ ,]/)[0],
    );
    for (const named of [...setup.electrodes, ...setup.probes, ...setup.rows])
      expect(texts).toContain(named.name);
  });

  test('the solved drawing lies on the blank one to the millimetre', () => {
    for (const look of looks) {
      const [blank, solved] = scenes(look);
      const more = look.parts.includes('equipotentials') ? 3 : 0;
      expect((solved?.layers.length ?? 0) - (blank?.layers.length ?? 0)).toBeGreaterThanOrEqual(more);
      for (const name of ['board', 'ticks', 'clips', 'metal', 'leads', 'lead-clips', 'joins', 'circuit']) {
        const layer = (scene: Scene | undefined) => scene?.layers.find((each) => each.name === name);
        expect(layer(solved)).toEqual(layer(blank));
      }
      const frame = ({ left, bottom, width, height, scale }: Scene) => ({
        left,
        bottom,
        width,
        height,
        scale,
      });
      expect(solved && frame(solved)).toEqual(blank && frame(blank));
    }
  });

  test('SVG is well formed, its numbers are rounded, its ids are its own', () => {
    for (const scene of looks.flatMap((look) => scenes(look))) {
      const svg = renderSvg(scene, { id: 'figure-c' });
      const elements = elementsOf(svg);
      const marks = svg.replace(/>[^<]*</g, '><');
      const unsound = [
        /NaN|Infinity|undefined|null/,
        /\de-\d/,
        /[ ML"]-0[ L"]/,
        /\b(style|class)=/,
        /currentColor/,
      ];
      for (const mark of [...unsound, /\d\.\d{3}/]) expect(mark.exec(marks)?.[0]).toBeUndefined();
      expect(/ d="[^"]*?\.\d?0[ MLAZ"]/.exec(svg)?.[0]).toBeUndefined();
      const ids = elements.flatMap(({ attributes }) => attributes.id ?? []);
      expect(new Set(ids).size).toBe(ids.length);
      for (const id of ids) expect(id.startsWith('figure-c')).toBe(true);
      const labelled = elements[0]?.attributes['aria-labelledby']?.split(' ') ?? [];
      expect(labelled.length).toBe(2);
      for (const id of labelled) expect(ids).toContain(id);
    }
  });
});

test('sizes are in mm, a drawing too wide is scaled as a whole', () => {
  const scene = outlineScene(setupCalled('bars'), looks[0] as Look);
  const full = elementsOf(renderSvg(scene, { id: 'a' }))[0]?.attributes;
  const small = elementsOf(renderSvg(scene, { id: 'a', widthLimit_mm: 133.5 }))[0]?.attributes;
  expect(full?.width).toBe(`${scene.width}mm`);
  expect(small?.width).toBe('133.5mm');
  expect(Number.parseFloat(small?.height ?? '')).toBeCloseTo((scene.height * 133.5) / scene.width, 1);
  expect(small?.viewBox).toBe(full?.viewBox);
});

test('at another scale lengths stay true and letters keep their size', () => {
  const small = outlineScene(setupCalled('bars'), { ...(looks[0] as Look), scale: 0.6 });
  const full = outlineScene(setupCalled('bars'), looks[0] as Look);
  for (const said of ['100\u00a0mm', '10\u00a0mm', '120\u00a0mm']) {
    expect(labelsOf(small).map(textOf)).toContain(said);
    expect(labelsOf(full).map(textOf)).toContain(said);
  }
  const sizes = (scene: Scene): number[] =>
    [...new Set(labelsOf(scene).map(({ size_mm }) => size_mm))].sort();
  expect(sizes(small)).toEqual(sizes(full));
});

test('hostile names are escaped', () => {
  const setup = setupCalled('ring');
  const nasty = '<script>alert("1")</script>';
  const named: Setup = {
    ...setup,
    name: nasty,
    electrodes: setup.electrodes.map((electrode, i) => (i === 0 ? { ...electrode, name: nasty } : electrode)),
    probes: setup.probes.map((probe) => ({ ...probe, name: `"'&\u0007` })),
  };
  const svg = renderSvg(outlineScene(named, looks[0] as Look), { id: '"><x' });
  expect(elementsOf(svg).map(({ name }) => name)).not.toContain('script');
  expect(svg).toContain('&lt;script&gt;');
  expect(svg).not.toContain('\u0007');
});

describe('pupils', () => {
  const text = (setup: Setup): string => renderSvg(outlineScene(setup, looks[0] as Look), { id: 'p' });

  test('never see clips, lifted metal or the name of the set-up', () => {
    const setup = setupCalled('bars');
    const outline = setup.electrodes[0]?.pieces[0]?.geometry.outer ?? { edges: [] };
    const given: Setup = {
      ...setup,
      name: 'lifted-over-half',
      electrodes: setup.electrodes.map((electrode) => ({ ...electrode, clip_ohm: 200 })),
      unsolved: [
        { kind: 'lifted', span: setup.span, outline },
        { kind: 'contact', span: setup.span, outline: null },
      ],
    };
    expect(text(given)).toBe(text(setup));
    const prepared = renderSvg(outlineScene(given, { ...(looks[0] as Look), audience: 'technicians' }), {
      id: 't',
    });
    expect(prepared).toContain('clip 200\u00a0Ω');
    expect(prepared).toContain('lifted metal');
    expect(prepared).not.toContain('lifted-over-half');
  });
});

test('barbs sit on the half-way equipotential', () => {
  const setup = setupCalled('ring');
  const solved = solutionOf('ring');
  const scene = solvedScene(setup, solved, looks[1] as Look);
  const barbs = scene.layers.find(({ name }) => name === 'barbs')?.items ?? [];
  expect(barbs.length).toBe(solved.traces.fieldLines.length);
  expect(barbs.length).toBeGreaterThan(8);
  for (const [i, barb] of barbs.entries()) {
    const tip = barb.kind === 'path' ? barb.parts[1] : undefined;
    const line = solved.traces.fieldLines[i];
    expect(tip).toMatchObject({ x: line?.points[2 * line.half], y: line?.points[2 * line.half + 1] });
  }
});

describe('odd set-ups are drawn all the same', () => {
  const drawn = (text: string): string => {
    const [setup] = setupsOf(text);
    if (setup === undefined) throw new Error('no setup');
    const svg = renderSvg(outlineScene(setup, { parts: drawingParts, audience: 'teachers' }), { id: 'odd' });
    elementsOf(svg);
    return svg;
  };

  test.each([
    ['nothing at all', ''],
    ['no paper', 'bar N 10 mm × 20 mm at (5, 5) mm negative'],
    ['no electrodes', 'paper 100 mm × 80 mm'],
    ['no terminal', 'paper 100 mm × 80 mm\nbar N 10 mm × 20 mm at centre'],
    ['metal off the paper', 'paper 100 mm × 80 mm\ndisc D diameter 10 mm at (300, 300) mm positive'],
    ['metal as large as the paper', 'paper 100 mm × 80 mm\nbar N 400 mm × 400 mm at centre negative'],
    ['paper by the hectare', 'paper 100 m × 80 m\ndisc D diameter 10 m at centre positive'],
    ['hair-thin metal', 'paper 100 mm × 80 mm\nbar N 0.01 mm × 60 mm at centre negative'],
  ])('%s', (_, text) => {
    expect(drawn(text).length).toBeGreaterThan(200);
  });

  test.each([
    'probe M at (999, 40) mm',
    'disc D diameter 10 mm at (50, -700) mm positive',
    'row A from (50, 40) mm to (50, 4000) mm every 10 mm',
  ])('far off the paper, the paper keeps its size: %s', (line) => {
    const sizeWith = (more: string): readonly number[] => {
      const [setup] = setupsOf(`paper 100 mm × 80 mm\nbar N 10 mm × 20 mm at (20, 40) mm negative\n${more}`);
      if (setup === undefined) throw new Error('no setup');
      const { width, height } = outlineScene(setup, { parts: drawingParts, audience: 'teachers' });
      return [width, height];
    };
    const [width = 0, height = 0] = sizeWith('');
    const [wider = 0, higher = 0] = sizeWith(line);
    expect(wider).toBeLessThanOrEqual(width + 120);
    expect(higher).toBeLessThanOrEqual(height + 120);
  });

  test('a hundred electrodes', () => {
    const discs = Array.from(
      { length: 100 },
      (_, i) =>
        `disc D${i} diameter 6 mm at (${10 + (i % 20) * 14}, ${10 + Math.floor(i / 20) * 18}) mm ${i % 2 ? 'positive' : 'negative'}`,
    );
    expect(drawn(['paper 290 mm × 200 mm', 'supply cell 1.5 V', ...discs].join('\n'))).toContain('D99');
  });
});

test('a lead hops over metal that it only crosses, and leaves its outline whole', () => {
  const scene = outlineScene(setupCalled('coaxial'), looks[0] as Look);
  const leads = scene.layers.find(({ name }) => name === 'leads')?.items ?? [];
  const paths = leads.flatMap((item) => (item.kind === 'path' && item.style === 'lead' ? [item] : []));
  const arcs = paths.map(({ parts }) => parts.filter(({ to }) => to === 'arc').length);
  // That of the disc crosses the ring once, that of the ring nothing.
  expect(arcs.sort()).toEqual([0, 1]);
  const page = pageOf(setupCalled('coaxial'), looks[0] as Look);
  const hop = paths.flatMap(({ parts }) =>
    parts.flatMap((part, i) => (part.to === 'arc' ? [[parts[i - 1], part]] : [])),
  );
  for (const end of hop.flat()) if (end && end.to !== 'close') expect(isMetal(page, end)).toBe(false);
  const wiped = leads.flatMap((item) => (item.kind === 'path' && item.style === 'casing' ? item.parts : []));
  expect(wiped.length).toBeGreaterThan(4);
  for (const part of wiped) if (part.to !== 'close') expect(isMetal(page, part)).toBe(true);
});

test('a reading that is crowded in stands further off, with its letter and a leader', () => {
  const ring = setupCalled('ring');
  const near = ring.probes[0];
  if (near === undefined) throw new Error('no probe');
  const beside = { ...near, name: 'D', at: { x: near.at.x, y: near.at.y + 8 } };
  const setup = { ...ring, probes: [near, beside] };
  const { solved } = solveSetup(setup, { gap: 1e-2, traces: true, samples: [] });
  if (solved === null) throw new Error('no solution');
  for (const scale of [0.6, 0.3]) {
    const scene = solvedScene(setup, solved, { parts: everything, audience: 'teachers', scale });
    const texts = labelsOf(scene).map(textOf);
    expect(texts.filter((text) => text.includes('0.75\u00a0V')).length).toBeGreaterThanOrEqual(2);
    expect(texts).toContain('D: 0.75\u00a0V');
    expect(texts).toContain(scale < 0.5 ? 'R' : 'R, not connected');
  }
});

test('values beside the paper have their room there', () => {
  const [setup] = setupsOf(`
    paper 200 mm × 100 mm
    supply cell 1.5 V
    bar N 160 mm × 5 mm at (100, 20) mm negative
    bar P 160 mm × 5 mm at (100, 80) mm positive
    equipotentials 0.25 V to 1.25 V every 0.25 V`);
  if (setup === undefined) throw new Error('no setup');
  const { solved } = solveSetup(setup, { gap: 1e-2, traces: true, samples: [] });
  if (solved === null) throw new Error('no solution');
  const scene = solvedScene(setup, solved, { parts: everything, audience: 'teachers', scale: 0.6 });
  const values = labelsOf(scene).filter((label) => /^\d\.\d\d\u00a0V$/.test(textOf(label)));
  expect(values.length).toBeGreaterThanOrEqual(5);
  for (const label of values) {
    const { x0, x1 } = boxOf(label);
    expect(x1 < 0 || x0 > 120).toBe(true);
  }
});

test('the scale for the note below counts both reductions', () => {
  const scene = outlineScene(setupCalled('bars'), { ...(looks[0] as Look), scale: 0.5 });
  expect(printedScale(scene)).toBe(0.5);
  expect(printedScale(scene, scene.width / 2)).toBeCloseTo(0.25, 12);
});
