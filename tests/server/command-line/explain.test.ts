/** `papervolt explain`: one finding readably, all of them by family, and what was meant where a code is not known. */
import { expect, it, test } from 'vitest';
import { catalogue } from '../../../shared/findings/catalogue.ts';
import { folder, type Ran } from './program.ts';

const explain = (...args: readonly string[]): Ran => folder().run(['explain', ...args]);

it('tells meaning, why, wrong, right, source, and that what cannot be read is mended', () => {
  const { status, stdout, stderr } = explain('decimal-comma');
  expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
  expect(stdout).toBe(`decimal-comma (error)
A comma in place of the decimal point.

A comma parts the pieces of a line, so a number with a comma would be two
numbers. In an English sheet pupils would read it as two as well.

Wrong:
    clip N 0,5 Ω

Right:
    clip N 0.5 Ω

Source: none; it is how this language is written.

Mend it: an allowance would hide the message, and what cannot be read or solved
would still be missing.
`);
});

it('gives the line that allows it, in the form of its place', () => {
  expect(explain('row-uneven').stdout).toContain(
    'To allow it, with a reason, on the line above:\n    # allow row-uneven because ',
  );
  expect(explain('unit-space').stdout).toContain('\n    <!-- papervolt: allow unit-space because ');
});

it('tells several, and what a department has to say for one of them', () => {
  const { stdout } = explain('unit-space', 'heading-solidus');
  expect(stdout).toMatch(/^unit-space \(warning\)\n[\s\S]*\n\nheading-solidus \(warning\)\n/u);
  expect(stdout).toContain('Where department.yaml says:\n    style:\n      headings: brackets\n');
});

it('keeps sentences within 80 columns', () => {
  const long = explain(...Object.keys(catalogue))
    .stdout.split('\n')
    .filter((line) => !line.startsWith('    ') && [...line].length > 80);
  expect(long).toEqual([]);
});

test('without a code all are listed, each under what it is about', () => {
  const { status, stdout } = explain();
  expect(status).toBe(0);
  for (const code of Object.keys(catalogue)) expect(stdout).toMatch(new RegExp(`^  ${code} `, 'mu'));
  expect(stdout).toContain(
    'Quantities and units in the text\n  unit-space                 warning  No space',
  );
});

test('--json gives records', () => {
  const [record, ...rest] = JSON.parse(explain('unit-space', '--json').stdout);
  expect(rest).toEqual([]);
  expect(Object.keys(record)).toEqual([
    'code',
    'severity',
    'meaning',
    'why',
    'wrong',
    'right',
    'department',
    'source',
    'allow',
  ]);
  expect(record).toMatchObject({ code: 'unit-space', severity: 'warning', department: null });
  expect(JSON.parse(explain('--json').stdout)).toHaveLength(Object.keys(catalogue).length);
});

test('a code that is not known', () => {
  expect(explain('decimal-coma')).toEqual({
    status: 2,
    stdout: '',
    stderr: 'papervolt: No finding has the code decimal-coma: decimal-comma?\n',
  });
  expect(explain('nothing-like-it').stderr).toBe(
    'papervolt: No finding has the code nothing-like-it: papervolt explain lists them all.\n',
  );
});
