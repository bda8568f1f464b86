/** Drawings kept in tests/drawings, byte for byte. After a change that is meant: `npx vitest run tests/drawing -u`, then look at them. */
import { expect, test } from 'vitest';
import { drawingParts } from '../../shared/block/tree.ts';
import { outlineScene } from '../../shared/drawing/outline-scene.ts';
import { solvedScene } from '../../shared/drawing/solved-scene.ts';
import { renderSvg } from '../../shared/drawing/svg.ts';
import { setupCalled, setupNames } from './setups.ts';
import { betweenBars, coaxialField } from './traces.ts';

const kept = (name: string): string => `../drawings/${name}.svg`;

test.each(setupNames)('the set-up %s as pupils get it', async (name) => {
  const look = { parts: ['electrodes', 'probes', 'dimensions'], audience: 'pupils', scale: 0.6 } as const;
  const draw = (): string => renderSvg(outlineScene(setupCalled(name), look), { id: name });
  expect(draw()).toBe(draw());
  await expect(draw()).toMatchFileSnapshot(kept(`${name}-setup`));
});

test('the circuit above the board', async () => {
  const look = { parts: ['electrodes', 'circuit', 'ruling'], audience: 'technicians' } as const;
  const scene = outlineScene(setupCalled('bars'), look);
  await expect(renderSvg(scene, { id: 'circuit', widthLimit_mm: 170 })).toMatchFileSnapshot(
    kept('bars-circuit'),
  );
});

test.each([
  ['bars', betweenBars],
  ['coaxial', coaxialField],
] as const)('the field of %s as teachers get it', async (name, field) => {
  const setup = setupCalled(name);
  const parts = drawingParts.filter((part) => part !== 'ruling' && part !== 'circuit');
  const scene = solvedScene(setup, field(setup), { parts, audience: 'teachers' });
  await expect(renderSvg(scene, { id: name })).toMatchFileSnapshot(kept(`${name}-field`));
});
