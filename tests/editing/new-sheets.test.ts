/** What `New practical sheet` offers is whole: read, formatted, solved and printed for everyone; only what its author must know is missing. */
import { describe, expect, it, test } from 'vitest';
import {
  audiences,
  examineSheet,
  formatSheet,
  mayBeSheet,
  newSheets,
  printSheets,
} from '../../shared/index.ts';

describe.each(newSheets)('$id', ({ id, text }) => {
  const examined = examineSheet({ name: `${id}.md`, text });

  it('asks for its risk assessment and review, and for nothing else', () => {
    expect(examined.findings.map(({ code }) => code).sort()).toEqual([
      'review-missing',
      'risk-assessment-missing',
    ]);
  });

  it('is solved', () => {
    expect(examined.solutions.size).toBe(1);
  });

  it('is formatted', () => {
    expect(formatSheet(text)).toBe(text);
  });

  it('is printed for every reader', () => {
    expect(printSheets(examined, audiences).map(({ suffix }) => suffix)).toEqual([...audiences]);
  });

  it('wakes the language server', () => {
    expect(mayBeSheet(text)).toBe(true);
  });
});

test('each has a name of its own', () => {
  expect(newSheets.map(({ id }) => id)).toEqual(['bars', 'disc-in-ring', 'hollow-ring', 'spikes', 'blank']);
  expect(new Set(newSheets.map(({ label }) => label)).size).toBe(newSheets.length);
});
