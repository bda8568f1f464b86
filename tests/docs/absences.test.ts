/** What the developers' page says is absent from the core is absent. */
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it, test } from 'vitest';

const root = resolve(dirname(fileURLToPath(import.meta.url)), '../..');
const slashed = (file: string): string => relative(root, file).split(sep).join('/');

const files = readdirSync(join(root, 'shared'), { recursive: true, withFileTypes: true })
  .filter((entry) => entry.isFile() && entry.name.endsWith('.ts') && !entry.name.endsWith('.d.ts'))
  .map((entry) => slashed(join(entry.parentPath, entry.name)));

/** Code without comments; strings stay. */
const code = new Map(
  files.map((file) => [
    file,
    readFileSync(join(root, file), 'utf8').replace(/\/\*[\s\S]*?\*\/|(?<![:'"`/])\/\/.*$/gm, ''),
  ]),
);

function found(pattern: RegExp, within: RegExp): readonly string[] {
  return [...code].flatMap(([file, text]) =>
    within.test(file) ? [...text.matchAll(pattern)].map(([match]) => `${file}: ${match}`) : [],
  );
}

it('sees the core', () => {
  expect(files.length).toBeGreaterThan(150);
  expect(found(/\bMath\.sqrt\b/g, /^shared\/field\//).length).toBeGreaterThan(10);
});

test('no clock, no randomness, no console, no process', () => {
  const outside =
    /\b(?:Date|performance|console|process|globalThis|setTimeout|setInterval|fetch|crypto)\b\s*[.(]|\bnew Date\b|\bMath\.random\b/g;
  expect(found(outside, /^shared\//)).toEqual([]);
});

describe('the engine', () => {
  test('takes from Math only what is rounded correctly everywhere', () => {
    const exact = ['abs', 'sqrt', 'min', 'max', 'floor', 'ceil', 'round', 'sign', 'trunc', 'imul', 'clz32'];
    const constants = ['PI', 'E', 'LN2', 'LN10', 'SQRT2', 'SQRT1_2'];
    const others = found(/\bMath\.\w+/g, /^shared\/field\/(?!maths\.ts)/).filter(
      (hit) => ![...exact, ...constants].some((name) => hit.endsWith(`Math.${name}`)),
    );
    expect(others).toEqual([]);
  });

  test('raises to no fractional power', () => {
    const fractional = /\bMath\.pow\b|\*\*\s*-?(?:\d*\.\d+|\([^)]*\/)/g;
    expect(found(fractional, /^shared\/field\//)).toEqual([]);
  });
});

describe('prints for pupils', () => {
  /** Every file that can be reached by imports, of types too. */
  function reachedFrom(start: string): readonly string[] {
    const reached = new Set<string>();
    const visit = (file: string): void => {
      if (reached.has(file)) return;
      reached.add(file);
      for (const [, specifier = ''] of (code.get(file) ?? '').matchAll(
        /(?:^|\n)\s*(?:import|export)\s(?:[^'";]*?\sfrom\s)?['"](\.[^'"]+)['"]/g,
      ))
        visit(slashed(resolve(root, dirname(file), specifier)));
    };
    visit(start);
    return [...reached];
  }

  const solution =
    /^shared\/(?:field\/(?:solve|sample|mesh|field)|setup\/(?:solve-setup|readings|points|bounds)|drawing\/(?:solved-scene|describe-solution)|sheet\/print\/(?:solved|told|staff))/;

  it('would be seen to reach a solution if they did', () => {
    expect(reachedFrom('shared/sheet/print/staff.ts').filter((file) => solution.test(file))).not.toEqual([]);
  });

  test.each([
    'shared/sheet/print/pupils.ts',
    'shared/sheet/print/figure-plan.ts',
    'shared/drawing/outline-scene.ts',
  ])('%s reaches no solution', (start) => {
    const reached = reachedFrom(start);
    expect(reached.length).toBeGreaterThan(20);
    expect(reached.filter((file) => solution.test(file))).toEqual([]);
  });
});

test('text is escaped in one place', () => {
  expect(found(/&(?:amp|lt|gt|quot|#39);/g, /^shared\/(?!text\/escape\.ts)/)).toEqual([]);
});
