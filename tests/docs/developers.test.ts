/** The pages for developers speak of what is there: files, functions, scripts and packages by their names. */
import { existsSync, readFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it, test } from 'vitest';

const root = resolve(dirname(fileURLToPath(import.meta.url)), '../..');
const read = (file: string): string => readFileSync(join(root, file), 'utf8');
const manifest = JSON.parse(read('package.json')) as {
  readonly scripts: Readonly<Record<string, string>>;
  readonly dependencies: Readonly<Record<string, string>>;
  readonly devDependencies: Readonly<Record<string, string>>;
};

const pages = [
  'DEVELOPERS.md',
  'docs/department.md',
  'docs/editor.md',
  'docs/engine.md',
  'docs/language.md',
  'README.md',
  'CHANGELOG.md',
];

describe.each(pages)('%s', (page) => {
  const text = read(page);
  const paths = [
    ...text.matchAll(/`((?:shared|server|client|tests|build|docs|samples|syntaxes)\/[\w./-]*)`/g),
  ].map(([, path = '']) => path);

  test.each([...new Set(paths)])('%s exists', (path) => {
    expect(existsSync(join(root, path))).toBe(true);
  });

  it('links to places that are there', () => {
    const links = [...text.matchAll(/\]\(([^)\s]+)\)/g)].map(([, to = '']) => to);
    const broken = links.filter((to) => !/^https?:/.test(to)).filter((to) => !leadsSomewhere(page, to));
    expect(broken).toEqual([]);
  });

  it('names scripts of package.json', () => {
    const scripts = [...text.matchAll(/\bnpm run ([\w-]+)/g)].map(([, name = '']) => name);
    for (const name of scripts) expect(manifest.scripts).toHaveProperty(name);
  });
});

function leadsSomewhere(page: string, link: string): boolean {
  const [path = '', anchor] = link.split('#');
  const file = path === '' ? page : join(dirname(page), path);
  if (!existsSync(join(root, file))) return false;
  return anchor === undefined || anchorsOf(read(file)).includes(anchor);
}

function anchorsOf(text: string): readonly string[] {
  return [...text.matchAll(/^#+ (.*)$/gm)].map(([, heading = '']) =>
    heading
      .toLowerCase()
      .replace(/[^\p{L}\p{N}\s-]/gu, '')
      .replaceAll(' ', '-'),
  );
}

describe('DEVELOPERS.md', () => {
  const text = read('DEVELOPERS.md');

  /** Rows of the table of the road: what, functions, files. */
  const arrows = [
    ...text.matchAll(/^\| ([^|]*) \| ((?:`\w+`(?:, )?)+) \| ((?:`shared\/[^|]+`(?:, )?)+) \|$/gm),
  ];

  it('shows the whole road', () => {
    expect(arrows.length).toBeGreaterThan(9);
  });

  test.each(arrows.map(([, arrow = '', functions = '', files = '']) => ({ arrow, functions, files })))(
    'the arrow $arrow',
    ({ functions, files }) => {
      const source = [...files.matchAll(/`([^`]+)`/g)].map(([, file = '']) => read(file)).join('\n');
      for (const [, name = ''] of functions.matchAll(/`(\w+)`/g))
        expect(source).toMatch(new RegExp(`export function ${name}\\b`));
    },
  );

  it('gives a reason for every dependency, and for no other', () => {
    const listed = [
      ...(text.split('## Dependencies')[1] ?? '').matchAll(/^\| ((?:`[^`]+`(?:, )?)+) \|/gm),
    ].flatMap(([, names = '']) => [...names.matchAll(/`([^`]+)`/g)].map(([, name = '']) => name));
    const wanted = [...Object.keys(manifest.dependencies), ...Object.keys(manifest.devDependencies)];
    expect([...listed].sort()).toEqual([...wanted].sort());
  });
});
