/** The program's promises: results on standard output, the rest on standard error, statuses, and files that are whole or untouched. */
import { join } from 'node:path';
import { createColors } from 'picocolors';
import { describe, expect, it } from 'vitest';
import { heldBack } from '../../../server/command-line/print.ts';
import { findingLines, ofSheet, statusOf } from '../../../server/command-line/report.ts';
import {
  audiences,
  type Examination,
  examineSheet,
  type Finding,
  printSheets,
  type Severity,
} from '../../../shared/index.ts';
import { bars, folder } from './program.ts';

const broken = bars.replace('240 mm × 160 mm', '240 mm × 160');

const findingKeys = ['code', 'severity', 'message', 'hints', 'line', 'column', 'endLine', 'endColumn'];
const pointKeys = [
  'x_mm',
  'y_mm',
  'potential_V',
  'reading_V',
  'strength_V_per_m',
  'source_resistance_ohm',
  'uncertainty_V',
];

type Keyed = Readonly<Record<string, unknown>>;

/** Every entry has every key, whether it applies or not. */
function expectReadingsKeys(setup: {
  readonly electrodes: readonly Keyed[];
  readonly probes: readonly Keyed[];
  readonly rows: readonly { readonly points: readonly Keyed[] }[];
}): void {
  const keysOf = (value: Keyed): string[] => Object.keys(value).sort();
  const resistance = ['resistance_ohm', 'resistance_bounds_ohm'];
  const current = ['current_A', 'current_bounds_A'];
  const lists = ['electrodes', 'probes', 'rows'];
  expect(keysOf({ ...setup })).toEqual(['name', ...resistance, ...current, ...lists].sort());
  for (const electrode of setup.electrodes)
    expect(keysOf(electrode)).toEqual(['name', 'potential_V', 'reading_V', ...current].sort());
  for (const probe of setup.probes) expect(keysOf(probe)).toEqual(['name', ...pointKeys].sort());
  for (const { points } of setup.rows)
    for (const point of points) expect(keysOf(point)).toEqual(['distance_mm', ...pointKeys].sort());
}

function numbersIn(value: unknown): number[] {
  if (typeof value === 'number') return [value];
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(numbersIn) : [];
}

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
  });

  it.each(['check', 'readings', 'print', 'format'])('%s --help shows an example', (command) => {
    const { status, stdout } = folder().run([command, '--help']);
    expect(status).toBe(0);
    expect(stdout).toContain(`Example:\n  papervolt ${command} `);
    expect(stdout).toContain('--stdin-name');
  });

  it.each([
    [['chekc', 'x.md']],
    [['check']],
    [['check', 'missing.md']],
    [['print', 'bars.md']],
    [['readings', 'bars.md', '--json', '--csv']],
    [['print', 'bars.md', '--out', 'o', '--for', 'parents']],
    [['print', 'bars.md', '--out', '']],
    [['print', 'bars.md', '--out', 'bars.md']],
    [['print', 'bars.md', '--out', 'bars.md/below']],
    [['check', 'bars.md', '--stdin-name', 'typed.md']],
    [['check', '--stdin-name', '']],
    [['check', 'bars.md', '--loud']],
  ])('wrong use %j: status 2, one line on standard error, nothing on standard output', (args) => {
    const ran = folder({ 'bars.md': bars }).run(args);
    expect(ran.status).toBe(2);
    expect(ran.stdout).toBe('');
    expect(ran.stderr.trim()).not.toBe('');
    expect(ran.stderr).not.toContain('    at ');
  });
});

describe('where there is nothing to read', () => {
  it.each([['check'], ['readings'], ['print', '--out', 'prints']])('%s says so', (...command) => {
    const ran = folder({ 'notes.md': '# Notes\n' }).run([...command, 'notes.md']);
    expect(ran.status).toBe(0);
    expect(ran.stderr).toContain('notes.md: no `electrodes` block stands in it.');
  });

  it('an empty folder is fine, and told', () => {
    const ran = folder({ 'empty/x.txt': '' }).run(['check', 'empty', '--json']);
    expect(ran).toMatchObject({ status: 0, stdout: '{\n  "sheets": [],\n  "departments": []\n}\n' });
    expect(ran.stderr).toContain('No sheet was found');
  });
});

