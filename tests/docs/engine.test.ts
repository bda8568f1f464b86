/** The numbers on the engine's page are those in its code. */
import { readFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { LAYER_COUNT, LAYER_DEPTH } from '../../shared/field/solve/fan.ts';

const root = resolve(dirname(fileURLToPath(import.meta.url)), '../..');
const page = readFileSync(join(root, 'docs/engine.md'), 'utf8').replace(/\s+/g, ' ');

test('layers of a fan', () => {
  expect(page).toContain(`make ${LAYER_COUNT} layers, down to e⁻⁶⁴`);
  expect(LAYER_COUNT * LAYER_DEPTH).toBe(64);
});

/** What the page says, and the line of code that makes it true. */
const facts: readonly (readonly [string, string, string])[] = [
  ['no angle is below 24°', 'field/mesh/refine.ts', 'SMALLEST_ANGLE = (24 * Math.PI) / 180'],
  ['a quarter of the paper’s longer side', 'field/mesh/mesh-domain.ts', 'Math.max(x1 - x0, y1 - y0) / 4'],
  ['begins with order 4', 'field/solve/solve-domain.ts', 'FIRST_ORDER = 4;'],
  ['up to 10', 'field/solve/solve-domain.ts', 'HIGHEST_ORDER = 10;'],
  ['order 3 or 2', 'field/solve/solve-domain.ts', 'LOWEST_ORDER = 2;'],
  ['halves the mesh, up to twice', 'field/solve/solve-domain.ts', 'ROUNDS = 3;'],
  ['1e-11, relative, for rounding', 'field/solve/solve-order.ts', 'ROUNDING = 1e-11;'],
  ['1e-9 more where a fan', 'field/mesh/fan-radius.ts', 'CHORD_ALLOWANCE = 1e-9;'],
  ['a relative gap of 1e-8', 'checks/examine.ts', 'gap: 1e-8'],
  ['0.05 √gap', 'setup/points.ts', 'errorPerRootGap = 0.05;'],
  ['down to 0.005 mm', 'field/sample/contours.ts', 'DRAWN_TIP_MM = 0.005;'],
  ['within 200,000 unknowns', 'setup/solve-setup.ts', 'mostUnknowns = 200_000;'],
];

test.each(facts)('%s', (said, file, line) => {
  expect(page.replaceAll("'", '’')).toContain(said);
  expect(readFileSync(join(root, 'shared', file), 'utf8')).toContain(line);
});
