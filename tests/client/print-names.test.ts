/** Prints are named after their sheet, as the command line names them. */
import { expect, test } from 'vitest';
import { printName } from '../../client/commands/print-names.ts';
import { stemOf } from '../../server/command-line/print.ts';

test.each([
  ['/sheets/bars.md', 'pupils', 'bars-pupils.html'],
  ['/sheets/Bars.MARKDOWN', 'teachers', 'Bars-teachers.html'],
  ['/a.md/ring.v2.md', 'pupils-core', 'ring.v2-pupils-core.html'],
  ['/.md', 'pupils', '.md-pupils.html'],
  ['Untitled-1', 'technicians', 'Untitled-1-technicians.html'],
])('%s for %s', (path, suffix, name) => {
  expect(printName(path, suffix)).toBe(name);
  expect(name).toBe(`${stemOf(path)}-${suffix}.html`);
});