describe('check', () => {
  it('is silent on standard output when all is well', () => {
    expect(folder({ 'bars.md': bars }).run(['check', 'bars.md'])).toMatchObject({ status: 0, stdout: '' });
  });

  it('names file, line, column, severity and code', () => {
    const ran = folder({ 'bars.md': broken }).run(['check', 'bars.md']);
    expect(ran.status).toBe(1);
    expect(ran.stdout).toMatch(/^bars\.md:8:\d+: error [a-z-]+ .+/);
  });

  it('--json gives the same for a machine', () => {
    const ran = folder({ 'bars.md': broken }).run(['check', '--json', 'bars.md']);
    const { sheets } = JSON.parse(ran.stdout);
    expect(sheets[0]).toMatchObject({ sheet: 'bars.md', findings: [{ severity: 'error', line: 8 }] });
    expect(Object.keys(sheets[0].findings[0])).toEqual(findingKeys);
    // Columns count from 1, in UTF-16 units of the file: a character beyond the first plane is two.
    const shifted = folder({ 'bars.md': broken.replace('paper   ', 'paper 𝔼 ') }).run([
      'check',
      '--json',
      'bars.md',
    ]);
    const [unread] = JSON.parse(shifted.stdout).sheets[0].findings;
    expect(unread).toMatchObject({ line: 8, column: 7, endLine: 8, endColumn: 9 });
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
    const ran = folder().run(['check', '--stdin-name', 'typed.md'], broken);
    expect(ran.stdout).toMatch(/^typed\.md:8:/);
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
    expectReadingsKeys(setup);
    expect(numbersIn(found).every((value) => Number(value.toPrecision(12)) === value)).toBe(true);
    // R = Rs L / W, definition of sheet resistance.
    expect(setup.resistance_ohm).toBeCloseTo(2250, 4);
    expect(setup.resistance_bounds_ohm[0]).toBeLessThanOrEqual(2250);
    expect(setup.resistance_bounds_ohm[1]).toBeGreaterThanOrEqual(2250);
    expect(setup.current_A).toBeCloseTo(1.5 / 2250, 9);
    expect(setup.electrodes.map(({ name }: { name: string }) => name)).toEqual(['A', 'B']);
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
    expect(lines[1]).toMatch(/^bars,probe,M,,75,33,1\.125,/);
    expect(lines[3]).toMatch(/^bars,row,L,45,75,80,1\.125,/);
  });

  it('keeps the entry of a setup that cannot be solved, with nulls and never a missing key, and status 1', () => {
    const here = folder({ 'bars.md': broken });
    const ran = here.run(['readings', 'bars.md']);
    expect(ran.status).toBe(1);
    const { findings, setups } = JSON.parse(ran.stdout);
    expect(findings[0]).toMatchObject({ severity: 'error', line: 8 });
    expect(setups[0]).toMatchObject({ name: 'bars', resistance_ohm: null, current_A: null });
    expectReadingsKeys(setups[0]);
    const table = here.run(['readings', 'bars.md', '--csv']);
    expect(table.status).toBe(1);
    expect(table.stdout).toContain('bars,probe,M,,75,33,,,,,,\n');
    expect(table.stderr).toMatch(/^bars\.md:8:/);
  });

  it('solves what can be solved beside it', () => {
    const two = `${bars}\n${broken.replace('electrodes bars', 'electrodes other').replace(/\nThe middle.*/, '')}`;
    const { status, stdout } = folder({ 'bars.md': two }).run(['readings', 'bars.md']);
    expect(status).toBe(1);
    const [first, second] = JSON.parse(stdout).setups;
    expect(first.resistance_ohm).toBeCloseTo(2250, 4);
    expect(second).toMatchObject({ name: 'other', resistance_ohm: null });
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
    const ran = here.run(['print', 'bars.md', '--out', 'prints']);
    expect(ran).toMatchObject({ status: 1, stdout: `${join('prints', 'bars-teachers.html')}\n` });
    expect(here.list('prints')).toEqual(['bars-teachers.html']);
    expect(wordsOf(here.read('prints/bars-teachers.html'))).toMatch(/To mend before[\s\S]*Error, line 8\./);
    expect(ran.stderr).toContain('bars.md: not printed for pupils and technicians: the sheet has errors.');
  });

  it('a sheet for one reader is printed for that one, and the others are told', () => {
    const here = folder({ 'bars.md': bars.replace('---\n', '---\naudience: technicians\n') });
    const ran = here.run(['print', 'bars.md', '--out', 'prints']);
    expect(ran.status).toBe(0);
    expect(here.list('prints')).toEqual(['bars-technicians.html']);
    expect(ran.stderr).toContain('not printed for pupils and teachers: the sheet is for technicians alone.');
  });

  it('reads standard input, and prints it under its name', () => {
    const here = folder();
    here.run(['print', '--stdin-name', 'far/away/typed.md', '--out', 'ö ut/deep', '--for', 'teachers'], bars);
    expect(here.list('ö ut/deep')).toEqual(['typed-teachers.html']);
  });

  it('names on standard output what it wrote, and leaves nothing else behind', () => {
    const here = folder({ 'bars.md': bars, 'prints/bars-pupils.html': 'old' });
    const { stdout, stderr } = here.run(['print', 'bars.md', '--out', 'prints']);
    expect(stdout.trim().split('\n')).toEqual(here.list('prints').map((name) => join('prints', name)));
    expect(stderr).toBe('');
    expect(here.read('prints/bars-pupils.html')).not.toBe('old');
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

describe('a stop', () => {
  const examined = examineSheet({ name: 'bars.md', text: bars });
  const of = (severity: Severity): Finding => ({
    code: 'unit-missing',
    severity,
    span: { from: 0, to: 1 },
    message: 'Not like this.',
    hints: [],
    fixes: [],
    related: [],
  });
  const stopped: Examination = { ...examined, findings: [of('stop')] };

  it('keeps the sheet from pupils, says so, and is status 1', () => {
    const prints = printSheets(stopped, audiences);
    expect(prints.map(({ suffix }) => suffix)).toEqual(['teachers', 'technicians']);
    for (const { html } of prints) expect(wordsOf(html)).toContain('Not like this.');
    expect(heldBack(stopped, audiences, prints)).toEqual([
      expect.stringContaining('bars.md: not printed for pupils: it is not a pupil practical as written.'),
    ]);
    expect(statusOf([examined, stopped], false)).toBe(1);
    expect(findingLines(ofSheet(stopped), createColors(false))).toEqual([
      'bars.md:1:1: stop unit-missing Not like this.',
    ]);
  });

  it('beside an error leaves the print to teachers', () => {
    const both: Examination = { ...examined, findings: [of('stop'), of('error')] };
    expect(printSheets(both, audiences).map(({ suffix }) => suffix)).toEqual(['teachers']);
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
    const ran = folder().run(['format', '--stdin-name', 'typed.md'], untidy);
    expect(ran.stdout).toContain('5 kΩ per square');
  });
});
