/** The program's promises: results on standard output, the rest on standard error, statuses, and files that are whole or untouched. */
import { describe, expect, it } from 'vitest';
import { bars, folder } from './program.ts';

const broken = bars.replace('240 mm × 160 mm', '240 mm × 160');

/** What stands on the paper: no styles, no coordinates of drawings. */
const wordsOf = (html: string): string =>
  html.replace(/<style[\s\S]*?<\/style>/g, '').replace(/<[^>]*>/g, ' ');

describe('papervolt', () => {
  it('tells its version and its help on standard output', () => {
    const here = folder();
    expect(here.run(['--version'])).toMatchObject({
      status: 0,
      stdout: expect.stringMatching(/^\d+\.\d+\.\d+\n$/),
    });
    const help = here.run(['--help']);
    expect(help.status).toBe(0);
    expect(help.stdout).toContain('Examples:');
    expect(here.run(['print', '--help']).stdout).toContain('--out');
  });

  it.each([
    [['chekc', 'x.md']],
    [['check']],
    [['check', 'missing.md']],
    [['print', 'bars.md']],
    [['readings', 'bars.md', '--json', '--csv']],
    [['print', 'bars.md', '--out', 'o', '--for', 'parents']],
  ])('wrong use %j: status 2, one line on standard error, nothing on standard output', (args) => {
    const ran = folder({ 'bars.md': bars }).run(args);
    expect(ran.status).toBe(2);
    expect(ran.stdout).toBe('');
    expect(ran.stderr.trim()).not.toBe('');
    expect(ran.stderr).not.toContain('    at ');
  });
});

describe('check', () => {
  it('is silent on standard output when all is well', () => {
    expect(folder({ 'bars.md': bars }).run(['check', 'bars.md'])).toMatchObject({ status: 0, stdout: '' });
  });

  it('names file, line, column, severity and code', () => {
    const ran = folder({ 'bars.md': broken }).run(['check', 'bars.md']);
    expect(ran.status).toBe(1);
    expect(ran.stdout).toMatch(/^bars\.md:4:\d+: error [a-z-]+ .+/);
  });

  it('--json gives the same for a machine', () => {
    const ran = folder({ 'bars.md': broken }).run(['check', '--json', 'bars.md']);
    const { sheets } = JSON.parse(ran.stdout);
    expect(sheets[0]).toMatchObject({ sheet: 'bars.md', findings: [{ severity: 'error', line: 4 }] });
  });

  it('--strict counts warnings', () => {
    const warned = bars.replace('10 MΩ', '10 mΩ');
    const here = folder({ 'bars.md': warned });
    expect(here.run(['check', 'bars.md']).status).toBe(0);
    expect(here.run(['check', '--strict', 'bars.md']).status).toBe(1);
  });

  it('takes folders and globs, and leaves files without a block alone', () => {
    const here = folder({ 'a/bars.md': bars, 'a/b/more.md': broken, 'a/notes.md': '# Notes\n' });
    const { sheets } = JSON.parse(here.run(['check', '--json', 'a']).stdout);
    expect(sheets.map(({ sheet }: { sheet: string }) => sheet.replaceAll('\\', '/'))).toEqual([
      'a/b/more.md',
      'a/bars.md',
    ]);
    expect(JSON.parse(here.run(['check', '--json', 'a/*.md']).stdout).sheets).toHaveLength(1);
  });

  it('reads standard input under a name', () => {
    const ran = folder().run(['check', '--stdin-name', 'typed.md'], { input: broken });
    expect(ran.stdout).toMatch(/^typed\.md:4:/);
  });

  it('writes no colours where none are wanted', () => {
    const ran = folder({ 'bars.md': broken }).run(['check', 'bars.md'], {
      env: { NO_COLOR: '1', FORCE_COLOR: '1' },
    });
    expect(ran.stdout).not.toContain('\u001b');
  });
});

