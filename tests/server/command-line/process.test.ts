/** The bundles of `dist/` as real processes: streams, statuses, `npm start`, and the set-up before it. */
import { copyFileSync, mkdirSync, rmSync, utimesSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { bars, type Folder, folder, projectFile, root, runProcess } from './program.ts';

const broken = bars.replace('240 mm × 160 mm', '240 mm × 160');

describe('dist/papervolt.mjs', () => {
  it('ends with the status of its command, its results on standard output', () => {
    const here = folder({ 'bars.md': broken });
    const ran = runProcess(here.path, ['dist/papervolt.mjs', 'check', 'bars.md']);
    expect(ran.status).toBe(1);
    expect(ran.stdout).toMatch(/^bars\.md:8:\d+: error [a-z-]+ .+/);
    expect(ran.stderr).toContain('1 sheet read');
    expect(runProcess(here.path, ['dist/papervolt.mjs', '--version']).stdout).toBe(
      `${JSON.parse(projectFile('package.json')).version}\n`,
    );
    expect(runProcess(here.path, ['dist/papervolt.mjs', 'check', 'missing.md'])).toMatchObject({
      status: 2,
      stdout: '',
      stderr: expect.stringMatching(/^papervolt: missing\.md: .+\n$/),
    });
  });

  it('is started by its name too, once npm has linked it', () => {
    expect(projectFile('dist/papervolt.mjs').startsWith('#!/usr/bin/env node\n')).toBe(true);
    expect(JSON.parse(projectFile('package.json')).bin).toEqual({ papervolt: 'dist/papervolt.mjs' });
  });

  it('reads standard input and writes no colours where none are wanted', () => {
    const options = { input: broken, env: { NO_COLOR: '1', FORCE_COLOR: '1' } };
    const { stdout } = runProcess(
      folder().path,
      ['dist/papervolt.mjs', 'check', '--stdin-name', 'typed.md'],
      options,
    );
    expect(stdout).toMatch(/^typed\.md:8:/);
    expect(stdout).not.toContain('\u001b');
  });

  it('replaces no print by half of one: a name that cannot be written keeps what stands there', () => {
    const here = folder({ 'bars.md': bars, 'prints/bars-pupils.html/keep.txt': 'kept' });
    const ran = runProcess(here.path, ['dist/papervolt.mjs', 'print', 'bars.md', '--out', 'prints']);
    expect(ran).toMatchObject({
      status: 2,
      stdout: '',
      stderr: expect.stringContaining('cannot be written'),
    });
    expect(here.list('prints')).toEqual(['bars-pupils.html']);
    expect(here.read('prints/bars-pupils.html/keep.txt')).toBe('kept');
  });
});

describe('npm start', () => {
  /** A project folder with the program and one sample. */
  function project(): Folder {
    const here = folder({ 'samples/bars.md': bars });
    mkdirSync(join(here.path, 'dist'));
    copyFileSync(join(root, 'dist/start.mjs'), join(here.path, 'dist/start.mjs'));
    return here;
  }
  const start = (here: Folder, args: readonly string[], typedIn: string) =>
    runProcess(here.path, [join(here.path, 'dist/start.mjs'), ...args], { env: { INIT_CWD: typedIn } });

  it('prints the samples into out/ and tells resistance and current in a table', () => {
    const here = project();
    const ran = start(here, [], here.path);
    expect(ran.status).toBe(0);
    expect(here.list('out')).toEqual(['bars-pupils.html', 'bars-teachers.html', 'bars-technicians.html']);
    // R = Rs L / W = 2250 Ω, I = 1.5 V / R, definition of sheet resistance; both with the digits that the bounds allow.
    expect(ran.stdout).toMatch(
      /^sheet +setup +resistance +current +time\nbars +bars +2\.250*\skΩ +666\.\d+\sµA +\d+ ms\n$/,
    );
    expect(ran.stderr).toContain('Prints: out');
  });

  it('takes sheets by paths that count from where it was typed', () => {
    const here = project();
    const there = folder({ 'Räume 2/mine.md': broken });
    const ran = start(here, ['Räume 2/mine.md'], there.path);
    expect(ran.status).toBe(1);
    expect(ran.stdout).toMatch(/\nmine +bars +– +– +\d+ ms\n$/);
    expect(ran.stderr).toContain(`${join('Räume 2', 'mine.md')}:8:`);
    expect(ran.stderr).toContain('not printed for pupils and technicians');
    expect(here.list('out')).toEqual(['mine-teachers.html']);
  });

  it('tells in one line what it cannot find', () => {
    const here = project();
    expect(start(here, ['missing.md'], here.path)).toMatchObject({
      status: 2,
      stdout: '',
      stderr: expect.stringMatching(/^missing\.md: .+\n$/),
    });
    expect(start(here, ['out'], folder({ 'out/notes.md': '# Notes\n' }).path)).toMatchObject({
      status: 2,
      stderr: expect.stringContaining('No sheet was found'),
    });
  });
});

describe('build/prepare.mjs', () => {
  /** A project whose npm and bundler only say that they ran. */
  function project(): Folder {
    return folder({
      'build/prepare.mjs': projectFile('build/prepare.mjs'),
      'build/bundle.mjs': "console.log('bundled');",
      'npm.mjs': "console.log('npm', process.argv.slice(2, 4).join(' '));",
      'package.json': '{}',
      'package-lock.json': '{}',
      'shared/block/a.ts': 'a',
    });
  }
  /** What ran, in order. */
  function prepare(here: Folder): string[] {
    const script = join(here.path, 'build/prepare.mjs');
    const { status, stdout, stderr } = runProcess(here.path, [script], {
      env: { npm_execpath: join(here.path, 'npm.mjs') },
    });
    expect(stdout).toBe('');
    expect(status).toBe(stderr.includes('failed') ? 2 : 0);
    return stderr.split('\n').filter((line) => /^(npm|bundled|.*failed)/.test(line));
  }

  it('installs and builds once, and again when lock file, source or result changed', () => {
    const here = project();
    expect(prepare(here)).toEqual(['npm ci --include=dev', 'bundled']);
    expect(prepare(here)).toEqual([]);
    utimesSync(join(here.path, 'shared/block/a.ts'), 1, 1);
    expect(prepare(here)).toEqual([]);
    here.write('shared/block/a.ts', 'b');
    expect(prepare(here)).toEqual(['bundled']);
    here.write('shared/block/new.ts', 'b');
    expect(prepare(here)).toEqual(['bundled']);
    rmSync(join(here.path, 'dist'), { recursive: true });
    expect(prepare(here)).toEqual(['bundled']);
    here.write('package-lock.json', '{ }');
    expect(prepare(here)).toEqual(['npm ci --include=dev', 'bundled']);
    rmSync(join(here.path, 'node_modules'), { recursive: true });
    expect(prepare(here)).toEqual(['npm ci --include=dev']);
    expect(prepare(here)).toEqual([]);
  });

  it('a build that failed is built again', () => {
    const here = project();
    here.write('build/bundle.mjs', 'process.exit(1);');
    expect(prepare(here)).toEqual(['npm ci --include=dev', 'The build failed (see above).']);
    expect(prepare(here)).toEqual(['The build failed (see above).']);
  });
});