describe('readings', () => {
  it('gives the stable JSON', () => {
    const ran = folder({ 'bars.md': bars }).run(['readings', 'bars.md', '--json']);
    expect(ran.status).toBe(0);
    const found = JSON.parse(ran.stdout);
    expect(Object.keys(found)).toEqual(['sheet', 'findings', 'setups']);
    const [setup] = found.setups;
    expect(setup.name).toBe('bars');
    // R = Rs L / W, definition of sheet resistance.
    expect(setup.resistance_ohm).toBeCloseTo(2250, 4);
    expect(setup.resistance_bounds_ohm[0]).toBeLessThanOrEqual(2250);
    expect(setup.resistance_bounds_ohm[1]).toBeGreaterThanOrEqual(2250);
    expect(setup.current_A).toBeCloseTo(1.5 / 2250, 9);
    expect(setup.electrodes.map(({ name }: { name: string }) => name)).toEqual(['A', 'B']);
    expect(Object.keys(setup.probes[0])).toEqual(
      expect.arrayContaining([
        'name',
        'x_mm',
        'y_mm',
        'potential_V',
        'reading_V',
        'strength_V_per_m',
        'source_resistance_ohm',
        'uncertainty_V',
      ]),
    );
    expect(setup.probes[0].potential_V).toBeCloseTo(1.125, 5);
    expect(setup.rows[0].points.map(({ distance_mm }: { distance_mm: number }) => distance_mm)).toEqual([
      0, 45, 90, 135, 180,
    ]);
  });

  it('gives CSV with one line a probe and row point', () => {
    const { stdout } = folder({ 'bars.md': bars }).run(['readings', 'bars.md', '--csv']);
    const lines = stdout.trim().split('\n');
    expect(lines[0]).toBe(
      'setup,kind,name,distance_mm,x_mm,y_mm,potential_V,reading_V,strength_x_V_per_m,strength_y_V_per_m,source_resistance_ohm,uncertainty_V',
    );
    expect(lines).toHaveLength(1 + 1 + 5);
    expect(lines.every((line) => line.split(',').length === 12)).toBe(true);
  });

  it('keeps the entry of a setup that cannot be solved, with nulls, and status 1', () => {
    const ran = folder({ 'bars.md': broken }).run(['readings', 'bars.md']);
    expect(ran.status).toBe(1);
    const { setups } = JSON.parse(ran.stdout);
    expect(setups[0]).toMatchObject({ name: 'bars', resistance_ohm: null, current_A: null });
  });

  it('takes exactly one sheet', () => {
    expect(folder({ 'a.md': bars, 'b.md': bars }).run(['readings', 'a.md', 'b.md']).status).toBe(2);
  });
});

describe('print', () => {
  it('writes one file a reader', () => {
    const here = folder({ 'bars.md': bars });
    const ran = here.run(['print', 'bars.md', '--out', 'prints']);
    expect(ran.status).toBe(0);
    expect(here.list('prints')).toEqual(['bars-pupils.html', 'bars-teachers.html', 'bars-technicians.html']);
    expect(wordsOf(here.read('prints/bars-pupils.html'))).not.toContain('1.12');
    expect(wordsOf(here.read('prints/bars-teachers.html'))).toContain('1.12');
  });

  it('--for prints one alone', () => {
    const here = folder({ 'bars.md': bars });
    here.run(['print', 'bars.md', '--out', 'prints', '--for', 'pupils']);
    expect(here.list('prints')).toEqual(['bars-pupils.html']);
  });

  it('with errors prints for teachers only, findings on top, status 1', () => {
    const here = folder({ 'bars.md': broken });
    expect(here.run(['print', 'bars.md', '--out', 'prints']).status).toBe(1);
    expect(here.list('prints')).toEqual(['bars-teachers.html']);
  });

  it('refuses two inputs with one output name and writes nothing', () => {
    const here = folder({ 'a/bars.md': bars, 'b/bars.md': bars });
    const ran = here.run(['print', 'a/bars.md', 'b/bars.md', '--out', 'prints']);
    expect(ran.status).toBe(2);
    expect(here.list()).toEqual(['a', 'b']);
  });

  it('is the same to the byte on a second run', () => {
    const here = folder({ 'bars.md': bars });
    here.run(['print', 'bars.md', '--out', 'one']);
    here.run(['print', 'bars.md', '--out', 'two']);
    for (const name of here.list('one')) expect(here.read(`two/${name}`)).toBe(here.read(`one/${name}`));
  });
});

describe('format', () => {
  const untidy =
    '\uFEFF# Bars\r\n\r\n> ```electrodes\r\n> paper 240x160 mm,   5 kohm per square # stays\r\n> supply cell 1.5 V\r\n> ```\r\n\r\nA  line  of ours.\r\n';

  it('touches only lines inside our blocks, and keeps line ends, byte order mark, prefixes and remarks', () => {
    const here = folder({ 'bars.md': untidy });
    expect(here.run(['format', '--check', 'bars.md'])).toMatchObject({ status: 1, stdout: 'bars.md\n' });
    expect(here.read('bars.md')).toBe(untidy);
    expect(here.run(['format', 'bars.md']).status).toBe(0);
    const tidy = here.read('bars.md');
    expect(tidy.startsWith('\uFEFF# Bars\r\n\r\n> ```electrodes\r\n> paper ')).toBe(true);
    expect(tidy.endsWith('> ```\r\n\r\nA  line  of ours.\r\n')).toBe(true);
    expect(tidy).toContain('240 × 160 mm, 5 kΩ per square');
    expect(tidy).toContain('# stays\r\n');
    expect(here.run(['format', '--check', 'bars.md']).status).toBe(0);
    here.run(['format', 'bars.md']);
    expect(here.read('bars.md')).toBe(tidy);
  });

  it('writes standard input to standard output', () => {
    const ran = folder().run(['format', '--stdin-name', 'typed.md'], { input: untidy });
    expect(ran.stdout).toContain('5 kΩ per square');
  });
});
